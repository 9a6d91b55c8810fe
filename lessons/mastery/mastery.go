// Package mastery judges from the answers to one task whether a learner can do it.
// It is pure: the same answers give the same judgement.
package mastery

import "slices"

// Answer is one marked answer to a task. The names in JSON are those of records that are
// there already.
type Answer struct {
	Item  int    // running number among all answers of the learner to any task, from 1
	Day   int    // day it was given, counted from anywhere
	Right bool   // right, or right by another convention
	Hint  bool   // a hint or a worked example was shown first
	Key   string // what was right; a run whose answers are all the same shows little

	// Situation is what a decision was about, or how the thread was told; empty where a
	// task has no situations.
	Situation string `json:"Form"`

	// Errors are the common errors that would have shown in this problem.
	Errors []string `json:"Roads"`
}

// Rule is what a task asks for. The zero value is the rule of a typed number.
type Rule struct {
	Choice         bool     // options to choose from: five in a row, else three
	SafetyCritical bool     // getting it wrong can hurt someone: the same again on another day
	OneKey         bool     // the task has only one right answer, as an order of moves has
	Situations     []string // situations that must all have come up in a run
	Errors         []string // common errors that often show: each must have had its chance in a run
}

// Apart is how many other items lie between the last answer of a run and the one
// before it, where they are of one day. A night between them does as well.
const Apart = 5

// Runs that count. A typed number is right by chance hardly ever, an option often.
// Source: the teaching rules of this project; no study gives these figures.
const (
	typedRun  = 3
	choiceRun = 5
	stuckAt   = 10 // answers without mastery that call for help
)

// State is what the answers to one task come to so far. The zero value is the state
// before the first answer. It holds no more than the run at hand, so that a record
// of any length folds into it, one answer at a time.
type State struct {
	Answers  int      `json:"answers"`        // all of them
	Right    int      `json:"right"`          // of all, with a hint or without
	Run      []Answer `json:"run,omitempty"`  // right answers in a row, without hints, oldest first
	Days     []int    `json:"days,omitempty"` // days on which a whole run was shown
	Since    int      `json:"since"`          // answers since the last whole run, or since the start
	Mastered bool     `json:"mastered"`       // once shown, it was shown
}

// longestRun is how much of a run is kept: more than any rule asks for.
const longestRun = 24

// Add returns the state after one more answer, and leaves the one before as it was.
// Mastery is a run of right answers without hints, over all the situations of the task,
// whose last comes at least five items after the one before, or on another day; for a
// safety-critical task on two different days.
func (s State) Add(r Rule, a Answer) State {
	s.Answers++
	s.Since++
	if a.Right {
		s.Right++
	}
	if !a.Right || a.Hint {
		s.Run = nil
		return s
	}
	s.Run = append(slices.Clone(s.Run), a)
	s.Run = s.Run[max(0, len(s.Run)-longestRun):]
	if r.complete(s.Run) {
		if !slices.Contains(s.Days, a.Day) {
			s.Days = append(slices.Clone(s.Days), a.Day)
		}
		s.Mastered = s.Mastered || !r.SafetyCritical || len(s.Days) > 1
		s.Run, s.Since = nil, 0 // the same again, from the beginning
	}
	return s
}

// Stuck reports whether a learner has tried so often since anything was shown, and is
// not about to show it, that trying again is no help: a worked example, what the task
// rests on, and the instructor are.
func (s State) Stuck() bool { return !s.Mastered && s.Since >= stuckAt && len(s.Run) < typedRun }

// complete reports whether a run of right answers is long and varied enough.
func (r Rule) complete(run []Answer) bool {
	need := typedRun
	if r.Choice {
		need = choiceRun
	}
	if len(run) < need {
		return false
	}
	last, before := run[len(run)-1], run[len(run)-2]
	if last.Item-before.Item <= Apart && last.Day == before.Day {
		return false
	}
	// Records from before keys were kept have none: they are not held against anyone.
	if key := run[0].Key; !r.OneKey && key != "" && !slices.ContainsFunc(run, func(a Answer) bool { return a.Key != key }) {
		return false
	}
	for _, name := range r.Errors {
		if !slices.ContainsFunc(run, func(a Answer) bool { return slices.Contains(a.Errors, name) }) {
			return false
		}
	}
	for _, situation := range r.Situations {
		if !slices.ContainsFunc(run, func(a Answer) bool { return a.Situation == situation }) {
			return false
		}
	}
	return true
}
