package shape

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "acme-tip", Stage: problem.Shape, Kind: answer.Quantity, Systems: acmeSystems,
	Inputs:    acmePitchInputs,
	Tolerance: answer.Tolerance{Inch: 0.0005},
	Scrap:     answer.ScrapHigh,
	Sources:   []string{"data-sheets", "geometry"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		tellAcmePitch(d, &v)
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		tip, pitch := calc.AcmeTip, w.Pitch()
		if isFine(pitch) {
			tip = calc.AcmeTipFine
		}
		problem.Step1(w, "f", tip, pitch)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "crest", Work: func(v problem.Values) answer.Response { return shared.Worked(calc.AcmeCrestFlat(acmePitch(v))) }},
		{Name: "other-clearance", Work: otherTip(1)},
		{Name: "added", Work: otherTip(2)},
		{Name: "half", Work: shareOfAcmePitch(0.5, 0)},
		{Name: "v-flat", Work: shareOfAcmePitch(0.125, 0)},
		{Name: "stub", Work: func(v problem.Values) answer.Response {
			crest, _ := calc.AcmeCrestFlat(acmePitch(v)) // the key has been worked out
			tip, _ := calc.AcmeToolFlat(acmePitch(v))
			if stub := acmePitch(v).Times(stubCrest); max(stub-(2*crest-tip), 2*crest-tip-stub) > 1.5*calc.Thou {
				return answer.LengthResponse(stub)
			}
			return answer.NoResponse // at 10 threads per inch the error of adding lies there
		}},
	},
})

// stubCrest is the crest of a stub Acme thread as a share of its pitch, which stands in the
// same tables. From memory.
const stubCrest = 0.4224

// otherTip is the error of taking off what belongs to the other threads (1), or of adding
// what is to be taken off (2).
func otherTip(which int) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response {
		crest, err := calc.AcmeCrestFlat(acmePitch(v))
		tip, _ := calc.AcmeToolFlat(acmePitch(v)) // of the same range
		less := crest - tip
		switch {
		case which == 2:
			return shared.Worked(crest+less, err)
		case isFine(acmePitch(v)):
			return shared.Worked(crest-less.Times(2), err)
		}
		return shared.Worked(crest-less.Times(0.5), err)
	}
}
