package blank

import (
	"fmt"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "blank-diameter", Stage: problem.Blank, Kind: answer.Limits,
	Inputs: []problem.Input{
		problem.ThreadInputs[2],
		{Name: "largest", Symbol: "d2", Type: problem.InputLength, Low: 0.04, High: 12, Extra: true},
		{Name: "least", Symbol: "d1", Type: problem.InputLength, Low: 0.04, High: 12, Extra: true},
		{Name: "allowance", Symbol: "e", Type: problem.InputLength, Low: 0, High: 0.05, Extra: true},
		{Name: "tolerance", Symbol: "t", Type: problem.InputLength, Low: 0.0005, High: 0.1, Extra: true},
	},
	Tolerance: answer.Tolerance{Inch: 0.0005, MM: 0.0125},
	Sources:   []string{"b1-1", "iso-965", "handbook"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		d.TellAs(&v, shared.FirstThread(d), calc.Outside, "callout")
		l, err := calc.LimitsOf(v.Thread("thread"))
		if err != nil {
			return problem.Values{} // the tables have no such thread
		}
		if d.Level == problem.DeriveFirst {
			v.SetLength("allowance", v.Thread("thread").Nominal-l.Major.Max)
			v.SetLength("tolerance", l.Major.Max-l.Major.Min)
		} else {
			v.SetLength("largest", l.Major.Max)
			v.SetLength("least", l.Major.Min)
		}
		unit := d.System.Length() // the row of the table goes on with what does not matter here
		v.Say("pd-largest", unit.Text(l.Pitch.Max.Inches()))
		v.Say("pd-least", unit.Text(l.Pitch.Min.Inches()))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		if err := shared.OnlySide(v, calc.Outside); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		largest, least, err := majorLimits(w, v)
		if err != nil {
			return problem.Working{}, err
		}
		w.Length("d", calc.MiddleOfLimits.Text)(calc.MiddleOfLimits.Of(largest, least), nil)
		return w.Limits(least, largest)
	},
	Errors: []problem.CommonError{
		{Name: "nominal", Work: func(v problem.Values) answer.Response { return blankOver(v, 0) }},
		{Name: "over", Work: func(v problem.Values) answer.Response { return blankOver(v, 1) }},
		{Name: "pitch-dia", Work: shared.OtherDiameter(calc.PitchDiameter.Of)},
		{Name: "minor", Work: shared.OtherDiameter(calc.MinorDiameter.Of)},
	},
})

// majorLimits adds the steps to the limits of the blank: given, by allowance and
// tolerance, or else from the tables.
func majorLimits(w *problem.Working, v problem.Values) (largest, least calc.Length, err error) {
	byLimits, byAllowance := v.Has("largest") || v.Has("least"), v.Has("allowance") || v.Has("tolerance")
	switch {
	case byLimits && byAllowance, v.Has("largest") != v.Has("least"), v.Has("allowance") != v.Has("tolerance"):
		return 0, 0, fmt.Errorf("the limits are told in part or twice: give --largest and --least, or --allowance and --tolerance, or none of them")
	case byLimits:
		largest, least = v.Length("largest"), v.Length("least")
	case byAllowance:
		nominal := shared.NominalStep(w, v)
		largest = w.Length("d2", "D - e")(nominal-v.Length("allowance"), nil)
		least = w.Length("d1", "d2 - t")(largest-v.Length("tolerance"), nil)
	default:
		l, err := calc.LimitsOf(v.Thread("thread"))
		if err != nil {
			return 0, 0, err
		}
		largest = w.Length("d2", "")(l.Major.Max, nil)
		least = w.Length("d1", "")(l.Major.Min, nil)
	}
	if least >= largest {
		return 0, 0, &calc.InputError{What: "least diameter", Got: calc.LengthText(least), Want: "one under the largest, " + calc.LengthText(largest)}
	}
	return largest, least, nil
}

// blankOver is the error of turning to nominal, or to some allowances more.
func blankOver(v problem.Values, allowances float64) answer.Response {
	largest, _, err := majorLimits(v.Working(), v) // a working that no one sees
	nominal := v.Thread("thread").Nominal
	if err != nil || nominal < largest || shared.Same(nominal.Inches(), largest.Inches()) {
		return answer.NoResponse // without an allowance nominal is the largest blank, and right
	}
	return answer.LengthResponse(nominal + (nominal - largest).Times(allowances))
}
