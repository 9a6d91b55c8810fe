package served

import (
	"errors"
	"fmt"
	"hash/fnv"
	"net/http"
	"slices"
	"strings"
	"time"

	"scratchpass/lessons/class"
)

// deskData is what the instructor sees.
type deskData struct {
	Rows        []class.Row
	Code, Title string
	Address     string
	Version     string
	Wrong       string // with what was asked for last
	Came        int
	Roster      int
	Visitors    bool
	Now         string // in a sentence: where the room is
	Position    string
	Next        class.Step // empty where no step can be taken
	Back        bool       // a step back can be
	Way         class.Way
	Ways        []class.Way // the others
	Set         int
	Sets        []deskSet
	Places      []deskPlace
	Cares       []care
	Unclear     []unclear
	Paused      bool
	Shut        bool
	Away        bool // the journal is out of reach
	Ended       bool
	Locked      bool
	Tells       bool   // to close the set tells what came
	Until       string // a time of day; empty for none
	Tasks       []taskName
}

// deskSet is a set of the room.
type deskSet struct {
	N    int
	Name string
	Now  bool
}

// deskPlace is a question of the set at hand.
type deskPlace struct {
	class.Place
	State    string // the end of the name of a phrase
	CanOpen  bool
	CanLook  bool
	CanAgain bool
	Mistakes []deskMistake
}

// deskMistake is a common error, and where it is taught.
type deskMistake struct {
	class.Mistakes
	Look string // a sentence; empty for what is practised alone
}

// care is someone who was sure, and wrong, on what can hurt someone.
type care struct {
	ID, Name, Title, Given, Key string
	Place                       int
}

// unclear is what is still unclear to someone.
type unclear struct{ ID, Name, Text string }

// taskName is a task that can be asked on the spot.
type taskName struct{ Name, Title string }

// deskVersion changes when what the instructor sees may have changed: with the room, and when
// someone has been away, or at one question, for long.
func (s *Server) deskVersion(room *class.Room) string {
	now := s.o.Clock()
	all, err := room.Standing(room.Now, now, s.awayAt(now))
	if err != nil { // the page tells of it
		return fmt.Sprint(room.Seq)
	}
	sum := fnv.New64a()
	fmt.Fprint(sum, s.hall.Away(), "\n")
	for _, row := range all.Rows {
		fmt.Fprint(sum, row.ID, row.Why, row.Away, "\n")
	}
	return fmt.Sprintf("%d-%x", room.Seq, sum.Sum64())
}

// awayAt tells at a moment which devices nobody is at.
func (s *Server) awayAt(now time.Time) func(string) bool {
	return func(device string) bool { return s.presence.away(device, now) }
}

func (s *Server) deskPage(w http.ResponseWriter, r *http.Request, l *class.Live) {
	d, err := s.deskOf(l)
	if err != nil {
		s.trouble(w, err)
		return
	}
	s.live(w, r, "desk", d.Version, d)
}

