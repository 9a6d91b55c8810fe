package shared

import (
	"strconv"

	"scratchpass/calc"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// TellStarts tells a thread of several starts: its numbers at level 1, above it the
// drawing's callout, which names the starts too.
func TellStarts(d *problem.Draw, v *problem.Values, t calc.Designation) {
	v.Set("starts", float64(t.Starts))
	if d.Level == problem.NumbersGiven {
		d.Tell(v, t, calc.Outside)
		return
	}
	d.TellAs(v, t, calc.Outside, "callout")
}

// SameStarts refuses a callout that names other starts than the ones given.
func SameStarts(v problem.Values) error {
	if v.Has("thread") && v.Thread("thread").Starts != v.Count("starts") {
		return &calc.InputError{What: "starts", Got: strconv.Itoa(v.Count("starts")), Want: "the starts that the thread names, " + strconv.Itoa(v.Thread("thread").Starts)}
	}
	return nil
}

// StartsInput is the number of starts of a thread that is told by its pitch; a
// callout names it already.
var StartsInput = problem.Input{Name: "starts", Symbol: "z", Type: problem.InputCount, Low: 1, High: 12, Extra: true}

// StartsOf is the number of starts, whichever way the thread was told.
func StartsOf(v problem.Values) float64 {
	if v.Has("thread") {
		return float64(v.Thread("thread").Starts)
	}
	return v.X("starts")
}

// LeadStep adds the step from the pitch to the lead, and before it the starts of a
// callout.
func LeadStep(w *problem.Working, v problem.Values, pitch calc.Length) calc.Length {
	if err := onlyWithoutCallout(v, StartsInput); err != nil {
		w.Refuse(err)
		return 0
	}
	if v.Has("thread") {
		w.Number("z", "", machine.CountUnit)(StartsOf(v), nil)
	}
	return problem.Step2(w, "l", calc.LeadOfStarts, pitch, int(StartsOf(v)))
}

// PerInch is the threads per inch, whichever way the thread was told.
func PerInch(v problem.Values) float64 { return calc.Inch.Over(v.Pitch()) }

// OneStart refuses a designation of several starts where the pitch stands for the
// lead.
func OneStart(v problem.Values) error {
	if v.Has("thread") && v.Thread("thread").Starts > 1 {
		return &calc.InputError{What: "thread", Got: calc.Quoted(v.Thread("thread").String()), Want: "a thread with one start"}
	}
	return nil
}
