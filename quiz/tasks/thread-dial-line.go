package tasks

import (
	"slices"
	"strconv"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

var _ = register(problem.Task{
	Name: "thread-dial-line", Stage: problem.SetUp, Kind: answer.Several,
	Inputs: inputs(problem.ThreadInputs,
		problem.Input{Name: "lead-screw", Symbol: "N", Type: problem.InputLeadScrew, Low: 1, High: 20},
		problem.Input{Name: "gear", Symbol: "T", Type: problem.InputCount, Low: 8, High: 96},
		problem.Input{Name: "marks", Symbol: "M", Type: problem.InputCount, Low: 2, High: 32},
		problem.Input{Name: "first", Symbol: "first", Type: problem.InputCount, Low: 1, High: 32}),
	Sources: []string{"jones-1914"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		lathe := d.Lathe
		if _, ok := lathe.ThreadDial(); !ok || lathe.Metric != (d.System == machine.Metric) {
			lathe = machine.DefaultLathe(d.System)
		}
		d.TellAs(&v, d.Thread(calc.Inch/28, calc.Inch/4), calc.Outside, map[bool]string{true: "pitch", false: "tpi"}[d.System == machine.Metric])
		v.Set("lead-screw", lathe.LeadScrew)
		v.Set("gear", float64(lathe.DialTeeth))
		v.Set("marks", float64(lathe.DialMarks))
		first := 1
		if d.Level != problem.NumbersGiven {
			first = 1 + d.IntN(lathe.DialMarks)
		}
		v.Set("first", float64(first))
		// Whoever always says "any mark" must often be wrong.
		if safe, _ := threadDial(v).SafeMarks(v.Pitch()); len(safe) == v.Count("marks") && d.IntN(4) != 0 {
			return problem.Values{}
		}
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		pitch, dial := v.Pitch(), threadDial(v)
		between := "u x n"
		if !v.Has("tpi") {
			pitch, between = w.Pitch(), "u / P"
		}
		w.Length("u", spacingFormula(v))(dial.Spacing())
		w.Number("y", between, machine.PlainUnit)(dial.ThreadsBetween(pitch, 1))
		safe, err := dial.SafeMarks(pitch)
		if err != nil {
			return problem.Working{}, err
		}
		return w.Several(face(v), markNames(v, safe))
	},
	Errors: []problem.CommonError{
		{Name: "any-line", Work: func(v problem.Values) answer.Response { return unlessKey(v, everyMark(v, 0, 1)) }},
		{Name: "even-odd-swap", Work: func(v problem.Values) answer.Response { return unlessKey(v, everyMark(v, 1, 2)) }},
		{Name: "none-fits", Work: noneFits},
		{Name: "one-only", Partial: partOf, Work: func(v problem.Values) answer.Response {
			if safe, _ := threadDial(v).SafeMarks(v.Pitch()); len(safe) == 0 {
				return answer.NoResponse // not even the first mark is safe: see other-lathe
			}
			return unlessKey(v, []int{0})
		}},
		{Name: "other-lathe", Work: otherDial},
	},
})

func threadDial(v problem.Values) calc.ThreadDial {
	screw := calc.ThreadsPerInch(v.X("lead-screw"))
	if v.System == machine.Metric {
		screw = calc.ThreadsPerInch(calc.MillimetresPerInch / v.X("lead-screw"))
	}
	return calc.ThreadDial{LeadScrew: screw, Teeth: v.Count("gear"), Marks: v.Count("marks")}
}

// spacingFormula is the travel between marks: a metric lead screw is known by its
// pitch, an inch one by its threads per inch.
func spacingFormula(v problem.Values) string {
	if v.System == machine.Metric {
		return "T x N / M"
	}
	return "T / (M x N)"
}

// markNames names the marks that stand so many marks after the first cut's.
func markNames(v problem.Values, after []int) []string {
	names := make([]string, 0, len(after))
	for _, k := range after {
		names = append(names, strconv.Itoa((v.Count("first")-1+k)%v.Count("marks")+1))
	}
	return names
}

// face names all marks in their order on the face.
func face(v problem.Values) []string {
	var names []string
	for i := range v.Count("marks") {
		names = append(names, strconv.Itoa(i+1))
	}
	return names
}

// partOf reports whether some of the right marks were given and no wrong one.
func partOf(key, given answer.Response) bool {
	for _, k := range given.Keys {
		if !slices.Contains(key.Keys, k) {
			return false
		}
	}
	return len(given.Keys) > 0 && len(given.Keys) < len(key.Keys)
}

// noneFits is the slip of using no mark at all where some do.
func noneFits(v problem.Values) answer.Response {
	if safe, _ := threadDial(v).SafeMarks(v.Pitch()); len(safe) == 0 {
		return answer.NoResponse
	}
	return answer.OptionsResponse()
}

func everyMark(v problem.Values, from, step int) []int {
	var marks []int
	for k := from; k < v.Count("marks"); k += step {
		marks = append(marks, k)
	}
	return marks
}

// unlessKey is a slip's set of marks, unless it happens to be right here.
func unlessKey(v problem.Values, marks []int) answer.Response {
	safe, _ := threadDial(v).SafeMarks(v.Pitch())
	all := true
	for _, k := range marks {
		all = all && slices.Contains(safe, k)
	}
	if all && len(marks) != 1 { // only safe marks among them: no wrong road
		return answer.NoResponse
	}
	if slices.Equal(safe, marks) {
		return answer.NoResponse
	}
	return answer.OptionsResponse(markNames(v, marks)...)
}

// otherDial is the slip of using the chart of a lathe whose dial has another gear:
// the first gear for which that gives something no other slip gives.
func otherDial(v problem.Values) answer.Response {
	taken := [][]int{everyMark(v, 0, 1), everyMark(v, 1, 2), {0}}
	for _, teeth := range []int{v.Count("gear") / 2, v.Count("gear") * 2, v.Count("gear") / 4} {
		dial := threadDial(v)
		dial.Teeth = teeth
		marks, err := dial.SafeMarks(v.Pitch())
		if err != nil || slices.ContainsFunc(taken, func(t []int) bool { return slices.Equal(t, marks) }) {
			continue
		}
		if r := unlessKey(v, marks); !r.None {
			return r
		}
	}
	return answer.NoResponse
}
