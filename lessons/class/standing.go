package class

import (
	"cmp"
	"slices"
	"time"

	"scratchpass/quiz/answer"
	"scratchpass/quiz/set"
)

// Standing is how the people of a room stand in a set.
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
	Device   string // that has the name; empty for none
	Came     bool   // they are counted as in the room
	Away     bool   // nobody is at their phone, or they have none
	Needs    Need   // the first of why
	Why      []Need // all that they need the instructor for, the most urgent first
	Claims   []string
	Extra    time.Duration
	Cells    []Cell // by place; empty for who has done nothing yet
	Unclear  string
	Right    int
	Answered int
}

// Need is why someone needs the instructor; the smaller comes first.
type Need string

// The needs.
const (
	NeedsIn     Need = "in"     // a second phone wants the name
	NeedsHelp   Need = "help"   // asks for the instructor
	NeedsCare   Need = "care"   // sure, and wrong, on what can hurt someone
	NeedsLate   Need = "late"   // an answer came late, and waits to be let
	NeedsRead   Need = "unread" // typed what can't be read
	NeedsHint   Need = "hint"   // took a hint, and has no answer yet
	NeedsTime   Need = "time"   // at one question for long
	NeedsNone   Need = "none"   //
	NeedsPhone  Need = "phone"  // away
	NeedsRoster Need = "roster" // did not come
)

// needs are all of them, the most urgent first. Who is not here can't be helped now, and comes
// after those who need nothing.
var needs = []Need{NeedsIn, NeedsHelp, NeedsCare, NeedsLate, NeedsRead, NeedsHint, NeedsTime, NeedsNone, NeedsPhone, NeedsRoster}

// Seeable reports whether the instructor can have seen to all that someone needs.
func (r Row) Seeable() bool {
	return slices.ContainsFunc(r.Why, func(n Need) bool {
		return n == NeedsHelp || n == NeedsCare || n == NeedsLate || n == NeedsRead || n == NeedsHint || n == NeedsTime || n == NeedsHurt || n == NeedsScrap
	})
}

// Gone reports whether someone is not here, and nothing of theirs waits for the instructor.
func (r Row) Gone() bool { return r.Needs == NeedsPhone || r.Needs == NeedsRoster }

// Cell is how someone stands at a question.
type Cell struct {
	State     State
	Mistake   string // the name of the common error
	Letter    string // that stands for it in the table
	Given     string
	Key       string
	Late      bool
	By        time.Duration // how late; 0 where that can't be said
	SureWrong bool          // would have bet the part on a wrong answer
	Hurts     bool          // and it is about what can hurt someone
	Certainty answer.Certainty
	Seen      bool // the instructor has seen to them since
	Hinted    bool
}

// State is what can be seen of an answer at a glance.
type State string

// The states.
const (
	NotYet   State = "not-yet" // not asked, or not answered
	Here     State = "here"    // at this question now
	IsRight  State = "right"   //
	IsPartly State = "partly"  // some of the points
	IsKnown  State = "mistake" // a common error
	IsWrong  State = "wrong"   // and no common error
	IsOpen   State = "open"    // can't be marked: the instructor decides
	IsUnread State = "unread"  // what was typed can't be read
	IsPassed State = "passed"  // said that they do not know
	IsLate   State = "late"    // came late, and was not let
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
		it, err := a.Item(OnTheWall, place)
		if err != nil {
			return s, err
		}
		s.Places = append(s.Places, Place{Place: place, Title: it.Words.Task.Title, Critical: it.Problem.Task.SafetyCritical})
	}
	for _, p := range r.People() {
		row := Row{ID: p.ID, Name: p.Name, Visitor: p.Visitor, Device: p.Device, Came: p.came(), Claims: p.Claims, Extra: p.Extra, Unclear: p.Unclear[n]}
		row.Away = p.Device == "" || away(p.Device)
		if row.Came {
			if err := r.stands(p, n, now, &row, s.Places); err != nil {
				return s, err
			}
		}
		row.Why = r.why(p, n, row, now)
		row.Needs = row.Why[0]
		s.Rows = append(s.Rows, row)
	}
	slices.SortStableFunc(s.Rows, func(x, y Row) int { return cmp.Compare(slices.Index(needs, x.Needs), slices.Index(needs, y.Needs)) })
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
		c := r.cell(p, Question{n, it.Place}, it, result.Items[i])
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
		places[it.Place].Critical = places[it.Place].Critical || it.Problem.Task.SafetyCritical // of a mixed slot some are
		places[it.Place].Spread.add(c, it)
	}
	return nil
}

