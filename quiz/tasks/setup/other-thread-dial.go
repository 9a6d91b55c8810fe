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
	Name: "other-thread-dial", Stage: problem.SetUp, Kind: answer.Several,
	Inputs: shared.Inputs(threadDialInputs,
		problem.Input{Name: "first", Symbol: "first", Type: problem.InputCount, Low: 1, High: 32},
		problem.Input{Name: "usual", Symbol: "usual", Type: problem.InputCount, Low: 8, High: 96},
		problem.Input{Name: "usual-marks", Symbol: "usual-marks", Type: problem.InputCount, Low: 2, High: 32}),
	Sources: []string{"jones-1914"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		usual, _ := ownDial(d)
		fit := drawThreadDial(d, &v, tellDial(d), nil, setsOfMarks)
		v.Set("usual", float64(usual.Teeth))
		v.Set("usual-marks", float64(usual.Marks))
		if v.Count("gear") == usual.Teeth {
			return problem.Values{}
		}
		v.Set("first", float64(1+d.IntN(v.Count("marks"))))
		if (asOnUsualDial(v).None || fit == 0) && d.IntN(4) != 0 { // mostly where the other dial has other marks
			return problem.Values{}
		}
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w, _, err := marksWorking(v)
		if err != nil {
			return problem.Working{}, err
		}
		problem.Step2(w, "t", calc.ThreadsPerTurn, threadDial(v), v.Pitch())
		safe, err := threadDial(v).SafeMarks(v.Pitch())
		if err != nil {
			return problem.Working{}, err
		}
		return w.Several(face(v), markNames(v, safe))
	},
	Errors: []problem.CommonError{
		{Name: "memorised", Work: asOnUsualDial},
		{Name: "any-line", Work: func(v problem.Values) answer.Response { return unlessUsual(v, everyMark(v, 0, 1)) }},
		{Name: "half", Work: func(v problem.Values) answer.Response {
			if v.Count("marks")%2 != 0 {
				return answer.NoResponse // every second mark would not come round again
			}
			return unlessUsual(v, everyMark(v, 0, 2))
		}},
		{Name: "none-fits", Work: noneFits},
		{Name: "one-only", Partial: partOf, Work: func(v problem.Values) answer.Response {
			if safe, _ := threadDial(v).SafeMarks(v.Pitch()); len(safe) == 0 {
				return answer.NoResponse // not even the first mark is safe
			}
			return unlessKey(v, []int{0})
		}},
	},
})

// dials are thread dials by the teeth of the gear and the marks of the face. From one
// mark to the next go whole teeth: the half-nut can't close between them.
var dials = [2][][2]int{
	machine.Imperial: {{16, 8}, {24, 8}, {24, 12}, {32, 8}, {40, 8}, {48, 8}, {48, 16}, {64, 8}},
	machine.Metric:   {{14, 7}, {16, 8}, {18, 6}, {20, 10}, {21, 7}, {24, 8}, {24, 12}, {28, 7}, {28, 14}, {30, 10}},
}

// usualMarks are the marks that someone takes who keeps to the rule of the dial they
// know: every one, every second and so on, as it allows there, or none.
func usualMarks(v problem.Values) []int {
	dial := threadDial(v)
	dial.Teeth, dial.Marks = v.Count("usual"), v.Count("usual-marks")
	marks, _ := dial.SafeMarks(v.Pitch()) // Work reports the error
	if len(marks) == 0 {
		return nil
	}
	return everyMark(v, 0, dial.Marks/len(marks))
}

// asOnUsualDial is the error of a rule remembered from the usual dial, unless all it
// allows is safe on this one.
func asOnUsualDial(v problem.Values) answer.Response {
	marks := usualMarks(v)
	safe, _ := threadDial(v).SafeMarks(v.Pitch())
	switch {
	case len(marks) == 0 && len(safe) > 0:
		return answer.OptionsResponse()
	case len(marks) == 1 && len(safe) > 0:
		return answer.NoResponse
	}
	return unlessKey(v, marks)
}

// unlessUsual is an error's set of marks, unless the rule of the usual dial gives it.
func unlessUsual(v problem.Values, marks []int) answer.Response {
	if slices.Equal(usualMarks(v), marks) {
		return answer.NoResponse
	}
	return unlessKey(v, marks)
}
