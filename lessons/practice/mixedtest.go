package practice

import (
	"scratchpass/lessons/course"
	"scratchpass/lessons/page"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/problem"
)

// MixedTest asks problems from all tasks that a first thread needs, those that can hurt
// someone first in the draw, without hints, and tells at the end. It keeps the result.
type MixedTest struct {
	Level problem.Level `json:"level"`
}

var _ sitting.Flow = MixedTest{}

// Name is under which the flow is stored.
func (MixedTest) Name() string { return "mixed-test" }

// Farewell is what is said to someone who stops in the middle of it.
func (MixedTest) Farewell(st *sitting.Sitting) string { return st.Stopped() }

// Run asks, tells and keeps the result.
func (f MixedTest) Run(st *sitting.Sitting) error {
	rules := sitting.Rules{NoHints: true, AtTheEnd: true, Certainty: sitting.AskedIfCritical}
	const n = schedule.MixedTestOf
	if err := st.Show(page.Page{page.Heading{Text: st.Say("test-title")}, page.Paragraph{Text: st.Say("test-rules", "n", n, "pass", schedule.MixedTestPass)}}); err != nil {
		return err
	}
	special := course.Special(st.Library)
	var critical, core []string
	for _, it := range course.Order(st.Library, st.System) {
		switch {
		case special[it.Task]:
		case it.SafetyCritical:
			critical = append(critical, it.Task)
		default:
			core = append(core, it.Task)
		}
	}
	names := append(st.Shuffled(critical, "")[:min(n/2, len(critical))], st.Shuffled(core, "")...)
	names = st.Shuffled(names[:min(n, len(names))], "")
	got, err := st.AskAllThenTell(len(names), st.OneOfEach(names, f.Level), rules)
	if err != nil {
		return err
	}
	closing := "test-failed"
	if got >= schedule.MixedTestPass {
		closing = "test-passed"
	}
	at := st.Now()
	if err := st.Show(page.Page{page.Heading{Text: st.Say("say-check-result", "right", got, "of", len(names))}, page.Paragraph{Text: st.Say(closing)}, st.Rehearsal()}); err != nil || st.Book == nil {
		return err
	}
	return st.Once(func() error { return st.Book.AddTest(record.Test{At: at, Got: got, Of: len(names)}) })
}
