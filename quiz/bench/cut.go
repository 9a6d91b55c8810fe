package bench

import (
	"math"

	"scratchpass/calc"
)

// Figures of the cut. They are rough on purpose: see the package's comment.
const (
	bedStiffness = 40000.0           // newtons a millimetre: headstock, carriage and slides together
	damping      = 0.055             // of a snug, oiled set-up at threading speed
	looseShare   = 0.4               // of the damping that loose gibs leave
	dryShare     = 0.7               // of the damping that is left without oil
	fullChip     = calc.Length(.005) // from here on a chip's width counts in full
	threadingFPM = 25.0              // feet per minute: a usual speed for the first threads in steel
	least        = calc.Length(1e-7) // less than that is no chip
	noForce      = calc.Length(1e-5) // a chip thinner than that pushes nothing
)

// Stiffness is how hard the weakest link is to bend: bar or work, and the lathe.
func (b Bench) Stiffness() (float64, error) {
	d := b.Job.Bar
	if b.Job.Side == calc.Outside {
		d = b.Job.Start
	}
	k, err := calc.BarStiffness(b.Job.StandsOut, d)
	if err != nil {
		return 0, err
	}
	if b.Job.Hold == Centres { // held at both ends it is many times as stiff: 16 in its middle
		k *= 16
	}
	return calc.InSeries(k, bedStiffness)
}

// flat is the tool's flat, or the flat that its nose is like.
func (j Job) flat() calc.Length {
	if j.Tip.Nose > 0 {
		f, _ := calc.FlatOfNose(j.Tip.Nose) // checked with the job
		return f
	}
	return j.Tip.Flat
}

// FullDepth is how deep the tool goes straight in for the middle of the pitch
// diameter's limits.
func (j Job) FullDepth() (calc.Length, error) {
	return calc.RadialDepth(j.Side, j.Start, j.Limits.Pitch.Middle(), j.Thread.Pitch, j.flat())
}

// Lag is the share of a cut that stays on, for the whole job: the cut at full depth
// along one flank against the stiffness.
func (b Bench) Lag() float64 {
	stiff, err := b.Stiffness()
	if err != nil {
		return 0.9
	}
	depth, err := b.Job.FullDepth()
	if err != nil {
		return 0
	}
	width, err := calc.ChipWidth(depth, b.Job.flat(), calc.OneFlank)
	if err != nil {
		return 0
	}
	lag, err := calc.LagRatio(calc.SpecificForce*width.Millimetres(), stiff)
	if err != nil {
		return 0
	}
	return min(lag, 0.9)
}

// quiet is the widest chip that does not chatter now.
func (b Bench) quiet() calc.Length {
	stiff, err := b.Stiffness()
	if err != nil {
		return 0
	}
	z := damping
	if !b.Snug {
		z *= looseShare
	}
	if !b.Oiled {
		z *= dryShare
	}
	at, err := calc.SpindleSpeedFor(calc.FeetPerMinute(threadingFPM), b.Job.Start)
	if err == nil && b.RPM > 0 {
		z *= max(0.2, min(1.6, at.RPM()/b.RPM))
	}
	width, err := calc.WidestQuietChip(stiff, min(z, 1))
	if err != nil {
		return 0
	}
	return width
}

// beginPass begins a pass where the tool enters the metal.
func (s *step) beginPass(from calc.Length) {
	s.readiness()
	if !s.Snug { // the cut pushes a loose slide back against its screw
		for _, slide := range []*calc.Slide{&s.Cross, &s.Compound} {
			slide.Table = slide.Screw
			if s.Job.Side == calc.Inside {
				slide.Table = slide.Screw + slide.Play
			}
		}
	}
	if loose := s.looseIn(); loose > 0.0003 && s.Snug {
		s.once(mistakeFromWrongSide, "loose", s.text(loose))
	}
	if s.Depth() <= least {
		return
	}
	if s.Moved {
		s.once(mistakeUnchucked)
	}
	if !s.hasFirst && s.rightLead(s.Lead) && s.Hand() == s.Job.Thread.Hand {
		s.first, s.hasFirst, s.FirstDip = s.runsAt(), true, s.markNow()
	}
	p := Pass{N: len(s.Passes) + 1, Mark: s.markNow(), Compound: s.compoundTravel(), Set: s.Depth(), From: from, To: from, Lead: s.Lead, RPM: s.RPM}
	p.Straight, p.Leaning, p.OffCentre = s.crossTravel(), !s.Squared, !s.Height
	p.Hand, p.Way, p.Turn = s.Hand(), s.dir(), s.Turn
	start, shift := s.runsIn()
	p.Start, p.Shift, p.Across = start, shift, s.sideways()-s.alongside()+shift
	last := s.lastIn(start, shift)
	p.Before, p.Spring = last.Depth, last.N > 0 && p.Set <= last.Set+least
	p.Both = max(s.Angle, -s.Angle) < 20 || p.Straight-last.Straight > (p.Compound-last.Compound).Times(s.Angle.Cos())+0.0002
	if !s.measure(&p) {
		return
	}
	s.cutting = &p
	if shift > s.Job.Thread.Pitch.Times(0.02) || shift < s.Job.Thread.Pitch.Times(-0.02) {
		s.once(s.besideName(), "beside", s.text(max(shift, -shift)), "mark", calc.Shortest(float64(p.Mark), 0))
	}
	s.ofStarts(p, last)
	s.judge(p)
}

