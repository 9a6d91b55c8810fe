package tasks

import (
	"scratchpass/calc"
	"scratchpass/quiz"
	"scratchpass/quiz/machine"
)

var _ = register(quiz.Task{
	Name: "gear-ratio", Stage: quiz.SetUp,
	Inputs: inputs(quiz.ThreadInputs, screwInput,
		quiz.Input{Name: "stud", Symbol: "A", Is: quiz.ACount, Low: 12, High: 240, Extra: true},
		quiz.Input{Name: "idler", Symbol: "i", Is: quiz.ACount, Low: 12, High: 240, Extra: true}),
	Tol:     quiz.Tolerance{Else: 0.003},
	Systems: []machine.System{machine.Imperial},
	Sources: []string{"jones-1914", "rose"},
	Draw: func(d *quiz.Draw) quiz.Values {
		v := d.Values()
		t := d.Thread(calc.Inch/20, calc.Inch/6)
		d.TellAs(&v, t, calc.Outside, map[bool]string{true: "tpi", false: "callout"}[d.Level == quiz.NumbersGiven])
		screw := drawScrew(d)
		v.Set("lead-screw", screw)
		// Gears that would cut the thread: the ratio, times a whole number of teeth.
		least, most := int(23/screw)+1, int(min(80/screw, 127/t.TPI.Number()))
		if most < least {
			return quiz.Values{}
		}
		v.Set("stud", calc.Round(screw*float64(d.Between(least, most)), 0))
		v.Set("idler", quiz.Pick(d, 30.0, 36, 45, 50, 54, 60, 66, 72))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v quiz.Values) (quiz.Working, error) {
		if err := oneStart(v); err != nil {
			return quiz.Working{}, err
		}
		w := v.Working()
		formula := "N / n"
		switch {
		case v.Has("pitch"):
			formula = "P x N"
		case v.Has("thread") && v.Thread("thread").Metric:
			w.Pitch()
			formula = "P x N"
		case v.Has("thread"):
			w.Number("n", "", machine.TPIUnit)(v.Thread("thread").TPI.Number(), nil)
		}
		w.Number("r", formula, machine.PlainUnit)(calc.GearRatio(v.Pitch(), screwLead(v)))
		return w.Quantity()
	},
	Slips: []quiz.Slip{
		{Name: "invert", Work: func(v quiz.Values) quiz.Reply { return quiz.X(perInch(v) / v.X("lead-screw")) }},
		{Name: "idler", Work: func(v quiz.Values) quiz.Reply {
			if !v.Has("stud") || !v.Has("idler") {
				return quiz.NoAnswer
			}
			return quiz.X(v.X("lead-screw") / perInch(v) * v.X("stud") / v.X("idler"))
		}},
		{Name: "sum", Work: func(v quiz.Values) quiz.Reply {
			return quiz.X(v.X("lead-screw") / (v.X("lead-screw") + perInch(v)))
		}},
		{Name: "lead-mult", Work: func(v quiz.Values) quiz.Reply { return quiz.X(1 / (v.X("lead-screw") * perInch(v))) }},
	},
})

// screwInput is the lead screw of the lathe.
var screwInput = quiz.Input{Name: "lead-screw", Symbol: "N", Is: quiz.AScrew, Low: 1, High: 20}

// drawScrew draws the threads per inch of a lead screw, on the job the learner's own
// where it is an inch one.
func drawScrew(d *quiz.Draw) float64 {
	switch {
	case d.Level != quiz.OnTheJob:
		return quiz.Pick(d, 4.0, 6, 8, 8)
	case d.Lathe.Metric:
		return machine.InchLathe.LeadScrew
	}
	return d.Lathe.LeadScrew
}

func screwLead(v quiz.Values) calc.Length { return calc.Inch.Times(1 / v.X("lead-screw")) }
