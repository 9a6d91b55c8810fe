package schedule

import (
	"maps"
	"time"

	"github.com/open-spaced-repetition/go-fsrs/v3"

	"scratchpass/lessons/mastery"
	"scratchpass/lessons/record"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
)

// reviewing spaces reviews by FSRS in whole days, 90 % to be remembered, at most
// four months apart, without chance. The library's scheduler writes to itself, so each
// fold has its own.
func reviewing() *fsrs.FSRS {
	p := fsrs.DefaultParam()
	p.EnableShortTerm, p.EnableFuzz = false, false
	p.MaximumInterval = 120
	return fsrs.NewFSRS(p)
}

// FoldVersion tells what the fold makes of answers. Raise it whenever the same answers
// come to another summary: summaries of another version are made anew.
const FoldVersion = 3

// Fold returns the fold of a record: mastery for every answer, and the spacing of
// reviews for the first answer to a task on each day, since what someone remembers shows
// only there. A task that is not among the items has the rule of a typed number. The fold
// is for one goroutine at a time.
func Fold(items []Item) record.Fold {
	spacing := reviewing()
	byTask := map[string]Item{}
	for _, it := range items {
		byTask[it.Task] = it
	}
	return func(s record.Summary, a record.Answer, item int) record.Summary {
		a.At = a.At.Truncate(time.Millisecond) // as it is kept: counted anew it comes to the same
		moment := mastery.MomentOf(a.At)
		first := mastery.MomentOf(s.Last).Day != moment.Day // before the first answer of all that is far in the past
		it := byTask[a.Task]
		code, _ := problem.ParseCode(a.Code) // of the oldest records some can't be read: such a code names no task
		one := mastery.Answer{Item: item, Moment: moment, Right: a.Right(), Hint: a.Hint, Situation: a.Situation, Key: a.Key,
			Mistake: mistakeOf(a), Sure: a.Certainty == answer.Bet}
		if one.Right { // a wrong answer ends a run, whatever it might have shown
			one.Errors = it.errorsOf(code)
		}
		s.State = s.State.Add(it.RuleFor(code.System), one)
		if first {
			s.Card = spacing.Next(s.Card, a.At, rating(a)).Card // the zero card is that of a new task
		}
		if s.Since == 0 {
			s.LastShown = a.At
		}
		s.Last = a.At
		s.Seconds += a.Seconds
		if a.Verdict == answer.KnownError {
			slips := maps.Clone(s.Slips) // the summary before keeps its own
			if slips == nil {
				slips = map[string]int{}
			}
			slips[a.Slip]++
			s.Slips = slips
		}
		if a.Certainty == answer.Bet && !a.Right() {
			s.SureWrong = a.At
		}
		return s
	}
}

// mistakeOf names what was wrong with an answer: the common error that it fits, or the
// unit. Empty where it has no name.
func mistakeOf(a record.Answer) string {
	switch {
	case a.Right():
		return ""
	case a.Verdict == answer.WrongUnit:
		return WrongUnit
	}
	return a.Slip
}

// WrongUnit is the name under which the right number in a wrong unit counts as a mistake.
const WrongUnit = "@unit"

// rating is what FSRS calls how well an answer was remembered.
func rating(a record.Answer) fsrs.Rating {
	switch {
	case !a.Right():
		return fsrs.Again
	case a.Hint:
		return fsrs.Hard
	}
	return fsrs.Good
}
