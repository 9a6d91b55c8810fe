package bench

import (
	"slices"

	"scratchpass/calc"
)

// The ways from start to start, as the lesson on several starts names them.
const (
	ByDial     = "dial"     // on other marks of the thread dial
	ByCompound = "compound" // the compound along the bed, a pitch on
	ByTurning  = "turn"     // the work turned on: the next slot, or a marked gear
)

// waysToIndex are the ways from start to start that a job allows, the usual first; one
// without a name for a thread with one start.
func (p *Plan) waysToIndex() []string {
	if p.starts() < 2 {
		return []string{""}
	}
	var ways []string
	if p.StartMarks = p.Job.startMarks(); len(p.StartMarks) > 0 {
		ways = append(ways, ByDial)
	}
	if p.Job.Side == calc.Outside || p.Job.Lathe.Compound.Turn > 0 {
		ways = append(ways, ByCompound)
	}
	if p.Job.Hold == Centres || p.toothedTrain() >= 0 {
		ways = append(ways, ByTurning)
	}
	return ways
}

func (p *Plan) starts() int { return max(p.Job.Thread.Starts, 1) }

// toothedTrain is the first of the trains whose first driver can be marked in as many parts
// as there are starts; -1 where none can.
func (p *Plan) toothedTrain() int {
	return slices.IndexFunc(p.Trains, func(t calc.Train) bool { return t.Drivers[0]%p.starts() == 0 })
}

// startMarks are the marks of the thread dial for each start, when the first is on mark 1;
// none where the dial does not meet every start, or no mark brings one back.
func (j Job) startMarks() [][]int {
	dial, ok := j.Lathe.ThreadDial()
	if !ok || j.KeepClosed() {
		return nil
	}
	marks := make([][]int, max(j.Thread.Starts, 1))
	for k := range dial.Marks {
		pitches, err := dial.ThreadsBetween(j.Thread.Pitch, k)
		near := calc.Round(pitches, 0)
		if err != nil || !calc.Within(pitches, near, 1e-6) {
			continue
		}
		start := int(near) % len(marks)
		marks[start] = append(marks[start], k+1)
	}
	if slices.ContainsFunc(marks, func(of []int) bool { return len(of) == 0 }) {
		return nil
	}
	return marks
}

// cutByAWay finds the cuts with the first of the ways from start to start that bears them.
func (p *Plan) cutByAWay(angle calc.Angle) {
	before := *p
	var first *Plan
	for _, way := range before.waysToIndex() {
		try := before
		try.StartMarks, try.IndexBy = before.StartMarks, way
		if way == ByTurning && try.Job.Hold != Centres {
			i := try.toothedTrain()
			try.Trains = append([]calc.Train{try.Trains[i]}, slices.Delete(slices.Clone(try.Trains), i, i+1)...)
		}
		if way == ByCompound {
			try.Scale, _ = calc.CompoundScaleReading(90, try.Job.Lathe.CompoundZero)
			try.Travel = try.Depth.Times(try.Job.Lathe.CrossReads.PerRadial())
		}
		try.cut(angle)
		if first == nil {
			first = &try
		}
		if try.Passes() {
			first = &try
			break
		}
	}
	*p = *first
}

// StraightIn reports whether the cross slide carries the depth: the compound stands along
// the bed.
func (p Plan) StraightIn() bool { return p.IndexBy == ByCompound }

// line is one line of the dial that carries the depth.
func (p *Plan) line() calc.Length {
	if p.StraightIn() {
		return p.Job.Lathe.Cross.Division
	}
	return p.Job.Lathe.Compound.Division
}

// deep is how deep straight in a total on the dial that carries the depth goes; fed is what
// that dial goes for a depth.
func (p *Plan) deep(total calc.Length, angle calc.Angle) calc.Length {
	if p.StraightIn() {
		return total.Times(1 / p.Job.Lathe.CrossReads.PerRadial())
	}
	return total.Times(angle.Cos())
}

func (p *Plan) fed(depth calc.Length, angle calc.Angle) calc.Length {
	if p.StraightIn() {
		return depth.Times(p.Job.Lathe.CrossReads.PerRadial())
	}
	return depth.Times(1 / angle.Cos())
}

// scaled is a cut on the compound as one of the dial that carries the depth.
func (p *Plan) scaled(cut calc.Length) calc.Length {
	if p.StraightIn() {
		return cut.Times(bothShare * p.Job.Lathe.CrossReads.PerRadial())
	}
	return cut
}

// flanks is on how many flanks the cuts of the card cut.
func (p *Plan) flanks() calc.Infeed {
	if p.StraightIn() {
		return calc.BothFlanks
	}
	return calc.OneFlank
}