// lastIn is the deepest pass in the groove of this start, shift, lead and hand.
func (s *step) lastIn(start int, shift calc.Length) Pass {
	var last Pass
	for _, p := range s.Passes {
		if !calc.Within(p.Shift.Inches(), shift.Inches(), sameLine.Inches()) || p.Start != start || p.Lead != s.Lead || p.Hand != s.Hand() || p.Depth < last.Depth {
			continue
		}
		last = p
	}
	return last
}

// looseIn is how far a slide stands further in than its screw holds it, because it came
// to its place from the wrong side.
func (s *step) looseIn() calc.Length {
	loose := s.Cross.Loose() + s.Compound.Loose()
	if s.Job.Side == calc.Inside {
		loose = s.Cross.Play + s.Compound.Play - loose
	}
	return loose
}

// measure works out what the pass cuts.
func (s *step) measure(p *Pass) bool {
	depth, err := calc.DepthAfterPass(p.Before, min(p.Set, 1), s.Lag())
	if err != nil {
		return false
	}
	p.Depth = depth
	feed := calc.OneFlank
	if p.Both {
		feed = calc.BothFlanks
	}
	if p.Width, err = calc.ChipWidth(depth, s.Job.flat(), feed); err != nil {
		return false
	}
	p.Thickness = depth - p.Before
	p.Quiet = s.quiet()
	if p.Thickness < noForce {
		return true
	}
	if p.Force, err = calc.CuttingForce(p.Width, p.Thickness); err != nil {
		return false
	}
	p.Counted, err = calc.CountedWidth(p.Width, p.Thickness, fullChip)
	p.Chatter = p.Counted > p.Quiet
	return err == nil
}

// judge says what a pass sounds like, and breaks the tool where it must.
func (s *step) judge(p Pass) {
	switch {
	case p.Force > breakingForce:
		s.cutting = nil // nothing more is cut
		s.smash(mistakeTooHeavy, "cut", s.text(p.Set-p.Before))
		return
	case p.Force > heavyForce:
		s.once(mistakeHeavy, "cut", s.text(p.Set-p.Before))
	}
	switch {
	case p.Chatter:
		s.act(mistakeChatter, "width", s.text(p.Counted), "quiet", s.text(p.Quiet))
		s.whyChatter()
	case !p.Cuts():
		s.whyNothing(p)
	case p.Spring:
		s.say("springs-off")
	default:
		s.say("cuts")
	}
}

// whyChatter says what helps, of what was not done.
func (s *step) whyChatter() {
	if !s.Snug {
		s.say("chatter-gibs")
	}
	if !s.Oiled {
		s.say("chatter-dry")
	}
	if usual, err := calc.SpindleSpeedFor(calc.FeetPerMinute(threadingFPM), s.Job.Start); err == nil && s.RPM > usual.RPM()*1.1 {
		s.say("chatter-fast", "speed", calc.Shortest(s.RPM, 1), "usual", calc.Shortest(math.Floor(usual.RPM()), 0))
	}
	if s.Job.slender() > supportFrom {
		s.say("chatter-slender")
	}
}

// endPass ends the pass under way.
func (s *step) endPass() {
	if s.cutting == nil {
		return
	}
	p := *s.cutting
	s.cutting = nil
	p.To = s.place()
	s.Passes = add(s.Passes, p)
	s.LastIn = p.Straight
	s.Dirty = true
	if e, ok := s.pitchOf(p.Start, s.Job.nearStart()); ok && s.metal(e) < 0 {
		s.once(mistakeCutPastSize, "pitch", s.text(e))
	}
	if by := s.shortBy(p); by > 0 && !s.ending {
		s.once(mistakeShort, "by", s.text(by))
	}
}

// readiness looks, before the first chip, at what should have been set.
func (s *step) readiness() {
	if !s.Squared {
		s.once(mistakeNotSquared)
	}
	if !s.Height {
		s.once(mistakeOffCentre)
	}
	if !s.Snug {
		s.once(mistakeGibsLoose)
	}
	if !s.Oiled {
		s.once(mistakeNoOil)
	}
}
