// Package schedule decides from a learner's record what is best to practise next,
// and says why. It is pure: it knows no clock and no file; the time is given.
package schedule

import (
	"slices"
	"sync"
	"time"

	"github.com/open-spaced-repetition/go-fsrs/v3"

	"scratchpass/lessons/mastery"
	"scratchpass/lessons/record"
	"scratchpass/quiz"
)

// Item is a task as the schedule sees it.
type Item struct {
	Task    string
	Stage   quiz.Stage
	Gate    bool
	Rule    mastery.Rule
	Minutes float64 // how long one answer takes

	// usual tells what comes up for this learner, which a run must cover. It is asked
	// only for tasks that are answered.
	usual func() usual
	task  *quiz.Task
}

// usual are the situations and the wrong roads that come up often enough.
type usual struct{ forms, roads []string }

// rule is the item's rule with what usually comes up.
func (it Item) rule() mastery.Rule {
	r := it.Rule
	if it.usual != nil {
		u := it.usual()
		r.Forms, r.Roads = u.forms, u.roads
	}
	return r
}

// Wants reports whether a problem would bring a run further: it shows a situation or
// gives a chance to a wrong road that the run at hand has not had.
func (it Item) Wants(s record.Summary, p *quiz.Problem) bool {
	r, form, roads := it.rule(), p.Values.Case(), roadsOf(p)
	missing := false
	for _, f := range r.Forms {
		if !slices.ContainsFunc(s.Run, func(a mastery.Answer) bool { return a.Form == f }) {
			if f == form {
				return true
			}
			missing = true
		}
	}
	for _, road := range r.Roads {
		if !slices.ContainsFunc(s.Run, func(a mastery.Answer) bool { return slices.Contains(a.Roads, road) }) {
			if slices.Contains(roads, road) {
				return true
			}
			missing = true
		}
	}
	return !missing
}

// roads are the wrong roads that would have shown in the problem of a code.
func (it Item) roads(code string) []string {
	c, err := quiz.ParseCode(code)
	if err != nil || it.task == nil || c.Task != it.Task {
		return nil
	}
	p, err := quiz.Make(it.task, c)
	if err != nil {
		return nil
	}
	return roadsOf(p)
}

func roadsOf(p *quiz.Problem) []string {
	var roads []string
	p.SlipReplies(func(s *quiz.Slip, _ quiz.Reply) {
		if !s.Convention {
			roads = append(roads, s.Name)
		}
	})
	return roads
}

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

// usualOf draws problems to see what comes up in a system of units. Situations count
// where they are an input of every problem.
func usualOf(t *quiz.Task, system quiz.System, situations bool) usual {
	if !t.Allows(system) {
		system = t.Systems[0]
	}
	seen, roads := map[string]int{}, map[string]int{}
	var u usual
	for seed := range uint32(usualTried) {
		p, err := quiz.Make(t, quiz.NewCode(t.Name, quiz.NumbersGiven, system, seed, quiz.DefaultLathe(system)))
		if err != nil {
			continue // a task that can't be drawn; its own tests say so
		}
		for _, road := range roadsOf(p) {
			if roads[road]++; roads[road] == roadsLeast {
				u.roads = append(u.roads, road)
			}
		}
		form := p.Values.Case()
		if seen[form]++; situations && form != "" && seen[form] == formsLeast {
			u.forms = append(u.forms, form)
		}
	}
	return u
}

// ItemOf describes a task for a learner who works in a system of units; kind is the
// kind of its answers.
func ItemOf(t *quiz.Task, kind string, system quiz.System) Item {
	it := Item{Task: t.Name, Stage: t.Stage, Gate: t.Gate, Minutes: typedMinutes, task: t}
	it.Rule = mastery.Rule{Gate: t.Gate, Choice: kind == "choice", OneKey: kind == "choice" || kind == "order"}
	if kind == "choice" {
		it.Minutes = choiceMinutes
	}
	situations := slices.ContainsFunc(t.Inputs, func(in quiz.Input) bool { return in.Is == quiz.AWord && !in.Extra && in.Group == "" })
	it.usual = sync.OnceValue(func() usual { return usualOf(t, system, situations) })
	return it
}

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
		if a.Verdict == string(quiz.NamedSlip) {
			slips := map[string]int{}
			for name, n := range s.Slips {
				slips[name] = n
			}
			slips[a.Slip]++
			s.Slips = slips
		}
		if a.Certainty == "bet" && !a.Right() {
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
	lastStage := quiz.Stage("")
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
