package class

import (
	"cmp"
	"slices"
	"time"

	"scratchpass/quiz/answer"
	"scratchpass/quiz/set"
)

// Standing is how the people of a room stand in the set at hand.
type Standing struct {
	Rows   []Row
	Places []Place
}

// Place is a question of the set, as the instructor sees it.
type Place struct {
	Place    int
	Title    string
	Critical bool
	Spread   Spread
}

// Row is one person.
type Row struct {
	ID, Name string
	Visitor  bool
	Came     bool
	Away     bool
	Needs    Need
	Claims   []string
	Extra    time.Duration
	Cells    []Cell
	Unclear  string
	Right    int
	Answered int
}

// Need is why someone needs the instructor; the smaller comes first.
type Need int

// The needs.
const (
	NeedsIn     Need = iota // a second phone wants the name
	NeedsHelp               // asks for the instructor
	NeedsCare               // sure, and wrong, on what can hurt someone
	NeedsLate               // an answer came late, and waits to be let
	NeedsTime               // stuck: at one question for long, or with a hint and no answer
	NeedsPhone              // away
	NeedsNone               //
	NeedsRoster             // did not come
)

// Cell is how someone stands at a question.
type Cell struct {
	State     State
	Mistake   string // the name of the common error
	Given     string
	Key       string
	Late      bool
	SureWrong bool // would have bet the part on a wrong answer
	Hinted    bool
}

// State is what can be seen of an answer at a glance.
type State string

// The states.
const (
	NotYet   State = "not-yet"  // not asked, or not answered
	Here     State = "here"     // at this question now
	IsRight  State = "right"    //
	IsPartly State = "partly"   // some of the points
	IsKnown  State = "mistake"  // a common error
	IsWrong  State = "wrong"    // and no common error
	IsOpen   State = "open"     // can't be marked: the instructor decides
	IsPassed State = "passed"   // said that they do not know
	IsGiven  State = "answered" // where what came is not told to anyone yet
)

// stuckAfter is how long someone may be at a question before they may be stuck.
const stuckAfter = 4 * time.Minute

// Standing is how all stand in a set. away tells of a device that nobody is at.
func (r *Room) Standing(n int, now time.Time, away func(device string) bool) (Standing, error) {
	var s Standing
	if n >= len(r.Sets) {
		return s, nil
	}
	a := r.Sets[n]
	for place := range a.Places() {
		s.Places = append(s.Places, Place{Place: place})
	}
	for _, p := range r.People() {
		row := Row{ID: p.ID, Name: p.Name, Visitor: p.Visitor, Came: p.Device != "", Claims: p.Claims, Extra: p.Extra, Unclear: p.Unclear[n], Needs: NeedsRoster}
		if row.Came || len(p.Answers) > 0 {
			if err := r.stands(p, n, now, &row, s.Places); err != nil {
				return s, err
			}
			row.Away = p.Device != "" && away(p.Device)
			row.Needs = r.needs(p, n, row, now)
		}
		if len(p.Claims) > 0 {
			row.Needs = NeedsIn
		}
		s.Rows = append(s.Rows, row)
	}
	slices.SortStableFunc(s.Rows, func(x, y Row) int { return cmp.Compare(x.Needs, y.Needs) })
	return s, nil
}

// stands fills in the cells of one person, and adds them to the spreads.
func (r *Room) stands(p *Person, n int, now time.Time, row *Row, places []Place) error {
	items, err := r.Sets[n].Items(p.ID)
	if err != nil {
		return err
	}
	result, err := r.Marked(p, n)
	if err != nil {
		return err
	}
	here := r.here(p, n, items, now)
	row.Cells = make([]Cell, len(places))
	for i, it := range items {
		c := r.cell(p, Question{n, it.Place}, result.Items[i])
		if c.State == NotYet && here == it.Place {
			c.State = Here
		}
		if c.State == IsRight {
			row.Right++
		}
		if c.State != NotYet && c.State != Here {
			row.Answered++
		}
		row.Cells[it.Place] = c
		place := &places[it.Place]
		place.Title, place.Critical = it.Words.Task.Title, it.Problem.Task.SafetyCritical
		place.Spread.add(c, it)
	}
	return nil
}

// here is the place that someone is at; -1 for none.
func (r *Room) here(p *Person, n int, items []set.Item, now time.Time) int {
	a := r.Sets[n]
	if n != r.Now || p.Device == "" {
		return -1
	}
	if a.Way == Together {
		return a.Open
	}
	for _, it := range items {
		q := Question{n, it.Place}
		if _, ok := p.Answers[q]; !ok && r.Takes(p, q, now) {
			return it.Place
		}
	}
	return -1
}

func (r *Room) cell(p *Person, q Question, res set.ItemResult) Cell {
	a, ok := p.Answers[q]
	c := Cell{State: NotYet, Hinted: p.Hints[q]}
	if !ok {
		return c
	}
	c.Given, c.Key, c.Late = a.Text, res.Key, a.Late
	if a.Name != "" { // a sum, as it was typed
		c.Given = a.Name
	}
	c.State = stateOf(res)
	if a.Late {
		c.State = IsGiven
	}
	if c.State == IsKnown {
		c.Mistake = res.Slip
	}
	c.SureWrong = (c.State == IsWrong || c.State == IsKnown) && a.Certainty == answer.Bet && res.Gate
	return c
}

// stateOf is the state of an answer that was marked.
func stateOf(res set.ItemResult) State {
	switch {
	case res.Verdict == set.Blank:
		return IsPassed
	case res.Verdict == answer.Unread || res.Verdict == set.ByHand || res.Verdict == set.Twice:
		return IsOpen
	case res.Points >= res.Of:
		return IsRight
	case res.Slip != "":
		return IsKnown
	case res.Points > 0:
		return IsPartly
	}
	return IsWrong
}

func (r *Room) needs(p *Person, n int, row Row, now time.Time) Need {
	late, care, hinted := false, false, false
	for _, c := range row.Cells {
		late = late || c.Late
		care = care || c.SureWrong
		hinted = hinted || c.State == Here && c.Hinted
	}
	switch {
	case p.Calls:
		return NeedsHelp
	case care:
		return NeedsCare
	case late:
		return NeedsLate
	case n == r.Now && !r.Paused && !r.Ended && slices.ContainsFunc(row.Cells, func(c Cell) bool { return c.State == Here }) && (hinted || now.Sub(r.since(p, n)) > stuckAfter):
		return NeedsTime
	case row.Away:
		return NeedsPhone
	case !row.Came:
		return NeedsRoster
	}
	return NeedsNone
}

// since is when someone's question was opened: by the instructor, or by their last answer.
func (r *Room) since(p *Person, n int) time.Time {
	at := r.Sets[n].opened
	if r.Sets[n].Way == Together {
		return at
	}
	for _, a := range p.Answers {
		if a.At.After(at) {
			at = a.At
		}
	}
	return at
}
