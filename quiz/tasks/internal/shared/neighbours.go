package shared

import (
	"math"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// OtherAngles are the conventions of working with another of the three published settings
// of the compound than the one told: none that anyone could set apart on a dial.
func OtherAngles(of func(v problem.Values, a calc.Angle) (calc.Length, error)) []problem.CommonError {
	var all []problem.CommonError
	for _, one := range []struct {
		name string
		a    calc.Angle
	}{{"angle-29", 29}, {"angle-29-5", 29.5}, {"angle-30", 30}} {
		name, a := one.name, one.a
		all = append(all, problem.CommonError{Name: name, Convention: true, Near: true, Work: func(v problem.Values) answer.Response {
			if apart := math.Abs((a - AngleOf(v)).Degrees()); apart < 0.1 || apart > 1.1 {
				return answer.NoResponse // that is the one told, or no neighbour of it
			}
			return Worked(of(v, a))
		}})
	}
	return all
}

// InRadians is the cosine that a calculator set to radians gives, without its sign.
func InRadians(a calc.Angle) float64 { return math.Abs(math.Cos(a.Degrees())) }

// RoundedPitch is the error of going on from a pitch that was rounded to two places, 0.17
// for one sixth. It is none where what comes of it lies within the tolerance, in inches:
// that does no harm.
func RoundedPitch(tolerance float64, of func(v problem.Values, pitch calc.Length) (calc.Length, error)) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response {
		if v.System == machine.Metric || v.Has("pitch") || v.Has("thread") && v.Thread("thread").Metric {
			return answer.NoResponse // the pitch is not divided out
		}
		rounded, err := of(v, calc.Inches(calc.Round(v.Pitch().Inches(), 2)))
		exact, err2 := of(v, v.Pitch())
		if err != nil || err2 != nil || math.Abs((rounded-exact).Inches()) <= tolerance {
			return answer.NoResponse
		}
		return answer.LengthResponse(rounded)
	}
}

// TravelAt is the compound travel of an outside thread at an angle.
func TravelAt(v problem.Values, a calc.Angle) (calc.Length, error) {
	return calc.TravelForDepth.Of(ExternalDepth(v), a)
}
