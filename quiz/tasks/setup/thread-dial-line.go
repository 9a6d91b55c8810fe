package setup

import (
	"slices"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "thread-dial-line", Stage: problem.SetUp, Kind: answer.Several,
	Inputs: shared.Inputs(problem.ThreadInputs,
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
		way := "tpi"
		if d.System == machine.Metric {
			way = "pitch"
		}
		d.TellAs(&v, d.Thread(calc.Inch/28, calc.Inch/4), calc.Outside, way)
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
		between := calc.ThreadsPerMark
		if !v.Has("tpi") {
			pitch, between = w.Pitch(), calc.ThreadsPerMarkByPitch
		}
		spacingStep(w, v)
		problem.Step2(w, "y", between, dial, pitch)
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

// otherDial is the error of using the chart of a lathe whose dial has another gear:
// the first gear for which that gives something no other error gives.
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
