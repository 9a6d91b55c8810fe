package schedule

import (
	"maps"
	"time"

	"github.com/open-spaced-repetition/go-fsrs/v3"

	"scratchpass/lessons/mastery"
	"scratchpass/lessons/record"
	"scratchpass/quiz/answer"
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

// dayOf numbers the days of the place whose time it is, from midnight to midnight.
func dayOf(t time.Time) int {
	_, offset := t.Zone()
	return int((t.Unix() + int64(offset)) / 86400)
}

// FoldVersion is the number of the rule that Fold goes by. It is raised when the same answers
// come to another summary: records that were folded by another are then folded anew.
const FoldVersion = 1

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
		day := dayOf(a.At)
		first := dayOf(s.Last) != day // before the first answer of all that is far in the past
		it := byTask[a.Task]
		one := mastery.Answer{Item: item, Day: day, Right: a.Right(), Hint: a.Hint, Situation: a.Situation, Key: a.Key}
		if one.Right { // a wrong answer ends a run, whatever it might have shown
			one.Errors = it.errorsOf(a.Code)
		}
		s.State = s.State.Add(it.rule(), one)
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
