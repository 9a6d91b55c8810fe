package setup

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "gear-ratio", Stage: problem.SetUp, Kind: answer.Quantity,
	Inputs: shared.Inputs(problem.ThreadInputs, screwInput,
		problem.Input{Name: "stud", Symbol: "A", Type: problem.InputCount, Low: 12, High: 240, Extra: true},
		problem.Input{Name: "idler", Symbol: "i", Type: problem.InputCount, Low: 12, High: 240, Extra: true}),
	Tolerance: answer.Tolerance{Other: 0.003},
	Systems:   []machine.System{machine.Imperial},
	Sources:   []string{"jones-1914", "rose"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		t := d.Thread(calc.Inch/20, calc.Inch/6)
		way := "callout"
		if d.Level == problem.NumbersGiven {
			way = "tpi"
		}
		d.TellAs(&v, t, calc.Outside, way)
		screw := drawScrew(d)
		v.Set("lead-screw", screw)
		// Gears that would cut the thread: the ratio, times a whole number of teeth.
		least, most := int(23/screw)+1, int(min(80/screw, 127/t.TPI.Number()))
		if most < least {
			return problem.Values{}
		}
		v.Set("stud", calc.Round(screw*float64(d.Between(least, most)), 0))
		v.Set("idler", problem.Pick(d, 30.0, 36, 45, 50, 54, 60, 66, 72))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		if err := shared.OneStart(v); err != nil {
			return problem.Working{}, err
		}
		w := v.Working()
		ratio := calc.GearsInch
		switch {
		case v.Has("pitch"):
			ratio = calc.GearsByPitch
		case v.Has("thread") && v.Thread("thread").Metric:
			w.Pitch()
			ratio = calc.GearsByPitch
		case v.Has("thread"):
			w.Number("n", "", machine.TPIUnit)(v.Thread("thread").TPI.Number(), nil)
		}
		problem.Step2(w, "r", ratio, v.Pitch(), screwLead(v))
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "invert", Work: func(v problem.Values) answer.Response {
			ratio, err := calc.GearsInch.Of(v.Pitch(), screwLead(v))
			return shared.Worked(1/ratio, err)
		}},
		{Name: "idler", Work: func(v problem.Values) answer.Response {
			if !v.Has("stud") || !v.Has("idler") {
				return answer.NoResponse
			}
			ratio, err := calc.GearsInch.Of(v.Pitch(), screwLead(v))
			return shared.Worked(ratio*v.X("stud")/v.X("idler"), err)
		}},
		{Name: "sum", Work: func(v problem.Values) answer.Response {
			return answer.NumberResponse(v.X("lead-screw") / (v.X("lead-screw") + shared.PerInch(v)))
		}},
		{Name: "lead-mult", Work: func(v problem.Values) answer.Response {
			return answer.NumberResponse(1 / (v.X("lead-screw") * shared.PerInch(v)))
		}},
	},
})
