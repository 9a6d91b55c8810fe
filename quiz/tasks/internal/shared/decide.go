package shared

import (
	"scratchpass/calc"
	"scratchpass/quiz/problem"
)

// Decide is the work of a decision: right names the option for each situation, and the
// input tells which situation it is.
func Decide(input string, right map[string]string) func(problem.Values) (problem.Working, error) {
	return func(v problem.Values) (problem.Working, error) {
		return v.Working().Choice(right[v.Word(input)])
	}
}

// DrawSituation draws one of the situations and a job on that side. A situation that is
// listed twice comes up twice as often.
func DrawSituation(input string, side calc.Side, situations ...string) func(*problem.Draw) problem.Values {
	return DrawSituationWith(input, side, func(*problem.Draw, *problem.Values) {}, situations...)
}

// DrawSituationWith is DrawSituation with more that is drawn between the two.
func DrawSituationWith(input string, side calc.Side, more func(*problem.Draw, *problem.Values), situations ...string) func(*problem.Draw) problem.Values {
	return func(d *problem.Draw) problem.Values {
		v := d.Values()
		v.SetWord(input, problem.Pick(d, situations...))
		more(d, &v)
		d.Job(&v, side)
		return v
	}
}

// DrawLength draws the length of an input, for DrawSituationWith. The ranges are those of
// Draw.Length: thousandths of an inch, and hundredths of a millimetre.
func DrawLength(input string, lowThou, highThou, lowHundredths, highHundredths int) func(*problem.Draw, *problem.Values) {
	return func(d *problem.Draw, v *problem.Values) {
		v.SetLength(input, d.Length(lowThou, highThou, lowHundredths, highHundredths))
	}
}