// live writes a page that goes on by itself, or the part of it that changes. Who has that part
// already is told so.
func (s *Server) live(w http.ResponseWriter, r *http.Request, name, version string, data any) {
	if !strings.HasSuffix(r.URL.Path, "/part") {
		s.write(w, name, data)
		return
	}
	var b strings.Builder
	if err := s.pages.ExecuteTemplate(&b, name+"-part", data); err != nil {
		s.trouble(w, err)
		return
	}
	sum := fnv.New64a()
	_, _ = sum.Write([]byte(b.String())) // never fails
	tag := fmt.Sprintf(`"%x"`, sum.Sum64())
	w.Header().Set("ETag", tag)
	w.Header().Set("X-Version", version)
	if r.Header.Get("If-None-Match") == tag {
		w.WriteHeader(http.StatusNotModified)
		return
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	_, _ = w.Write([]byte(b.String())) // who has gone needs no page
}

// deskOf makes the instructor's page.
func (s *Server) deskOf(l *class.Live) (d deskData, err error) {
	tasks := s.tasks() // the first time they are read from files: while nobody waits for the room
	s.taught()
	l.See(func(room *class.Room) {
		now := s.o.Clock()
		d = deskData{Code: room.Head.Code, Title: room.Head.Title, Address: s.o.Address, Version: s.deskVersion(room), Came: len(room.Came()), Roster: len(room.Head.Roster),
			Position: room.Position(), Set: room.Now, Paused: room.Paused, Shut: room.Shut, Ended: room.Ended, Away: s.hall.Away(), Tasks: tasks}
		all, e := room.Standing(room.Now, now, s.awayAt(now))
		a := room.Asking()
		if err = e; err != nil || a == nil {
			return
		}
		d.Rows, d.Way, d.Locked, d.Tells = all.Rows, a.Way, a.Locked, !a.Never()
		d.Visitors = slices.ContainsFunc(room.Everyone(), func(p *class.Person) bool { return p.Visitor })
		d.Ways = slices.DeleteFunc(slices.Clone(class.Ways), func(w class.Way) bool { return w == a.Way })
		if !a.Until.IsZero() {
			d.Until = a.Until.In(time.Local).Format("15:04")
		}
		for n, set := range room.Sets {
			d.Sets = append(d.Sets, deskSet{n, nameOf(set), n == room.Now})
		}
		for _, p := range all.Places {
			d.Places = append(d.Places, s.placeOf(room, a, p))
		}
		d.rows()
		if err = d.steps(room); err == nil {
			d.Now = s.nowOf(d, a)
		}
	})
	return d, err
}

// nameOf is what a set is called: one of one question by that.
func nameOf(a *class.Asking) string {
	if a.Places() == 1 {
		if it, err := a.Item(class.OnTheWall, 0); err == nil {
			return it.Words.Task.Title
		}
	}
	return a.Blueprint.Title
}

// rows gathers what stands in the rows and is to be seen apart from them.
func (d *deskData) rows() {
	for _, row := range d.Rows {
		for place, c := range row.Cells {
			if c.SureWrong && !c.Seen {
				d.Cares = append(d.Cares, care{row.ID, row.Name, d.Places[place].Title, c.Given, c.Key, place})
			}
		}
		if row.Unclear != "" {
			d.Unclear = append(d.Unclear, unclear{row.ID, row.Name, row.Unclear})
		}
	}
	slices.SortFunc(d.Unclear, func(a, b unclear) int { return strings.Compare(a.Name, b.Name) }) // by no merit
}

// done is how many have answered all questions.
func (d *deskData) done() int {
	n := 0
	for _, row := range d.Rows {
		if row.Came && row.Answered == len(d.Places) {
			n++
		}
	}
	return n
}

// steps finds which steps can be taken.
func (d *deskData) steps(room *class.Room) error {
	step, _, err := room.Next()
	if err != nil && !errors.Is(err, class.ErrNotNow) {
		return err
	}
	_, back := room.Back()
	d.Next, d.Back = step, back == nil
	return nil
}

// placeOf is a question of the set at hand, with what can be done about it.
func (s *Server) placeOf(room *class.Room, a *class.Asking, p class.Place) deskPlace {
	one := deskPlace{Place: p}
	if a.Way == class.Together {
		one.State = "not-yet"
	}
	together := a.Way == class.Together && !room.Ended && !room.Paused
	here := a.Way == class.Together && a.Open == p.Place
	switch {
	case here && a.Shown(p.Place) > 0:
		one.State = "shown"
	case here && a.Locked:
		one.State = "closed"
	case here:
		one.State = "open"
	case a.Way == class.Together && a.Been(p.Place):
		one.State = "been"
	}
	one.CanOpen = together && !a.Told(p.Place) && (!here || a.Locked)
	one.CanLook = together && !here && a.Been(p.Place)
	one.CanAgain = !room.Ended && (a.Been(p.Place) || a.Way != class.Together && p.Spread.Answered > 0)
	for _, m := range p.Spread.Mistakes() {
		one.Mistakes = append(one.Mistakes, deskMistake{m, s.lessonOf(m.Task)})
	}
	return one
}

// lessonOf says where a task is taught; empty for what is practised alone.
func (s *Server) lessonOf(task string) string {
	in, ok := s.taught()[task]
	if !ok {
		return ""
	}
	return s.say("set-report-reteach", "lesson", in.Lesson, "part", in.Part)
}

// nowOf says where the room is.
func (s *Server) nowOf(d deskData, a *class.Asking) string {
	switch {
	case d.Ended:
		return s.say("class-now-ended")
	case d.Paused:
		return s.say("class-now-paused")
	case a.Way != class.Together && a.Locked:
		return s.say("class-now-set-closed")
	case a.Way != class.Together && d.Until != "":
		return s.say("class-now-until", "way", s.say("class-way-"+string(a.Way)), "time", d.Until, "done", d.done(), "came", d.Came)
	case a.Way != class.Together:
		return s.say("class-now-way", "way", s.say("class-way-"+string(a.Way)), "done", d.done(), "came", d.Came)
	case a.Open < 0:
		return s.say("class-now-none")
	}
	p := d.Places[a.Open]
	return s.say("class-now-"+p.State, "n", a.Open+1, "of", a.Places(), "title", p.Title, "answered", p.Spread.Answered, "came", d.Came, "lines", max(0, a.Shown(a.Open)-1))
}

// Sign is a cell's sign: seen without its colour.
func (d deskData) Sign(c class.Cell) string {
	if c.SureWrong {
		return "!" + c.Letter
	}
	return map[class.State]string{class.IsRight: "✓", class.IsPartly: "½", class.IsKnown: "✗" + c.Letter, class.IsWrong: "✗", class.IsOpen: "?", class.IsPassed: "–", class.IsLate: "…", class.Here: "·"}[c.State]
}
