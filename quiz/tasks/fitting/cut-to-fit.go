package fitting

import (
	"math"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "cut-to-fit", Stage: problem.Fitting, Kind: answer.Quantity,
	Inputs: []problem.Input{
		shared.LengthInput("plug", "E1", 0.05, 6), shared.LengthInput("present", "E", 0.05, 6),
		{Name: "clearance", Symbol: "k", Type: problem.InputLength, Low: 0, High: 0.05, Group: "clearance"},
		{Name: "least-clearance", Symbol: "k1", Type: problem.InputLength, Low: 0, High: 0.05, Group: "clearance"},
		{Name: "most-clearance", Symbol: "k2", Type: problem.InputLength, Low: 0, High: 0.05, Extra: true}, // goes with the least
		{Name: "dial-reads", Symbol: "dial", Type: problem.InputWord, Words: []string{"diameter", "radius"}},
	},
	Scrap:     answer.ScrapHigh,
	Tolerance: answer.Tolerance{Inch: 0.0003, MM: 0.0075},
	Sources:   []string{"arithmetic", "dial-marking", "b1-1", "iso-965", "common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		t := shared.FirstThread(d)
		plug, err := middlePitchDiameter(d, v, t)
		if err != nil || t.Nominal < leastBored {
			return problem.Values{}
		}
		clearance := usualClearance(d, t)
		left := clearance.Times(2) + drawSteps(d, 0.001, 0.006, 0.0001, 0.02, 0.15, 0.01)
		if d.Level == problem.NumbersGiven {
			v.SetLength("clearance", clearance)
		} else {
			each := drawSteps(d, 0.0005, 0.0005, 0.0005, 0.01, 0.01, 0.01)
			v.SetLength("least-clearance", shared.AsPrinted(d, clearance-each))
			v.SetLength("most-clearance", shared.AsPrinted(d, clearance+each))
		}
		v.SetLength("plug", plug)
		v.SetLength("present", shared.AsPrinted(d, plug+clearance-left))
		v.SetWord("dial-reads", shared.DialReads(d))
		d.Job(&v, calc.Inside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		plug, present, clearance := v.Length("plug"), v.Length("present"), clearanceOf(v)
		if v.Has("least-clearance") {
			if !v.Has("most-clearance") {
				return problem.Working{}, &calc.InputError{What: "most clearance", Got: "not given", Want: "the most clearance, to go with the least"}
			}
			w.Length("k", "(k1 + k2) / 2")(clearance, nil)
		}
		if v.Word("dial-reads") == "diameter" {
			problem.Step3(w, "m", calc.FitInside, plug, present, clearance)
			return w.Quantity()
		}
		problem.Step3(w, "g", calc.FitInside, plug, present, clearance)
		problem.Step3(w, "m", calc.FitInsideOnTravel, plug, present, clearance)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "radius", Work: func(v problem.Values) answer.Response {
			if v.Word("dial-reads") == "radius" {
				return answer.NoResponse
			}
			return answer.LengthResponse(growth(v, 1).Times(0.5))
		}},
		{Name: "diameter-habit", Work: func(v problem.Values) answer.Response {
			if v.Word("dial-reads") == "diameter" {
				return answer.NoResponse
			}
			return answer.LengthResponse(growth(v, 1))
		}},
		{Name: "no-clearance", Work: func(v problem.Values) answer.Response { return onDial(v, growth(v, 0)) }},
		{Name: "minus", Work: func(v problem.Values) answer.Response { return onDial(v, growth(v, -1)) }},
	},
})

// leastBored is the smallest thread for a plug that a first bore thread is cut for: no
// boring bar with its tool goes into less and is stiff enough. Common practice.
const leastBored = calc.Inch / 2

// usualClearance draws a clearance as shops give it: from the least that the usual class
// leaves, the allowance of 2A or 6g, to about twice that, in half thousandths or hundredths
// of a millimetre. Sources: ASME B1.1 and ISO 965-1 for the allowance.
func usualClearance(d *problem.Draw, t calc.Designation) calc.Length {
	t.Class = "2A"
	if t.Metric {
		t.Class = "6g"
	}
	l, _ := calc.LimitsOf(t) // its pitch diameter has been found
	step := calc.Inch / 2000
	if d.System == machine.Metric {
		step = calc.Millimetres(0.01)
	}
	least := max(2, int(math.Round(l.Allowance.Over(step))))
	return step.Times(float64(d.Between(least, 2*least)))
}

// clearanceOf is the clearance, given or in the middle between two.
func clearanceOf(v problem.Values) calc.Length {
	if v.Has("least-clearance") {
		return (v.Length("least-clearance") + v.Length("most-clearance")).Times(0.5)
	}
	return v.Length("clearance")
}

// growth is how much the pitch diameter has still to grow, with so many times the
// clearance.
func growth(v problem.Values, clearances float64) calc.Length {
	return v.Length("plug") + clearanceOf(v).Times(clearances) - v.Length("present")
}

// onDial is a change of diameter as the cross-slide dial shows it.
func onDial(v problem.Values, diametral calc.Length) answer.Response {
	if v.Word("dial-reads") == "radius" {
		diametral = diametral.Times(0.5)
	}
	return answer.LengthResponse(diametral)
}

// drawSteps draws a length in steps, given for inches and for millimetres.
func drawSteps(d *problem.Draw, low, high, step, lowMM, highMM, stepMM float64) calc.Length {
	if d.System == machine.Metric {
		return calc.Millimetres(d.Steps(lowMM, highMM, stepMM))
	}
	return calc.Inches(d.Steps(low, high, step))
}
