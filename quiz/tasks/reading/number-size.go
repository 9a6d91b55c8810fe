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
	Name: "number-size", Stage: problem.Reading, Kind: answer.Quantity,
	Inputs: []problem.Input{
		{Name: "number", Symbol: "N", Type: problem.InputCount, Low: 0, High: 12, Group: "thread"},
		problem.ThreadInputs[2],
	},
	Tolerance: answer.Tolerance{Inch: 0.0005},
	Systems:   []machine.System{machine.Imperial},
	Sources:   []string{"b1-1"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		t := numberedThread(d)
		if d.Level == problem.NumbersGiven {
			n, _ := screwNumber(t) // a numbered size was drawn
			v.Set("number", float64(n))
		} else {
			d.TellAs(&v, t, calc.Outside, "callout")
		}
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		number, err := numberTold(v)
		if v.Has("thread") {
			w.Number("N", "", machine.CountUnit)(float64(number), err)
		}
		problem.Step1(w, "D", calc.NumberedSize, number)
		return w.Quantity()
	},
	Errors: []problem.CommonError{
		{Name: "sixtyfourths", Work: byNumber(func(n float64) float64 { return n / 64 })},
		{Name: "hundredths", Work: byNumber(func(n float64) float64 { return n / 100 })},
		{Name: "no-base", Work: byNumber(func(n float64) float64 { return (numbered(1) - numbered(0)) * n })},
		{Name: "sum-first", Work: byNumber(func(n float64) float64 { return numbered(1) * n })},
	},
})

// numberedThread draws a standard coarse or fine thread of a numbered size.
func numberedThread(d *problem.Draw) calc.Designation {
	var all []calc.Designation
	for _, size := range calc.UnifiedSizes() {
		for _, s := range []calc.Series{calc.UNC, calc.UNF} {
			t := calc.Designation{Size: size.Size, Nominal: size.Nominal, TPI: size.TPI[s], Series: s, Starts: 1}
			if _, ok := screwNumber(t); ok && t.TPI > 0 && size.Nominal > 0.08 { // number 2 and up
				t.Pitch, _ = t.TPI.Pitch() // a standard thread
				all = append(all, t)
			}
		}
	}
	return problem.Pick(d, all...)
}

// screwNumber returns the number of a numbered size. A size of 1 may be an inch.
func screwNumber(t calc.Designation) (int, bool) {
	n, err := strconv.Atoi(t.Size)
	if err != nil || t.Metric {
		return 0, false
	}
	nominal, err := calc.NumberedSize.Of(n)
	return n, err == nil && shared.Same(nominal.Inches(), t.Nominal.Inches())
}

// numberTold is the screw number, whichever way it was told.
func numberTold(v problem.Values) (int, error) {
	if !v.Has("thread") {
		return v.Count("number"), nil
	}
	t := v.Thread("thread")
	n, ok := screwNumber(t)
	if !ok {
		return 0, &calc.InputError{What: "thread", Got: calc.Quoted(t.String()), Want: "a numbered size, such as 10-24 UNC-2A"}
	}
	return n, nil
}

// numbered is the diameter of a screw number, in inches.
func numbered(n int) float64 {
	d, _ := calc.NumberedSize.Of(n) // the numbers that are asked for have one
	return d.Inches()
}

// byNumber is the error of making a diameter of the number in another way.
func byNumber(size func(n float64) float64) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response {
		n, err := numberTold(v)
		if err != nil {
			return answer.NoResponse
		}
		return answer.NumberResponse(size(float64(n)))
	}
}
