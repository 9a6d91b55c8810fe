package setup

import (
	"scratchpass/calc"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// screwInput is the lead screw of the lathe.
var screwInput = problem.Input{Name: "lead-screw", Symbol: "N", Type: problem.InputLeadScrew, Low: 1, High: 20}

// drawScrew draws the threads per inch of a lead screw, on the job the learner's own
// where it is an inch one.
func drawScrew(d *problem.Draw) float64 {
	switch {
	case d.Level != problem.OnTheJob:
		return problem.Pick(d, 4.0, 6, 8, 8)
	case d.Lathe.Metric:
		return machine.InchLathe.LeadScrew
	}
	return d.Lathe.LeadScrew
}

func screwLead(v problem.Values) calc.Length { return calc.Inch.Times(1 / v.X("lead-screw")) }
