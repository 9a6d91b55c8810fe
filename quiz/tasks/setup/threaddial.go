package setup

import (
	"cmp"
	"maps"
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

// ownDial is the thread dial of the learner's lathe, or of the one that ships where the
// learner's has none or is of the other units.
func ownDial(d *problem.Draw) (dial calc.ThreadDial, leadScrew float64) {
	lathe := d.Lathe
	if _, ok := lathe.ThreadDial(); !ok || lathe.Metric != (d.System == machine.Metric) {
		lathe = machine.DefaultLathe(d.System)
	}
	dial, _ = lathe.ThreadDial() // it has one: see above
	return dial, lathe.LeadScrew
}

// drawThreadDial draws a thread and one of the dials, or of all common ones where there is
// none, on the learner's lead screw, and returns how many marks fit. Each answer is about
// as likely as another: drawn by threads and dials, half of them would be one and the same.
// answers tells in how many ways so many of the marks may fit.
func drawThreadDial(d *problem.Draw, v *problem.Values, way string, among [][2]int, answers func(fit, marks int) int) (fit int) {
	if among == nil {
		among = dials[d.System]
	}
	dial, screw := ownDial(d)
	cases := fittingCases(dial, d.Threads(calc.Inch/26, calc.Inch/5), among)
	var weighted [][2]int
	for _, group := range slices.SortedFunc(maps.Keys(cases), func(a, b [2]int) int { return cmp.Or(a[0]-b[0], a[1]-b[1]) }) {
		for range answers(group[0], group[1]) {
			weighted = append(weighted, group)
		}
	}
	group := problem.Pick(d, weighted...)
	one := problem.Pick(d, cases[group]...)
	v.Set("lead-screw", screw)
	v.Set("gear", float64(one.dial[0]))
	v.Set("marks", float64(one.dial[1]))
	d.TellAs(v, problem.Pick(d, one.threads...), calc.Outside, way)
	return group[0]
}

// fittingCase is a dial with the threads of one pitch.
type fittingCase struct {
	dial    [2]int
	threads []calc.Designation
}

// fittingCases are all dials with all pitches, by how many of how many marks fit.
func fittingCases(own calc.ThreadDial, pitches [][]calc.Designation, among [][2]int) map[[2]int][]fittingCase {
	cases := map[[2]int][]fittingCase{}
	for _, dial := range among {
		own.Teeth, own.Marks = dial[0], dial[1]
		for _, threads := range pitches {
			if safe, err := own.SafeMarks(threads[0].Pitch); err == nil {
				group := [2]int{len(safe), dial[1]}
				cases[group] = append(cases[group], fittingCase{dial, threads})
			}
		}
	}
	return cases
}

// setsOfMarks is how many sets of marks may be right where so many of them fit: one for
// each mark that the first cut may have been on, until they repeat.
func setsOfMarks(fit, marks int) int {
	if fit == 0 {
		return 1
	}
	return marks / fit
}

// tellDial is how a thread is told beside a dial: by its number at level 1.
func tellDial(d *problem.Draw) string {
	if d.Level == problem.NumbersGiven {
		return map[machine.System]string{machine.Imperial: "tpi", machine.Metric: "pitch"}[d.System]
	}
	return "callout"
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
