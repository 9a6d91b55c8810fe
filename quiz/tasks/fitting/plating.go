package fitting

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

// platedClass is a usual class on that side.
func platedClass(d *problem.Draw, side calc.Side) string {
	switch {
	case d.System == machine.Metric && side == calc.Inside:
		return problem.Pick(d, "6H", "6G")
	case d.System == machine.Metric:
		return problem.Pick(d, "6g", "6h")
	case side == calc.Inside:
		return problem.Pick(d, "2B", "3B")
	}
	return problem.Pick(d, "2A", "3A")
}

// platingOf draws the thickness of a plating as electroplaters offer it.
func platingOf(d *problem.Draw) calc.Length {
	if d.System == machine.Metric {
		return calc.Millimetres(d.Steps(0.005, 0.02, 0.001))
	}
	return calc.Inches(d.Steps(0.0002, 0.0008, 0.0001))
}

// platedSide is the side of the thread, told by word or by the class of its callout.
func platedSide(v problem.Values) (calc.Side, error) {
	if !v.Has("thread") {
		if v.Word("side") == calc.Inside.String() {
			return calc.Inside, nil
		}
		return calc.Outside, nil
	}
	side, ok := v.Thread("thread").Side()
	if !ok {
		return side, &calc.InputError{What: "thread", Got: calc.Quoted(v.Thread("thread").String()), Want: "one with a class, which tells external from internal"}
	}
	return side, nil
}

// platedBy is the error of allowing another number of thicknesses; below 0 the wrong way.
func platedBy(times float64) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response {
		side, err := platedSide(v)
		sign := -1.0
		if side == calc.Inside {
			sign = 1
		}
		return shared.Worked(v.Length("after")+v.Length("plating").Times(sign*times), err)
	}
}
