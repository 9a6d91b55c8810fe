package blank

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "relief-groove-diameter", Stage: problem.Blank, Kind: answer.Quantity,
	Inputs:    shared.Inputs(problem.ThreadInputs, shared.NominalInput, shared.LengthInput("below", "u", 0, 0.1)),
	Tolerance: answer.Tolerance{Inch: 0.0015, MM: 0.035},
	Scrap:     answer.ScrapLow,
	Sources:   []string{"navy", "common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		v := shared.DrawSized(d, calc.Outside)
		v.SetLength("below", d.Length(4, 10, 10, 25))
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		root := shared.MinorSteps(w, v, "d1")
		w.Length("d2", "d1 - 2 x u")(root-v.Length("below").Times(2), nil)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "x-once", Work: grooveLess(calc.UnifiedExternal, 2, 1)},
		{Name: "h-once", Work: grooveLess(calc.UnifiedExternal, 1, 2)},
		{Name: "add", Work: grooveLess(calc.UnifiedExternal, 2, -2)},
		{Name: "american-national", Convention: true, Work: grooveLess(calc.AmericanNational, 2, 2)},
	},
})

// grooveLess is the error of taking other multiples of a form's depth and of the
// clearance off the nominal diameter.
func grooveLess(f calc.Form, depths, clearances float64) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response {
		nominal, _ := shared.NominalTold(v) // the key has been worked out: no error here
		h, err := calc.RadialDepthOfForm(v.Pitch(), f)
		return shared.Worked(nominal-h.Times(depths)-v.Length("below").Times(clearances), err)
	}
}
