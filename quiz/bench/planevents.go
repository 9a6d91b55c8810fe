package bench

import (
	"strconv"

	"scratchpass/calc"
)

// Events are the plan as moves at the bench, up to the first try of the fit. What is
// left is done as the fit says.
func (p Plan) Events() []Event {
	events := p.setUp()
	for i, moves := range p.stepEvents() {
		events = append(events, moves...)
		if p.Steps[i].Kind == "test" {
			break
		}
	}
	return events
}

// CutTurn is the move that turns the spindle for a cut: "start" or "reverse".
func (p Plan) CutTurn() string {
	if p.Job.InReverse() {
		return "reverse"
	}
	return "start"
}

// backTurn is the move that brings the carriage back with the half-nut closed.
func (p Plan) backTurn() string {
	if p.Job.InReverse() {
		return "start"
	}
	return "reverse"
}

// setUp are the moves before the first pass.
func (p Plan) setUp() []Event {
	system := p.Job.System()
	var events []Event
	do := func(texts ...string) {
		for _, text := range texts {
			if e, err := Parse(text, system); err == nil {
				events = append(events, e)
			}
		}
	}
	_, away := p.Job.Ways()
	do("dress", "key out", "feed off", "speed "+strconv.Itoa(p.RPM))
	if p.Job.Thread.Hand == calc.LeftHand {
		do("tumbler left")
	}
	switch {
	case len(p.Trains) > 0:
		e := Event{Verb: "gears", Has: true}
		for i := range p.Trains[0].Drivers {
			e.Ns = append(e.Ns, p.Trains[0].Drivers[i], p.Trains[0].Driven[i])
		}
		events = append(events, e)
	case p.Job.Thread.Metric:
		events = append(events, Event{Verb: "levers", Word: "mm", X: p.Lead.Millimetres(), Has: true})
	default:
		events = append(events, Event{Verb: "levers", Word: "TPI", X: 1 / p.Lead.Inches(), Has: true})
	}
	do("angle " + calc.Shortest(p.Scale.Degrees(), 2) + " " + p.Job.Swing())
	if p.Job.Side == calc.Inside {
		events = append(events, length("overhang", "", p.Overhang))
	}
	if p.Job.InReverse() {
		do("tool over")
	}
	do(p.lastSettings()...)
	events = append(events, length("cross", away, p.Out))
	if p.Job.FromGroove() {
		do("return groove")
	} else {
		do("return")
	}
	return events
}

func length(verb, word string, l calc.Length) Event {
	return Event{Verb: verb, Word: word, X: l.Inches(), Has: true}
}

// player makes moves of the steps of a card, one after the other.
type player struct {
	p            Plan
	deeper, away string
	total        calc.Length // on the compound, by its dial
	straight     calc.Length // of the last pass, on the cross slide
	start        int         // the last pass's, from 1
	round        int         // how often all starts have been gone through
	hand         bool        // the next pass is made by hand: on another mark, or from another depth
	passed       bool        // a pass was made
}

// stepEvents are the moves of every step.
func (p Plan) stepEvents() [][]Event {
	pl := player{p: p, start: 1}
	pl.deeper, pl.away = p.Job.Ways()
	all := make([][]Event, len(p.Steps))
	for i, s := range p.Steps {
		all[i] = pl.moves(s)
	}
	return all
}

func (pl *player) moves(s PlanStep) []Event {
	switch s.Kind {
	case "test":
		pl.round++
		return pl.p.Try()
	case "next":
		return pl.next(s)
	case "spring":
		return []Event{{Verb: "spring"}}
	}
	fed := pl.p.straightFed(s)
	compound := s.Total - pl.total
	from := pl.straight
	pl.total, pl.straight = s.Total, s.Straight
	if pl.hand || !pl.passed {
		pl.hand = false
		return pl.byHand(s, from, compound)
	}
	switch {
	case s.Straight == from && compound == 0: // another start, at the same readings
		return []Event{{Verb: "spring"}}
	case fed:
		return []Event{length("finish", "", s.Straight-from)}
	}
	return []Event{length("pass", "", compound)}
}

// straightFed reports whether a step feeds the cross slide.
func (p Plan) straightFed(s PlanStep) bool { return s.Kind == "finish" || p.StraightIn() }

// next are the moves to another start. Until the first try each start begins anew from the
// scratch; after it the depth stays.
func (pl *player) next(s PlanStep) []Event {
	p := pl.p
	first := pl.round == 0
	var events []Event
	play := p.Job.Lathe.Compound.Division.Times(20) // more than the play
	switch p.IndexBy {
	case ByCompound:
		on := p.Job.Thread.Pitch.Times(float64(s.Start - pl.start))
		if on < 0 { // back past the first start, and up to it again
			events = append(events, length("compound", pl.away, play-on))
			on = play
		}
		events = append(events, length("compound", pl.deeper, on))
		pl.hand = first
	case ByTurning:
		events = append(events, Event{Verb: "stop"})
		for range (s.Start - pl.start + p.starts()) % p.starts() {
			events = append(events, Event{Verb: "index"})
		}
	case ByDial:
		pl.hand = true
	}
	if first && p.IndexBy != ByCompound {
		events = append(events, length("compound", pl.away, pl.total+play), length("compound", pl.deeper, play))
		pl.total = 0
	}
	pl.start = s.Start
	return events
}

// byHand is a pass with each of its moves.
func (pl *player) byHand(s PlanStep, from, compound calc.Length) []Event {
	p := pl.p
	closed := p.Job.KeepClosed()
	var events []Event
	do := func(verbs ...string) {
		for _, verb := range verbs {
			events = append(events, Event{Verb: verb})
		}
	}
	events = append(events, length("cross", pl.deeper, p.Out+s.Straight-from))
	if compound > 0 {
		events = append(events, length("compound", pl.deeper, compound))
	}
	if pl.passed {
		do(p.CutTurn())
	}
	switch mark := max(s.Mark, 1); {
	case closed && pl.passed:
	case closed, len(p.Marks) == 0:
		do("close")
	default:
		events = append(events, Event{Verb: "close", Word: "on", X: float64(mark), Has: true})
	}
	do("run")
	events = append(events, length("cross", pl.away, p.Out))
	first := !pl.passed
	pl.passed = true
	if closed {
		do("stop")
		if first {
			do("count")
		}
		do(p.backTurn(), "run", "stop")
		return events
	}
	do("open", "return")
	if first {
		do("stop", "count", p.CutTurn())
	}
	return events
}

// lastSettings are the moves of the set-up after the compound and the bar, up to both zeros:
// what stands on the compound turned with it, so height and square come after.
func (p Plan) lastSettings() []string {
	var texts []string
	square := "square"
	if p.Job.Form() == Pipe {
		texts, square = append(texts, "taper 1/16"), "square axis"
	}
	texts = append(texts, "height", square, "gibs")
	if !p.Job.CutsDry() {
		texts = append(texts, "oil")
	}
	return append(texts, p.CutTurn(), "touch", "zero cross", "zero compound")
}

// Try are the moves of a try: stop, clean, test. Between centres the work comes out for
// it, with its dog on.
func (p Plan) Try() []Event {
	events := []Event{{Verb: "stop"}, {Verb: "clean", Word: "hook"}}
	if p.Job.Hold == Centres {
		events = append(events, Event{Verb: "unchuck"})
	}
	return append(events, Event{Verb: "test", Word: "go"})
}
