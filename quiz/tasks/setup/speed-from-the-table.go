package setup

import (
	"math"
	"slices"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

// otherRow is the row that the eye slips to, by row.
var otherRow = map[string]string{"mild-steel": "stainless", "stainless": "cast-iron", "cast-iron": "stainless", "brass": "mild-steel", "aluminium": "mild-steel"}

var _ = shared.Register(problem.Task{
	Name: "speed-from-the-table", Stage: problem.SetUp, Kind: answer.Quantity,
	Inputs: []problem.Input{
		shared.LengthInput("diameter", "D", 0.1, 12),
		{Name: "material", Symbol: "material", Type: problem.InputWord, Words: calc.MaterialNames},
	},
	Scrap: answer.ScrapHigh, Tolerance: answer.Tolerance{Relative: 0.05, Safe: answer.Below, Reach: 0.1},
	Sources: []string{"speed-tables", "tm-1-420", "common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		rule := ruleIn(d.System)
		v.SetLength("diameter", rule.size(rule.diameters.draw(d)))
		v.SetWord("material", problem.Pick(d, calc.MaterialNames...))
		if limit, err := tableSpeed(v, v.Word("material"), false); err != nil || limit > fastestFirstThread {
			return problem.Values{}
		}
		for _, row := range calc.MaterialNames {
			low, high := rowOf(d.System, row)
			v.Say(row+"-low", calc.Shortest(low, 0))
			v.Say(row+"-high", calc.Shortest(high, 0))
		}
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		low, _ := rowOf(v.System, v.Word("material"))
		w.Number("V", "", machine.PlainUnit)(low, nil)
		rule := ruleIn(v.System)
		full := problem.Step2(w, "u", rule.formula, rule.speed(low), v.Length("diameter"))
		w.Number("v", calc.ThreadingSpeed.Text, machine.RPMUnit)(calc.ThreadingSpeed.Of(full).RPM(), nil)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "other-row", Work: func(v problem.Values) answer.Response {
			return shared.Worked(tableSpeed(v, otherRow[v.Word("material")], false))
		}},
		{Name: "fast-end", Work: func(v problem.Values) answer.Response {
			if fastEndDoubles(v) {
				return answer.NoResponse
			}
			return shared.Worked(tableSpeed(v, v.Word("material"), true))
		}},
		{Name: "radius", Work: func(v problem.Values) answer.Response {
			if fastEndDoubles(v) {
				return answer.NoResponse
			}
			return tableTimes(2)(v)
		}},
		// In most rows the fast end is twice the slow one: one number, two causes.
		{Name: "twice", SameResultAs: "twice", Work: func(v problem.Values) answer.Response {
			if !fastEndDoubles(v) {
				return answer.NoResponse
			}
			return tableTimes(2)(v)
		}},
		{Name: "no-quarter", Work: tableTimes(1 / calc.ThreadingShare)},
		{Name: "no-pi", Work: tableTimes(math.Pi)},
		{Name: "units", Work: func(v problem.Values) answer.Response {
			if v.System == machine.Metric {
				return tableTimes(12.0 / 1000)(v) // the 12 of feet and inches
			}
			return tableTimes(1.0 / 12)(v)
		}},
	},
})

// ruleIn is the turning rule of a system of units.
func ruleIn(s machine.System) turningRule {
	if s == machine.Metric {
		return metricTurning
	}
	return inchTurning
}

// rowOf is a row of the table, as it is printed: whole feet or metres a minute.
func rowOf(s machine.System, row string) (low, high float64) {
	slow, fast := calc.Material(slices.Index(calc.MaterialNames, row)).TurningSpeeds()
	if s == machine.Metric {
		return calc.Round(slow.InMetres(), 0), calc.Round(fast.InMetres(), 0)
	}
	return slow.InFeet(), fast.InFeet()
}

// tableSpeed is the threading speed by one end of a row.
func tableSpeed(v problem.Values, row string, fast bool) (float64, error) {
	speed, high := rowOf(v.System, row)
	if fast {
		speed = high
	}
	rule := ruleIn(v.System)
	full, err := rule.formula.Of(rule.speed(speed), v.Length("diameter"))
	return calc.ThreadingSpeed.Of(full).RPM(), err
}

// fastEndDoubles reports whether the fast end of the row is too near to twice the slow one
// to be told from it.
func fastEndDoubles(v problem.Values) bool {
	low, high := rowOf(v.System, v.Word("material"))
	return math.Abs(high/low-2) < 0.2
}

// tableTimes is the error that gives so many times the key.
func tableTimes(factor float64) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response {
		limit, err := tableSpeed(v, v.Word("material"), false)
		return shared.Worked(limit*factor, err)
	}
}
