package course

import (
	"math"
	"time"

	"scratchpass/content"
	"scratchpass/lessons/mastery"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/machine"
)

// ReviewMinutes is how long a sitting of what is best to practise lasts at most. Source:
// the teaching rules of this project.
const ReviewMinutes = 12

// State is how far a learner is in a lesson.
type State int

// The states of a lesson.
const (
	Untouched State = iota
	Begun
	Done
)

// LessonAt is a lesson with how far the learner is in it.
type LessonAt struct {
	content.Lesson
	State State
	Part  int // of one that is begun, from 0
}

// Plan is what a record says of the evening at hand: what is due, which lesson to go on
// with, how far it is to the lathe, and what the last day brought.
type Plan struct {
	First   bool // nothing was answered and no lesson begun
	Answers int

	Due     []string // tasks that come back today, in the order of the course
	Minutes int      // that they take, rounded up

	Lessons []LessonAt // all, in their order
	GoOn    *LessonAt  // the one that was begun last
	Next    *LessonAt  // the first of those that every thread needs and that was not begun

	Shown, Started, Of int  // tasks of a first thread: shown, begun and not shown, all
	Held, Critical     int  // of those that can hurt someone: held on a second day, all
	Ask                bool // ready to ask the instructor
	TestAlone          bool // only the mixed test is missing

	Last   time.Time // the last answer; zero where there is none
	Gained []string  // what was shown on its day
	Worked []string  // what was answered on its day
}

// Records is what a plan is made from.
type Records interface {
	Summaries() (of map[string]record.Summary, answers int, err error)
	Places() ([]record.Left, error)
	LastTest() (t record.Test, ok bool, err error)
}

// Plan makes the plan for a moment.
func (c Course) Plan(r Records, system machine.System, now time.Time) (Plan, error) {
	of, answers, err := r.Summaries()
	if err != nil {
		return Plan{}, err
	}
	places, err := r.Places()
	if err != nil {
		return Plan{}, err
	}
	test, tested, err := r.LastTest()
	if err != nil {
		return Plan{}, err
	}
	items := c.Order(system)
	p := Plan{First: answers == 0 && len(places) == 0, Answers: answers, Due: schedule.Wanted(items, of, now)}
	p.Minutes = int(math.Ceil(schedule.Minutes(items, of, p.Due)))
	p.lessons(c, of, places)
	p.readiness(items, of, schedule.ReadinessOf(items, c.Special(), of, test, tested))
	p.lastTime(items, of)
	return p, nil
}

// NoPlan is the plan of someone who has no record.
func (c Course) NoPlan() Plan {
	p := Plan{First: true}
	p.lessons(c, nil, nil)
	return p
}

// lessons tells how far each lesson is, and which comes now.
func (p *Plan) lessons(c Course, of map[string]record.Summary, places []record.Left) {
	at := map[string]int{}
	for _, l := range places {
		at[l.Lesson] = l.Part
	}
	for _, l := range c {
		one := LessonAt{Lesson: l}
		switch part, has := at[l.Name]; {
		case has && part < len(l.Parts):
			one.State, one.Part = Begun, part
		case has || allShown(l, of): // of a record that another program brought, the answers tell
			one.State = Done
		}
		p.Lessons = append(p.Lessons, one)
	}
	for _, place := range places { // the latest first
		for i, l := range p.Lessons {
			if l.Name == place.Lesson && l.State == Begun && p.GoOn == nil {
				p.GoOn = &p.Lessons[i]
			}
		}
	}
	for i, l := range p.Lessons {
		if l.State == Untouched && !l.Special {
			p.Next = &p.Lessons[i]
			return
		}
	}
}

// allShown tells whether all that a lesson brings is shown.
func allShown(l content.Lesson, of map[string]record.Summary) bool {
	for _, part := range l.Parts {
		if !of[part.Task].Mastered {
			return false
		}
	}
	return len(l.Parts) > 0
}

// readiness counts what stands between the learner and asking.
func (p *Plan) readiness(items []schedule.Item, of map[string]record.Summary, r schedule.Readiness) {
	p.Held = len(r.SafetyCriticalShown)
	p.Shown = p.Held + len(r.CoreShown) + len(r.NotHeld)
	open := append(append([]string{}, r.SafetyCriticalOpen...), r.CoreOpen...)
	p.Of = p.Shown + len(open)
	for _, task := range open {
		if of[task].Answers > 0 {
			p.Started++
		}
	}
	for _, it := range items {
		if it.SafetyCritical {
			p.Critical++
		}
	}
	p.Ask = r.Ask
	p.TestAlone = !r.Passed && len(open)+len(r.NotHeld)+len(r.SureWrong) == 0
}

// lastTime tells what the last day with answers brought.
func (p *Plan) lastTime(items []schedule.Item, of map[string]record.Summary) {
	for _, it := range items {
		if s := of[it.Task]; s.Answers > 0 && s.Last.After(p.Last) {
			p.Last = s.Last
		}
	}
	if p.Last.IsZero() {
		return
	}
	p.Gained = schedule.ShownOn(items, of, p.Last)
	day := mastery.MomentOf(p.Last).Day
	for _, it := range items {
		if s := of[it.Task]; s.Answers > 0 && mastery.MomentOf(s.Last).Day == day {
			p.Worked = append(p.Worked, it.Task)
		}
	}
}

// Step is the best next thing to do.
type Step int

// The steps, the most pressing first.
const (
	Start    Step = iota // nothing was done yet: the first lesson
	Review               // what is due
	GoOn                 // with the lesson that was begun
	NextOne              // the next lesson
	Test                 // the mixed test
	Practise             // what is best now
)

// Best is the best next thing.
func (p Plan) Best() Step {
	switch {
	case p.First && p.Next != nil:
		return Start
	case len(p.Due) > 0:
		return Review
	case p.GoOn != nil:
		return GoOn
	case p.Next != nil:
		return NextOne
	case p.TestAlone:
		return Test
	}
	return Practise
}
