package bench

import (
	"math"

	"scratchpass/calc"
)

// Stiffness is how hard the weakest link is to bend: bar or work, and the lathe.
func (b Bench) Stiffness() (float64, error) {
	k, err := b.Job.weakest()
	if err != nil {
		return 0, err
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

// Lag is the share of a cut that stays on, for the whole job: the cut at full depth
// along one flank against the stiffness.
func (b Bench) Lag() float64 {
	stiff, err := b.Stiffness()
	if err != nil {
		return mostLag
	}
	depth, err := b.Job.FullDepth()
	if err != nil {
		return 0
	}
	width, err := b.Job.chipWidth(depth, calc.OneFlank)
	if err != nil {
		return 0
	}
	lag, err := calc.LagRatio(b.Job.Material.SpecificForce()*width.Millimetres(), stiff)
	if err != nil {
		return 0
	}
	return min(lag, mostLag)
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
	if b.dry() {
		z *= dryShare
	}
	at, err := b.Job.usualSpeed()
	if err == nil && b.RPM > 0 {
		z *= max(calmLeast, min(calmMost, at.RPM()/b.RPM))
	}
	width, err := calc.WidestQuietChip(b.Job.Material, stiff, min(z, 1))
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
	if loose := s.looseIn(); loose > looseMatters && s.Snug {
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
	p.OnCone, p.Lean = s.Squared && s.OnCone, s.lean()
	start, shift := s.runsIn()
	p.Start, p.Shift, p.Across = start, shift, s.sideways()-s.alongside()+shift
	last := s.lastIn(start, shift)
	p.Before, p.Spring = last.Depth, last.N > 0 && p.Set <= last.Set+least
	p.Both = max(s.Angle, -s.Angle) < calc.Degrees(s.Job.flankAngle().Degrees()*oneFlankShare) || p.Straight-last.Straight > (p.Compound-last.Compound).Times(s.Angle.Cos())+straightIn
	if !s.measure(&p) {
		return
	}
	s.cutting = &p
	if max(shift, -shift) > s.Job.Thread.Pitch.Times(besideGroove) {
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
	if p.Width, err = s.Job.chipWidth(depth, feed); err != nil {
		return false
	}
	p.Thickness = depth - p.Before
	p.Quiet = s.quiet()
	if p.Thickness < noForce {
		return true
	}
	if p.Force, err = calc.CuttingForce(s.Job.Material, p.Width, p.Thickness); err != nil {
		return false
	}
	p.Counted, err = calc.CountedWidth(p.Width, p.Thickness, fullChip)
	p.Chatter = p.Counted > p.Quiet
	return err == nil
}

// judge says what a pass sounds like, and breaks the tool where it must.
func (s *step) judge(p Pass) {
	switch {
	case p.Force > s.Job.breakingForce():
		s.cutting = nil // nothing more is cut
		s.smash(mistakeTooHeavy, "cut", s.text(p.Set-p.Before))
		s.sayFigures(mistakeTooHeavy.Figures())
		return
	case p.Force > s.Job.heavyForce():
		s.once(mistakeHeavy, "cut", s.text(p.Set-p.Before))
		s.sayFigures(mistakeHeavy.Figures())
	}
	switch {
	case p.Chatter:
		s.act(mistakeChatter, "width", s.text(p.Counted), "quiet", s.text(p.Quiet))
		s.whyChatter()
		s.sayFigures(mistakeChatter.Figures())
	case !p.Cuts():
		s.whyNothing(p)
	case p.Spring:
		s.say("springs-off")
		s.sayFigures("figures-give")
	default:
		s.say("cuts")
	}
}

// whyChatter says what helps, of what was not done.
func (s *step) whyChatter() {
	if !s.Snug {
		s.say("chatter-gibs")
	}
	if s.dry() {
		s.say("chatter-dry")
	}
	if usual, err := s.Job.usualSpeed(); err == nil && s.RPM > usual.RPM()*tooFast {
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
	if s.Squared && s.OnCone {
		s.once(mistakeSquaredToCone)
	}
	if lean := s.lean(); max(lean, -lean) > shareOff {
		s.once(mistakeTaperNotSet, "taper", ratioText(s.Taper))
	}
	if !s.Height {
		s.once(mistakeOffCentre)
	}
	if !s.Snug {
		s.once(mistakeGibsLoose)
	}
	if s.dry() {
		s.once(mistakeNoOil)
	}
}
