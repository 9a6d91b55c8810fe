// Package schedule decides from a learner's record what is best to practise next,
// and says why. It is pure: it knows no clock and no file; the time is given.
package schedule

import (
	"slices"
	"time"

	"github.com/open-spaced-repetition/go-fsrs/v3"

	"scratchpass/lessons/mastery"
	"scratchpass/lessons/record"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
)

// Minutes that an answer takes, roughly: a number is worked out, an option read.
const (
	typedMinutes  = 1.25
	choiceMinutes = 0.5
)

// usualTried is how many problems are drawn to see what comes up, and how often a
// situation or a wrong road must come up to count: a rare one would hold a learner up
// for ever.
const (
	usualTried = 60
	formsLeast = 3
	roadsLeast = 12
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

// dayOf numbers the days of a place on earth, from midnight to midnight.
func dayOf(t time.Time) int {
	_, offset := t.Zone()
	return int((t.Unix() + int64(offset)) / 86400)
}

// Fold returns the fold of a record: mastery for every answer, and the spacing of
// reviews for the first answer to a task on each day.
func Fold(items []Item) record.Fold {
	spacing := reviewing()
	byTask := map[string]Item{}
	for _, it := range items {
		byTask[it.Task] = it
	}
	return func(s record.Summary, a record.Answer, item int) record.Summary {
		day := dayOf(a.At)
		first := s.Answers == 0 || dayOf(s.Last) != day
		it := byTask[a.Task]
		one := mastery.Answer{Item: item, Day: day, Right: a.Right(), Hint: a.Hint, Form: a.Form, Key: a.Key}
		if one.Right { // a wrong answer ends a run, whatever it might have shown
			one.Roads = it.roads(a.Code)
		}
		s.State = s.State.Add(it.rule(), one)
		if first {
			if s.Answers == 1 {
				s.Card = fsrs.NewCard()
			}
			s.Card = spacing.Next(s.Card, a.At, rating(a)).Card
		}
		if s.Since == 0 {
			s.LastShown = a.At
		}
		s.Last = a.At
		s.Seconds += a.Seconds
		if a.Verdict == answer.KnownError {
			slips := map[string]int{}
			for name, n := range s.Slips {
				slips[name] = n
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

func rating(a record.Answer) fsrs.Rating {
	switch {
	case !a.Right():
		return fsrs.Again
	case a.Hint:
		return fsrs.Hard
	}
	return fsrs.Good
}

// Due reports whether a task that was shown is due for review.
func Due(s record.Summary, now time.Time) bool {
	return s.Answers > 0 && s.Mastered && !s.Card.Due.After(now)
}

// Reason says why a task comes next.
type Reason string

// The reasons, the most pressing first.
const (
	GateDue    Reason = "gate-due"    // can hurt someone, and is due for review
	AnotherDay Reason = "another-day" // can hurt someone: shown once, and wants another day
	IntroBlock Reason = "intro"       // just begun: three in a block
	IsDue      Reason = "due"         // due for review
	InProgress Reason = "in-progress" // begun and not yet shown
	NewTask    Reason = "new"         // next in the course
	AllDone    Reason = "all-done"    // nothing is due: the one seen longest ago
)

// Choice is what to ask next, and why.
type Choice struct {
	Item   Item
	Reason Reason
}

// introBlock is how many answers to a new task come in a block.
const introBlock = 3

// stuckRest is how long a task rests after someone has been stuck at it: the
// instructor should come in between.
const stuckRest = 20 * time.Hour

// Next returns what is best to practise now; ok is false when what is left wants a
// pause first. recent are the tasks asked in this session, the latest at the end. But
// for its first block a task comes again only after five others, and the same stage
// not twice running where there is another choice of the same urgency.
func Next(items []Item, of map[string]record.Summary, recent []string, now time.Time) (Choice, bool) {
	if len(items) == 0 {
		return Choice{}, false
	}
	last := ""
	if len(recent) > 0 {
		last = recent[len(recent)-1]
	}
	lastStage := problem.Stage("")
	var ranked []Choice
	for _, it := range items {
		if it.Task == last {
			lastStage = it.Stage
		}
		s := of[it.Task]
		c := reason(it, s, now, it.Task == last)
		between := len(recent) - 1 - seenAt(recent, it.Task) // other items since it was last asked
		if c == "" || c != IntroBlock && seenAt(recent, it.Task) >= 0 && between < mastery.Apart {
			continue // so soon after, it would show nothing
		}
		ranked = append(ranked, Choice{it, c})
	}
	if len(ranked) == 0 {
		if len(recent) > 0 {
			return Choice{}, false // enough for today: what is left wants a pause
		}
		return longestAgo(items, of, last), true
	}
	order := []Reason{IntroBlock, GateDue, AnotherDay, IsDue, InProgress, NewTask}
	slices.SortStableFunc(ranked, func(a, b Choice) int {
		if c := slices.Index(order, a.Reason) - slices.Index(order, b.Reason); c != 0 {
			return c
		}
		return int(seenAt(recent, a.Item.Task)) - int(seenAt(recent, b.Item.Task)) // longest ago first
	})
	best := ranked[0]
	for _, c := range ranked {
		if c.Reason == best.Reason && c.Item.Stage != lastStage && best.Reason != IntroBlock && best.Reason != NewTask {
			return c, true
		}
		if c.Reason != best.Reason {
			break
		}
	}
	return best, true
}

// seenAt is where among the recent tasks one stands last; -1 when it does not.
func seenAt(recent []string, task string) int {
	for i := len(recent) - 1; i >= 0; i-- {
		if recent[i] == task {
			return i
		}
	}
	return -1
}

// reason says why a task could come now; empty when there is no reason.
func reason(it Item, s record.Summary, now time.Time, justAsked bool) Reason {
	switch {
	case s.Answers == 0:
		return NewTask
	case s.Stuck() && now.Sub(s.Last) < stuckRest:
		return ""
	case s.Answers < introBlock && justAsked && len(s.Run) < 2: // two right in a row know it already
		return IntroBlock
	case Due(s, now) && it.Gate:
		return GateDue
	case Due(s, now):
		return IsDue
	case s.Mastered:
		return ""
	case it.Gate && len(s.Days) > 0:
		if slices.Contains(s.Days, dayOf(now)) {
			return "" // shown today: that is enough for today
		}
		return AnotherDay
	}
	return InProgress
}

// longestAgo is the task whose last answer is oldest.
func longestAgo(items []Item, of map[string]record.Summary, last string) Choice {
	best := items[0]
	for _, it := range items {
		if it.Task != last && (best.Task == last || of[it.Task].Last.Before(of[best.Task].Last)) {
			best = it
		}
	}
	return Choice{best, AllDone}
}
