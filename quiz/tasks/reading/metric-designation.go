package reading

import (
	"strings"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

var _ = shared.Register(problem.Task{
	Name: "metric-designation", Stage: problem.Reading, Kind: answer.Designation,
	Inputs: []problem.Input{
		{Name: "thread", Symbol: "thread", Type: problem.InputThread},
		{Name: "written", Symbol: "written", Type: problem.InputWord, Words: []string{"pitch", "no-pitch"}, Extra: true},
	},
	Systems: []machine.System{machine.Metric},
	Sources: []string{"iso-261", "iso-965"},
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		t := d.Thread(calc.Millimetres(1), calc.Millimetres(4.5))
		written := problem.Pick(d, "pitch", "no-pitch")
		side := problem.Pick(d, calc.Outside, calc.Inside)
		t.Class = problem.Pick(d, "6g", "6g", "6h", "4g6g")
		if side == calc.Inside {
			t.Class = problem.Pick(d, "6H", "6H", "6G")
		}
		callout := t.String()
		if written == "no-pitch" {
			coarse, ok := calc.MetricCoarsePitch(t.Nominal)
			if !ok || !shared.Same(coarse.Millimetres(), t.Pitch.Millimetres()) {
				return problem.Values{} // only a coarse pitch may be left out
			}
			callout = "M" + t.Size + "-" + t.Class
		}
		v.SetThread("thread", t)
		v.SetWord("written", written)
		v.Say("callout", callout)
		v.Say("coarse-table", coarseLines(t.Nominal))
		d.Job(&v, side)
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		done, err := w.Reading(metricFields(v.Thread("thread"))...)
		done.Expected.Unit = machine.MMUnit // for the example that an unreadable answer gets
		return done, err
	},
	Errors: []problem.CommonError{
		{Name: "pitch-as-tpi", Work: misreadMetric("pitch", func(fields [][2]string, t calc.Designation) {
			pitch, _ := calc.ThreadsPerInch(t.Pitch.Millimetres()).Pitch()
			fields[1][1] = calc.Shortest(calc.Round(pitch.Millimetres(), 2), 2)
		})},
		{Name: "g-case", Work: misreadMetric("", func(fields [][2]string, t calc.Designation) {
			fields[2][1] = map[string]string{"outside": "inside", "inside": "outside"}[fields[2][1]]
		})},
		{Name: "coarse-only", Work: misreadMetric("no-pitch", func(fields [][2]string, _ calc.Designation) { fields[1][1] = "1" })},
		{Name: "grade-as-pitch", Work: misreadMetric("no-pitch", func(fields [][2]string, t calc.Designation) { fields[1][1] = t.Class[:1] })},
	},
})

// metricFields takes a metric designation apart in the order it is asked for.
func metricFields(t calc.Designation) [][2]string {
	side, _ := t.Side()
	return [][2]string{
		{"diameter", calc.Shortest(t.Nominal.Millimetres(), 4)},
		{"pitch", calc.Shortest(t.Pitch.Millimetres(), 4)},
		{"side", side.String()},
	}
}

// misreadMetric is what someone answers who misreads one field, where the pitch is
// written, is not, or either.
func misreadMetric(written string, change func([][2]string, calc.Designation)) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response {
		t := v.Thread("thread")
		if t.Class == "" || written != "" && v.Word("written") != written {
			return answer.NoResponse
		}
		wrong, right := metricFields(t), metricFields(t)
		if change(wrong, t); wrong[1] == right[1] && wrong[2] == right[2] {
			return answer.NoResponse
		}
		return answer.Response{Fields: wrong}
	}
}

// coarseLines are the lines of the coarse table next to a diameter.
func coarseLines(nominal calc.Length) string {
	sizes := []float64{8, 10, 12, 14, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 42, 45, 48, 52}
	at := 1
	for at < len(sizes)-2 && sizes[at] < nominal.Millimetres() && !shared.Same(sizes[at], nominal.Millimetres()) {
		at++
	}
	var lines []string
	for _, size := range sizes[at-1 : at+2] {
		pitch, _ := calc.MetricCoarsePitch(calc.Millimetres(size))
		lines = append(lines, "M"+calc.Shortest(size, 2)+" "+calc.Shortest(pitch.Millimetres(), 2))
	}
	return strings.Join(lines, ", ")
}
