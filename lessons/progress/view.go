package progress

import (
	"strings"
	"time"

	"scratchpass/content"
	"scratchpass/lessons/course"
	"scratchpass/lessons/page"
	"scratchpass/lessons/record"
	"scratchpass/lessons/rehearsal"
	"scratchpass/lessons/schedule"
	"scratchpass/lessons/sitting"
)

// View is a record with the words for its tasks.
type View struct {
	Session *sitting.Session
	Record  *record.Record
	Name    string // of the learner, on the pages
	Course  course.Course
	Items   []schedule.Item
	Special map[string]bool

	words map[string]content.TaskWords
}

// ViewOf is a session's words for all tasks, to be joined with a record.
func ViewOf(s *sitting.Session) (v View, err error) {
	lessons := course.Load(s.Library)
	v = View{Session: s, Course: lessons, Items: lessons.Order(s.System), Special: lessons.Special(), words: map[string]content.TaskWords{}}
	for _, it := range v.Items {
		if v.words[it.Task], err = s.Library.Task(it.Task); err != nil {
			return v, err
		}
	}
	return v, nil
}

// Of is the view of a record whose learner is called by a name.
func (v View) Of(rec *record.Record, name string) View {
	v.Record, v.Name = rec, name
	return v
}

// Speaker has the words for the pages.
func (v View) Speaker() Speaker {
	return Speaker{Say: v.Session.Say, Title: v.title, Slip: v.slip, Mistake: v.mistake, Way: v.Session.System.Length().Text, OnPages: v.Session.OnPages,
		Job: func(name string) string { return rehearsal.JobTitle(v.Session.Library, name) }}
}

// mistake is the title of a mistake at the bench; its name where the words no longer know it.
func (v View) mistake(name string) string {
	words, err := v.Session.Library.Bench()
	if w, ok := words.Mistakes[name]; ok && err == nil {
		return w.Title
	}
	return name
}

func (v View) title(task string) string { return v.words[task].Title }

func (v View) slip(task, slip string) string { return strings.TrimSpace(v.words[task].Slips[slip]) }

// Page is what the record comes to at a time, on one screen, or with every list in full.
func (v View) Page(now time.Time, all bool) (page.Page, error) {
	p, err := Of(v.Record, v.Items, v.Special, now)
	if err != nil {
		return nil, err
	}
	p.Learner = v.Name
	plan, err := v.Course.Plan(v.Record, v.Session.System, now)
	if err != nil {
		return nil, err
	}
	if all {
		return p.Whole(v.Speaker(), plan, now), nil
	}
	return p.Page(v.Speaker(), plan, now), nil
}

// Ready is how far the learner is from the lathe at a time.
func (v View) Ready(now time.Time) (Ready, error) {
	ready, err := ReadinessOf(v.Record, v.Items, v.Special)
	if err != nil {
		return Ready{}, err
	}
	_, answers, err := v.Record.Summaries()
	if err != nil {
		return Ready{}, err
	}
	rehearsals, err := RehearsalsOf(v.Record)
	if err != nil {
		return Ready{}, err
	}
	pace, err := PaceOf(v.Record, ready, now)
	return Ready{Readiness: ready, Learner: v.Name, Answers: answers, Date: now, Pace: pace, Jobs: rehearsals.Faultless()}, err
}
