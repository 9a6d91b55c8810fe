package set

import (
	"strconv"
	"strings"

	"scratchpass/quiz/handout"
)

// onlyMissed leaves of a feedback, which has a part for each question, what lost points or
// waits for the instructor: with its drawing and the lesson that teaches it. What was right
// is told in one line.
func (p *Printer) onlyMissed(report handout.Report, r Result) handout.Report {
	var right []string
	var missed []handout.Part
	for i, part := range report.Parts {
		res, it := r.Items[i], r.items[i]
		if res.Verdict == NotAsked {
			continue
		}
		if res.Points >= res.Of && !undecided(res.Verdict) {
			right = append(right, strconv.Itoa(res.Number))
			continue
		}
		if undecided(res.Verdict) { // nothing is known of it yet
			missed = append(missed, part)
			continue
		}
		if d, err := it.Words.Drawing(it.Problem, p.drawings); err == nil { // the sheet had it, so there is no error
			part.Drawing = d
		}
		if in, ok := p.lessons()[it.Problem.Task.Name]; ok {
			part.Lines = append(part.Lines, p.Say("set-report-reteach", "lesson", in.Lesson, "part", in.Part))
		}
		missed = append(missed, part)
	}
	switch {
	case len(missed) == 0:
		report.Facts = append(report.Facts, p.Say("set-feedback-all"))
	case len(right) > 0:
		report.Facts = append(report.Facts, p.Say("set-feedback-right", "n", strings.Join(right, ", ")))
	}
	report.Parts, report.Brief = missed, true
	return report
}
