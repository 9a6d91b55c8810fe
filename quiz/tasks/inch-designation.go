package tasks

import (
	"strconv"

	"scratchpass/calc"
	"scratchpass/quiz"
	"scratchpass/quiz/machine"
)

var _ = register(quiz.Task{
	Name: "inch-designation", Stage: quiz.Reading,
	Inputs:  []quiz.Input{{Name: "thread", Symbol: "thread", Is: quiz.AThread}},
	Systems: []machine.System{machine.Imperial},
	Sources: []string{"b1-1"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		t := d.Thread(calc.Inch/28, calc.Inch/4)
		t.Class = quiz.Pick(d, "2A", "3A", "2B", "3B")
		t.Hand = quiz.Pick(d, calc.RightHand, calc.LeftHand)
		v.SetThread("thread", t)
		side, _ := t.Side()
		d.Job(&v, side)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		w := v.Working()
		return w.Reading(fields(v.Thread("thread"))...)
	},
	Slips: []quiz.Slip{
		{Name: "a-internal", Work: misread(func(d calc.Designation) calc.Designation {
			d.Class = map[string]string{"A": "2B", "B": "2A"}[d.Class[len(d.Class)-1:]]
			return d
		})},
		{Name: "class-starts", Work: misread(func(d calc.Designation) calc.Designation {
			d.Starts, _ = strconv.Atoi(d.Class[:1])
			return d
		})},
		{Name: "lh-missed", Work: func(v quiz.Values) quiz.Reply {
			if v.Thread("thread").Hand == calc.RightHand {
				return quiz.NoAnswer
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
func misread(as func(calc.Designation) calc.Designation) func(quiz.Values) quiz.Reply {
	return func(v quiz.Values) quiz.Reply {
		d := v.Thread("thread")
		if d.Class == "" {
			return quiz.NoAnswer
		}
		return quiz.Reply{Fields: fields(as(d))}
	}
}
