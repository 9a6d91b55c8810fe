package setup

import (
	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

// turnedSize are the two ways of telling the diameter that a cutting speed is for:
// as a number, or as the thread on it.
var turnedSize = []problem.Input{
	{Name: "diameter", Symbol: "D", Type: problem.InputLength, Low: 0.1, High: 12, Group: "size"},
	{Name: "thread", Symbol: "thread", Type: problem.InputThread, Group: "size"},
}

func sizeOf(v problem.Values) calc.Length {
	if v.Has("thread") {
		return v.Thread("thread").Nominal
	}
	return v.Length("diameter")
}

// turningRule is the formula for turning in one system of units, of whose speed threading
// takes a share, and what problems about it are drawn from.
type turningRule struct {
	formula calc.Formula[func(v calc.SurfaceSpeed, diameter calc.Length) (calc.SpindleSpeed, error)]
	size    func(float64) calc.Length       // of a diameter that is drawn
	speed   func(float64) calc.SurfaceSpeed // of the turning speed that is told

	diameters, speeds stepRange
	threads           [2]calc.Length // least and largest nominal diameter
}

// stepRange is a range of numbers in steps.
type stepRange struct{ low, high, step float64 }

func (r stepRange) draw(d *problem.Draw) float64 { return d.Steps(r.low, r.high, r.step) }

// fastestFirstThread is the highest spindle speed that a problem leads to.
const fastestFirstThread = 150

// threadingSpeed is the task of finding the highest speed for a thread by a rule; the task
// given has what is not the same for all rules.
func threadingSpeed(r turningRule, t problem.Task) problem.Task {
	t.Stage, t.Kind, t.SafetyCritical = problem.SetUp, answer.Quantity, true
	t.Scrap, t.Tolerance = answer.ScrapHigh, answer.Tolerance{Relative: 0.05, Safe: answer.Below, Reach: 0.1}
	t.Sources = []string{"tm-1-420", "common-practice"}
	t.Draw, t.Work = r.draw, r.work
	return t
}

func (r turningRule) draw(d *problem.Draw) problem.Values {
	v := d.Values()
	diameter := r.size(r.diameters.draw(d))
	if d.Level == problem.NumbersGiven {
		v.SetLength("diameter", diameter)
	} else {
		t := shared.FirstThread(d)
		d.TellAs(&v, t, calc.Outside, "callout")
		if t.Nominal < r.threads[0] || t.Nominal > r.threads[1] {
			return problem.Values{}
		}
	}
	v.Set("turning-speed", r.speeds.draw(d))
	// Not more than a first thread should turn at.
	if limit, err := r.limit(v); err != nil || limit > fastestFirstThread {
		return problem.Values{}
	}
	d.Job(&v, calc.Outside)
	return v
}

func (r turningRule) work(v problem.Values) (problem.Working, error) {
	w := v.Working()
	size := sizeOf(v)
	if v.Has("thread") {
		w.Length("D", "")(size, nil)
	}
	full := problem.Step2(w, "u", r.formula, r.speed(v.X("turning-speed")), size)
	w.Number("v", calc.ThreadingSpeed.Text, machine.RPMUnit)(calc.ThreadingSpeed.Of(full).RPM(), nil)
	return w.Quantity()
}

// limit is the answer in turns a minute.
func (r turningRule) limit(v problem.Values) (float64, error) {
	full, err := r.formula.Of(r.speed(v.X("turning-speed")), sizeOf(v))
	return calc.ThreadingSpeed.Of(full).RPM(), err
}

// times is the error that gives so many times the answer: of the rule, a factor was left
// out or another taken.
func (r turningRule) times(factor float64) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response {
		limit, err := r.limit(v)
		if err != nil {
			return answer.NoResponse
		}
		return answer.NumberResponse(limit * factor)
	}
}
