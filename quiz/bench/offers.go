package bench

import (
	"slices"

	"scratchpass/calc"
)

// Offer is a move that may be made now: its words, and whether a figure follows them.
type Offer struct {
	Text  string // "cross out"
	Takes string // what figure: length, number, gears, lead, mark or text; empty for none
	Verb  string
}

// Offers lists the moves that a person might think of now, good and bad, always in the
// same order: which of them is right is for the learner to say.
func (b Bench) Offers() []Offer {
	switch {
	case b.Over:
		return nil
	case len(b.Passes) == 0 && !b.Nut && b.overWork() && !b.AtBegin():
		return offers("zero cross", "zero compound", "cross out", "cross in", "return", "stop", "start", "close")
	case b.overWork() && !b.AtBegin() && !b.Nut && b.Turn == 0:
		return offers("return", "cross out", "cross in", "compound in", "compound out", "start", "clean hook", "clean hand", "test go")
	case b.Nut || b.overWork() && !b.AtBegin():
		return offers("run", "cross out", "cross in", "open", "close", "return", "stop", "reverse", "start", "compound in", "compound out", "wait")
	case len(b.Passes) == 0 && !b.Zeroed[0]:
		drive := "gears"
		if len(b.Job.Lathe.Gears) == 0 {
			drive = "levers"
		}
		setUp := []string{"dress", "key out", "feed off", "speed", drive, "angle", "taper", "overhang", "height", "square", "square axis", "square cone", "gibs", "oil", "start", "touch", "zero cross", "zero compound", "stop"}
		if b.Job.OtherWay() {
			setUp = append(setUp, "tumbler left", "tool over", "return groove")
		}
		return offers(slices.DeleteFunc(setUp, func(move string) bool {
			pipe := b.Job.Form() == Pipe
			return move == "overhang" && b.Job.Side == calc.Outside || move == "key out" && b.Job.Hold == Centres ||
				move == "square" && pipe || (move == "taper" || move == "square axis" || move == "square cone") && !pipe
		})...)
	case b.Turn != 0:
		return b.wholeToo("compound in", "compound out", "cross to", "cross in", "cross out", "close on", "close", "pass", "spring", "finish", "stop", "reverse", "clean hook", "test go", "emery")
	}
	standing := []string{"start", "reverse", "clean hook", "clean hand", "count", "test mate", "test go", "test not-go", "test wires", "book compound", "book cross",
		"compound in", "compound out", "cross to", "pass", "spring", "finish", "gears", "levers", "speed", "emery", "unchuck", "done"}
	if b.starts() > 1 {
		standing = append(standing, "index")
	}
	return b.wholeToo(standing...)
}

// wholeToo offers whole passes only when there is one to repeat.
func (b Bench) wholeToo(texts ...string) []Offer {
	return slices.DeleteFunc(offers(texts...), func(o Offer) bool {
		_, _, whole := Event{Verb: o.Verb}.WholePass()
		return whole && !b.CanRepeat()
	})
}

func offers(texts ...string) []Offer {
	all := make([]Offer, len(texts))
	for i, text := range texts {
		verb := text
		for j, r := range text {
			if r == ' ' {
				verb = text[:j]
				break
			}
		}
		all[i] = Offer{Text: text, Takes: verbs[verb].takes, Verb: verb}
		if text == "close" {
			all[i].Takes = ""
		}
	}
	return all
}

// Status is where the machine stands, as someone at it sees it.
type Status struct {
	Turn         int
	RPM          float64
	Mark         float64 // under the index, from 0; -1 without a thread dial
	Nut          bool
	Place        string // start, thread, end or gap: as the cut goes
	InGroove     bool   // the cut starts in the groove behind the thread, and ends off the free end
	Clear        bool   // the tool is drawn back so far that one can see it
	CrossDial    string
	CompoundDial string
	PassesDone   int
}

// Status returns what can be seen. What the slides' totals are can't be seen: the
// learner keeps count.
func (b Bench) Status() Status {
	s := Status{Turn: b.Turn, RPM: b.RPM, InGroove: b.InGroove, Mark: -1, Nut: b.Nut, PassesDone: len(b.Passes), Clear: b.Clear(),
		CrossDial: b.Job.text(b.CrossReading()), CompoundDial: b.Job.text(b.CompoundReading())}
	if at, ok := b.Mark(); ok {
		s.Mark = at
	}
	end := b.Job.Length - b.Job.Thread.Pitch.Times(0.01)
	switch at := b.place(); {
	case b.InGroove && at >= end:
		s.Place = "start"
	case b.InGroove && at <= b.Job.Thread.Pitch.Times(0.01):
		s.Place = "end"
	case at <= 0:
		s.Place = "start"
	case at < end:
		s.Place = "thread"
	case at < b.Job.Length+b.Job.Thread.Pitch.Times(0.01):
		s.Place = "end"
	default:
		s.Place = "gap"
	}
	return s
}
