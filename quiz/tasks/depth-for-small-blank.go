package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
	"scratchpass/quiz/machine"
)

var _ = register(quiz.Task{
	Name: "depth-for-small-blank", Stage: quiz.Shape,
	Inputs: inputs(quiz.ThreadInputs, nominalInput,
		quiz.Input{Name: "under", Symbol: "u", Is: quiz.ALength, Low: 0, High: 0.1, Group: "blank"},
		quiz.Input{Name: "blank", Symbol: "d", Is: quiz.ALength, Low: 0.04, High: 12, Group: "blank"}),
	Tol:     quiz.Tolerance{Inch: 0.0008, MM: 0.02},
	Scrap:   quiz.ScrapHigh,
	Sources: []string{"geometry", "navy"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		t := firstThread(d)
		under := smallBlank(d, t)
		if d.Level == quiz.NumbersGiven {
			d.Tell(&v, t, calc.Outside)
			v.SetLength("under", under)
		} else {
			tellSized(d, &v, t, calc.Outside)
			v.SetLength("blank", t.Nominal-under)
		}
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		if err := only(v, calc.Outside); err != nil {
			return quiz.Working{}, err
		}
		w := v.Working()
		under := v.Length("under")
		if v.Has("blank") {
			nominal := nominalStep(w, v)
			under = nominal - v.Length("blank")
			var err error
			if under < 0 || under > nominal.Times(0.2) {
				err = &calc.InputError{What: "blank", Got: calc.LengthText(v.Length("blank")), Want: "the measured size of a blank a little under " + calc.LengthText(nominal)}
			}
			w.Length("u", "D - d")(under, err)
		}
		h := w.Length("h", "0.613435 x P")(calc.RadialDepthOfForm(w.Pitch(), calc.UnifiedExternal))
		var err error
		if h <= under.Times(0.5) {
			err = &calc.InputError{What: "blank under nominal by", Got: calc.LengthText(under), Want: "less than twice the depth of the thread, " + calc.LengthText(h)}
		}
		w.Length("h1", "h - u / 2")(h-under.Times(0.5), err)
		return w.Quantity()
	},
	Slips: []quiz.Slip{
		{Name: "no-half", Work: func(v quiz.Values) quiz.Reply { return quiz.L(externalDepth(v) - underNominal(v)) }},
		{Name: "ignore", Work: func(v quiz.Values) quiz.Reply { return quiz.L(externalDepth(v)) }},
		{Name: "add", Work: func(v quiz.Values) quiz.Reply { return quiz.L(externalDepth(v) + underNominal(v).Times(0.5)) }},
	},
})

// smallBlank draws how far a blank is under nominal and still inside the limits of
// 2A or 6g.
func smallBlank(d *quiz.Draw, t calc.Designation) calc.Length {
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
func underNominal(v quiz.Values) calc.Length {
	if v.Has("under") {
		return v.Length("under")
	}
	nominal, _ := nominalTold(v) // the key has been worked out: no error here
	return nominal - v.Length("blank")
}
