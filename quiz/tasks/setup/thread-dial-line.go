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
		var among [][2]int // any dial, on the job the learner's own
		if own, _ := ownDial(d); d.Level == problem.OnTheJob {
			among = [][2]int{{own.Teeth, own.Marks}}
		}
		way := "tpi"
		if d.System == machine.Metric {
			way = "pitch"
		}
		drawThreadDial(d, &v, way, among, setsOfMarks)
		v.Set("first", float64(1+d.IntN(v.Count("marks"))))
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
