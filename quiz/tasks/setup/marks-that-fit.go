package setup

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "marks-that-fit", Stage: problem.SetUp, Kind: answer.Quantity,
	Inputs:    threadDialInputs,
	Tolerance: answer.Tolerance{Other: 0.1},
	Sources:   []string{"jones-1914"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		var among [][2]int
		if own, _ := ownDial(d); d.Level == problem.OnTheJob {
			among = [][2]int{{own.Teeth, own.Marks}}
		}
		drawThreadDial(d, &v, tellDial(d), among, func(fit, _ int) int { return min(fit, 1) })
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w, threads, err := marksWorking(v)
		if err != nil {
			return problem.Working{}, err
		}
		fit := fitting(v)
		if fit == 0 {
			w.Number("x", "", marksUnit)(0, nil)
			return w.Quantity()
		}
		k := float64(v.Count("marks") / fit)
		w.Number("k", "", machine.CountUnit)(k, nil)
		w.Number("p", "k x y", machine.CountUnit)(k*threads, nil)
		w.Number("x", "M / k", marksUnit)(float64(fit), nil)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "all", Work: func(v problem.Values) answer.Response { return unlessFitting(v, v.Count("marks")) }},
		{Name: "half", Work: func(v problem.Values) answer.Response {
			if v.Count("marks")%2 != 0 {
				return answer.NoResponse
			}
			return unlessFitting(v, v.Count("marks")/2)
		}},
		{Name: "one", Work: func(v problem.Values) answer.Response {
			if fitting(v) == 2 {
				return answer.NoResponse // too near the key to be an error of its own
			}
			return unlessFitting(v, 1)
		}},
	},
})

var marksUnit = machine.Unit{Name: "marks", One: "mark", Factor: 1, Places: 1, Count: true}

// fitting is how many marks of the dial are safe.
func fitting(v problem.Values) int {
	safe, _ := threadDial(v).SafeMarks(v.Pitch()) // Work reports the error
	return len(safe)
}

func unlessFitting(v problem.Values, marks int) answer.Response {
	if fitting(v) == marks {
		return answer.NoResponse
	}
	return answer.NumberResponse(float64(marks))
}
