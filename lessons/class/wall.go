package class

import (
	"scratchpass/lessons/page"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/set"
)

// OnTheWall is whose numbers the wall shows: nobody's in the room.
const OnTheWall = "on-the-wall"

// Wall is what all may see: no name, and no number that someone is asked for.
type Wall struct {
	Head     Head
	Way      Way
	Set      int
	Place    int // -1 where no question is at hand
	Places   int
	Item     set.Item
	Locked   bool
	Paused   bool
	Ended    bool
	Shown    int // 0: the question; 1: and what came; and one more for each line of the working
	Lines    int // of the working
	Came     int
	Answered int // who answered the question at hand; at their own pace, who answered all
	Spread   Spread
}

// Wall is what the wall shows now.
func (r *Room) Wall() (Wall, error) {
	w := Wall{Head: r.Head, Set: r.Now, Place: -1, Paused: r.Paused, Ended: r.Ended, Came: len(r.Came())}
	w.Head.Key, w.Head.Roster = "", nil
	a := r.Asking()
	if a == nil {
		return w, nil
	}
	w.Way, w.Places, w.Locked = a.Way, a.Places(), a.Locked
	if a.Way != Together || a.Open < 0 {
		for _, p := range r.Came() {
			if r.answeredAll(p, r.Now) {
				w.Answered++
			}
		}
		return w, nil
	}
	w.Place, w.Shown = a.Open, a.Shown(a.Open)
	var err error
	if w.Item, err = a.Item(OnTheWall, a.Open); err != nil {
		return w, err
	}
	w.Lines = len(w.Item.Problem.Working.Steps)
	for _, p := range r.Came() {
		items, err := a.Items(p.ID)
		if err != nil {
			return w, err
		}
		result, err := r.Marked(p, r.Now)
		if err != nil {
			return w, err
		}
		for i, it := range items {
			if it.Place == a.Open {
				w.Spread.add(r.cell(p, Question{r.Now, it.Place}, result.Items[i]), it)
			}
		}
	}
	w.Answered = w.Spread.Answered
	return w, nil
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
	return page.Page{s.QuestionOf(w.Item.Problem, w.Item.Words)}
}

// Working is as much of the working as is shown: of the numbers on the wall.
func (w Wall) Working(s *sitting.Session) page.Page {
	steps := sitting.Explained(s, w.Item.Problem, w.Item.Words)
	n := min(max(0, w.Shown-1), len(steps))
	if n == 0 {
		return nil
	}
	return page.Page{steps[:n]}
}
