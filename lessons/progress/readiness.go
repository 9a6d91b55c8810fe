package progress

import (
	"strings"
	"time"

	"scratchpass/lessons/page"
	"scratchpass/lessons/schedule"
)

// ReadinessPage words the readiness sheet. The most it ever says is "ready to ask
// your instructor".
func ReadinessPage(learner string, answers int, date time.Time, r schedule.Readiness, w Speaker) page.Page {
	verdict := w.Say("ready-no")
	if r.Ask {
		verdict = w.Say("ready-yes")
	}
	text := page.Page{page.Heading{Text: w.Say("ready-title", "learner", learner)}, page.Heading{Text: verdict},
		page.Paragraph{Text: w.Say("ready-date", "date", date.Format(time.DateOnly), "n", answers)}}
	list := func(phrase string, tasks []string) {
		if len(tasks) == 0 {
			return
		}
		titles := make([]string, len(tasks))
		for i, task := range tasks {
			titles[i] = w.Title(task)
		}
		text = append(text, page.Gap{}, page.Paragraph{Text: w.Say(phrase, "n", len(tasks))}, page.Paragraph{Text: strings.Join(titles, "; ") + "."})
	}
	list("ready-sure", r.SureWrong)
	list("ready-gate-open", r.SafetyCriticalOpen)
	list("ready-core-open", r.CoreOpen)
	list("ready-not-held", r.NotHeld)
	list("ready-gate-shown", r.SafetyCriticalShown)
	list("ready-core-shown", r.CoreShown)
	test := w.Say("ready-test-none")
	if r.Tested {
		test = w.Say("ready-test", "got", r.Test.Got, "of", r.Test.Of, "date", r.Test.At.Format(time.DateOnly))
	}
	return append(text, page.Gap{}, page.Paragraph{Text: test}, page.Gap{}, page.Caution{Text: w.Say("ready-not-tested")}, page.Caution{Text: w.Say("rehearsal")},
		page.Gap{}, page.Paragraph{Text: w.Say("ready-sign")})
}
