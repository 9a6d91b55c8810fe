package shape

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "acme-depth", Stage: problem.Shape, Kind: answer.Quantity, Systems: acmeSystems,
	Inputs:    acmePitchInputs,
	Tolerance: answer.Tolerance{Inch: 0.0005},
	Scrap:     answer.ScrapHigh,
	Sources:   []string{"jones-1914", "acme-tables"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		tellAcmePitch(d, &v)
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		depth, pitch := calc.AcmeFullDepth, w.Pitch()
		if isFine(pitch) {
			depth = calc.AcmeFullDepthFine
		}
		problem.Step1(w, "h", depth, pitch)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "no-clearance", Work: shareOfAcmePitch(0.5, 0)},
		{Name: "other-clearance", Work: func(v problem.Values) answer.Response {
			if isFine(acmePitch(v)) {
				return shareOfAcmePitch(0.5, 10*calc.Thou)(v)
			}
			return shareOfAcmePitch(0.5, 5*calc.Thou)(v)
		}},
		{Name: "v-form", Work: shareOfAcmePitch(calc.UnifiedExternal.Factor(), 0)},
		{Name: "whole-pitch", Work: func(v problem.Values) answer.Response {
			h, err := calc.AcmeDepth(acmePitch(v))
			return shared.Worked(h+acmePitch(v).Times(0.5), err)
		}},
		{Name: "both-sides", Work: func(v problem.Values) answer.Response {
			h, err := calc.AcmeDepth(acmePitch(v))
			return shared.Worked(h.Times(2), err)
		}},
	},
})
