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
}

// Rule is what a task asks for.
type Rule struct {
	Choice bool     // options to choose from: five in a row, else three
	Gate   bool     // getting it wrong can hurt someone: the same again on another day
	Forms  []string // situations that must all have come up
	OneKey bool     // the task has only one right answer, as an order of moves has
}

// Runs that count. A typed number is right by chance hardly ever, an option often.
// Source: the teaching rules of this project; no study gives these figures.
const (
	typedRun  = 3
	choiceRun = 5
	apart     = 5  // items between the last answer of a run and the one before it
	stuckAt   = 10 // answers without mastery that call for help
)

// Mastered reports whether the answers, oldest first, show mastery: a run of right
// answers without hints, over all the forms of the task, whose last comes at least
// five items after the one before; for a gate task on two different days.
func Mastered(r Rule, answers []Answer) bool {
	mastered, _ := r.judge(answers)
	return mastered
}

// judge also counts the answers since the last complete run.
func (r Rule) judge(answers []Answer) (mastered bool, since int) {
	days := map[int]bool{}
	start, last := 0, 0
	for i, a := range answers {
		if !a.Right || a.Hint {
			start = i + 1
			continue
		}
		if r.complete(answers[start : i+1]) {
			days[a.Day] = true
			if !r.Gate || len(days) > 1 {
				return true, 0
			}
			start, last = i+1, i+1 // the same again, from the beginning
		}
	}
	return false, len(answers) - last
}

// complete reports whether a run of right answers is long and varied enough.
func (r Rule) complete(run []Answer) bool {
	need := typedRun
	if r.Choice {
		need = choiceRun
	}
	if len(run) < need || run[len(run)-1].Item-run[len(run)-2].Item <= apart {
		return false
	}
	if !r.OneKey && run[0].Key != "" && !slices.ContainsFunc(run, func(a Answer) bool { return a.Key != run[0].Key }) {
		return false
	}
	for _, form := range r.Forms {
		if !slices.ContainsFunc(run, func(a Answer) bool { return a.Form == form }) {
			return false
		}
	}
	return true
}

// Stuck reports whether a learner has tried so often since anything was shown that
// trying again is no help: a worked example, what the task rests on, and the
// instructor are.
func Stuck(r Rule, answers []Answer) bool {
	mastered, since := r.judge(answers)
	return !mastered && since >= stuckAt
}
