package safety

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

// chuckAlone is how many diameters a part may stand out without a centre, by the
// shop rule that the prompt states.
const chuckAlone = 3

var _ = shared.Register(problem.Task{
	Name: "support-the-work", Stage: problem.Safety, Kind: answer.Choice,
	Inputs: []problem.Input{
		shared.LengthInput("stickout", "L", 0.1, 40),
		{Name: "diameter", Symbol: "d", Type: problem.InputLength, Low: 0.05, High: 20, Group: "diameter"},
		{Name: "thread", Symbol: "thread", Type: problem.InputThread, Group: "diameter"},
	},
	Sources: []string{"lathe-manual", "common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		thick := d.IntN(2) == 0 // as often a part that needs no centre as one that does
		for range 60 {
			if v := drawSupport(d, thick); v.Has("stickout") {
				return v
			}
		}
		return problem.Values{}
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		if v.Has("thread") {
			w.Length("d", "")(v.Thread("thread").Nominal, nil)
		}
		w.Number("q", "L / d", machine.PlainUnit)(standsOut(v), nil)
		if standsOut(v) > chuckAlone {
			return w.Choice("centre")
		}
		return w.Choice("chuck-only")
	},
	Errors: []problem.CommonError{
		{Name: "invert", Work: optionIfLong("invert", true)},
		{Name: "abs-len", Work: optionIfLong("abs-len", true)},
		{Name: "slow-speed", Work: optionIfLong("slow-speed", true)},
		{Name: "chuck-only", Work: optionIfLong("chuck-only", true)},
		{Name: "centre", Work: optionIfLong("centre", false)},
		{Name: "abs-len-long", Work: optionIfLong("abs-len-long", false)},
		{Name: "radius", Work: func(v problem.Values) answer.Response {
			if 2*standsOut(v) <= chuckAlone { // by the radius too it needs no centre
				return answer.NoResponse
			}
			return optionIfLong("radius", false)(v)
		}},
	},
})

// standsOut is how many diameters the part stands out.
func standsOut(v problem.Values) float64 {
	diameter := v.Length("diameter")
	if v.Has("thread") {
		diameter = v.Thread("thread").Nominal
	}
	return v.Length("stickout").Over(diameter)
}

// optionIfLong is a wrong option for the parts that need a centre, or for those
// that need none.
func optionIfLong(option string, long bool) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response {
		if (standsOut(v) > chuckAlone) != long {
			return answer.NoResponse
		}
		return answer.OptionsResponse(option)
	}
}

// drawSupport draws a part that needs a centre, or a thick one that does not; empty
// where the numbers do not suit.
func drawSupport(d *problem.Draw, thick bool) problem.Values {
	v := d.Values()
	t := d.Thread(calc.Inch/20, calc.Inch/4)
	diameter, share := t.Nominal, d.Steps(3.6, 6.4, 0.2)
	least, most := 0.75, 6.5
	if thick { // it stands out more than 3 radii and less than 3 diameters
		share, least = d.Steps(1.8, 2.6, 0.2), 1.25
	}
	stickout := calc.Inches(calc.Round(diameter.Times(share).Inches()*8, 0) / 8)
	if d.System == machine.Metric {
		stickout = calc.Millimetres(calc.Round(diameter.Times(share).Millimetres()/5, 0) * 5)
	}
	q := stickout.Over(diameter)
	if q < 1.7 || q > 2.7 && q < 3.4 || stickout < calc.Inches(least) || stickout > calc.Inches(most) {
		return problem.Values{}
	}
	v.SetLength("stickout", stickout)
	if d.Level == problem.DeriveFirst {
		v.SetThread("thread", t)
	} else {
		v.SetLength("diameter", diameter)
	}
	v.Say("stickout", d.System.Length().Text(stickout.Inches())) // the job tells the length that counts
	d.Job(&v, calc.Outside)
	return v
}
