package shape

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "basic-pitch-diameter", Stage: problem.Shape, Kind: answer.Quantity,
	Inputs:    shared.Inputs(problem.ThreadInputs, shared.NominalInput),
	Tolerance: answer.Tolerance{Inch: 0.0005, MM: 0.0125},
	Sources:   []string{"b1-1", "handbook"},
	Draw: func(d *problem.Draw) problem.Values {
		return shared.DrawSized(d, problem.Pick(d, calc.Outside, calc.Inside)) // it is the same for both
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		nominal, pitch := shared.NominalStep(w, v), w.Pitch()
		problem.Step2(w, "E", calc.PitchDiameter, nominal, pitch)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "twice", Work: shared.OtherDiameter(takenOff(2))},
		{Name: "half", Work: shared.OtherDiameter(takenOff(0.5))},
		{Name: "use-h", Work: shared.LessPitches(calc.UnifiedExternal.Factor())},
		{Name: "no-866", Work: shared.LessPitches(calc.AmericanNational.Factor() / calc.HeightOfSharpV)},
		{Name: "dminor", Work: shared.OtherDiameter(calc.MinorDiameter.Of)},
	},
})

// takenOff is the diameter when what belongs off the nominal one is taken off so many
// times.
func takenOff(times float64) func(nominal, pitch calc.Length) (calc.Length, error) {
	return func(nominal, pitch calc.Length) (calc.Length, error) {
		e, err := calc.PitchDiameter.Of(nominal, pitch)
		return nominal - (nominal - e).Times(times), err
	}
}
