package shape

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "finest-pitch-for-nose", Stage: problem.Shape, Kind: answer.Quantity,
	Inputs:    []problem.Input{shared.LengthInput("nose-radius", "r", 0.001, 0.1), noseSide},
	Scrap:     answer.ScrapLow,
	Tolerance: answer.Tolerance{Inch: 0.0005, MM: 0.0125, Safe: answer.Above, Reach: 0.05},
	Sources:   []string{"geometry", "iso-68"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		side := problem.Pick(d, calc.Outside, calc.Inside)
		shareOfOutside := 1.0
		if side == calc.Inside {
			shareOfOutside = 0.5
		}
		if d.System == machine.Metric {
			v.SetLength("nose-radius", calc.Millimetres(d.Steps(0.15*shareOfOutside, 0.7*shareOfOutside, 0.01)))
		} else {
			v.SetLength("nose-radius", calc.Inches(d.Steps(0.007*shareOfOutside, 0.024*shareOfOutside, 0.0005)))
		}
		v.SetWord("side", side.String())
		d.Job(&v, side)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		problem.Step1(w, "P", finestPitch(noseSideOf(v)), v.Length("nose-radius"))
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "other-side", Work: func(v problem.Values) answer.Response {
			return shared.Worked(finestPitch(calc.Inside - noseSideOf(v)).Of(v.Length("nose-radius")))
		}},
		{Name: "as-flat", Work: noseTimes(4)},
		{Name: "no-866", Work: noseTimes(6)},
		{Name: "upside-down", Work: func(v problem.Values) answer.Response {
			r := v.Length("nose-radius")
			p, err := finestPitch(noseSideOf(v)).Of(r)
			return shared.Worked(r.Times(r.Over(p)), err)
		}},
	},
})

// finestPitch is the formula of the finest pitch for a nose on a side.
func finestPitch(side calc.Side) calc.Formula[func(nose calc.Length) (calc.Length, error)] {
	if side == calc.Inside {
		return calc.FinestPitchInside
	}
	return calc.FinestPitchOutside
}

// noseTimes is the error of so many radii for a pitch of an external thread, and twice as
// many for an internal one, where the nose must be half as large.
func noseTimes(radii float64) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response {
		if noseSideOf(v) == calc.Inside {
			return answer.LengthResponse(v.Length("nose-radius").Times(2 * radii))
		}
		return answer.LengthResponse(v.Length("nose-radius").Times(radii))
	}
}
