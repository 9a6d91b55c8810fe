package shape

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "depth-for-small-blank", Stage: problem.Shape, Kind: answer.Quantity,
	Inputs: shared.Inputs(problem.ThreadInputs, shared.NominalInput,
		problem.Input{Name: "under", Symbol: "u", Type: problem.InputLength, Low: 0, High: 0.1, Group: "blank"},
		problem.Input{Name: "blank", Symbol: "d", Type: problem.InputLength, Low: 0.04, High: 12, Group: "blank"}),
	Tolerance: answer.Tolerance{Inch: 0.0008, MM: 0.02},
	Scrap:     answer.ScrapHigh,
	Sources:   []string{"geometry", "navy"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		t := shared.FirstThread(d)
		under := smallBlank(d, t)
		if d.Level == problem.NumbersGiven {
			d.Tell(&v, t, calc.Outside)
			v.SetLength("under", under)
		} else {
			shared.TellSized(d, &v, t, calc.Outside)
			v.SetLength("blank", t.Nominal-under)
		}
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		if err := shared.OnlySide(v, calc.Outside); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		under := v.Length("under")
		if v.Has("blank") {
			nominal := shared.NominalStep(w, v)
			under = nominal - v.Length("blank")
			var err error
			if under < 0 || under > nominal.Times(0.2) {
				err = &calc.InputError{What: "blank", Got: calc.LengthText(v.Length("blank")), Want: "the measured size of a blank a little under " + calc.LengthText(nominal)}
			}
			w.Length("u", "D - d")(under, err)
		}
		h := problem.Step1(w, "h", calc.ExternalDepth, w.Pitch())
		var err error
		if h <= under.Times(0.5) {
			err = &calc.InputError{What: "blank under nominal by", Got: calc.LengthText(under), Want: "less than twice the depth of the thread, " + calc.LengthText(h)}
		}
		w.Length("h1", "h - u / 2")(h-under.Times(0.5), err)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "no-half", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(shared.ExternalDepth(v) - underNominal(v))
		}},
		{Name: "ignore", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(shared.ExternalDepth(v)) }},
		{Name: "add", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(shared.ExternalDepth(v) + underNominal(v).Times(0.5))
		}},
	},
})

// smallBlank draws how far a blank is under nominal and still inside the limits of
// 2A or 6g.
func smallBlank(d *problem.Draw, t calc.Designation) calc.Length {
	t.Class = "2A"
	if t.Metric {
		t.Class = "6g"
	}
	l, _ := calc.LimitsOf(t) // a standard thread
	most := t.Nominal - l.Major.Min
	if d.System == machine.Metric {
		mm := most.Millimetres()
		return calc.Millimetres(d.Steps(calc.Round(mm*0.4+0.005, 2), calc.Round(mm-0.005, 2), 0.01))
	}
	return calc.Inches(d.Steps(calc.Round(most.Inches()*0.4+0.0005, 3), calc.Round(most.Inches()-0.0005, 3), 0.001))
}

// underNominal is how far the blank is under nominal, whichever way it was told.
func underNominal(v problem.Values) calc.Length {
	if v.Has("under") {
		return v.Length("under")
	}
	nominal, _ := shared.NominalTold(v) // the key has been worked out: no error here
	return nominal - v.Length("blank")
}