// here is the place that someone is at; -1 for none.
func (r *Room) here(p *Person, n int, items []set.Item, now time.Time) int {
	a := r.Sets[n]
	switch {
	case n != r.Now || p.Device == "" || r.Ended:
		return -1
	case a.Way == Together && a.Locked:
		return -1
	case a.Way == Together:
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

func (r *Room) cell(p *Person, q Question, it set.Item, res set.ItemResult) Cell {
	a, ok := p.Answers[q]
	c := Cell{State: NotYet, Key: res.Key, Hinted: p.Hints[q]}
	if !ok {
		return c
	}
	c.Given, c.Late, c.By, c.Seen = a.Text, a.Late, a.By, a.Seq < p.seen.Seq
	if a.Name != "" { // a sum, as it was typed
		c.Given = a.Name
	}
	c.State = stateOf(res)
	if a.Late {
		c.State = IsLate
	}
	if c.State == IsKnown {
		c.Mistake, c.Letter = res.Slip, letterOf(it.Problem.Task, res.Slip)
	}
	c.SureWrong = (c.State == IsWrong || c.State == IsKnown) && a.Certainty == answer.Bet
	c.Certainty, c.Hurts = a.Certainty, c.SureWrong && res.Gate
	return c
}

// stateOf is the state of an answer that was marked.
func stateOf(res set.ItemResult) State {
	switch {
	case res.Verdict == set.Blank:
		return IsPassed
	case res.Verdict == answer.Unread:
		return IsUnread
	case res.Verdict == set.ByHand || res.Verdict == set.Twice:
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

// why is all that someone needs the instructor for; one of NeedsNone and NeedsRoster where
// there is nothing.
func (r *Room) why(p *Person, n int, row Row, now time.Time) []Need {
	has := map[Need]bool{NeedsIn: len(p.Claims) > 0, NeedsHelp: p.Calls, NeedsPhone: row.Came && row.Away}
	runs := n == r.Now && !r.Paused && !r.Ended
	for _, c := range row.Cells {
		has[NeedsCare] = has[NeedsCare] || c.Hurts && !c.Seen
		has[NeedsLate] = has[NeedsLate] || c.Late && !c.Seen
		has[NeedsRead] = has[NeedsRead] || c.State == IsUnread && !c.Seen
		if c.State == Here && runs {
			has[NeedsHint] = has[NeedsHint] || c.Hinted && now.Sub(p.seen.At) > stuckAfter
			has[NeedsTime] = has[NeedsTime] || now.Sub(r.since(p, n)) > stuckAfter && !row.Away
		}
	}
	has[NeedsTime] = has[NeedsTime] && !has[NeedsHint]
	var all []Need
	for _, need := range needs {
		if has[need] {
			all = append(all, need)
		}
	}
	switch {
	case len(all) > 0:
		return all
	case !row.Came:
		return []Need{NeedsRoster}
	}
	return []Need{NeedsNone}
}

// since is when someone's question was opened: by the instructor, or by their last answer, or
// when the instructor has seen to them.
func (r *Room) since(p *Person, n int) time.Time {
	at := r.Sets[n].opened
	if p.seen.At.After(at) {
		at = p.seen.At
	}
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
