package infeed

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "finish-with-cross-slide", Stage: problem.Infeed, Kind: answer.Quantity,
	Inputs: shared.Inputs([]problem.Input{shared.LengthInput("total", "c", 0.01, 0.5), shared.LengthInput("done", "c1", 0, 0.5),
		{Name: "dial-reads", Symbol: "dial", Type: problem.InputWord, Words: []string{"diameter", "radius"}}}, shared.CompoundAngle...),
	Tolerance: answer.Tolerance{Inch: 0.0005, MM: 0.012},
	Scrap:     answer.ScrapHigh,
	Sources:   []string{"geometry", "dial-marking"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		done := d.Length(38, 110, 100, 280)
		v.SetLength("done", done)
		left := calc.Inches(d.Steps(0.004, 0.011, 0.0001))
		if d.System == machine.Metric {
			left = calc.Millimetres(d.Steps(0.1, 0.28, 0.01))
		}
		v.SetLength("total", done+left)
		v.SetWord("dial-reads", shared.DialReads(d))
		shared.TellAngle(d, &v)
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		left := w.Length("g", "c - c1")(v.Length("total")-v.Length("done"), nil)
		h := problem.Step2(w, "h", calc.DepthOfTravel, left, shared.AngleStep(w, v))
		if v.Word("dial-reads") == "diameter" {
			problem.Step1(w, "m", calc.MoveOnDiameterDial, h)
		} else {
			problem.Step1(w, "m", calc.MoveOnTravelDial, h)
		}
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "no-cos", Work: func(v problem.Values) answer.Response {
			if v.Word("dial-reads") == "radius" {
				return answer.NoResponse // on this dial that is the error of keeping the compound's figure
			}
			return answer.LengthResponse(compoundLeft(v).Times(2))
		}},
		{Name: "radius", Work: func(v problem.Values) answer.Response {
			if v.Word("dial-reads") == "radius" {
				return answer.NoResponse
			}
			return shared.Worked(calc.DepthOfTravel.Of(compoundLeft(v), shared.AngleOf(v)))
		}},
		{Name: "keeps-compound", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(compoundLeft(v)) }},
		{Name: "diameter-habit", Work: func(v problem.Values) answer.Response {
			if v.Word("dial-reads") == "diameter" {
				return answer.NoResponse
			}
			h, err := calc.DepthOfTravel.Of(compoundLeft(v), shared.AngleOf(v))
			return shared.Worked(h.Times(2), err)
		}},
		{Name: "radians", Work: func(v problem.Values) answer.Response {
			h := compoundLeft(v).Times(shared.InRadians(shared.AngleOf(v)))
			if v.Word("dial-reads") == "diameter" {
				h = h.Times(2)
			}
			return answer.LengthResponse(h)
		}},
	},
})

func compoundLeft(v problem.Values) calc.Length { return v.Length("total") - v.Length("done") }
