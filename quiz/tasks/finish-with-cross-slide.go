package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
	"scratchpass/quiz/machine"
)

var _ = register(quiz.Task{
	Name: "finish-with-cross-slide", Stage: quiz.Infeed,
	Inputs: inputs([]quiz.Input{length("total", "c", 0.01, 0.5), length("done", "c1", 0, 0.5),
		{Name: "dial-reads", Symbol: "dial", Is: quiz.AWord, Words: []string{"diameter", "radius"}}}, compoundAngle...),
	Tol:     quiz.Tolerance{Inch: 0.0005, MM: 0.012},
	Scrap:   quiz.ScrapHigh,
	Sources: []string{"geometry", "dial-marking"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		done := d.Length(38, 110, 100, 280)
		v.SetLength("done", done)
		left := calc.Inches(d.Steps(0.004, 0.011, 0.0001))
		if d.System == machine.Metric {
			left = calc.Millimetres(d.Steps(0.1, 0.28, 0.01))
		}
		v.SetLength("total", done+left)
		v.SetWord("dial-reads", dialReads(d))
		tellAngle(d, &v)
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		w := v.Working()
		left := w.Length("g", "c - c1")(v.Length("total")-v.Length("done"), nil)
		h := w.Length("h", "g x cos(a)")(calc.RadialOfCompound(left, angleStep(w, v)))
		if v.Word("dial-reads") == "diameter" {
			w.Length("m", "2 x h")(calc.DialMove(h, calc.ReadsDiameter))
		} else {
			w.Length("m", "h")(calc.DialMove(h, calc.ReadsRadius))
		}
		return w.Quantity()
	},
	Slips: []quiz.Slip{
		{Name: "no-cos", Work: func(v quiz.Values) quiz.Reply {
			if v.Word("dial-reads") == "radius" {
				return quiz.NoAnswer // on this dial that is the slip of keeping the compound's figure
			}
			return quiz.L(compoundLeft(v).Times(2))
		}},
		{Name: "radius", Work: func(v quiz.Values) quiz.Reply {
			if v.Word("dial-reads") == "radius" {
				return quiz.NoAnswer
			}
			return quiz.L(compoundLeft(v).Times(angleOf(v).Cos()))
		}},
		{Name: "keeps-compound", Work: func(v quiz.Values) quiz.Reply { return quiz.L(compoundLeft(v)) }},
		{Name: "diameter-habit", Work: func(v quiz.Values) quiz.Reply {
			if v.Word("dial-reads") == "diameter" {
				return quiz.NoAnswer
			}
			return quiz.L(compoundLeft(v).Times(2 * angleOf(v).Cos()))
		}},
	},
})

func compoundLeft(v quiz.Values) calc.Length { return v.Length("total") - v.Length("done") }

// dialReads draws what a cross-slide dial reads; as on the job it is the learner's.
func dialReads(d *quiz.Draw) string {
	if d.Level == quiz.OnTheJob {
		if d.Lathe.CrossReads == calc.ReadsDiameter {
			return "diameter"
		}
		return "radius"
	}
	return quiz.Pick(d, "diameter", "diameter", "radius")
}
