// Package mastery judges from all the answers to one task whether a learner can do it. It
// is pure: the same answers give the same judgement.
//
// The rule is a sequential test (Wald 1945) that begins anew after every mistake (as the
// cumulative sums of Page 1954 do). Each common error that often shows in a task is taken
// to be held, and made half of the time, with odds of one to four before the first answer;
// one to eight where it shows in some problems only. A right answer halves the odds of
// every common error that would have shown in it. A common error that was made starts the
// next run at odds 64 times as high, a mistake that has no name at twice those of not
// knowing the task, both up to a limit. A run is shown when the odds that anything is left
// are at most one to nine, after three right answers in a row or more, five where there
// are options. Where a mistake can hurt someone, or where one was made twice, a second run
// is wanted on a later day.
//
// Sources, from memory: A. Wald, Sequential Tests of Statistical Hypotheses, Annals of
// Mathematical Statistics 16 (1945); E. S. Page, Continuous Inspection Schemes, Biometrika
// 41 (1954). The odds at the start and the limits are set by simulated learners
// (lessons/schedule).
package mastery

import "maps"

// Answer is one marked answer to a task.
type Answer struct {
	Item   int    // running number among all answers of the learner to any task, from 1
	Moment Moment // when it was given
	Right  bool   // right, or right by another convention
	Hint   bool   // a hint or a worked example was shown first
	Key    string // what was right; a run whose answers are all the same shows little

	// Situation is what a decision was about, or how the thread was told; empty where a
	// task has no situations.
	Situation string

	// Errors are the common errors that would have shown in this problem.
	Errors []string

	// Mistake names what was wrong, where that has a name; Sure is whether the learner
	// would have bet the part on it.
	Mistake string
	Sure    bool
}

// Rule is what a task asks for. The zero value is the rule of a typed number.
type Rule struct {
	Choice         bool     // options to choose from: five in a row at least, else three
	SafetyCritical bool     // getting it wrong can hurt someone: the same again on another day
	OneKey         bool     // the task has only one right answer, as an order of moves has
	Situations     []string // situations that must all have come up in a run
	Errors         []string // common errors that often show: each must have had its chances in a run
	Seldom         []string // those of them that show in some problems only: a chance less will do
}

// Apart is how many other items lie between the last answer of a run and the one
// before it, where they are of one day. A night between them does as well.
const Apart = 5

// State is what the answers to one task come to so far. The zero value is the state
// before the first answer. Its size is bounded by the number of common errors and
// situations of the task, so that a record of any length folds into it, one answer at a
// time.
type State struct {
	Answers  int            `json:"answers"`            // all of them
	Right    int            `json:"right"`              // of all, with a hint or without
	Mistakes map[string]int `json:"mistakes,omitempty"` // how often each was made; under no name, those that have none
	Run      Run            `json:"streak,omitzero"`    // the run at hand
	Since    int            `json:"since"`              // answers since the last whole run, or since the start
	Missed   uint16         `json:"missed,omitempty"`   // the last ten answers, the newest lowest; 1 is not right, or with a hint
	Days     int            `json:"shown_days"`         // real days, two at most, on which whole runs were shown and not taken back
	Shown    Moment         `json:"shown,omitzero"`     // last answer of the run that was counted last
	Wrong    Moment         `json:"wrong,omitzero"`     // the last mistake
	Mastered bool           `json:"mastered"`           // once shown, it was shown
	Held     bool           `json:"held,omitempty"`     // and held on a later day, with no mistake since
}

// Run is right answers in a row, without hints.
type Run struct {
	Length     int            `json:"n"`
	Chances    map[string]int `json:"chances,omitempty"` // how many answers would have shown each common error
	Situations []string       `json:"situations,omitempty"`
	Key        string         `json:"key,omitempty"` // what was right in the first
	Varied     bool           `json:"varied,omitempty"`
	Item       int            `json:"item"` // the last answer
	Last       Moment         `json:"last,omitzero"`
	Pause      bool           `json:"pause,omitempty"` // the last came after other items, or on another day
}

// Add returns the state after one more answer, and leaves the one before as it was.
func (s State) Add(r Rule, a Answer) State {
	s.Answers++
	s.Since++
	s.Missed = s.Missed << 1 & lastTen
	if a.Right {
		s.Right++
	}
	if !a.Right || a.Hint {
		s.Missed |= 1
		s.Run = Run{}
	}
	switch {
	case !a.Right:
		return s.mistaken(a)
	case a.Hint:
		return s
	case s.Days > 0 && s.Days < r.days(s.Mistakes) && !a.Moment.Later(s.Shown, r.rest(s.Mistakes)):
		return s // the next run is one of a later day
	}
	s.Run = s.Run.add(r, a)
	if s.Mastered && s.Days >= r.days(s.Mistakes) && a.Moment.Later(s.Shown, 1) && a.Moment.Later(s.Wrong, 1) {
		s.Held = true
	}
	if r.whole(s) {
		s = s.shown(r, a)
	}
	return s
}

// mistaken weighs a mistake. One that has a name, or that the part was bet on, takes back
// what was shown until then; any other is made good by a whole run, or on a later day.
func (s State) mistaken(a Answer) State {
	s.Mistakes = maps.Clone(s.Mistakes)
	if s.Mistakes == nil {
		s.Mistakes = map[string]int{}
	}
	name := a.Mistake
	if _, known := s.Mistakes[name]; !known && len(s.Mistakes) >= mostMistakes {
		name = "" // no task has so many: a record from elsewhere
	}
	s.Mistakes[name] = min(s.Mistakes[name]+1, mostTimes)
	s.Held = false
	if a.Mistake != "" || a.Sure {
		s.Days = 0
	}
	s.Wrong = a.Moment
	return s
}

// shown counts a whole run. One beyond those that are asked for holds what was shown: also
// on one day, where two were asked for and shown before.
func (s State) shown(r Rule, a Answer) State {
	asked := r.days(s.Mistakes)
	if s.Days < asked {
		s.Days++
		s.Shown = a.Moment
		s.Held = s.Days > 1
	} else if asked > 1 || a.Moment.Later(s.Shown, 1) {
		s.Held = true
	}
	s.Mastered = s.Mastered || s.Days >= asked
	s.Run, s.Since = Run{}, 0 // the same again, from the beginning
	return s
}

// What calls for help: so many answers without anything shown, so many of the last ten
// not right, and no run at hand.
const (
	stuckAt     = 10
	stuckMissed = 4
	lastTen     = 1<<stuckAt - 1
)
