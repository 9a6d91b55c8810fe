package shape

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "side-clearance", Stage: problem.Shape, Kind: answer.Quantity,
	Inputs: []problem.Input{
		{Name: "clearance", Symbol: "c", Type: problem.InputAngle, Low: 0, High: 15},
		{Name: "lead-angle", Symbol: "A", Type: problem.InputAngle, Low: 0, High: 30, Group: "thread"},
		problem.ThreadInputs[2],
	},
	Tolerance: answer.Tolerance{Other: 0.25},
	Sources:   []string{"geometry", "common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		v.Set("clearance", d.Steps(2, 6, 0.5))
		if d.Level == problem.NumbersGiven {
			v.Set("lead-angle", d.Steps(1.5, 7, 0.1))
		} else {
			t := shared.FirstThread(d)
			if d.Level == problem.OnTheJob {
				t.Starts = problem.Pick(d, 1, 1, 2, 3)
			}
			d.TellAs(&v, t, calc.Outside, "callout")
		}
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		lead := angleOfLead(v)
		if v.Has("thread") {
			lead = leadAngleSteps(w, v)
		}
		problem.Step2(w, "g", calc.LeadingClearance, v.Angle("clearance"), lead)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "trailing", Work: func(v problem.Values) answer.Response {
			_, trailing, err := calc.SideClearance(v.Angle("clearance"), angleOfLead(v))
			return shared.Worked(trailing, err)
		}},
		{Name: "ignore", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(v.X("clearance")) }},
		{Name: "lead-only", Work: func(v problem.Values) answer.Response { return answer.NumberResponse(angleOfLead(v).Degrees()) }},
	},
})

// angleOfLead is the lead angle, given or of the thread.
func angleOfLead(v problem.Values) calc.Angle {
	if v.Has("lead-angle") {
		return v.Angle("lead-angle")
	}
	a, _ := calc.ThreadSlope.Of(leadAndDiameter(v)) // the key has been worked out: no error here
	return a
}
