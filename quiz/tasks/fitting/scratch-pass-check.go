package fitting

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

// linesUnit counts scratch lines.
var linesUnit = machine.Unit{Name: "lines", One: "line", Factor: 1, Places: 1, Count: true}

var _ = shared.Register(problem.Task{
	Name: "scratch-pass-check", Stage: problem.Fitting, Kind: answer.Quantity,
	Inputs:    shared.Inputs(problem.ThreadInputs, shared.LengthInput("over", "L", 0.05, 6)),
	Tolerance: answer.Tolerance{Other: 0.1},
	Sources:   []string{"arithmetic"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		t := shared.FirstThread(d)
		way, over := "tpi", calc.Inches(problem.Pick(d, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875, 1, 1))
		if d.System == machine.Metric {
			way, over = "pitch", calc.Millimetres(problem.Pick(d, 10.0, 12, 14, 15, 18, 20, 21, 24, 25, 27, 28, 30))
		}
		if d.Level != problem.NumbersGiven {
			way = "callout"
		}
		if spaces := over.Over(t.Pitch); spaces < 3 || spaces > 20 {
			return problem.Values{}
		}
		d.TellAs(&v, t, calc.Outside, way)
		v.SetLength("over", over)
		if !d.JobWith(&v, calc.Outside, over) {
			return problem.Values{}
		}
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		between := v.Length("over").Over(v.Pitch())
		if !calc.Within(between, calc.Round(between, 0), 0.02) {
			return problem.Working{}, &calc.InputError{What: "length", Got: calc.LengthText(v.Length("over")), Want: "one that is a whole number of pitches, so that a line lies at both ends"}
		}
		lines := calc.ScratchLinesByPitch
		switch {
		case v.System == machine.Imperial && v.Has("tpi"):
			lines = calc.ScratchLines
		case v.System == machine.Imperial && v.Has("thread") && !v.Thread("thread").Metric:
			w.Number("n", "", machine.TPIUnit)(v.Thread("thread").TPI.Number(), nil)
			lines = calc.ScratchLines
		default:
			w.Pitch()
		}
		problem.StepIn2(w, "K", linesUnit, lines, v.Length("over"), v.Pitch())
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "fence-post", Work: func(v problem.Values) answer.Response {
			return answer.NumberResponse(v.Length("over").Over(v.Pitch()))
		}},
		{Name: "tpi", Work: func(v problem.Values) answer.Response {
			if shared.Same(v.X("over"), 1) {
				return answer.NoResponse // over an inch that is the error of the ends
			}
			return answer.NumberResponse(shared.PerInch(v))
		}},
		{Name: "pitch", Work: func(v problem.Values) answer.Response {
			return answer.NumberResponse(v.Pitch().Inches() * v.System.Length().Factor)
		}},
	},
})
