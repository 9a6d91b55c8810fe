package setup

import (
	"slices"
	"strconv"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

// threadDialInputs are a thread, a lead screw and a thread dial.
var threadDialInputs = shared.Inputs(problem.ThreadInputs, screwInput,
	problem.Input{Name: "gear", Symbol: "T", Type: problem.InputCount, Low: 8, High: 96},
	problem.Input{Name: "marks", Symbol: "M", Type: problem.InputCount, Low: 2, High: 32})

// drawThreadDial draws a thread and a dial on the learner's lead screw, and returns
// the dial that is usual there.
func drawThreadDial(d *problem.Draw, v *problem.Values) (usual calc.ThreadDial) {
	lathe := d.Lathe
	if _, ok := lathe.ThreadDial(); !ok || lathe.Metric != (d.System == machine.Metric) {
		lathe = machine.DefaultLathe(d.System)
	}
	v.Set("lead-screw", lathe.LeadScrew)
	dial := problem.Pick(d, dials[d.System]...)
	v.Set("gear", float64(dial[0]))
	v.Set("marks", float64(dial[1]))
	way := "callout"
	if d.Level == problem.NumbersGiven {
		way = map[machine.System]string{machine.Imperial: "tpi", machine.Metric: "pitch"}[d.System]
	}
	d.TellAs(v, d.Thread(calc.Inch/26, calc.Inch/6), calc.Outside, way)
	usual, _ = lathe.ThreadDial() // it has one: see above
	return usual
}

// marksWorking begins the working with the travel and the threads from one mark of
// the dial to the next, which it returns too.
func marksWorking(v problem.Values) (*problem.Working, float64, error) {
	if err := shared.OneStart(v); err != nil {
		return nil, 0, err
	}
	w := v.Working()
	pitch, between := v.Pitch(), calc.ThreadsPerMark
	switch {
	case v.Has("tpi"):
	case v.Has("thread") && !v.Thread("thread").Metric:
		w.Number("n", "", machine.TPIUnit)(v.Thread("thread").TPI.Number(), nil)
	default:
		pitch, between = w.Pitch(), calc.ThreadsPerMarkByPitch
	}
	spacingStep(w, v)
	return w, problem.Step2(w, "y", between, threadDial(v), pitch), nil
}

func threadDial(v problem.Values) calc.ThreadDial {
	screw := calc.ThreadsPerInch(v.X("lead-screw"))
	if v.System == machine.Metric {
		screw = calc.ThreadsPerInch(calc.MillimetresPerInch / v.X("lead-screw"))
	}
	return calc.ThreadDial{LeadScrew: screw, Teeth: v.Count("gear"), Marks: v.Count("marks")}
}

// spacingStep adds the step to the travel between marks: a metric lead screw is known by
// its pitch, an inch one by its threads per inch.
func spacingStep(w *problem.Working, v problem.Values) {
	spacing := calc.MarkSpacing
	if v.System == machine.Metric {
		spacing = calc.MarkSpacingMM
	}
	problem.Step1(w, "u", spacing, threadDial(v))
}

// markNames names the marks that stand so many marks after the first cut's.
func markNames(v problem.Values, after []int) []string {
	names := make([]string, 0, len(after))
	for _, k := range after {
		names = append(names, strconv.Itoa((v.Count("first")-1+k)%v.Count("marks")+1))
	}
	return names
}

// face names all marks in their order on the face.
func face(v problem.Values) []string {
	var names []string
	for i := range v.Count("marks") {
		names = append(names, strconv.Itoa(i+1))
	}
	return names
}

// partOf reports whether some of the right marks were given and no wrong one.
func partOf(key, given answer.Response) bool {
	for _, k := range given.Keys {
		if !slices.Contains(key.Keys, k) {
			return false
		}
	}
	return len(given.Keys) > 0 && len(given.Keys) < len(key.Keys)
}

// noneFits is the error of using no mark at all where some do.
func noneFits(v problem.Values) answer.Response {
	if safe, _ := threadDial(v).SafeMarks(v.Pitch()); len(safe) == 0 {
		return answer.NoResponse
	}
	return answer.OptionsResponse()
}

func everyMark(v problem.Values, from, step int) []int {
	var marks []int
	for k := from; k < v.Count("marks"); k += step {
		marks = append(marks, k)
	}
	return marks
}

// unlessKey is an error's set of marks, unless it happens to be right here.
func unlessKey(v problem.Values, marks []int) answer.Response {
	safe, _ := threadDial(v).SafeMarks(v.Pitch())
	all := true
	for _, k := range marks {
		all = all && slices.Contains(safe, k)
	}
	if all && len(marks) != 1 { // only safe marks among them: no error
		return answer.NoResponse
	}
	if slices.Equal(safe, marks) {
		return answer.NoResponse
	}
	return answer.OptionsResponse(markNames(v, marks)...)
}
