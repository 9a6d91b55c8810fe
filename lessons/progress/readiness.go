package progress

import (
	"fmt"
	"strings"
	"time"

	"scratchpass/lessons/page"
	"scratchpass/lessons/schedule"
)

// Ready is what stands between a learner and asking, with whose it is and how fast they
// come on.
type Ready struct {
	schedule.Readiness
	Learner string
	Answers int
	Date    time.Time
	Pace    Pace
	Jobs    []Rehearsed // that were rehearsed without a mistake
}

// mostMissing is how many tasks of a list are named where it is folded.
const mostMissing = 2

// Page words it on one screen: what is missing first, of long lists the beginning. The
// most it ever says is "ready to ask your instructor".
func (r Ready) Page(w Speaker) page.Page {
	b := builder{Speaker: w, page: r.top(w)}
	r.missing(&b, mostMissing, false)
	b.line("ready-shown-folded", "gate", len(r.SafetyCriticalShown), "core", len(r.CoreShown))
	return append(b.page, page.Caution{Text: w.Say("ready-not-tested")})
}

// Whole is the page with every list in full, as it is printed and signed.
func (r Ready) Whole(w Speaker) page.Page {
	b := builder{Speaker: w, page: r.top(w)}
	r.missing(&b, -1, true)
	return append(b.page, page.Gap{}, page.Caution{Text: w.Say("ready-not-tested")}, page.Caution{Text: w.Say("rehearsal")},
		page.Gap{}, page.Paragraph{Text: w.Say("ready-sign")})
}

// top is the verdict, and how many evenings are left.
func (r Ready) top(w Speaker) page.Page {
	verdict := w.Say("ready-no")
	if r.Ask {
		verdict = w.Say("ready-yes")
	}
	b := builder{Speaker: w, page: page.Page{page.Heading{Text: w.Say("ready-title", "learner", r.Learner)}, page.Heading{Text: verdict}}}
	b.line("ready-date", "date", r.Date.Format(time.DateOnly), "n", r.Answers)
	switch p := r.Pace; {
	case r.Ask:
	case !p.Known:
		b.line("ready-pace-unknown", "answers", paceAnswers, "days", paceDays, "shown", paceShown)
	case p.Evenings > 0:
		b.line("ready-pace", "evenings", p.Evenings, "shown", p.Shown, "days", p.Days, "missing", p.Missing,
			"per", fmt.Sprintf("%.1f", float64(p.Shown)/float64(p.Days)), "window", chartDays)
	}
	return b.page
}

// missing lists what is missing, and with shown what is not.
func (r Ready) missing(b *builder, most int, shown bool) {
	list := func(phrase string, tasks []string) {
		if len(tasks) == 0 {
			return
		}
		said, names := b.Say(phrase, "n", len(tasks)), b.named(tasks, most)+"."
		if most < 0 {
			b.page = append(b.page, page.Gap{}, page.Paragraph{Text: said}, page.Paragraph{Text: names})
			return
		}
		b.page = append(b.page, page.Paragraph{Text: said + " " + names})
	}
	list("ready-sure", r.SureWrong)
	list("ready-gate-open", r.SafetyCriticalOpen)
	list("ready-core-open", r.CoreOpen)
	list("ready-not-held", r.NotHeld)
	if shown {
		list("ready-gate-shown", r.SafetyCriticalShown)
		list("ready-core-shown", r.CoreShown)
		b.gap()
	}
	if r.Tested {
		b.line("ready-test", "got", r.Test.Got, "of", r.Test.Of, "date", r.Test.At.Format(time.DateOnly))
	} else {
		b.line(b.how("ready-test-none"))
	}
	if len(r.Jobs) == 0 {
		b.line(b.how("ready-jobs-none"))
		return
	}
	var jobs []string
	for _, j := range r.Jobs {
		jobs = append(jobs, b.Job(j.Job))
	}
	if most >= 0 && len(jobs) > 1 { // on one screen the last of them
		jobs = append(jobs[:1], b.Say("gains-more", "n", len(jobs)-1))
	}
	b.line("ready-jobs", "jobs", strings.Join(jobs, "; "))
}
