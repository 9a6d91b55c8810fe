package setup

import (
	"math"
	"strconv"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

// ladderSteps are the speeds of the lathe in a problem.
const ladderSteps = 6

var _ = shared.Register(problem.Task{
	Name: "which-spindle-speed", Stage: problem.SetUp, Kind: answer.Quantity, SafetyCritical: true,
	Inputs: shared.Inputs([]problem.Input{
		{Name: "by-cutting", Symbol: "v1", Type: problem.InputCount, Low: 10, High: 2000, Group: "cutting"},
		{Name: "turning", Symbol: "u", Type: problem.InputCount, Low: 40, High: 5000, Group: "cutting"},
		{Name: "by-stopping", Symbol: "v2", Type: problem.InputCount, Low: 10, High: 2000},
	}, ladderInputs()...),
	Scrap: answer.ScrapHigh, Tolerance: answer.Tolerance{Other: 1},
	Sources: []string{"common-practice"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		speed, ratio := d.Steps(30, 60, 5), d.Steps(1.3, 1.5, 0.05)
		speeds := make([]float64, ladderSteps)
		for i := range speeds {
			speeds[i] = 5 * calc.Round(speed/5, 0)
			v.Set(rung(i), speeds[i])
			speed *= ratio
		}
		limit := func() float64 { return float64(d.Between(int(speeds[0])+4, int(speeds[ladderSteps-1])-1)) }
		v.Set("by-stopping", limit())
		if d.Level == problem.NumbersGiven {
			v.Set("by-cutting", limit())
		} else {
			v.Set("turning", 4*limit())
		}
		shared.JobAt(d, &v, int(speeds[ladderSteps-1]), 0)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		for i := 1; i < ladderSteps; i++ {
			if v.X(rung(i)) <= v.X(rung(i-1)) {
				return problem.Working{}, &calc.InputError{What: rung(i), Got: calc.Shortest(v.X(rung(i)), 0), Want: "a speed above the one before it"}
			}
		}
		w := v.Working()
		cut := byCutting(v)
		if v.Has("turning") {
			w.Number("v1", calc.ThreadingSpeed.Text, machine.RPMUnit)(cut, nil)
		}
		limit := min(cut, v.X("by-stopping"))
		w.Number("m", "", machine.RPMUnit)(limit, nil)
		set, ok := highestUnder(v, limit)
		if !ok {
			w.Refuse(&calc.InputError{What: "the limit", Got: calc.Shortest(limit, 0) + " rpm", Want: "no less than the slowest speed of the lathe"})
		}
		w.Number("v", "", machine.RPMUnit)(set, nil)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "other-limit", Work: func(v problem.Values) answer.Response {
			set, ok := highestUnder(v, max(byCutting(v), v.X("by-stopping")))
			return ladderAnswer(set, ok)
		}},
		{Name: "next-up", Work: func(v problem.Values) answer.Response {
			limit := min(byCutting(v), v.X("by-stopping"))
			for i := range ladderSteps {
				if s := v.X(rung(i)); s > limit {
					other, _ := highestUnder(v, max(byCutting(v), v.X("by-stopping")))
					return ladderAnswer(s, !shared.Same(s, other)) // then the other limit explains it
				}
			}
			return answer.NoResponse
		}},
		{Name: "limit-itself", Work: func(v problem.Values) answer.Response {
			limit := min(byCutting(v), v.X("by-stopping"))
			set, _ := highestUnder(v, limit)
			return ladderAnswer(limit, math.Abs(limit-set) >= 4)
		}},
	},
})

// ladderInputs are the speeds that a lathe has, the slowest first.
func ladderInputs() []problem.Input {
	all := make([]problem.Input, ladderSteps)
	for i := range all {
		all[i] = problem.Input{Name: rung(i), Symbol: rung(i), Type: problem.InputCount, Low: 10, High: 3000}
	}
	return all
}

func rung(i int) string { return "speed-" + strconv.Itoa(i+1) }

// byCutting is the limit by the cutting speed.
func byCutting(v problem.Values) float64 {
	if v.Has("turning") {
		return calc.ThreadingSpeed.Of(calc.SpindleSpeed(v.X("turning"))).RPM()
	}
	return v.X("by-cutting")
}

// highestUnder is the highest speed of the lathe up to a limit, if it has one.
func highestUnder(v problem.Values, limit float64) (set float64, ok bool) {
	for i := range ladderSteps {
		if s := v.X(rung(i)); s <= limit {
			set, ok = s, true
		}
	}
	return set, ok
}

func ladderAnswer(speed float64, ok bool) answer.Response {
	if !ok {
		return answer.NoResponse
	}
	return answer.NumberResponse(speed)
}
