package course

import (
	"time"

	"scratchpass/lessons/page"
)

// Say has the words for what is shown: a phrase, with pairs of name and value.
type Say func(phrase string, pairs ...any) string

// The hours from which, and until which, now is called tonight.
const (
	eveningFrom = 17
	nightUntil  = 4
)

// Today says what is to be done today, or tonight by the clock: what is due and how long
// it takes, then the lesson to go on with.
func (p Plan) Today(say Say, now time.Time) string {
	when := say("plan-today")
	if now.Hour() >= eveningFrom || now.Hour() < nightUntil {
		when = say("plan-tonight")
	}
	due := say("plan-due-none", "when", when)
	switch {
	case p.Minutes > ReviewMinutes:
		due = say("plan-due-long", "when", when, "n", len(p.Due), "minutes", p.Minutes, "most", ReviewMinutes)
	case len(p.Due) > 0:
		due = say("plan-due", "when", when, "n", len(p.Due), "minutes", p.Minutes)
	}
	return due + " " + p.then(say)
}

// then says what comes after what is due.
func (p Plan) then(say Say) string {
	switch {
	case p.GoOn != nil:
		l := p.GoOn
		return say("plan-go-on", "lesson", l.Title, "part", l.Part+1, "of", len(l.Parts), "title", l.Parts[l.Part].Title)
	case p.Next != nil:
		return say("plan-next", "lesson", p.Next.Title, "minutes", p.Next.Minutes)
	case p.TestAlone:
		return say("plan-test")
	case p.Ask:
		return say("progress-ready")
	}
	return say("plan-lessons-done")
}

// Readiness is how far it is to the lathe, as one bar.
func (p Plan) Readiness(say Say) page.Meter {
	return page.Meter{Done: p.Shown, Begun: p.Started, Of: p.Of,
		Text: say("plan-readiness", "shown", p.Shown, "of", p.Of, "held", p.Held, "critical", p.Critical)}
}

// Label is a lesson as a line of a menu or of a list: a mark and its title, and a word for
// how far the learner is in it.
func (l LessonAt) Label(say Say, next bool) string {
	title := Title(l.Lesson)
	switch {
	case l.State == Done:
		return say("lesson-done", "title", title)
	case l.State == Begun:
		return say("lesson-begun", "title", title, "part", l.Part+1, "of", len(l.Parts))
	case next:
		return say("lesson-next", "title", title)
	}
	return say("lesson-not-begun", "title", title)
}
