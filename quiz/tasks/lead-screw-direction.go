package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
)

var _ = register(problem.Task{
	Name: "lead-screw-direction", Stage: problem.SetUp, Kind: answer.Choice, SafetyCritical: true,
	Inputs:  handed,
	Sources: []string{"geometry", "common-practice"},
	Draw:    drawHanded,
	Work: func(v problem.Values) (problem.Working, error) {
		return v.Working().Choice(map[string]string{
			"outside-right": "to-headstock", "outside-left": "to-tailstock", "inside-right": "to-headstock", "inside-left": "to-tailstock",
		}[v.Word("kind")])
	},
	Errors: []problem.CommonError{
		{Name: "same", Work: optionUnlessIn("kind", "same", "outside-right", "inside-right")},
		{Name: "to-tailstock", Work: optionUnlessIn("kind", "to-tailstock", "outside-left", "inside-left")},
		{Name: "rev-spindle"},
		{Name: "flip-tool"},
		{Name: "tool-decides"},
	},
})

// handed are the inputs of the tasks that turn on the hand of a thread, and on
// whether it is an outside or an inside one.
var handed = []problem.Input{
	{Name: "kind", Symbol: "kind", Type: problem.InputWord, Words: []string{"outside-right", "outside-left", "inside-right", "inside-left"}},
	{Name: "thread", Symbol: "thread", Type: problem.InputThread, Extra: true},
}

// drawHanded draws one of the four kinds, with a drawing's callout that says the
// same.
func drawHanded(d *problem.Draw) problem.Values {
	v := d.Values()
	side, hand := problem.Pick(d, calc.Outside, calc.Inside), problem.Pick(d, calc.LeftHand, calc.RightHand)
	t := d.Thread(calc.Inch/14, calc.Inch/4)
	t.Hand, t.Class = hand, "2A"
	switch {
	case t.Metric && side == calc.Inside:
		t.Class = "6H"
	case t.Metric:
		t.Class = "6g"
	case side == calc.Inside:
		t.Class = "2B"
	}
	v.SetWord("kind", side.String()+"-"+hand.String())
	v.SetThread("thread", t)
	d.Job(&v, side)
	return v
}
