package bench

import (
	"math"
	"strconv"

	"scratchpass/calc"
)

func (s *step) clean(e Event) {
	switch {
	case s.Turn != 0:
		s.wrong(mistakeChipsWhileTurning)
		return
	case e.Word == "hand":
		s.wrong(mistakeChipsByHand)
	}
	s.Dirty = false
	s.say("cleaned")
}

func (s *step) emery(Event) {
	if s.Turn != 0 {
		s.wrong(mistakeClothOnTurningWork)
		return
	}
	s.say("deburred")
}

func (s *step) unchuck(Event) {
	switch {
	case !s.standing():
	case s.overWork() && !s.Clear() && len(s.Passes) > 0:
		s.say("tool-in-the-way")
	case s.Job.Hold == Centres:
		s.Out = true
		s.say("out-with-its-dog")
	case len(s.Passes) == 0:
		s.say("unchucked")
	default:
		s.Moved = true // whatever is cut from here on runs beside the groove
		s.say("taken-out")
	}
}

// count lays a rule on the scratch.
func (s *step) count(Event) {
	if s.Turn != 0 {
		s.wrong(mistakeMeasuredRunning)
		return
	}
	if len(s.Passes) == 0 {
		s.say("nothing-to-measure")
		return
	}
	lead := s.ridges()
	if hand := s.Passes[len(s.Passes)-1].Hand; s.Job.OtherWay() || hand != s.Job.Thread.Hand {
		if hand == calc.LeftHand {
			s.say("counted-left")
		} else {
			s.say("counted-right")
		}
	}
	if s.starts() > 1 {
		s.say("counted-starts", "begun", strconv.Itoa(s.begun()))
	}
	if s.Job.Thread.Metric {
		s.say("counted-mm", "pitch", calc.Shortest(lead.Millimetres(), 2)+" mm")
		return
	}
	s.say("counted-in", "tpi", calc.Shortest(1/lead.Inches(), 2))
}

// test tries the fit, or measures.
func (s *step) test(e Event) {
	switch {
	case s.Turn != 0:
		s.wrong(mistakeMeasuredRunning)
		return
	case len(s.Passes) == 0:
		s.say("nothing-to-measure")
		return
	case s.Nut && !s.Job.KeepClosed():
		s.say("nut-is-closed")
		return
	case s.overWork() && !s.Clear():
		s.say("tool-in-the-way")
		return
	case s.Job.Hold == Centres && !s.Out && e.Word != "wires":
		s.say("centre-in-the-way")
		return
	}
	var result string
	switch e.Word {
	case "wires":
		result = s.wires()
	case "not-go":
		result = s.Bench.notGo()
	default:
		result = s.Bench.goes()
		if s.Dirty && (result == "goes" || result == "binds") { // which of the two nobody can tell
			result = "chips-bind"
			s.act(mistakeTestedDirty)
		}
	}
	if s.Job.Form() == Pipe && e.Word != "wires" {
		result = s.taperGauge(e.Word, result)
		s.Tests = add(s.Tests, Test{e.Word, result})
		return
	}
	s.Tests = add(s.Tests, Test{e.Word, result})
	if e.Word != "wires" {
		s.say("test-"+e.Word+"-"+result, "turns", s.turnsOn())
	}
}

// wires measures over the best wires at the start of the thread.
func (s *step) wires() string {
	if !s.Job.Wired() {
		if s.Job.Side == calc.Inside {
			s.say("no-wires-inside")
		} else {
			s.say("no-wires-on-a-cone")
		}
		return "none"
	}
	pitch, ok := s.PitchDiameter()
	best, err := s.Job.bestWire()
	if !ok || err != nil {
		s.say("wires-too-early")
		return "none"
	}
	over, err := s.Job.overWires(pitch, best)
	if err != nil {
		s.say("wires-too-early")
		return "none"
	}
	limits := s.Job.Limits.Pitch
	most, err := s.Job.overWires(limits.Max, best)
	if err != nil {
		return "none"
	}
	s.say("over-wires", "wire", s.text(best), "over", s.text(over), "max", s.text(most), "min", s.text(most-(limits.Max-limits.Min)))
	return s.text(over)
}

// turnsOn is how many turns a tight mate goes on: more, the nearer it is.
func (b Bench) turnsOn() string {
	e, ok := b.PitchDiameter()
	if !ok {
		return "0"
	}
	over := (e - b.Job.Limits.Pitch.Max).Times(b.in())
	if b.Job.Side == calc.Inside {
		over = b.Job.Limits.Pitch.Min - e
	}
	turns := 1 + int(math.Max(0, 3-over.Over(0.001)))
	if turns == 1 {
		return "1 turn"
	}
	return strconv.Itoa(turns) + " turns"
}

// book is what the learner says the slide's total is: of the compound since its zero, of
// the cross slide at its last cut, wherever it stands now.
func (s *step) book(e Event) {
	if !s.Touched() {
		s.say("nothing-booked")
		return
	}
	total, line := s.compoundTravel(), s.Job.Lathe.Compound.Division
	if e.Word == "cross" {
		per := s.Job.Lathe.CrossReads.PerRadial()
		total, line = s.LastIn.Times(per), s.Job.Lathe.Cross.Division
	}
	s.Doubt = false
	if calc.Within(e.X, total.Inches(), line.Inches()*0.5) {
		s.say("book-right")
		return
	}
	s.wrong(mistakeBookWrong, "said", s.text(e.Length()), "total", s.text(total))
}
