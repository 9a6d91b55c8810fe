package class

import (
	"scratchpass/lessons/page"
	"scratchpass/lessons/rehearsal"
)

// The scenes of a bench round.
const (
	AtBench   Scene = "bench"      // at the lathe
	BenchOver Scene = "bench-over" // their pass is over, and others go on
	BenchTold Scene = "bench-told" // the round is closed
)

// Bench is where someone is in a bench round.
type Bench struct {
	Round Round
	N     int // of the round, in the room
	Work  Work
}

// atBench is where someone is while a bench round is at hand.
func (r *Room) atBench(p *Person, at At) At {
	round, n := r.Round()
	at.Bench = &Bench{*round, n, r.Work(p, n)}
	switch {
	case round.Closed:
		at.Scene = BenchTold
	case at.Bench.Work.End != GoesOn:
		at.Scene = BenchOver
	default:
		at.Scene = AtBench
	}
	return at
}

// benches are the rounds in which someone did anything.
func (r *Room) benches(p *Person) []Bench {
	var all []Bench
	for n, round := range r.Rounds {
		if w := r.Work(p, n); len(w.Moves) > 0 {
			all = append(all, Bench{*round, n, w})
		}
	}
	return all
}

// Title is which pass of which job is rehearsed.
func (b Bench) Title(o rehearsal.OnePass) string {
	if b.Round.Pass.N == 0 {
		return o.Say("class-bench-set-up")
	}
	return o.Say("class-bench-pass", "n", b.Round.Pass.N, "of", b.Round.Pass.Of)
}

// Seat is what a phone shows of a bench round, in the words of its pass.
func (b Bench) Seat(scene Scene, o rehearsal.OnePass) Seat {
	seat := Seat{Scene: scene, Where: page.Where{Text: b.Title(o)}}
	switch scene {
	case AtBench:
		seat.Body = o.Asks()
		if came := o.Came(b.Work.Bench); came != nil { // the task stays in sight
			seat.Body = append(page.Page{page.Paragraph{Text: o.Task()}}, came...)
		}
		panel := o.Panel(b.Work.Bench)
		seat.Panel = &panel
		seat.Prompt = page.Prompt{Text: o.Say("bench-ask"), Takes: page.Words{Moves: true}, Words: b.words()}
	case BenchOver:
		seat.Says = o.Say("class-bench-wait")
		seat.Body = b.Came(o)
	case BenchTold:
		seat.Says = o.Say("class-bench-told")
		seat.Body = b.Came(o)
		if n := b.Round.Shown - 1; n > 0 { // no more than the wall shows
			seat.Body = append(seat.Body, page.Heading{Text: o.Say("class-bench-goes")}, o.Goes()[:n])
		}
	}
	return seat
}

// words are those that can be typed at the bench instead of a move.
func (b Bench) words() []string {
	words := []string{page.WordRepeat, page.WordHelp, rehearsal.WordCard}
	if b.Round.Hints {
		words = append(words, page.WordHint)
	}
	return words
}

// Came is what came of someone's pass: how it ended, and their mistakes with what those mean.
func (b Bench) Came(o rehearsal.OnePass) page.Page {
	var p page.Page
	made := len(o.Made(b.Work.Bench))
	switch {
	case len(b.Work.Moves) == 0:
		return page.Page{page.Paragraph{Text: o.Say("class-bench-none")}}
	case b.Work.End == GoesOn:
		p = page.Page{page.Paragraph{Text: o.Say("class-bench-not-over", "n", len(b.Work.Moves))}}
	default:
		p = page.Page{page.Verdict{Right: b.Work.End == Through && made == 0, Text: o.Say("class-bench-"+string(b.Work.End), "n", len(b.Work.Moves))}}
	}
	if b.Work.End == Through && !o.AsDeep(b.Work.Bench) {
		p = append(p, page.Paragraph{Text: o.Say("class-bench-depth")})
	}
	if made == 0 && b.Work.End != Ruined {
		return append(p, page.Paragraph{Text: o.Say("class-bench-clean")})
	}
	return append(p, o.Debrief(b.Work.Bench)...)
}
