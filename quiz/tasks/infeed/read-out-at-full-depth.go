package infeed

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "read-out-at-full-depth", Stage: problem.Infeed, Kind: answer.Quantity,
	Inputs: []problem.Input{
		{Name: "side", Symbol: "side", Type: problem.InputWord, Words: []string{"outside", "inside"}, Extra: true},
		{Name: "reads", Symbol: "reads", Type: problem.InputWord, Words: []string{"diameter", "radius"}, Extra: true},
		shared.LengthInput("set", "r0", 0.01, 12),
		shared.LengthInput("depth", "h", 0.001, 1),
	},
	Tolerance: answer.Tolerance{Inch: 0.0005, MM: 0.012},
	Sources:   []string{"read-out", "dial-marking"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		t := shared.FirstThread(d)
		side, reads := problem.Pick(d, calc.Outside, calc.Inside), problem.Pick(d, "diameter", "radius")
		form, start := calc.UnifiedExternal, t.Nominal-d.Length(2, 9, 5, 20)
		if side == calc.Inside {
			bore, err := calc.BasicBore.Of(t.Nominal, t.Pitch)
			if err != nil {
				return problem.Values{}
			}
			form, start = calc.BasicInternal, bore+d.Length(2, 9, 5, 20)
		}
		depth, err := calc.RadialDepthOfForm(t.Pitch, form)
		if err != nil || start < 0.3 {
			return problem.Values{} // nothing that small is bored and threaded
		}
		if reads == "radius" {
			start = start.Times(0.5)
		}
		v.SetWord("side", side.String())
		v.SetWord("reads", reads)
		v.SetLength("set", shared.AsPrinted(d, start))
		v.SetLength("depth", shared.AsPrinted(d, depth))
		d.Job(&v, side)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		problem.Step2(w, "r", readOutFormula(v), v.Length("set"), v.Length("depth"))
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "other-way", Work: readOutBy(func(v problem.Values) float64 { return -readOutTimes(v) })},
		{Name: "one-side", Work: readOutBy(func(v problem.Values) float64 {
			if v.Word("reads") == "radius" {
				return 0 // no error here: it is what the read-out shows
			}
			return readOutTimes(v) / 2
		})},
		{Name: "both-sides", Work: readOutBy(func(v problem.Values) float64 {
			if v.Word("reads") == "diameter" {
				return 0
			}
			return readOutTimes(v) * 2
		})},
		{Name: "only-depth", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(v.Length("depth")) }},
		{Name: "only-both", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(v.Length("depth").Times(2)) }},
	},
})

// readOutFormula is the formula for the side and for what the read-out is set to.
func readOutFormula(v problem.Values) calc.Formula[func(set, depth calc.Length) (calc.Length, error)] {
	inside := v.Word("side") == calc.Inside.String()
	switch {
	case v.Word("reads") == "radius" && inside:
		return calc.ReadOutRadiusInside
	case v.Word("reads") == "radius":
		return calc.ReadOutRadius
	case inside:
		return calc.ReadOutDiameterInside
	}
	return calc.ReadOutDiameter
}

// readOutTimes is how many depths the read-out moves by, below 0 towards the axis.
func readOutTimes(v problem.Values) float64 {
	times := -1.0
	if v.Word("side") == calc.Inside.String() {
		times = 1
	}
	if v.Word("reads") == "diameter" {
		times *= 2
	}
	return times
}

// readOutBy is the error of moving by another number of depths; 0 is no error.
func readOutBy(times func(problem.Values) float64) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response {
		k := times(v)
		if k == 0 {
			return answer.NoResponse
		}
		return answer.LengthResponse(v.Length("set") + v.Length("depth").Times(k))
	}
}
