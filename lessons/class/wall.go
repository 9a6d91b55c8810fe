package class

import (
	"maps"
	"slices"
	"time"

	"scratchpass/lessons/page"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/set"
)

// OnTheWall is whose numbers the wall shows: nobody's in the room.
const OnTheWall = "on-the-wall"

// FewestShown is how many must have answered before the wall shows what came of it. Of fewer,
// those in the room could tell who gave which answer: then only the right one is shown, unless the
// instructor shows the counts all the same.
const FewestShown = 5

// WithCounts is the name of an event that shows counts however few have answered.
const WithCounts = "counts"

// Few reports whether so few answers count that one could tell whose they are.
func (s Spread) Few() bool { return s.Answered-s.Open < FewestShown }

// Counted reports whether the wall tells the counts of a question however few there are.
func (a *Asking) Counted(place int) bool { return a.counts[place] }

// Wall is what all may see: no name, and no number that someone is asked for.
type Wall struct {
	Head     Head
	Way      Way
	Set      int
	Place    int // -1 where no question is at hand
	Places   int
	Item     set.Item
	Own      bool // nobody in the room has its numbers
	Locked   bool
	Paused   bool
	Ended    bool
	Shown    int // 0: the question; 1: and what came; and one more for each line of the working
	Lines    int // of the working
	Came     int
	Answered int // who answered the question at hand; at their own pace, who answered all
	Until    time.Time
	Spread   Spread
	Counts   bool // are told however few have answered
	Position string
	Before   []Before // questions that the one at hand follows from, with what is right on the wall
}

// Before is a question that another follows from, and its right answer with the numbers on the
// wall.
type Before struct {
	Number int
	Key    string
}

// Few reports whether too few answers count for what came of them to be shown.
func (w Wall) Few() bool { return !w.Counts && w.Spread.Few() }

// Waits reports whether the wall says how to come in: nothing has begun.
func (w Wall) Waits() bool { return w.Place < 0 && (w.Way == Together || w.Way == "") }

// Solved reports whether the right answer is on the wall: with the last line of the working.
func (w Wall) Solved() bool { return w.Shown > w.Lines }

// linesOf is how many lines the working of a question has on the wall. An order is one: it is
// read as a whole.
func linesOf(it set.Item) int {
	if it.Problem.Task.Kind.InOrder() {
		return 1
	}
	return len(it.Problem.Working.Steps)
}

// Wall is what the wall shows now.
func (r *Room) Wall() (Wall, error) {
	w := Wall{Head: r.Head, Set: r.Now, Place: -1, Paused: r.Paused, Ended: r.Ended, Came: len(r.Came()), Position: r.Position()}
	w.Head.Key, w.Head.Roster = "", nil
	a := r.Asking()
	if a == nil {
		return w, nil
	}
	w.Way, w.Places, w.Locked, w.Until = a.Way, a.Places(), a.Locked, a.Until
	if a.Way != Together || a.Open < 0 {
		for _, p := range r.Came() {
			if r.answeredAll(p, r.Now) {
				w.Answered++
			}
		}
		return w, nil
	}
	w.Place, w.Shown, w.Counts = a.Open, a.Shown(a.Open), a.counts[a.Open]
	var err error
	if w.Item, err = r.Example(r.Now, a.Open); err != nil {
		return w, err
	}
	if w.Own, err = r.own(r.Now, w.Item); err != nil {
		return w, err
	}
	w.Lines = linesOf(w.Item)
	for _, place := range slices.Sorted(maps.Values(w.Item.From)) {
		it, err := r.Example(r.Now, place)
		if err != nil {
			return w, err
		}
		w.Before = append(w.Before, Before{Number: place + 1, Key: it.Words.KeyNumber(it.Problem)})
	}
	if err := r.spread(a, &w.Spread); err != nil {
		return w, err
	}
	w.Answered = w.Spread.Answered
	return w, nil
}

// spread adds up what came of the question at hand.
func (r *Room) spread(a *Asking, s *Spread) error {
	for _, p := range r.Came() {
		items, err := a.Items(p.ID)
		if err != nil {
			return err
		}
		result, err := r.Marked(p, r.Now)
		if err != nil {
			return err
		}
		i := slices.IndexFunc(items, func(it set.Item) bool { return it.Place == a.Open })
		if i >= 0 {
			s.add(r.cell(p, Question{r.Now, a.Open}, items[i], result.Items[i]), items[i])
		}
	}
	return nil
}

func (r *Room) answeredAll(p *Person, n int) bool {
	for place := range r.Sets[n].Places() {
		if _, ok := p.Answers[Question{n, place}]; !ok {
			return false
		}
	}
	return true
}

// Asked is the question on the wall, with numbers of its own.
func (w Wall) Asked(s *sitting.Session) page.Page {
	q := s.QuestionOf(w.Item.Problem, w.Item.Words)
	q.Code = "" // nothing to type it in at
	p := page.Page{q}
	for _, before := range w.Before {
		p = append(p, page.Paragraph{Text: s.Say("class-wall-follows", "n", before.Number, "key", before.Key)})
	}
	return p
}

// Working is as much of the working as is shown, of the numbers on the wall, and with its last
// line the right answer, and why.
func (w Wall) Working(s *sitting.Session) page.Page {
	p := workingTo(s, w.Item, w.Shown-1)
	if !w.Solved() {
		return p
	}
	f := w.Item.Words.Feedback(w.Item.Problem, notKnown)
	p = append(p, page.Verdict{Right: true, Text: f.Answer})
	if f.Reason != "" {
		p = append(p, page.Paragraph{Text: f.Reason})
	}
	return p
}

// workingTo is the working of a question with its own numbers, as far as its n-th line.
func workingTo(s *sitting.Session, it set.Item, n int) page.Page {
	switch steps := sitting.Explained(s, it.Problem, it.Words); {
	case n > 0 && it.Problem.Task.Kind.InOrder():
		return page.Page{page.Sequence(it.Words.Feedback(it.Problem, notKnown).Working)}
	case n > 0 && len(steps) > 0:
		return page.Page{steps[:min(n, len(steps))]}
	}
	return nil
}

// Cautions are those of a question about what can hurt someone. They are on the wall as soon as
// what came is.
func (w Wall) Cautions(s *sitting.Session) page.Page {
	var p page.Page
	if w.Shown == 0 || !w.Item.Problem.Task.SafetyCritical {
		return nil
	}
	for _, key := range w.Item.Words.Task.Safety {
		p = append(p, page.Caution{Text: s.Say("say-caution", "text", s.CautionText(key))})
	}
	return p
}

// Says is what a common error is, in the words that those who made it read, with the numbers on
// the wall; in its name where the wall has another task.
func (w Wall) Says(m Mistakes) string {
	p := w.Item.Problem
	if m.Says != "" || p == nil || m.Task != p.Task.Name {
		return m.Text()
	}
	mark := answer.Mark{Verdict: answer.KnownError, Error: m.Slip}
	for _, known := range p.Expected.Errors {
		if known.Name == m.Slip {
			mark.Response = known.Response
		}
	}
	return w.Item.Words.Feedback(p, mark).Reason
}
