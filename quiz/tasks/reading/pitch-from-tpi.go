package reading

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "pitch-from-tpi", Stage: problem.Reading, Kind: answer.Quantity,
	Inputs:    []problem.Input{problem.ThreadInputs[0], problem.ThreadInputs[2]},
	Tolerance: answer.Tolerance{Inch: 0.0005},
	Systems:   []machine.System{machine.Imperial},
	Sources:   []string{"b1-1"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		way := "tpi"
		if d.Level != problem.NumbersGiven {
			way = "callout"
		}
		d.TellAs(&v, d.Thread(calc.Inch/32, calc.Inch/4), calc.Outside, way)
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		w.Pitch()
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "tpi-as-pitch", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(shared.PerInch(v)) }},
		{Name: "decimal", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(shared.PerInch(v) / 100) }},
		{Name: "half", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(v.Pitch().Times(0.5)) }},
		{Name: "rounded-pitch", Work: shared.RoundedPitch(0.0005, func(_ problem.Values, pitch calc.Length) (calc.Length, error) { return pitch, nil })},
	},
})
