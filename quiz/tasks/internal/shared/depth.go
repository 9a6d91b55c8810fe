package shared

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// DrawFlat draws the flat of a tool that can make the thread: from a share of the
// widest one up, in whole thousandths or hundredths of a millimetre.
func DrawFlat(d *problem.Draw, side calc.Side, pitch calc.Length, from float64) calc.Length {
	widest, _ := calc.WidestFlat(side, pitch) // a pitch from the lists of threads
	low, high := widest.Times(from), widest.Times(0.98)
	if d.System == machine.Metric {
		return calc.Millimetres(d.Steps(calc.Round(low.Millimetres()+0.005, 2), calc.Round(high.Millimetres()-0.005, 2), 0.01))
	}
	return calc.Inches(d.Steps(calc.Round(low.Inches()+0.0005, 3), calc.Round(high.Inches()-0.0005, 3), 0.001))
}

// MinorSteps adds the steps to the root diameter by the factor 0.613.
func MinorSteps(w *problem.Working, v problem.Values, symbol string) calc.Length {
	nominal, pitch := NominalStep(w, v), w.Pitch()
	problem.Step1(w, "h", calc.ExternalDepth, pitch)
	w.Refuse(OnlySide(v, calc.Outside))
	return problem.Step2(w, symbol, calc.MinorDiameter, nominal, pitch)
}

// LessPitches is the error of taking another share of the pitch off the nominal
// diameter.
func LessPitches(k float64) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response {
		nominal, err := NominalTold(v)
		if err != nil {
			return answer.NoResponse
		}
		return answer.LengthResponse(nominal - v.Pitch().Times(k))
	}
}

// OtherDiameter is the error of working out another diameter of the thread.
func OtherDiameter(of func(nominal, pitch calc.Length) (calc.Length, error)) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response {
		nominal, err := NominalTold(v)
		if err != nil {
			return answer.NoResponse
		}
		return Worked(of(nominal, v.Pitch()))
	}
}

// DepthOf is the error of taking the depth of another form.
func DepthOf(f calc.Form) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response { return Worked(calc.RadialDepthOfForm(v.Pitch(), f)) }
}

// ExternalDepth is the single depth of an outside thread, for errors that start from it.
func ExternalDepth(v problem.Values) calc.Length {
	h, _ := calc.ExternalDepth.Of(v.Pitch()) // the key has been worked out: no error here
	return h
}

// ExternalTravel is the compound travel for ExternalDepth.
func ExternalTravel(v problem.Values) calc.Length {
	c, _ := calc.TravelForDepth.Of(ExternalDepth(v), AngleOf(v)) // the key has been worked out: no error here
	return c
}
