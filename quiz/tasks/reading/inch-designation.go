package reading

import (
	"strconv"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "inch-designation", Stage: problem.Reading, Kind: answer.Designation,
	Inputs:  []problem.Input{{Name: "thread", Symbol: "thread", Type: problem.InputThread}},
	Systems: []machine.System{machine.Imperial},
	Sources: []string{"b1-1"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		t := d.Thread(calc.Inch/28, calc.Inch/4)
		t.Class = problem.Pick(d, "2A", "3A", "2B", "3B")
		t.Hand = problem.Pick(d, calc.RightHand, calc.LeftHand)
		v.SetThread("thread", t)
		side, _ := t.Side()
		d.Job(&v, side)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		return w.Reading(fields(v.Thread("thread"))...)
	},
	Errors: []problem.CommonError{
		{Name: "a-internal", Work: misread(func(d calc.Designation) calc.Designation {
			d.Class = map[string]string{"A": "2B", "B": "2A"}[d.Class[len(d.Class)-1:]]
			return d
		})},
		{Name: "class-starts", Work: misread(func(d calc.Designation) calc.Designation {
			d.Starts, _ = strconv.Atoi(d.Class[:1])
			return d
		})},
		{Name: "lh-missed", Work: func(v problem.Values) answer.Response {
			if v.Thread("thread").Hand == calc.RightHand {
				return answer.NoResponse
			}
			return misread(func(d calc.Designation) calc.Designation { d.Hand = calc.RightHand; return d })(v)
		}},
	},
})

// fields takes a designation apart in the order it is asked for.
func fields(d calc.Designation) [][2]string {
	side, _ := d.Side()
	return [][2]string{
		{"diameter", calc.Shortest(d.Nominal.Inches(), 4)}, {"tpi", calc.Shortest(d.TPI.Number(), 4)},
		{"starts", strconv.Itoa(d.Starts)}, {"side", side.String()}, {"hand", d.Hand.String()},
	}
}

// misread is what someone answers who takes the thread for another.
func misread(as func(calc.Designation) calc.Designation) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response {
		d := v.Thread("thread")
		if d.Class == "" {
			return answer.NoResponse
		}
		return answer.Response{Fields: fields(as(d))}
	}
}
