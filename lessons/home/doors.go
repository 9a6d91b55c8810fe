package home

import (
	"time"
	"unicode/utf8"

	"scratchpass/lessons/course"
	"scratchpass/lessons/page"
	"scratchpass/lessons/practice"
	"scratchpass/quiz/problem"
)

// door is a line of the home menu and where it leads; the last leads out.
type door struct {
	label string
	open  func() error
}

// page is what stands above the menu: on a first visit where to start, else the plan.
func (h *home) page(opened bool) page.Page {
	p := page.Page{page.Heading{Text: h.Say("home-title")}}
	if opened && (h.plan == nil || h.plan.First) {
		p = append(p, page.Paragraph{Text: h.Say("home-what")}, page.Gap{})
	}
	switch {
	case h.plan == nil:
	case h.plan.First && h.plan.Next != nil:
		p = append(p, page.Paragraph{Text: h.Say("home-first", "title", h.plan.Next.Title, "minutes", h.plan.Next.Minutes)})
	default:
		p = append(p, page.Paragraph{Text: h.plan.Today(h.Say, h.Clock())}, h.plan.Readiness(h.Say))
		if text := h.lastTime(); text != "" {
			p = append(p, page.Aside{Text: text})
		}
	}
	return append(p, h.Rehearsal())
}

// What was gained is told by name, so many names as fit a line.
const (
	mostNamed = 3
	lastWide  = 76
)

// lastTime says what the last day with answers has brought.
func (h *home) lastTime() string {
	if h.plan.Last.IsZero() {
		return ""
	}
	date := h.plan.Last.In(h.Clock().Location()).Format(time.DateOnly)
	if len(h.plan.Gained) == 0 {
		return h.Say("plan-last-none", "date", date, "n", len(h.plan.Worked))
	}
	for most := mostNamed; ; most-- {
		text := h.Say("plan-last", "date", date, "tasks", course.Titles(h.Session, h.plan.Gained, most))
		if most == 1 || utf8.RuneCountInString(text) <= lastWide {
			return text
		}
	}
}

func (h *home) doors() []door {
	if h.plan == nil {
		return h.others(nil)
	}
	first, step := h.best()
	if step == course.Start && !h.looked {
		doors := []door{first}
		if h.SaveLathe != nil {
			doors = append(doors, door{h.latheDoor(), h.describeAndKeep})
		}
		label := "home-look-round"
		if h.OneRecord {
			label = "home-look"
		}
		return append(doors, door{h.Say(label), h.lookRound}, door{h.Say("home-leave"), nil})
	}
	doors := []door{first}
	if l := h.plan.GoOn; l != nil && step != course.GoOn {
		doors = append(doors, h.lesson("home-go-on", *l))
	}
	if step != course.Review && step != course.Practise {
		doors = append(doors, door{h.Say("home-best"), h.practiseBest})
	}
	return h.others(doors)
}

// best is the best next thing.
func (h *home) best() (door, course.Step) {
	switch step := h.plan.Best(); step {
	case course.Start:
		return h.lesson("home-start", *h.plan.Next), step
	case course.Review:
		return door{h.Say("home-review", "n", len(h.plan.Due), "minutes", min(h.plan.Minutes, course.ReviewMinutes)), h.practiseBest}, step
	case course.GoOn:
		return h.lesson("home-go-on", *h.plan.GoOn), step
	case course.NextOne:
		return h.lesson("home-next", *h.plan.Next), step
	case course.Test:
		return door{h.Say("home-test"), func() error { return h.sit(practice.MixedTest{Level: problem.NumbersGiven}) }}, step
	default:
		return door{h.Say("home-best"), h.practiseBest}, step
	}
}

// lesson is a door to a lesson.
func (h *home) lesson(phrase string, l course.LessonAt) door {
	title := l.Title
	if l.State == course.Untouched {
		title = course.Title(l.Lesson) // with its length
	}
	return door{h.Say(phrase, "title", title, "part", l.Part+1, "of", len(l.Parts)),
		func() error { return h.sit(course.Lesson{Lesson: l.Name}) }}
}

func (h *home) practiseBest() error { return h.sit(practice.Best{Level: problem.NumbersGiven}) }

func (h *home) latheDoor() string { return h.Say("home-lathe-door", "lathe", h.Lathe.Name) }

// lookRound opens the whole menu to someone who is here for the first time, and says where
// a record of elsewhere is brought in, if there can be one.
func (h *home) lookRound() error {
	h.looked = true
	if h.OneRecord {
		return nil
	}
	return h.Face.Show(page.Page{page.Paragraph{Text: h.Say("home-has-record")}})
}

// others adds the doors that are always there.
func (h *home) others(doors []door) []door {
	add := func(label string, open func() error) {
		if open != nil {
			doors = append(doors, door{label, open})
		}
	}
	add(h.Say("home-learn"), h.chooseLesson)
	add(h.Say("home-progress"), h.Progress)
	add(h.Say("home-practise"), h.choosePractice)
	add(h.Say("bench-door"), h.Rehearse)
	if h.SaveLathe != nil {
		add(h.latheDoor(), h.describeAndKeep)
	}
	add(h.Say("home-safety"), func() error { return h.Face.Show(h.SafetyPage()) })
	return append(doors, door{h.Say("home-leave"), nil})
}
