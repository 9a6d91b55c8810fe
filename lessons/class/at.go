package class

import (
	"slices"
	"time"

	"scratchpass/quiz/set"
)

// Scene is what a phone is for now.
type Scene string

// The scenes.
const (
	Waits  Scene = "waits"  // for the first question, or the next
	Stops  Scene = "stops"  // all pause
	Asks   Scene = "asks"   // a question
	Kept   Scene = "kept"   // it was answered; until it is locked another answer may be given
	Closed Scene = "closed" // it takes no more answers, and nothing is told yet
	Tells  Scene = "tells"  // what came of the answer
	Done   Scene = "done"   // all are answered
	Over   Scene = "over"   // the lesson is over
)

// At is where someone is in the room, taken from it as it was at one moment.
type At struct {
	Scene  Scene
	Person Person // without what others have to do with
	Title  string
	Set    int
	Way    Way
	Asked  *Asking // nil before the first set
	Item   set.Item
	Answer *Answer // to the question at hand; nil for none
	Result set.Result
	Marks  bool   // Result may be told
	Lines  []Line // the questions that someone may look at, or go to
	Of     int    // how many there are in the set
	Came   []Came // of each set, once the lesson is over
	Ends   time.Time
	Timed  bool
	Hinted bool
	Before []Earlier // the questions that the one at hand follows from
	Bench  *Bench    // nil where questions are at hand
	Did    []Bench   // in bench rounds, once the lesson is over
}

// Came is what came of a set.
type Came struct {
	*Asking
	Lines  []Line
	Result set.Result
}

// Earlier is a question that another one follows from.
type Earlier struct {
	Number int
	Title  string // of its task: what was asked
	Given  string // what was answered; empty for nothing
}

// Line is a question of the set that someone is at.
type Line struct {
	Number   int
	Place    int
	Title    string
	Answered bool
}

// FirstCounts reports whether an answer to a question of the set is final.
func (a *Asking) FirstCounts() bool { return a.Way != Together && a.AtOnce() }

// Question is the one at hand.
func (a At) Question() Question { return Question{a.Set, a.Item.Place} }

// At finds where someone is. wish is the place that they would see, where they may choose; -1
// for the next.
func (r *Room) At(p *Person, wish int, now time.Time) (At, error) {
	at := At{Person: Person{ID: p.ID, Name: p.Name, Visitor: p.Visitor, Calls: p.Calls, Keeps: p.Keeps, Extra: p.Extra}, Title: r.Head.Title, Set: r.Now, Asked: r.Asking()}
	switch {
	case r.Paused && !r.Ended:
		at.Scene = Stops
		return at, nil
	case r.Ended:
		at.Did = r.benches(p)
	case r.round >= 0:
		return r.atBench(p, at), nil
	}
	if at.Asked == nil {
		if at.Scene = Waits; r.Ended {
			at.Scene = Over
		}
		return at, nil
	}
	at.Way = at.Asked.Way
	at.Ends, at.Timed = r.Ends(p, r.Now)
	items, err := at.Asked.Items(p.ID)
	if err != nil {
		return at, err
	}
	if at.Result, err = r.Marked(p, r.Now); err != nil {
		return at, err
	}
	at.Lines, at.Of = r.lines(p, r.Now, items), len(items)
	if text, ok := p.Unclear[r.Now]; ok {
		at.Person.Unclear = map[int]string{r.Now: text}
	}
	place := at.Asked.Open
	if at.Way != Together || r.Ended {
		place = r.next(p, at.Lines, wish, now)
	}
	i := slices.IndexFunc(items, func(it set.Item) bool { return it.Place == place })
	if i < 0 {
		at.Scene = at.without()
		at.Marks = at.Scene == Done && !at.Asked.Never() && (at.Asked.AtOnce() || at.Asked.Locked)
		if r.Ended {
			at.Scene = Over
			at.Came, err = r.came(p)
		}
		return at, err
	}
	at.Item = items[i]
	q := at.Question()
	at.Hinted = p.Hints[q]
	if a, ok := p.Answers[q]; ok {
		at.Answer = &a
	}
	for _, n := range set.FollowsFrom(items, at.Item) {
		b := Earlier{Number: n, Title: items[n-1].Words.Task.Title}
		if came := at.Result.Items[n-1]; came.Verdict != set.Blank {
			b.Given = came.Given
		}
		at.Before = append(at.Before, b)
	}
	at.Scene = r.scene(p, at, now)
	at.Marks = !at.Asked.Never() && (at.Scene == Tells || at.Scene == Over)
	return at, nil
}

// lines are the questions of a set that someone may go to: all, or where all go together those
// that were asked.
func (r *Room) lines(p *Person, n int, items []set.Item) []Line {
	a := r.Sets[n]
	var lines []Line
	for _, it := range items {
		_, answered := p.Answers[Question{n, it.Place}]
		if a.Way != Together || answered || a.Shown(it.Place) > 0 || a.Open == it.Place {
			lines = append(lines, Line{it.Number, it.Place, it.Words.Task.Title, answered})
		}
	}
	return lines
}

// came is what came of each set of which that may be told.
func (r *Room) came(p *Person) ([]Came, error) {
	var all []Came
	for n, a := range r.Sets {
		items, err := a.Items(p.ID)
		if err != nil {
			return nil, err
		}
		result, err := r.Marked(p, n)
		if err != nil {
			return nil, err
		}
		if lines := r.lines(p, n, items); len(lines) > 0 && !a.Never() {
			all = append(all, Came{a, lines, result})
		}
	}
	return all, nil
}

// without is the scene where no question is at hand.
func (a At) without() Scene {
	if a.Way == Together {
		return Waits
	}
	return Done
}

// next is the place that someone goes to: the one they would see, else the first that has no
// answer; -1 where all have one.
func (r *Room) next(p *Person, lines []Line, wish int, now time.Time) int {
	if slices.ContainsFunc(lines, func(l Line) bool { return l.Place == wish }) {
		return wish
	}
	for _, l := range lines {
		if !l.Answered && r.Takes(p, Question{r.Now, l.Place}, now) {
			return l.Place
		}
	}
	return -1
}

// scene is what a phone is for at a question.
func (r *Room) scene(p *Person, at At, now time.Time) Scene {
	q := at.Question()
	told := !at.Asked.Never() && (at.Asked.Shown(q.Place) > 0 || at.Way != Together && at.Asked.AtOnce() && at.Answer != nil || at.Answer != nil && at.Answer.Told || at.Way != Together && (at.Asked.Locked || at.Asked.Told(q.Place)))
	switch {
	case r.Ended:
		return Over
	case told:
		return Tells
	case !r.Takes(p, q, now):
		return Closed
	case at.Answer != nil && !at.Answer.Late: // one that came too late may be given again
		return Kept
	}
	return Asks
}
