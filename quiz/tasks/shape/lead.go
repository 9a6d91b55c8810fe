package shape

import (
	"scratchpass/calc"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

// leadAngleSteps adds the steps to the lead angle at the pitch diameter.
func leadAngleSteps(w *problem.Working, v problem.Values) calc.Angle {
	pitch := w.Pitch()
	lead := shared.LeadStep(w, v, pitch)
	e := pitchDiameterStep(w, v, pitch)
	return problem.Step2(w, "A", calc.ThreadSlope, lead, e)
}

// leadAndDiameter are the lead and the pitch diameter for errors that start from
// them. The key has been worked out: no error here.
func leadAndDiameter(v problem.Values) (lead, e calc.Length) {
	lead, _ = calc.LeadOfStarts.Of(v.Pitch(), int(shared.StartsOf(v)))
	if v.Has("pitch-diameter") {
		return lead, v.Length("pitch-diameter")
	}
	nominal, _ := shared.NominalTold(v)
	e, _ = calc.PitchDiameter.Of(nominal, v.Pitch())
	return lead, e
}
