package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
	"scratchpass/quiz/machine"
)

var _ = register(quiz.Task{
	Name: "marks-that-fit", Stage: quiz.SetUp,
	Inputs:  threadDialInputs,
	Tol:     quiz.Tolerance{Else: 0.1},
	Sources: []string{"jones-1914"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		usual := drawThreadDial(d, &v)
		if d.Level == quiz.OnTheJob {
			v.Set("gear", float64(usual.Teeth))
			v.Set("marks", float64(usual.Marks))
		}
		// Not too often a thread for which all fit.
		if fit := fitting(v); fit == 0 || fit == v.Count("marks") && d.IntN(3) != 0 {
			return quiz.Values{}
		}
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		w, threads, err := marksWorking(v)
		if err != nil {
			return quiz.Working{}, err
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
	Slips: []quiz.Slip{
		{Name: "all", Work: func(v quiz.Values) quiz.Reply { return unlessFitting(v, v.Count("marks")) }},
		{Name: "half", Work: func(v quiz.Values) quiz.Reply {
			if v.Count("marks")%2 != 0 {
				return quiz.NoAnswer
			}
			return unlessFitting(v, v.Count("marks")/2)
		}},
		{Name: "one", Work: func(v quiz.Values) quiz.Reply {
			if fitting(v) == 2 {
				return quiz.NoAnswer // too near the key to be a slip of its own
			}
			return unlessFitting(v, 1)
		}},
	},
})

var marksUnit = machine.Unit{Name: "marks", One: "mark", Factor: 1, Places: 1, Count: true}

// fitting is how many marks of the dial are safe.
func fitting(v quiz.Values) int {
	safe, _ := threadDial(v).SafeMarks(v.Pitch()) // Work reports the error
	return len(safe)
}

func unlessFitting(v quiz.Values, marks int) quiz.Reply {
	if fitting(v) == marks {
		return quiz.NoAnswer
	}
	return quiz.X(float64(marks))
}
