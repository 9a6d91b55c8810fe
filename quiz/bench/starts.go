package bench

import (
	"math"
	"slices"

	"scratchpass/calc"
)

// parallelFrom is the angle from the cross-slide line from which the compound is taken to
// stand along the bed: it then carries the tool to the next start, and no depth.
const parallelFrom = calc.Angle(80)

// Parallel reports whether the compound stands along the bed.
func (b Bench) Parallel() bool { return max(b.Angle, -b.Angle) > parallelFrom }

// alongside is how far a compound that stands along the bed has moved the tool to another
// start; a swung one feeds along the flank of its own groove.
func (b Bench) alongside() calc.Length {
	if b.Parallel() {
		return b.sideways()
	}
	return 0
}

// runsAt is where the tool runs on the work, to a whole lead: the carriage on its screw, the
// compound along the bed, and how far the work was turned on.
func (b Bench) runsAt() calc.Length { return b.phase() + b.alongside() + b.TurnedOn }

// runsIn is which start the tool runs in, 0 for that of the first pass, and how far beside
// its groove, -P/2 to P/2. A wrong lead or hand runs in no groove at all.
func (b Bench) runsIn() (start int, beside calc.Length) {
	if !b.hasFirst || !b.rightLead(b.Lead) || b.Hand() != b.Job.Thread.Hand {
		return 0, 0
	}
	pitch := b.Job.Thread.Pitch
	off := (b.runsAt() - b.first).Remainder(b.Job.Thread.Lead())
	nearest := math.Ceil(off.Over(pitch) - 0.5 - shareOff) // half a pitch is beside this one
	beside = off - pitch.Times(nearest)
	if max(beside, -beside) < sizeSlack {
		beside = 0
	}
	return int(nearest) % b.starts(), beside
}

// starts is how many starts the thread has, at least 1.
func (b Bench) starts() int { return max(b.Job.Thread.Starts, 1) }

// start is the one that was cut last.
func (b Bench) start() int {
	if b.cutting != nil {
		return b.cutting.Start
	}
	if n := len(b.Passes); n > 0 {
		return b.Passes[n-1].Start
	}
	return 0
}

// besideName is the mistake of a pass that runs beside the grooves, by what led there.
func (b Bench) besideName() MistakeName {
	switch {
	case b.starts() > 1 && (b.Parallel() || b.TurnedOn != 0):
		return mistakeWrongIndex
	case b.Job.KeepClosed():
		return mistakeWrongGroove
	}
	return mistakeWrongLine
}

// ofStarts says, of a thread with several starts, what a pass tells of them: that the tool
// runs in one that is cut, though it was set for a new one, or that it goes as deep as the
// lead would ask for.
func (s *step) ofStarts(p, last Pass) {
	if s.starts() < 2 {
		return
	}
	full, err := s.Job.FullDepth()
	if err != nil {
		return
	}
	if last.Depth > full.Times(0.5) && p.Set < last.Depth.Times(0.5) {
		s.act(mistakeNotIndexed)
	}
	if p.Set > full.Times(1.3) {
		s.once(mistakeDepthByLead, "full", s.text(full))
	}
}

// index turns the work on by one start against the lead screw: between centres the dog goes
// into the next slot of its plate, in a chuck a marked gear of the train is let in again a
// part of its teeth on.
func (s *step) index(Event) {
	switch {
	case !s.standing():
	case s.starts() < 2:
		s.say("one-start")
	case s.overWork() && !s.AtBegin():
		s.say("not-at-start")
	case s.Job.Hold != Centres && !s.toothed():
		s.say("no-index")
	default:
		s.advance(60)
		s.TurnedOn += s.Job.Thread.Pitch
		if s.Job.Hold == Centres {
			s.say("indexed-slot")
		} else {
			s.say("indexed-gear")
		}
	}
}

// toothed reports whether a gear of the train can be marked in as many parts as there are
// starts: its first driver, on the spindle's stud.
func (b Bench) toothed() bool { return b.FirstGear > 0 && b.FirstGear%b.starts() == 0 }

