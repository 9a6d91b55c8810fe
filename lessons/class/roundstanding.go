package class

import (
	"cmp"
	"slices"
	"time"

	"scratchpass/quiz/bench"
)

// RoundRow is how one person stands in a bench round.
type RoundRow struct {
	Row
	Stage Stage
	Work  Work
	Made  []bench.Mistake // in the order in which they were made, by their own moves
	Off   bool            // through, and not set as deep as the card has it
}

// What someone at a bench needs the instructor for, besides what they do at questions.
const (
	NeedsHurt  Need = "hurt"  // did what can hurt someone
	NeedsScrap Need = "scrap" // the part is scrap, or something broke
)

// needsAtBench are all needs there, the most urgent first.
var needsAtBench = []Need{NeedsIn, NeedsHelp, NeedsHurt, NeedsScrap, NeedsTime, NeedsPhone, NeedsNone, NeedsRoster}

// Stage is how far someone is in the pass.
type Stage string

// The stages, in their order.
const (
	StageNone    Stage = "none"    // no move yet
	StageSetUp   Stage = "set-up"  // before both dials are set
	StageBefore  Stage = "before"  // between passes, the tool clear
	StageDeep    Stage = "deep"    // the tool is at the start, and set in
	StageCut     Stage = "cut"     // along the thread
	StageBack    Stage = "back"    // a cut is made, and the tool not yet back and clear
	StageThrough Stage = "through" // the pass is made
	StageScrap   Stage = "scrap"   // it came to another end
)

// stage is how far someone is in a pass.
func (round *Round) stage(w Work) Stage {
	st := w.Bench.Status()
	switch {
	case w.End == Through:
		return StageThrough
	case w.End == Ruined:
		return StageScrap
	case len(w.Moves) == 0:
		return StageNone
	case !w.Bench.AtTouch || !w.Bench.Zeroed[1]:
		return StageSetUp
	case st.Place != "start":
		return StageCut
	case len(w.Bench.Passes) > len(round.Pass.Start.Passes):
		return StageBack
	case st.Clear:
		return StageBefore
	}
	return StageDeep
}

// RoundStanding is how all stand in a round; who needs the instructor most comes first. away
// tells of a device that nobody is at.
func (r *Room) RoundStanding(n int, now time.Time, away func(device string) bool) []RoundRow {
	round := r.Rounds[n]
	var rows []RoundRow
	for _, p := range r.People() {
		row := RoundRow{Work: r.Work(p, n)}
		row.Row = Row{ID: p.ID, Name: p.Name, Visitor: p.Visitor, Came: p.Device != "", Claims: p.Claims, Extra: p.Extra}
		row.Away = row.Came && away(p.Device)
		row.Stage, row.Made = round.stage(row.Work), round.Pass.Made(row.Work.Bench)
		row.Off = row.Work.End == Through && !round.Pass.AsDeep(row.Work.Bench)
		row.Why = r.whyAtBench(p, n, row, now)
		row.Needs = row.Why[0]
		rows = append(rows, row)
	}
	slices.SortStableFunc(rows, func(x, y RoundRow) int {
		return cmp.Compare(slices.Index(needsAtBench, x.Needs), slices.Index(needsAtBench, y.Needs))
	})
	return rows
}

// whyAtBench is all that someone needs the instructor for while they are at a bench.
func (r *Room) whyAtBench(p *Person, n int, row RoundRow, now time.Time) []Need {
	why := slices.DeleteFunc(r.why(p, r.Now, row.Row, now), func(need Need) bool { return need == NeedsNone })
	unseen := func(move int) bool { return row.Work.Moves[move-1].Seq > p.seen.Seq }
	if slices.ContainsFunc(row.Made, func(m bench.Mistake) bool { return m.Name.Consequence() == bench.Hurts && unseen(m.Event) }) {
		why = append(why, NeedsHurt)
	}
	if row.Work.End == Ruined && unseen(len(row.Work.Moves)) {
		why = append(why, NeedsScrap)
	}
	round, runs := r.Rounds[n], !r.Paused && !r.Ended
	if runs && !round.Closed && row.Came && !row.Away && row.Work.End == GoesOn && now.Sub(r.lastMove(p, n)) > stuckAfter {
		why = append(why, NeedsTime)
	}
	if len(why) == 0 {
		return []Need{NeedsNone}
	}
	slices.SortFunc(why, func(a, b Need) int { return cmp.Compare(slices.Index(needsAtBench, a), slices.Index(needsAtBench, b)) })
	return why
}

// lastMove is when someone made their last move, or the round began, or the instructor has seen
// to them.
func (r *Room) lastMove(p *Person, n int) time.Time {
	at := r.Rounds[n].began
	if p.seen.At.After(at) {
		at = p.seen.At
	}
	if moves := p.Works[n].Moves; len(moves) > 0 && moves[len(moves)-1].At.After(at) {
		at = moves[len(moves)-1].At
	}
	return at
}

// RoundSpread is what came of a round, without names.
type RoundSpread struct {
	Began   int // people who made a move
	Through int
	Clean   int // of them, without a mistake and as deep as the card has it
	Off     int // of them, not so deep or deeper
	Scrap   int
	Made    []MadeBy // the worst first, and of equals what most did
}

// MadeBy is a mistake, and how many people made it.
type MadeBy struct {
	Name   bench.MistakeName
	People int
}

// SpreadOf adds up what came of a round.
func SpreadOf(rows []RoundRow) RoundSpread {
	var s RoundSpread
	for _, row := range rows {
		if len(row.Work.Moves) == 0 {
			continue
		}
		s.Began++
		switch {
		case row.Work.End == Ruined:
			s.Scrap++
		case row.Work.End == Through:
			s.Through++
		}
		if row.Off {
			s.Off++
		}
		if row.Work.End == Through && !row.Off && len(row.Made) == 0 {
			s.Clean++
		}
		s.made(row.Made)
	}
	slices.SortStableFunc(s.Made, func(a, b MadeBy) int {
		return cmp.Or(cmp.Compare(a.Name.Consequence(), b.Name.Consequence()), cmp.Compare(b.People, a.People), cmp.Compare(a.Name, b.Name))
	})
	return s
}

// made counts the mistakes of one person, each once.
func (s *RoundSpread) made(all []bench.Mistake) {
	mine := map[bench.MistakeName]bool{}
	for _, m := range all {
		if mine[m.Name] {
			continue
		}
		mine[m.Name] = true
		i := slices.IndexFunc(s.Made, func(k MadeBy) bool { return k.Name == m.Name })
		if i < 0 {
			i, s.Made = len(s.Made), append(s.Made, MadeBy{Name: m.Name})
		}
		s.Made[i].People++
	}
}

// Few reports whether too few have made a move for what came to be shown to all.
func (s RoundSpread) Few() bool { return s.Began < FewestShown }
