package shared

import (
	"scratchpass/calc"
	"scratchpass/quiz/problem"
)

// CompoundAngle are the two ways of telling how the compound stands: its angle from
// the cross-slide line, or the reading of a scale that has its zero along the bed.
var CompoundAngle = []problem.Input{
	{Name: "angle", Symbol: "a", Type: problem.InputAngle, Low: 0, High: 45, Group: "angle"},
	{Name: "scale", Symbol: "s", Type: problem.InputAngle, Low: 45, High: 90, Group: "angle"},
}

// TellAngle draws one of the three published settings and tells it: plainly, or at
// level 3 as the scale of the learner's own compound shows it.
func TellAngle(d *problem.Draw, v *problem.Values) {
	a := problem.Pick(d, 29, 29.5, 30)
	if d.Level == problem.OnTheJob && d.Lathe.CompoundZero == calc.ZeroAlong {
		v.Set("scale", 90-a)
		return
	}
	v.Set("angle", a)
}

// AngleStep adds the step from a scale reading to the angle, where there is one.
func AngleStep(w *problem.Working, v problem.Values) calc.Angle {
	if v.Has("scale") {
		return problem.Step1(w, "a", calc.AngleOfScale, v.Angle("scale"))
	}
	return v.Angle("angle")
}

// AngleOf is the angle of AngleStep, for common errors.
func AngleOf(v problem.Values) calc.Angle {
	if v.Has("scale") {
		a, _ := calc.AngleOfScale.Of(v.Angle("scale")) // the input's range lies within the formula's
		return a
	}
	return v.Angle("angle")
}

// HabitAngle is the compound setting that a common error brings in out of habit.
const HabitAngle calc.Angle = 29.5