// GrooveOf returns what has been cut of one start, in the section at a place along the
// thread. Wrong leads and hands are left out: no section shows them.
func (b Bench) GrooveOf(start int, at calc.Length) (calc.Groove, error) {
	var passes []calc.ToolPass
	for _, p := range b.all() {
		if p.Start == start && p.over(at) && b.rightThread(p) && p.Depth > 0 {
			passes = append(passes, calc.ToolPass{Across: p.Across, Radial: b.Job.deepAt(p, at)})
		}
	}
	return calc.NewGroove(b.Job.Tool(), b.Job.Thread.Pitch, passes)
}

// deepAt is how deep a pass went at a place: it was set at the place of touch-off. Set back, it
// runs above its groove.
func (j Job) deepAt(p Pass, at calc.Length) calc.Length {
	return max(min(p.Depth, p.Set)+(at-j.touchAt()).Times(p.Lean), 0)
}

// Groove is that of the start that was cut last.
func (b Bench) Groove(at calc.Length) (calc.Groove, error) { return b.GrooveOf(b.start(), at) }

// Seen is the groove that can be seen at a place, and how far its lines are apart: of the thread
// that was cut last, even where that is of another lead or hand than the job's.
func (b Bench) Seen(at calc.Length) (groove calc.Groove, apart calc.Length, err error) {
	all := b.all()
	if len(all) == 0 || b.rightThread(all[len(all)-1]) {
		groove, err = b.Groove(at)
		return groove, b.Job.Thread.Pitch, err
	}
	last := all[len(all)-1]
	var passes []calc.ToolPass
	for _, p := range all {
		if p.Lead == last.Lead && p.Hand == last.Hand && p.over(at) && p.Depth > 0 {
			passes = append(passes, calc.ToolPass{Across: p.Across, Radial: b.Job.deepAt(p, at)})
		}
	}
	groove, err = calc.NewGroove(b.Job.Tool(), last.Lead, passes)
	return groove, last.Lead, err
}

// nearStart and nearEnd are where a thread is measured.
func (j Job) nearStart() calc.Length { return min(j.Thread.Pitch, j.Length.Times(firstThread)) }
func (j Job) nearEnd() calc.Length   { return j.Length - j.Thread.Pitch.Times(lastThread) }

// pitchOf is the pitch diameter of one start at a place.
func (b Bench) pitchOf(start int, at calc.Length) (calc.Length, bool) {
	g, err := b.GrooveOf(start, at)
	if err != nil {
		return 0, false
	}
	return g.PitchDiameter(b.Job.Side, b.Job.Start)
}

// pitchAt is the pitch diameter at a place, by the start that is the least cut: a mate goes
// no further than that lets it. ok is false while one is not there.
func (b Bench) pitchAt(at calc.Length) (worst calc.Length, ok bool) {
	for start := range b.starts() {
		e, ok := b.pitchOf(start, at)
		if !ok {
			return 0, false
		}
		if start == 0 || (e-worst).Times(b.in()) > 0 {
			worst = e
		}
	}
	return worst, true
}

// pastSize reports whether too much is off at one end of a start.
func (b Bench) pastSize() bool {
	for start := range b.starts() {
		for _, at := range []calc.Length{b.Job.nearStart(), b.Job.nearEnd()} {
			if e, ok := b.pitchOf(start, at); ok && b.metal(e) < 0 {
				return true
			}
		}
	}
	return false
}

// begun is how many starts have a groove of their own.
func (b Bench) begun() int {
	var starts []int
	for _, p := range b.all() {
		if b.rightThread(p) && p.Depth > 0 && !slices.Contains(starts, p.Start) {
			starts = append(starts, p.Start)
		}
	}
	return len(starts)
}

// ridges is the way from line to line that a rule shows: the lead of the last pass, shared
// by the starts that are cut.
func (b Bench) ridges() calc.Length {
	last := b.Passes[len(b.Passes)-1]
	if b.rightThread(last) {
		return last.Lead.Times(1 / float64(max(b.begun(), 1)))
	}
	return last.Lead
}
