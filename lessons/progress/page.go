package progress

import (
	"fmt"
	"strings"
	"time"

	"scratchpass/lessons/course"
	"scratchpass/lessons/page"
	"scratchpass/quiz/drawing"
)

// So much of a list fits one screen of 80 by 24 with the rest: one mistake less for each
// other line about what goes wrong.
const (
	mostSlips = 3
	mostNamed = 1
)

// builder puts a page together.
type builder struct {
	Speaker
	page page.Page
}

func (b *builder) line(phrase string, pairs ...any) {
	b.page = append(b.page, page.Paragraph{Text: b.Say(phrase, pairs...)})
}

// how is the phrase that tells how to come to something: by a command, or on pages by what is there.
func (w Speaker) how(phrase string) string {
	if w.OnPages {
		return phrase + "-on-pages"
	}
	return phrase
}

func (b *builder) item(said string) { b.page = append(b.page, page.Item{Text: said}) }
func (b *builder) gap()             { b.page = append(b.page, page.Gap{}) }

// named are the titles of so many tasks in a row; most below 0 names all.
func (w Speaker) named(tasks []string, most int) string {
	if most < 0 {
		most = len(tasks)
	}
	var all []string
	for _, task := range tasks[:min(most, len(tasks))] {
		all = append(all, w.Title(task))
	}
	said := strings.Join(all, "; ")
	if more := len(tasks) - most; more > 0 {
		said += " " + w.Say("gains-more", "n", more)
	}
	return said
}

// Page words the progress on one screen: bars by stage, what to do next and what keeps
// going wrong. What is longer is behind a line that says how to see it.
func (p Progress) Page(w Speaker, plan course.Plan, now time.Time) page.Page {
	b := builder{Speaker: w, page: p.top(w)}
	if p.Answers == 0 {
		p.Rehearsals.whole(&b)
		return b.page
	}
	b.page = append(b.page, p.bars(w), page.Paragraph{Text: plan.Today(course.Say(w.Say), now)})
	slips := mostSlips
	for _, others := range [][]string{p.SureWrong, p.Stuck} {
		if len(others) > 0 {
			slips--
		}
	}
	if len(p.Rehearsals.Done)+len(p.Rehearsals.Begun) > 0 {
		slips = max(1, slips-1)
	}
	p.wrong(&b, slips, mostNamed)
	p.Rehearsals.short(&b)
	if len(p.Begun) > 0 {
		b.line("progress-more", "n", len(p.Begun))
	} else {
		b.line("progress-more-none")
	}
	return append(b.page, p.closing(w))
}

// Whole is the page with every list in full.
func (p Progress) Whole(w Speaker, plan course.Plan, now time.Time) page.Page {
	b := builder{Speaker: w, page: p.top(w)}
	if p.Answers == 0 {
		p.Rehearsals.whole(&b)
		return b.page
	}
	b.page = append(b.page, p.bars(w), page.Gap{}, page.Paragraph{Text: plan.Today(course.Say(w.Say), now)})
	p.wrong(&b, len(p.Slips), -1)
	p.Rehearsals.whole(&b)
	p.begun(&b)
	if len(p.Due) > 0 {
		b.line("progress-due")
		for _, task := range p.Due {
			b.item(w.Title(task))
		}
	}
	if len(p.Next) > 0 {
		b.line("progress-next")
		for _, n := range p.Next {
			b.item(w.Say("progress-next-line", "task", w.Title(n.Task), "date", n.Date))
		}
	}
	return append(append(b.page, p.chart(w)...), p.closing(w))
}

// top is how much was answered, and what shown means.
func (p Progress) top(w Speaker) page.Page {
	b := builder{Speaker: w, page: page.Page{page.Heading{Text: w.Say("progress-title", "learner", p.Learner)}}}
	if p.Answers == 0 {
		b.line(w.how("progress-none"))
		return b.page
	}
	b.line("progress-sum", "n", p.Answers, "minutes", fmt.Sprintf("%.0f", p.Minutes))
	b.page = append(b.page, page.Aside{Text: w.Say("progress-shown-means")})
	return b.page
}

// bars are how much of each stage is shown.
func (p Progress) bars(w Speaker) page.Meters {
	var all page.Meters
	for _, s := range p.Stages {
		all = append(all, page.NamedMeter{Name: w.Say("stage-" + string(s.Stage)), Meter: page.Meter{Done: s.Shown, Begun: s.Begun, Of: s.Of,
			Text: w.Say("progress-stage", "shown", s.Shown, "begun", s.Begun, "of", s.Of)}})
	}
	return all
}

// wrong is what to talk over with the instructor, and the mistakes that come back.
func (p Progress) wrong(b *builder, slips, named int) {
	if len(p.SureWrong) > 0 {
		b.line("progress-sure", "tasks", b.named(p.SureWrong, named))
	}
	if len(p.Stuck) > 0 {
		b.line("progress-stuck", "tasks", b.named(p.Stuck, named))
	}
	if len(p.Slips) == 0 {
		return
	}
	b.line("progress-slips")
	for _, s := range p.Slips[:min(slips, len(p.Slips))] {
		b.item(b.Say("progress-slip", "task", b.Title(s.Task), "times", s.Times, "slip", b.Slip(s.Task, s.Slip)))
	}
}

// begun lists what was begun and is not shown. Those without a run stand in one line.
func (p Progress) begun(b *builder) {
	if len(p.Begun) == 0 {
		return
	}
	var none []string
	b.line("progress-begun")
	for _, t := range p.Begun {
		switch {
		case t.OneDay:
			b.item(b.Say("progress-one-day", "task", b.Title(t.Task)))
		case t.Run > 0:
			b.item(b.Say("progress-begun-line", "task", b.Title(t.Task), "run", t.Run))
		default:
			none = append(none, t.Task)
		}
	}
	if len(none) > 0 {
		b.item(b.Say("progress-begun-none", "tasks", b.named(none, -1)))
	}
	if !b.OnPages {
		b.line("progress-why")
	}
}

// closing says whether it is time to ask.
func (p Progress) closing(w Speaker) page.Block {
	if p.Ready {
		return page.Paragraph{Text: w.Say(w.how("progress-ready-see"))}
	}
	return page.Paragraph{Text: w.Say(w.how("progress-not-yet"))}
}

// chart shows how much was right from day to day.
func (p Progress) chart(w Speaker) page.Page {
	if len(p.Days) < 2 {
		return nil
	}
	var percent []float64
	for _, d := range p.Days {
		percent = append(percent, 100*float64(d.Right)/float64(d.Answers))
	}
	first, last := p.Days[0], p.Days[len(p.Days)-1]
	return page.Page{page.Figure{
		Pictures: []drawing.Drawing{drawing.Curve(first.Date+" - "+last.Date, percent, 100, 0)},
		Twin: w.Say("progress-chart", "first", fmt.Sprintf("%.0f", percent[0]), "from", first.Date,
			"last", fmt.Sprintf("%.0f", percent[len(percent)-1]), "to", last.Date, "days", len(p.Days)),
	}}
}
