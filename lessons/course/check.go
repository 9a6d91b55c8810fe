package course

import (
	"slices"

	"scratchpass/content"
	"scratchpass/lessons/page"
	"scratchpass/lessons/sitting"
)

// check asks mixed problems without a word in between and tells at the end. Who has all of
// them right has finished the lesson; else the part to take again is where it goes on.
func (r run) check() error {
	l := r.lesson
	n := len(l.Check.Tasks)
	if err := r.Show(page.Page{page.Heading{Text: r.Say("say-check")}, page.Paragraph{Text: r.Say("say-check-rules", "n", n)}}); err != nil {
		return err
	}
	rules := r.Rules
	rules.AtTheEnd = true
	before := len(r.Answers)
	got, err := r.AskAllThenTell(n, r.OneOfEach(l.Check.Tasks, levelOf(l.Check.Level)), rules)
	if err != nil {
		return err
	}
	goOnAt, closing := len(l.Parts), r.Say("say-check-passed")
	if again := failedParts(l, r.Answers[before:]); got < n && len(again) > 0 {
		goOnAt = again[0]
		closing = r.Say("say-check-part", "part", goOnAt+1, "title", l.Parts[goOnAt].Title)
		if len(again) > 1 {
			closing = r.Say("say-check-parts", "n", len(again), "part", goOnAt+1, "title", l.Parts[goOnAt].Title)
		}
		if r.Book != nil {
			closing += " " + r.Say("say-check-goes-on")
		}
	} else if got < n { // what went wrong is from another lesson
		closing = r.Say("say-check-again")
	}
	if err := r.remember(goOnAt); err != nil {
		return err
	}
	gains, err := Gains(r.Sitting)
	if err != nil {
		return err
	}
	p := page.Page{page.Heading{Text: r.Say("say-check-result", "right", got, "of", n)}, page.Paragraph{Text: closing}}
	return r.Show(append(append(p, gains...), r.Rehearsal()))
}

// failedParts are the parts of a lesson that bring what was answered wrong, in their order.
func failedParts(l content.Lesson, answers []sitting.Answered) []int {
	var parts []int
	for i, part := range l.Parts {
		if slices.ContainsFunc(answers, func(a sitting.Answered) bool { return a.Task == part.Task && !a.Mark.Correct() }) {
			parts = append(parts, i)
		}
	}
	return parts
}
