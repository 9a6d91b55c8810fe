package bench

import "scratchpass/calc"

// What the tool was squared to.
const (
	toAxis = "axis" // of the work
	toCone = "cone" // the taper that the work was turned to
)

// Attachment and NoAttachment are how a lathe makes a taper for a job: its cross slide is led
// along a bar, or is not.
const (
	Attachment   = "attachment"
	NoAttachment = "none"
)

// touchAt is where along the thread the tool touches off.
func (j Job) touchAt() calc.Length {
	return min(j.Length.Times(firstThread), j.Thread.Pitch.Times(touchPitches))
}

// lean is how much deeper the tool goes for each length that the carriage goes on, as its
// taper attachment stands: 0 where the attachment stands as the thread does.
func (b Bench) lean() float64 {
	if b.Job.Form() != Pipe {
		return 0
	}
	return (calc.PipeTaper - b.Taper) / 2
}

// taper sets the taper attachment: how much the diameter grows for a length.
func (s *step) taper(e Event) {
	switch {
	case !s.standing():
	case s.Job.Form() != Pipe:
		s.say("no-taper-here")
	case s.hasFirst:
		s.say("taper-too-late")
	default:
		s.Taper, s.Set.Taper = e.X, true
		s.say("taper-set", "taper", ratioText(e.X))
	}
}

// ratioText is a taper as a fraction where it is one.
func ratioText(x float64) string {
	if text, ok := calc.FractionText(calc.Inches(x)); ok {
		return text
	}
	return calc.Shortest(x, 6)
}

// squareTo sets the tool square to the axis of the work, or to the cone that it was turned to:
// on a cone the learner says which.
func (s *step) squareTo(e Event) {
	cone := s.Job.Form() == Pipe
	switch {
	case !s.standing():
	case s.cutDeep() && (!s.Squared || s.OnCone):
		s.say("tool-too-late")
	case cone && e.Word == "":
		s.say("square-to-which")
	case !cone && e.Word == toCone:
		s.say("no-cone")
	default:
		s.Squared, s.OnCone = true, e.Word == toCone
		if s.OnCone {
			s.say("squared-to-cone")
		} else {
			s.say("squared")
		}
	}
}

// onCone and offTaper tell of a pass that was cut so.
func onCone(p Pass) bool   { return p.OnCone }
func offTaper(p Pass) bool { return max(p.Lean, -p.Lean) > shareOff }

// turnsOff is how many turns a taper gauge stands off flush, hand-tight: above 0 it is short,
// metal is left.
func (b Bench) turnsOff() (turns float64, ok bool) {
	e, ok := b.PitchDiameter()
	off := (e - b.Job.Limits.Pitch.Middle()).Times(b.in())
	return off.Times(1 / calc.PipeTaper).Over(b.Job.Thread.Pitch), ok
}

// taperGauge tells where a taper gauge or a fitting comes to a stand. One gauge is for both
// limits.
func (s *step) taperGauge(what, result string) string {
	if what == "not-go" {
		s.say("gauge-is-one")
		return "none"
	}
	turns, _ := s.turnsOff()
	if result == "binds" { // where it stands is all that it tells: neither crests nor a leaning tool hold it
		e, _ := s.PitchDiameter()
		result = map[int]string{1: "binds", 0: "goes", -1: "shakes"}[s.metal(e)]
	}
	s.say("gauge-"+result, "turns", calc.Fixed(max(turns, -turns), 1))
	if result != "no-start" && s.cutSo(offTaper) {
		s.say("gauge-rocks")
	}
	return result
}
