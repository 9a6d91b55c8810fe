package setup

import (
	"cmp"
	"maps"
	"slices"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "starts-by-chasing-dial", Stage: problem.SetUp, Kind: answer.Several,
	Inputs: shared.Inputs([]problem.Input{problem.ThreadInputs[0], problem.ThreadInputs[1], screwInput,
		{Name: "gear", Symbol: "T", Type: problem.InputCount, Low: 8, High: 96},
		{Name: "marks", Symbol: "M", Type: problem.InputCount, Low: 2, High: 32}},
		problem.Input{Name: "starts", Symbol: "z", Type: problem.InputCount, Low: 2, High: 4},
		problem.Input{Name: "first", Symbol: "first", Type: problem.InputCount, Low: 1, High: 32}),
	Sources: []string{"tm-1-420", "geometry"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		drawOtherStarts(d, &v)
		v.Set("first", float64(1+d.IntN(v.Count("marks"))))
		d.Job(&v, calc.Outside)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		between := calc.ThreadsPerMark
		if v.Has("pitch") {
			between = calc.ThreadsPerMarkByPitch
		}
		spacingStep(w, v)
		pitches := problem.Step2(w, "p", between, threadDial(v), v.Pitch())
		w.Number("y", "p / z", machine.PlainUnit)(pitches/v.X("starts"), nil)
		marks, err := threadDial(v).OtherStarts(v.Pitch(), v.Count("starts"))
		if err != nil {
			return problem.Working{}, err
		}
		return w.Several(face(v), markNames(v, marks))
	},
	Errors: []problem.CommonError{
		{Name: "same-start", Work: func(v problem.Values) answer.Response {
			same, _ := threadDial(v).SafeMarks(leadTold(v)) // Work reports the error
			return answer.OptionsResponse(markNames(v, same)...)
		}},
		{Name: "any-groove", Work: func(v problem.Values) answer.Response {
			grooves, _ := threadDial(v).SafeMarks(v.Pitch())
			if same, _ := threadDial(v).SafeMarks(leadTold(v)); len(same) == len(grooves) {
				return answer.NoResponse // then that is the error of the same start
			}
			return answer.OptionsResponse(markNames(v, grooves)...)
		}},
		{Name: "none-fits", Work: func(v problem.Values) answer.Response {
			if len(otherStarts(v)) == 0 {
				return answer.NoResponse
			}
			return answer.OptionsResponse()
		}},
		{Name: "one-only", Partial: partOf, Work: func(v problem.Values) answer.Response {
			marks := otherStarts(v)
			if len(marks) < 2 {
				return answer.NoResponse
			}
			return answer.OptionsResponse(markNames(v, marks[:1])...)
		}},
	},
})

// leadTold is the lead of the thread that was told.
func leadTold(v problem.Values) calc.Length { return v.Pitch().Times(v.X("starts")) }

// otherStarts are the marks of the key.
func otherStarts(v problem.Values) []int {
	marks, _ := threadDial(v).OtherStarts(v.Pitch(), v.Count("starts")) // Work reports the error
	return marks
}

// startsCase is a dial with a pitch and a number of starts.
type startsCase struct {
	dial   [2]int
	pitch  calc.Designation
	starts int
}

// drawOtherStarts draws a dial, a pitch and starts so that each answer is about as likely
// as another: cases are drawn by the marks that are right, and those that may stand at more
// places of the face more often.
func drawOtherStarts(d *problem.Draw, v *problem.Values) {
	own, screw := ownDial(d)
	cases := map[[2]int][]startsCase{}
	for _, dial := range dials[d.System] {
		own.Teeth, own.Marks = dial[0], dial[1]
		for _, threads := range d.Threads(calc.Inch/26, calc.Inch/5) {
			for starts := 2; starts <= 3; starts++ {
				same, err := own.SafeMarks(threads[0].Pitch.Times(float64(starts)))
				others, err2 := own.OtherStarts(threads[0].Pitch, starts)
				if err == nil && err2 == nil && len(same) > 0 {
					group := [2]int{len(others), dial[1] / len(same)}
					cases[group] = append(cases[group], startsCase{dial, threads[0], starts})
				}
			}
		}
	}
	var weighted [][2]int
	for _, group := range slices.SortedFunc(maps.Keys(cases), func(a, b [2]int) int { return cmp.Or(a[0]-b[0], a[1]-b[1]) }) {
		places := group[1] // so many marks on, and the same ones are right again
		if group[0] == 0 {
			places = 1
		}
		for range places {
			weighted = append(weighted, group)
		}
	}
	one := problem.Pick(d, cases[problem.Pick(d, weighted...)]...)
	v.Set("lead-screw", screw)
	v.Set("gear", float64(one.dial[0]))
	v.Set("marks", float64(one.dial[1]))
	v.Set("starts", float64(one.starts))
	if d.System == machine.Metric {
		v.SetLength("pitch", one.pitch.Pitch)
		return
	}
	v.Set("tpi", one.pitch.TPI.Number())
}
