package infeed

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "rule-of-thumb", Stage: problem.Infeed, Kind: answer.Quantity,
	Inputs:    shared.Inputs(shared.Inputs(problem.ThreadInputs, shared.LengthInput("tool-flat", "f", 0, 0.1)), shared.CompoundAngle...),
	Tolerance: answer.Tolerance{Inch: 0.0005, MM: 0.012},
	Sources:   []string{"common-practice", "geometry"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		t := d.Thread(calc.Inch/14, calc.Inch/5)
		d.Tell(&v, t, calc.Inside)
		v.SetLength("tool-flat", shared.DrawFlat(d, calc.Inside, t.Pitch, 0.72)) // sharper, and the rule falls short
		shared.TellAngle(d, &v)
		d.Job(&v, calc.Inside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		if err := shared.OnlySide(v, calc.Inside); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		pitch := w.Pitch()
		h := problem.Step2(w, "h", calc.DepthFromBore, pitch, v.Length("tool-flat"))
		c := problem.Step2(w, "c", calc.TravelForDepth, h, shared.AngleStep(w, v))
		rule := problem.Step1(w, "q", calc.RuleOfThumb, pitch)
		w.Length("o", "q - c")(rule-c, nil)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "no-cos", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(ruled(v) - insideDepth(v))
		}},
		{Name: "book-depth", Work: func(v problem.Values) answer.Response {
			h, _ := calc.RadialDepthOfForm(v.Pitch(), calc.BasicInternal) // the key has been worked out: no error here
			return answer.LengthResponse(ruled(v) - travelFor(v, h))
		}},
		{Name: "sign", Work: func(v problem.Values) answer.Response {
			return answer.LengthResponse(travelFor(v, insideDepth(v)) - ruled(v))
		}},
		{Name: "no-866", Work: func(v problem.Values) answer.Response {
			sharp, _ := calc.DepthFromBore.Of(v.Pitch(), 0) // the key has been worked out: no error here
			return answer.LengthResponse(ruled(v) - travelFor(v, sharp-v.Length("tool-flat")))
		}},
	},
})

// What common errors go wrong from; the key has been worked out: no error here.

// insideDepth is the depth from the basic bore with the tool's own flat.
func insideDepth(v problem.Values) calc.Length {
	h, _ := calc.DepthFromBore.Of(v.Pitch(), v.Length("tool-flat"))
	return h
}

// travelFor is the compound travel for a depth.
func travelFor(v problem.Values, h calc.Length) calc.Length {
	c, _ := calc.TravelForDepth.Of(h, shared.AngleOf(v))
	return c
}

// ruled is the travel by the rule of thumb.
func ruled(v problem.Values) calc.Length {
	q, _ := calc.RuleOfThumb.Of(v.Pitch())
	return q
}
