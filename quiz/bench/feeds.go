package bench

import "scratchpass/calc"

// Feeds returns the moves that a whole pass begins with: the compound fed by a cut, and
// the cross slide back at its last cut and on by a feed of its dial.
func (b Bench) Feeds(compound, straight calc.Length) []Event {
	deeper, _ := b.Job.Ways()
	var events []Event
	if compound > 0 {
		events = append(events, Event{Verb: "compound", Word: deeper, X: compound.Inches(), Has: true})
	}
	way := (b.LastIn - b.crossTravel()).Times(b.Job.Lathe.CrossReads.PerRadial()) + straight
	if way > hair {
		events = append(events, Event{Verb: "cross", Word: deeper, X: way.Inches(), Has: true})
	}
	return events
}

// Ahead returns the bench after a time, without a word in the log: for a picture that
// moves. What is done is still to be done by Step.
func (b Bench) Ahead(seconds float64) Bench {
	s := step{Bench: b}
	s.advance(seconds)
	return s.Bench
}
