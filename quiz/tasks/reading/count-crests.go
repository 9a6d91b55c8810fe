package reading

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "count-crests", Stage: problem.Reading, Kind: answer.Quantity,
	Inputs: []problem.Input{
		{Name: "crests", Symbol: "c", Type: problem.InputCount, Low: 2, High: 200},
		shared.LengthInput("first", "r1", 0, 40), shared.LengthInput("last", "r2", 0.1, 40),
		{Name: "wanted", Symbol: "wanted", Type: problem.InputWord, Words: []string{"tpi", "pitch"}, Extra: true},
	},
	Tolerance: answer.Tolerance{Inch: 0.0005, MM: 0.05, Other: 0.25},
	Sources:   []string{"b1-1", "arithmetic"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		first, wanted := calc.Length(0), "tpi"
		one, longest, pitch := calc.Inch/8, 12, calc.Inch // spans end on a line of the rule
		if d.System == machine.Metric {
			wanted, one, longest = "pitch", calc.Millimetres(1), 40
			pitch = calc.Millimetres(problem.Pick(d, 1.0, 1.25, 1.5, 1.75, 2, 2.5, 3, 3.5, 4))
		} else {
			pitch = pitch.Times(1 / problem.Pick(d, 8.0, 9, 10, 11, 12, 13, 14, 16, 18, 20))
		}
		span, ok := countedSpan(d, one, longest, pitch)
		if !ok {
			return problem.Values{} // crests must stand on both lines
		}
		if d.Level != problem.NumbersGiven { // the end of a rule is worn: the count starts further on
			first = calc.Inches(1)
			if d.System == machine.Metric {
				first = calc.Millimetres(10)
			}
		}
		v.Set("crests", calc.Round(span.Over(pitch), 0)+1)
		v.SetLength("first", first)
		v.SetLength("last", first+span)
		v.SetWord("wanted", wanted)
		if !d.JobWith(&v, calc.Outside, span) {
			return problem.Values{}
		}
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		span := w.Length("L", "r2 - r1")(v.Length("last")-v.Length("first"), nil)
		switch crests := v.Count("crests"); {
		case wantsPitch(v):
			problem.Step2(w, "P", calc.PitchOfCrests, span, crests)
		case v.System == machine.Metric:
			problem.Step2(w, "n", calc.TPIOfCrestsMM, span, crests)
		default:
			problem.Step2(w, "n", calc.TPIOfCrests, span, crests)
		}
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "fence-post", Work: func(v problem.Values) answer.Response {
			return crestsOver(v, v.Length("last")-v.Length("first"), v.Count("crests")+1)
		}},
		{Name: "from-end", Work: func(v problem.Values) answer.Response {
			if v.X("first") == 0 {
				return answer.NoResponse
			}
			return crestsOver(v, v.Length("last"), v.Count("crests"))
		}},
		{Name: "no-scale", Work: func(v problem.Values) answer.Response {
			if shared.Same(v.X("last")-v.X("first"), 1) {
				return answer.NoResponse // over an inch that is right
			}
			return shownCrests(v, v.X("crests")-1)
		}},
		{Name: "mult", Work: func(v problem.Values) answer.Response {
			if shared.Same(v.X("last")-v.X("first"), 1) {
				return answer.NoResponse
			}
			return shownCrests(v, (v.X("crests")-1)*(v.X("last")-v.X("first"))*v.System.Length().Factor)
		}},
	},
})

// countedSpan draws a length of whole steps that holds 4 to 14 whole pitches.
func countedSpan(d *problem.Draw, step calc.Length, longest int, pitch calc.Length) (span calc.Length, ok bool) {
	var all []calc.Length
	for i := range longest {
		span := step.Times(float64(i + 1))
		if spaces := span.Over(pitch); spaces > 3.9 && spaces < 14.1 && shared.Whole(spaces) {
			all = append(all, span)
		}
	}
	if len(all) == 0 {
		return 0, false
	}
	return problem.Pick(d, all...), true
}

// wantsPitch reports whether the pitch is asked for and not the threads per inch:
// as it was said, or else in millimetres.
func wantsPitch(v problem.Values) bool {
	return v.Word("wanted") == "pitch" || v.Word("wanted") == "" && v.System == machine.Metric
}

// crestsOver is what so many crests over a span give: the pitch or the threads per inch.
func crestsOver(v problem.Values, span calc.Length, crests int) answer.Response {
	if wantsPitch(v) {
		return shared.Worked(calc.PitchOfCrests.Of(span, crests))
	}
	return shared.Worked(calc.TPIOfCrests.Of(span, crests))
}

// shownCrests is a response whose number is shown as it stands.
func shownCrests(v problem.Values, x float64) answer.Response {
	if wantsPitch(v) {
		return answer.NumberResponse(x / v.System.Length().Factor)
	}
	return answer.NumberResponse(x)
}
