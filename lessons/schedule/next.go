// Package schedule decides from a learner's record what is best to practise next,
// and says why. It is pure: it knows no clock and no file; the time is given.
package schedule

import (
	"cmp"
	"slices"
	"time"

	"scratchpass/lessons/mastery"
	"scratchpass/lessons/record"
	"scratchpass/quiz/problem"
)

// Reason says why a task comes next. The texts are names of phrases in content.
type Reason string

// The reasons, the most pressing first.
const (
	IntroBlock        Reason = "intro"       // just begun: three in a block
	SafetyCriticalDue Reason = "gate-due"    // can hurt someone, and is due for review
	AnotherDay        Reason = "another-day" // shown on one day, and wants another
	IsDue             Reason = "due"         // due for review
	InProgress        Reason = "in-progress" // begun and not yet shown
	NewTask           Reason = "new"         // next in the course
	AllDone           Reason = "all-done"    // nothing is due: the one seen longest ago
)

// pressing are the reasons that are weighed against each other.
var pressing = []Reason{IntroBlock, SafetyCriticalDue, AnotherDay, IsDue, InProgress, NewTask}

// Choice is what to ask next, and why.
type Choice struct {
	Item   Item
	Reason Reason
}

// introBlock is how many answers to a new task come in a block.
const introBlock = 3

// stuckRest is how long a task rests after someone has been stuck at it: the
// instructor should come in between. A night does it.
const stuckRest = 20 * time.Hour

// Next returns what is best to practise now; ok is false when what is left wants a
// pause first. The items stand in the order of the course; of holds what the answers to
// each came to; recent are the tasks asked in this session, the latest at the end. But
// for its first block a task comes again only after five others, and the same stage
// not twice running where there is another choice of the same urgency.
func Next(items []Item, of map[string]record.Summary, recent []string, now time.Time) (Choice, bool) {
	last := ""
	if len(recent) > 0 {
		last = recent[len(recent)-1]
	}
	lastStage := problem.Stage("")
	var ranked []Choice
	for _, it := range items {
		justAsked := it.Task == last
		if justAsked {
			lastStage = it.Stage
		}
		why := reason(it, of[it.Task], now, justAsked)
		if why == "" || why != IntroBlock && slices.Contains(latest(recent), it.Task) {
			continue // so soon after, it would show nothing
		}
		ranked = append(ranked, Choice{it, why})
	}
	if len(ranked) == 0 {
		if len(recent) > 0 {
			return Choice{}, false // enough for today
		}
		return longestAgo(items, of)
	}
	slices.SortStableFunc(ranked, func(a, b Choice) int {
		return cmp.Or(cmp.Compare(slices.Index(pressing, a.Reason), slices.Index(pressing, b.Reason)),
			cmp.Compare(seenAt(recent, a.Item.Task), seenAt(recent, b.Item.Task))) // longest ago first
	})
	best := ranked[0]
	if best.Reason == NewTask {
		return best, true // the course has its order
	}
	for _, c := range ranked {
		if c.Reason == best.Reason && c.Item.Stage != lastStage {
			return c, true
		}
	}
	return best, true
}

// latest are the recent tasks that come not yet again.
func latest(recent []string) []string { return recent[max(0, len(recent)-mastery.Apart):] }

// seenAt is where among the recent tasks one stands last; -1 when it does not.
func seenAt(recent []string, task string) int {
	for i, name := range slices.Backward(recent) {
		if name == task {
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
	case s.Answers < introBlock && justAsked && s.Run.Length < 2: // two right in a row know it already
		return IntroBlock
	case Due(s, now) && it.SafetyCritical:
		return SafetyCriticalDue
	case Due(s, now):
		return IsDue
	}
	m, missing := it.Rule.Missing(s.State) // which day does not hang on what comes up
	switch {
	case !missing:
		return "" // what was shown comes when it is due
	case m.LaterRun:
		if !mastery.MomentOf(now).Later(m.Later, m.Rest) {
			return "" // shown, and it must be of a later day
		}
		return AnotherDay
	}
	return InProgress
}

// longestAgo is the task whose last answer is oldest, of those that have been shown: the
// others rest. ok is false when all do.
func longestAgo(items []Item, of map[string]record.Summary) (c Choice, ok bool) {
	for _, it := range items {
		s := of[it.Task]
		if s.Mastered && (!ok || s.Last.Before(of[c.Item.Task].Last)) {
			c, ok = Choice{it, AllDone}, true
		}
	}
	return c, ok
}

// holdWithin is how long after a task was shown on one day, or was wrong since, it comes
// again at the latest: being ready to ask rests on what was held.
const holdWithin = 3 * 24 * time.Hour

// DueAt is when a task that was shown is due for review: when its card says so, or sooner
// where it is not held yet.
func DueAt(s record.Summary) time.Time {
	due := s.Card.Due
	if hold := time.Unix(max(s.Shown.Unix, s.Wrong.Unix), 0).Add(holdWithin); !s.Held && hold.Before(due) {
		due = hold
	}
	return due
}

// Due reports whether a task that was shown is due for review: from that moment on.
func Due(s record.Summary, now time.Time) bool { return s.Mastered && !DueAt(s).After(now) }

// DueBy returns the tasks that are due at a time, in the order of the items.
func DueBy(items []Item, of map[string]record.Summary, now time.Time) []string {
	var due []string
	for _, it := range items {
		if Due(of[it.Task], now) {
			due = append(due, it.Task)
		}
	}
	return due
}
