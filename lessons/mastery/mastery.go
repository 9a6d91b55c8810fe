// Package mastery judges from the answers to one task whether a learner can do it.
// It is pure: the same answers give the same judgement.
package mastery

import "slices"

// Answer is one marked answer to a task.
type Answer struct {
	Item  int    // running number among all answers of the learner, to any task
	Day   int    // day it was given, counted from anywhere
	Right bool   // right, or right by another convention
	Hint  bool   // a hint or a worked example was shown first
	Form  string // which form the question had: the situation, or how the thread was told
	Key   string // what was right; a run whose answers are all the same shows little

	// Roads are the wrong roads that would have shown in this problem.
	Roads []string
}

// Rule is what a task asks for.
type Rule struct {
	Choice bool     // options to choose from: five in a row, else three
	Gate   bool     // getting it wrong can hurt someone: the same again on another day
	Forms  []string // situations that must all have come up
	OneKey bool     // the task has only one right answer, as an order of moves has
	Roads  []string // wrong roads that often show; each must have had its chance in a run
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
	Answers  int      `json:"answers"`
	Right    int      `json:"right"`
	Run      []Answer `json:"run,omitempty"`  // right answers in a row, without hints
	Days     []int    `json:"days,omitempty"` // days on which a whole run was shown
	Since    int      `json:"since"`          // answers since the last whole run, or since the start
	Mastered bool     `json:"mastered"`       // once shown, it was shown
}

// longestRun is how much of a run is kept: more than any rule asks for.
const longestRun = 24

// Add returns the state after one more answer. Mastery is a run of right answers
// without hints, over all the forms of the task, whose last comes at least five
// items after the one before, or on another day; for a gate task on two different days.
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
	if len(s.Run) > longestRun {
		s.Run = s.Run[len(s.Run)-longestRun:]
	}
	if r.complete(s.Run) {
		if !slices.Contains(s.Days, a.Day) {
			s.Days = append(slices.Clone(s.Days), a.Day)
		}
		s.Mastered = s.Mastered || !r.Gate || len(s.Days) > 1
		s.Run, s.Since = nil, 0 // the same again, from the beginning
	}
	return s
}

// Stuck reports whether a learner has tried so often since anything was shown, and is
// not about to show it, that trying again is no help: a worked example, what the task
// rests on, and the instructor are.
func (s State) Stuck() bool { return !s.Mastered && s.Since >= stuckAt && len(s.Run) < typedRun }

// Of folds answers, oldest first, into a state.
func Of(r Rule, answers []Answer) State {
	var s State
	for _, a := range answers {
		s = s.Add(r, a)
	}
	return s
}

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
	if !r.OneKey && run[0].Key != "" && !slices.ContainsFunc(run, func(a Answer) bool { return a.Key != run[0].Key }) {
		return false
	}
	for _, road := range r.Roads {
		if !slices.ContainsFunc(run, func(a Answer) bool { return slices.Contains(a.Roads, road) }) {
			return false
		}
	}
	for _, form := range r.Forms {
		if !slices.ContainsFunc(run, func(a Answer) bool { return a.Form == form }) {
			return false
		}
	}
	return true
}
