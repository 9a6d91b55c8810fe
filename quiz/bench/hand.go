package bench

import "scratchpass/calc"

// Way is the way of the tool in the cut along the bed: 1 towards the headstock, -1 towards
// the tailstock.
func (j Job) Way() float64 {
	if j.Towards == Tailstock {
		return -1
	}
	return 1
}

// usualWay is the way of the tool with the spindle forward: a right-hand thread is cut
// towards the headstock, a left-hand one from its groove towards the tailstock.
func (j Job) usualWay() string {
	if j.Thread.Hand == calc.LeftHand {
		return Tailstock
	}
	return Headstock
}

// FromGroove reports whether the cut begins behind the thread, in a groove, and not at the
// free end.
func (j Job) FromGroove() bool { return j.Towards == Tailstock }

// InReverse reports whether the spindle turns in reverse in the cut, with the tool upside
// down: the hand of a thread and the way of the tool leave no other.
func (j Job) InReverse() bool { return j.Towards != "" && j.Towards != j.usualWay() }

// CutTurn is the turn of the spindle in the cut: 1 forward, -1 in reverse.
func (j Job) CutTurn() int {
	if j.InReverse() {
		return -1
	}
	return 1
}

// OtherWay reports whether the job is cut in another way than the usual right-hand thread:
// with the lead screw reversed, from a groove or with the spindle in reverse.
func (j Job) OtherWay() bool {
	return j.Thread.Hand == calc.LeftHand || j.InReverse()
}

// Hurries reports whether something stands behind the end of the cut that the carriage
// must be stopped from: at the free end there is only air, unless the half-nut stays closed
// and brings the tool back to its groove.
func (j Job) Hurries() bool { return !j.FromGroove() || j.KeepClosed() }

// relief is how deep there is nothing to cut behind the end of the thread: a relief groove
// goes a little past the full depth, behind a bore that goes through is only air, and a
// shank is as thin as the job says. It is 0 in plain metal.
func (j Job) relief() calc.Length {
	full, err := j.FullDepth()
	switch {
	case err != nil:
		return 0
	case j.Shank > 0 && j.Side == calc.Inside:
		return max(0, (j.Shank - j.Start).Times(0.5))
	case j.Shank > 0:
		return max(0, (j.Start - j.Shank).Times(0.5))
	case j.Side == calc.Inside && j.End == Jaws:
		return full + behindBore
	case j.End == Jaws:
		return 0
	}
	return full + relief
}

// plain reports whether the thread runs out in plain metal.
func (j Job) plain() bool { return j.relief() < leastRelief }

// grooveIsDeep reports whether the tool can stand free behind the thread at full depth.
func (j Job) grooveIsDeep() bool {
	full, err := j.FullDepth()
	return err == nil && j.relief() >= full
}

// groovePlace is where the tip begins a cut from the groove: in the middle of its room.
func (j Job) groovePlace() calc.Length { return j.Length + j.Free().Times(0.5) }

// tailRoom is how far behind the start the tailstock stands: pushed back for work in the
// chuck, at the work itself between centres. Chosen.
func (j Job) tailRoom() calc.Length {
	if j.Hold == Centres {
		return calc.Inches(0.1)
	}
	return calc.Inches(1.5)
}

// Cutting reports whether the work comes down on the cutting edge: spindle forward with the
// tool as it is usually set, or in reverse with the tool upside down.
func (b Bench) Cutting() bool {
	if b.Flipped {
		return b.Turn < 0
	}
	return b.Turn > 0
}

// CutVerb is the move that lets the work come down on the cutting edge: "start", or
// "reverse" with the tool upside down.
func (b Bench) CutVerb() string {
	if b.Flipped {
		return "reverse"
	}
	return "start"
}

// Hand is the hand of the thread that the tumbler now gives, whichever way the spindle turns.
func (b Bench) Hand() calc.Hand {
	if b.LeverLeft {
		return calc.LeftHand
	}
	return calc.RightHand
}

// dir is the way of the carriage with the half-nut closed: 1 towards the headstock, -1
// towards the tailstock, 0 for a spindle that stands.
func (b Bench) dir() float64 {
	if b.LeverLeft {
		return -float64(b.Turn)
	}
	return float64(b.Turn)
}

// AtBegin reports whether the tip stands where a cut begins: before the free end, or in the
// groove behind the thread.
func (b Bench) AtBegin() bool {
	if b.InGroove {
		return b.place() > b.Job.Length-hair
	}
	return b.place() <= 0
}

// TailLeft is the way that the tip still has until the carriage meets the tailstock.
func (b Bench) TailLeft() calc.Length {
	return b.place() + b.Job.StartRoom() + b.Job.tailRoom()
}

// rightThread reports whether a pass has the thread's own lead and hand.
func (b Bench) rightThread(p Pass) bool { return b.rightLead(p.Lead) && p.Hand == b.Job.Thread.Hand }

// wrongHand reports whether a thread of the other hand was cut deeper than a scratch.
func (b Bench) wrongHand() bool {
	return b.cutSo(func(p Pass) bool { return p.Hand != b.Job.Thread.Hand })
}

// over reports whether a pass went over a place along the thread.
func (p Pass) over(at calc.Length) bool { return min(p.From, p.To) <= at && max(p.From, p.To) >= at }

// shortBy is how far a pass ended before the end that it ran to; 0 where it went through.
func (b Bench) shortBy(p Pass) calc.Length {
	by := b.Job.Length - p.To
	if p.Way < 0 {
		by = p.To
	}
	if by <= b.Job.Thread.Pitch.Times(lastThread) {
		return 0
	}
	return by
}

// tumbler sets the lever that turns the lead screw the other way.
func (s *step) tumbler(e Event) {
	left := e.Word == "left"
	switch {
	case !s.standing():
	case s.Nut:
		s.say("nut-is-closed")
	case s.hasFirst && left != s.LeverLeft:
		s.say("gears-too-late")
	default:
		if left != s.LeverLeft {
			s.LeverLeft = left
			s.forgetFirst()
		}
		s.say("tumbler-set", "hand", e.Word)
	}
}

// turnTool turns the tool over, or back. It is then no longer square or at centre height.
func (s *step) turnTool(e Event) {
	over := e.Word == "over"
	switch {
	case !s.standing():
	case s.hasFirst && over != s.Flipped:
		s.say("tool-too-late")
	default:
		if over != s.Flipped {
			if s.Squared || s.Height {
				s.say("bar-turned")
			}
			s.Flipped, s.Squared, s.Height = over, false, false
		}
		if over {
			s.say("tool-over")
		} else {
			s.say("tool-up")
		}
	}
}
