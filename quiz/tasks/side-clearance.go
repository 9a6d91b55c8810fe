package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
)

var _ = register(quiz.Task{
	Name: "side-clearance", Stage: quiz.Shape,
	Inputs: []quiz.Input{
		{Name: "clearance", Symbol: "c", Is: quiz.AnAngle, Low: 0, High: 15},
		{Name: "lead-angle", Symbol: "A", Is: quiz.AnAngle, Low: 0, High: 30, Group: "thread"},
		quiz.ThreadInputs[2],
	},
	Tol:     quiz.Tolerance{Else: 0.25},
	Sources: []string{"geometry", "common-practice"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		v.Set("clearance", d.Steps(2, 6, 0.5))
		if d.Level == quiz.NumbersGiven {
			v.Set("lead-angle", d.Steps(1.5, 7, 0.1))
		} else {
			t := firstThread(d)
			if d.Level == quiz.OnTheJob {
				t.Starts = quiz.Pick(d, 1, 1, 2, 3)
			}
			d.TellAs(&v, t, calc.Outside, "callout")
		}
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		w := v.Working()
		lead := angleOfLead(v)
		if v.Has("thread") {
			lead = leadAngleSteps(w, v)
		}
		leading, _, err := calc.SideClearance(v.Angle("clearance"), lead)
		w.Angle("g", "c + A")(leading, err)
		return w.Quantity()
	},
	Slips: []quiz.Slip{
		{Name: "trailing", Work: func(v quiz.Values) quiz.Reply {
			return quiz.X((v.Angle("clearance") - angleOfLead(v)).Degrees())
		}},
		{Name: "ignore", Work: func(v quiz.Values) quiz.Reply { return quiz.X(v.X("clearance")) }},
		{Name: "lead-only", Work: func(v quiz.Values) quiz.Reply { return quiz.X(angleOfLead(v).Degrees()) }},
	},
})

// angleOfLead is the lead angle, given or of the thread.
func angleOfLead(v quiz.Values) calc.Angle {
	if v.Has("lead-angle") {
		return v.Angle("lead-angle")
	}
	a, _ := calc.LeadAngle(leadAndDiameter(v)) // the key has been worked out: no error here
	return a
}
