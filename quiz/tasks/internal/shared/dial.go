package shared

import (
	"scratchpass/calc"
	"scratchpass/quiz/problem"
)

// DialReads draws what a cross-slide dial reads; as on the job it is the learner's.
func DialReads(d *problem.Draw) string {
	if d.Level == problem.OnTheJob {
		if d.Lathe.CrossReads == calc.ReadsDiameter {
			return "diameter"
		}
		return "radius"
	}
	return problem.Pick(d, "diameter", "diameter", "radius")
}
