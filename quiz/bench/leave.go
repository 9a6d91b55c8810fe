package bench

import "scratchpass/calc"

// AtLeave reports whether the cut has come as deep as a card would go on the compound: what is
// left comes straight in, with a try between.
func (b Bench) AtLeave() bool {
	full, err := b.Job.FullDepth()
	if err != nil {
		return false
	}
	tolerance := (b.Job.Limits.Pitch.Max - b.Job.Limits.Pitch.Min).Times(0.5)
	leave := max(full.Times(leaveShare), full-tolerance.Times(leaveTolerance)-leaveRoom)
	deepest := calc.Length(0)
	for _, p := range b.Passes {
		deepest = max(deepest, p.Set)
	}
	return deepest > leave-b.Job.Lathe.Compound.Division // a whole line of its dial
}

// SwungWrong reports whether the compound's handle was swung to the other side than the job's.
func (b Bench) SwungWrong() bool { return b.Set.Angle && b.Angle < 0 && !b.Parallel() }

// CountedOther reports whether a rule was laid on a thread that these gears cut and that is
// another than the job's.
func (b Bench) CountedOther() bool {
	n := len(b.Passes)
	return n > 0 && b.counted() && !b.rightLead(b.Passes[n-1].Lead) && !b.rightLead(b.Lead)
}

// Touches reports whether the tip stands just at the surface, over the work.
func (b Bench) Touches() bool {
	return b.overWork() && calc.Within(b.Depth().Inches(), 0, 0.0002)
}
