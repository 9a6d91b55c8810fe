// Package progress tells what a learner's record comes to: what was shown, what is due,
// what keeps going wrong, and what stands between them and asking their instructor.
package progress

import (
	"maps"
	"slices"
	"strings"
	"time"

	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/problem"
)

// Progress is what a record comes to.
type Progress struct {
	Learner   string          `json:"learner"`
	Answers   int             `json:"answers"`
	Minutes   float64         `json:"minutes"`
	Stages    []StageProgress `json:"stages"`
	Begun     []BegunTask     `json:"begun"`
	Due       []string        `json:"due"`
	Next      []NextReview    `json:"next"`
	Stuck     []string        `json:"stuck"`
	Slips     []SlipCount     `json:"slips"`
	Days      []DayProgress   `json:"days"`
	SureWrong []string        `json:"sure_but_wrong"`
	Ready     bool            `json:"ready_to_ask"`
	Rehearsals
}

// StageProgress is how many tasks of a stage were shown.
type StageProgress struct {
	Stage problem.Stage `json:"stage"`
	Shown int           `json:"shown"`
	Begun int           `json:"begun"`
	Of    int           `json:"of"`
}

// BegunTask is a task that was begun and not yet shown.
type BegunTask struct {
	Task   string `json:"task"`
	Run    int    `json:"right_in_a_row"`
	OneDay bool   `json:"shown_on_one_day"`
}

// NextReview is when a task comes back.
type NextReview struct {
	Task string `json:"task"`
	Date string `json:"date"`
}

// nextReviews is how many of the reviews to come are told.
const nextReviews = 5

// SlipCount is a common error that was made more than once.
type SlipCount struct {
	Task  string `json:"task"`
	Slip  string `json:"slip"`
	Times int    `json:"times"`
}

// DayProgress is one day.
type DayProgress struct {
	Date    string  `json:"date"`
	Answers int     `json:"answers"`
	Right   int     `json:"right"`
	Minutes float64 `json:"minutes"`
}

// chartDays is how far back the chart goes.
const chartDays = 60

// Of reads a record.
func Of(r *record.Record, items []schedule.Item, special map[string]bool, now time.Time) (Progress, error) {
	of, n, err := r.Summaries()
	if err != nil {
		return Progress{}, err
	}
	p := Progress{Learner: r.Learner, Answers: n, Stages: []StageProgress{}, Begun: []BegunTask{}, Due: []string{}, Next: []NextReview{}, Stuck: []string{}, Slips: []SlipCount{}, Days: []DayProgress{}, SureWrong: []string{}}
	stage := map[problem.Stage]*StageProgress{}
	for _, s := range problem.Stages {
		stage[s] = &StageProgress{Stage: s}
	}
	for _, it := range items {
		s := of[it.Task]
		p.Minutes += s.Seconds / 60
		at := stage[it.Stage]
		at.Of++
		switch {
		case s.Mastered:
			at.Shown++
		case s.Answers > 0:
			at.Begun++
			p.Begun = append(p.Begun, BegunTask{it.Task, s.Run.Length, s.Days > 0})
		}
		if due := schedule.DueAt(s); s.Mastered && due.After(now) {
			p.Next = append(p.Next, NextReview{it.Task, due.Local().Format(time.DateOnly)})
		}
		if s.Stuck() {
			p.Stuck = append(p.Stuck, it.Task)
		}
		for _, slip := range slices.Sorted(maps.Keys(s.Slips)) {
			if s.Slips[slip] > 1 {
				p.Slips = append(p.Slips, SlipCount{it.Task, slip, s.Slips[slip]})
			}
		}
	}
	for _, s := range problem.Stages {
		if stage[s].Of > 0 {
			p.Stages = append(p.Stages, *stage[s])
		}
	}
	slices.SortStableFunc(p.Next, func(a, b NextReview) int { return strings.Compare(a.Date, b.Date) })
	p.Next = p.Next[:min(nextReviews, len(p.Next))]
	slices.SortStableFunc(p.Slips, func(a, b SlipCount) int { return b.Times - a.Times })
	p.Due = append(p.Due, schedule.DueBy(items, of, now)...)
	days, err := r.Days(now.AddDate(0, 0, -chartDays))
	if err != nil {
		return p, err
	}
	for _, d := range days {
		p.Days = append(p.Days, DayProgress{d.Date, d.Answers, d.Right, d.Seconds / 60})
	}
	if p.Rehearsals, err = RehearsalsOf(r); err != nil {
		return p, err
	}
	ready, err := ReadinessOf(r, items, special)
	p.SureWrong = append(p.SureWrong, ready.SureWrong...)
	p.Ready = ready.Ask
	return p, err
}

// ReadinessOf reads from a record what stands between a learner and asking.
func ReadinessOf(r *record.Record, items []schedule.Item, special map[string]bool) (schedule.Readiness, error) {
	of, _, err := r.Summaries()
	if err != nil {
		return schedule.Readiness{}, err
	}
	test, tested, err := r.LastTest()
	return schedule.ReadinessOf(items, special, of, test, tested), err
}

// Speaker has the words for a page: phrases, titles, and what is said of a common error.
type Speaker struct {
	Say   func(phrase string, pairs ...any) string
	Title func(task string) string
	Slip  func(task, slip string) string

	Job     func(name string) string    // the title of a job
	Mistake func(name string) string    // of a mistake at the bench
	Way     func(inches float64) string // a length in the learner's units

	OnPages bool // it is read in a browser, where nobody can type a command
}
