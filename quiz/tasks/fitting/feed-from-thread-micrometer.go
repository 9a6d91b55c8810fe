package fitting

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "feed-from-thread-micrometer", Stage: problem.Fitting, Kind: answer.Quantity,
	Inputs: shared.Inputs([]problem.Input{
		shared.LengthInput("reading", "R", 0.05, 12),
		{Name: "reads-high", Symbol: "k", Type: problem.InputLength, Low: 0, High: 0.02, Extra: true},
		shared.LengthInput("largest", "d2", 0.05, 12),
		shared.LengthInput("least", "d1", 0.05, 12),
		{Name: "slide", Symbol: "slide", Type: problem.InputWord, Words: []string{"cross", "compound"}},
		{Name: "angle", Symbol: "a", Type: problem.InputAngle, Low: 0, High: 45, Extra: true}, // of the compound
	}),
	Scrap:     answer.ScrapHigh,
	Tolerance: answer.Tolerance{Inch: 0.0004, MM: 0.01},
	Sources:   []string{"geometry", "arithmetic", "common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		t := shared.FirstThread(d)
		t.Class = "2A"
		if t.Metric {
			t.Class = "6g"
		}
		l, err := calc.LimitsOf(t)
		if err != nil {
			return problem.Values{} // the tables have no such thread
		}
		v.SetLength("largest", l.Pitch.Max)
		v.SetLength("least", l.Pitch.Min)
		// So far over the middle that half of it is more than the smallest errors.
		over, high := calc.Inches(d.Steps(0.012, 0.03, 0.0005)), calc.Inches(d.Steps(0.002, 0.004, 0.0002))
		if d.System == machine.Metric {
			over, high = calc.Millimetres(d.Steps(0.3, 0.76, 0.01)), calc.Millimetres(d.Steps(0.05, 0.1, 0.01))
		}
		slide := "cross"
		if d.Level != problem.NumbersGiven {
			v.SetLength("reads-high", high)
			over += high
			slide = problem.Pick(d, "cross", "compound")
		}
		if slide == "compound" {
			v.Set("angle", problem.Pick(d, 29, 29.5, 30))
		}
		v.SetWord("slide", slide)
		v.Phrase("feed-left", "feed-left-"+slide)
		v.SetLength("reading", shared.AsPrinted(d, calc.MiddleOfLimits.Of(l.Pitch.Max, l.Pitch.Min)+over))
		v.Say("thread-told", t.String())
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		if v.Length("least") >= v.Length("largest") {
			return problem.Working{}, &calc.InputError{What: "least", Got: calc.LengthText(v.Length("least")), Want: "one under the largest, " + calc.LengthText(v.Length("largest"))}
		}
		if (v.Word("slide") == "compound") != v.Has("angle") {
			return problem.Working{}, &calc.InputError{What: "angle", Got: "given or missing", Want: "the compound's angle where the compound is fed, and none for the cross slide"}
		}
		w := v.Working()
		e := v.Length("reading")
		if v.Has("reads-high") {
			e = w.Length("E", "R - k")(truePitchDiameter(v), nil)
		}
		aim := w.Length("m", calc.MiddleOfLimits.Text)(calc.MiddleOfLimits.Of(v.Length("largest"), v.Length("least")), nil)
		if e <= aim {
			return problem.Working{}, &calc.InputError{What: "reading", Got: calc.LengthText(e), Want: "one above the middle of the limits; else there is nothing to take off"}
		}
		over := "E - m"
		if !v.Has("reads-high") {
			over = "R - m"
		}
		w.Length("o", over)(e-aim, nil)
		h := w.Length("h", "o / 2")((e - aim).Times(0.5), nil)
		if v.Has("angle") {
			problem.Step2(w, "c", calc.TravelForDepth, h, v.Angle("angle"))
		}
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "no-half", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(fedFor(v, overMiddle(v).Times(2)))
		}},
		{Name: "to-the-largest", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(fedFor(v, truePitchDiameter(v)-v.Length("largest")))
		}},
		{Name: "to-the-least", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(fedFor(v, truePitchDiameter(v)-v.Length("least")))
		}},
		{Name: "zero-left-in", Work: func(v problem.Values) answer.Response {
			if !v.Has("reads-high") {
				return answer.NoResponse
			}
			return answer.LengthResponse(fedFor(v, overMiddle(v)+v.Length("reads-high")))
		}},
		{Name: "zero-added", Work: func(v problem.Values) answer.Response {
			if !v.Has("reads-high") {
				return answer.NoResponse
			}
			return answer.LengthResponse(fedFor(v, overMiddle(v)+v.Length("reads-high").Times(2)))
		}},
		{Name: "no-cos", Work: func(v problem.Values) answer.Response {
			if !v.Has("angle") {
				return answer.NoResponse
			}
			return answer.LengthResponse(overMiddle(v).Times(0.5))
		}},
		{Name: "times-cos", Work: func(v problem.Values) answer.Response {
			if !v.Has("angle") {
				return answer.NoResponse
			}
			return answer.LengthResponse(overMiddle(v).Times(0.5 * v.Angle("angle").Cos()))
		}},
	},
})

// truePitchDiameter is the reading without what the micrometer reads too high.
func truePitchDiameter(v problem.Values) calc.Length {
	if v.Has("reads-high") {
		return v.Length("reading") - v.Length("reads-high")
	}
	return v.Length("reading")
}

// overMiddle is how far the thread is over the middle of its limits.
func overMiddle(v problem.Values) calc.Length {
	return truePitchDiameter(v) - calc.MiddleOfLimits.Of(v.Length("largest"), v.Length("least"))
}

// fedFor is the feed of the slide in use for so much on the diameter.
func fedFor(v problem.Values, onDiameter calc.Length) calc.Length {
	h := onDiameter.Times(0.5)
	if !v.Has("angle") {
		return h
	}
	c, err := calc.TravelForDepth.Of(h, v.Angle("angle"))
	if err != nil {
		return 0 // no feed at all is no error that anyone makes
	}
	return c
}
