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
	Rows        []deskRow // of those here
	Gone        gone
	Code, Title string
	Group       string // of a school; empty for a room by itself
	Address     string
	Version     string
	Wrong       string // with what was asked for last
	Came        int
	Done        int // of them, with an answer to each question
	Listed      int // of them, on the class list
	Roster      int // on the class list in all
	Visitors    bool
	Now         string // in a sentence: where the room is
	Position    string
	Next        class.Step // empty where no step can be taken
	NextN       int        // the question that it goes back to, of so many
	NextOf      int
	Few         string // why the wall shows no counts, a sentence; empty where it does or is not to
	Unasked     int    // questions of sets that were begun
	Back        bool   // a step back can be
	Way         class.Way
	Ways        []deskWay // the others
	Telling     class.Telling
	Further     []deskFurther
	Last        bool // nothing is left to do with the set at hand
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
	Jobs        []taskName
	Round       *deskRound // the bench round at hand; nil where questions are
}

// deskSet is a set of the room.
type deskSet struct {
	N    int
	Name string
	Now  bool
}

// deskWay is a way to run the set, and when phones tell what came then.
type deskWay struct {
	Way     class.Way
	Telling class.Telling
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
	rows, err := s.rowsOf(room, now)
	if err != nil { // the page tells of it
		return fmt.Sprint(room.Seq)
	}
	sum := fnv.New64a()
	fmt.Fprint(sum, s.hall.Away(), "\n")
	for _, row := range rows {
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
	s.jobs()
	l.See(func(room *class.Room) {
		now := s.o.Clock()
		d = deskData{Code: room.Head.Code, Title: room.Head.Title, Group: room.Head.Group, Address: s.o.Address, Version: s.deskVersion(room), Roster: len(room.Head.Roster),
			Position: room.Position(), Set: room.Now, Paused: room.Paused, Shut: room.Shut, Ended: room.Ended, Away: s.hall.Away(), Tasks: tasks, Jobs: s.jobsFor(room)}
		d.counts(room)
		d.Further = s.furtherOf(room)
		all, e := room.Standing(room.Now, now, s.awayAt(now))
		a := room.Asking()
		if err = errors.Join(e, s.atBench(room, now, &d)); err != nil || a == nil {
			return
		}
		d.Way, d.Telling, d.Locked, d.Tells = a.Way, a.Tells(a.Way), a.Locked, !a.Never()
		for _, w := range class.Ways {
			if w != a.Way {
				d.Ways = append(d.Ways, deskWay{w, a.Tells(w)})
			}
		}
		if !a.Until.IsZero() {
			d.Until = a.Until.In(time.Local).Format("15:04")
		}
		for n, set := range room.Sets {
			d.Sets = append(d.Sets, deskSet{n, set.Name(), n == room.Now && d.Round == nil})
		}
		for _, p := range all.Places {
			one, e := s.placeOf(room, a, p)
			if err = e; err != nil {
				return
			}
			d.Places = append(d.Places, one)
		}
		rows := make([]deskRow, len(all.Rows))
		for i, row := range all.Rows {
			rows[i] = s.rowOf(row)
		}
		d.gather(rows)
		d.group(rows)
		if err = d.steps(room); err == nil {
			d.Now = s.nowOf(d, a)
		}
		if a.Open >= 0 && !d.Ended && d.Round == nil && a.Way == class.Together && d.Places[a.Open].State == "few" {
			d.Few = s.say("class-few", "n", class.FewestShown)
		}
	})
	return d, err
}

// counts counts those in the room: all that is counted of people is of these.
func (d *deskData) counts(room *class.Room) {
	for _, p := range room.Came() {
		d.Came++
		if !p.Visitor {
			d.Listed++
		}
	}
	d.Visitors = slices.ContainsFunc(room.Everyone(), func(p *class.Person) bool { return p.Visitor })
}

// gather gathers what stands in the rows and is to be seen apart from them.
func (d *deskData) gather(rows []deskRow) {
	for _, row := range rows {
		if row.Came && row.Answered == len(d.Places) {
			d.Done++
		}
		for place, c := range row.Cells {
			if c.Hurts && !c.Seen {
				d.Cares = append(d.Cares, care{row.ID, row.Name, d.Places[place].Title, c.Given, c.Key, place})
			}
		}
		if row.Unclear != "" {
			d.Unclear = append(d.Unclear, unclear{row.ID, row.Name, row.Unclear})
		}
	}
	slices.SortFunc(d.Unclear, func(a, b unclear) int { return strings.Compare(a.Name, b.Name) }) // by no merit
}

// steps finds which steps can be taken, and whether the set is through.
func (d *deskData) steps(room *class.Room) error {
	step, e, err := room.Next()
	if err != nil && !errors.Is(err, class.ErrNotNow) {
		return err
	}
	_, back := room.Back()
	d.Next, d.Back, d.Unasked = step, back == nil, unasked(room)
	if step == class.StepReturn {
		a := room.Sets[e.Set]
		d.NextN, d.NextOf = max(e.Place, 0)+1, a.Places()
		if e.Kind == class.Turned {
			d.NextN = a.Open + 1
		}
	}
	switch {
	case d.Ended || d.Paused || d.Unasked > 0:
	case d.Way == class.Together:
		d.Last = step == ""
	default:
		d.Last = d.Locked || d.Came > 0 && d.Done == d.Came
	}
	return nil
}

// unasked counts the questions of sets that were begun and that nobody was asked yet.
func unasked(room *class.Room) (n int) {
	for _, a := range room.Sets {
		n += len(a.Unasked())
	}
	return n
}

// nowOf says where the room is.
func (s *Server) nowOf(d deskData, a *class.Asking) string {
	switch {
	case d.Ended:
		return s.say("class-now-ended")
	case d.Paused:
		return s.say("class-now-paused")
	case d.Round != nil:
		return d.Round.now(s.say, d.Came)
	case a.Way != class.Together && a.Locked:
		return s.say("class-now-set-closed")
	case a.Way != class.Together && d.Until != "":
		return s.say("class-now-until", "way", s.say("class-way-"+string(a.Way)), "time", d.Until, "done", d.Done, "came", d.Came)
	case a.Way != class.Together:
		return s.say("class-now-way", "way", s.say("class-way-"+string(a.Way)), "done", d.Done, "came", d.Came)
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
	return map[class.State]string{class.IsRight: "✓", class.IsPartly: "½", class.IsKnown: "✗" + c.Letter, class.IsWrong: "✗", class.IsOpen: "?", class.IsUnread: "?", class.IsPassed: "–", class.IsLate: "…", class.Here: "·"}[c.State]
}
