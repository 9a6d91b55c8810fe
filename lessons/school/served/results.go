package served

import (
	"errors"
	"fmt"
	"io"
	"net/http"
	"strconv"
	"time"

	"scratchpass/lessons/class"
	"scratchpass/lessons/school"
	"scratchpass/quiz/set"
)

// roomPage is a room of a group: what can be taken from it.
type roomPage struct {
	Group string
	class.Head
	Sets  []string // their titles
	Sends bool     // marks may be sent to the school's book
}

func (s *Server) room(w http.ResponseWriter, r *http.Request, _ school.Person) {
	l := s.roomOfGroup(w, r)
	if l == nil {
		return
	}
	g, _, _ := s.o.Settings.Group(r.PathValue("group"))
	page := roomPage{Group: g.Name, Sends: s.sends(g)}
	l.See(func(room *class.Room) {
		page.Head = room.Head
		for _, asked := range room.Sets {
			page.Sets = append(page.Sets, asked.Blueprint.Title)
		}
	})
	s.write(w, "room", page)
}

// roomOfGroup is the room with the code in the address, if it is one of the group there; nil after an
// error was sent.
func (s *Server) roomOfGroup(w http.ResponseWriter, r *http.Request) *class.Live {
	l, err := s.o.Hall.Room(r.Context(), class.ReadCode(r.PathValue("code")))
	group := ""
	if err == nil {
		l.See(func(room *class.Room) { group = room.Head.Group })
	}
	switch {
	case errors.Is(err, class.ErrNoRoom) || err == nil && group != r.PathValue("group"):
		s.tell(w, http.StatusNotFound, "school-not-yours")
		return nil
	case err != nil:
		s.trouble(w, err)
		return nil
	}
	return l
}

// marksFile is a way to write marks.
type marksFile interface {
	Add(set.Result) error
	Close() error
}

// marksFiles are the ways, by the name in the address.
var marksFiles = map[string]func(w io.Writer, set, date string) (marksFile, error){
	"results": func(w io.Writer, name, date string) (marksFile, error) { return set.NewOneRosterResults(w, name, date) },
	"grades":  func(w io.Writer, _, _ string) (marksFile, error) { return set.NewGradesCSV(w) },
}

// marks are the marks of those on the roster in a set of a room: as OneRoster has them, or a grade a
// person.
func (s *Server) marks(w http.ResponseWriter, r *http.Request, p school.Person) {
	begin, known := marksFiles[r.PathValue("form")]
	n, err := strconv.Atoi(r.PathValue("n"))
	if !known || err != nil {
		s.tell(w, http.StatusNotFound, "school-not-yours")
		return
	}
	m, ok := s.marksIn(w, r, p, n)
	if !ok {
		return
	}
	w.Header().Set("Content-Type", "text/csv; charset=utf-8")
	w.Header().Set("Content-Disposition", fmt.Sprintf("attachment; filename=%s-%s-%d.csv", r.PathValue("form"), m.code, n+1))
	f, err := begin(w, m.set, m.began.Format(time.DateOnly))
	for _, one := range m.of {
		if err == nil {
			err = f.Add(one)
		}
	}
	if err == nil {
		err = f.Close()
	}
	if err != nil { // who has gone needs no file
		s.o.Fail(err)
	}
}

// marked are the marks of a set of a room, of those on its roster.
type marked struct {
	code, set, title string
	began            time.Time
	of               []set.Result
	visitors         []string // who came and is not on it
}

// marksIn are the marks of a set of the room in the address, for someone to take them out: that is noted
// first. ok is false after an error was sent.
func (s *Server) marksIn(w http.ResponseWriter, r *http.Request, p school.Person, n int) (m marked, ok bool) {
	l := s.roomOfGroup(w, r)
	if l == nil {
		return m, false
	}
	var err error
	l.See(func(room *class.Room) {
		if n < 0 || n >= len(room.Sets) {
			return
		}
		asked := room.Sets[n].Blueprint
		m = marked{code: room.Head.Code, set: asked.Set, title: asked.Title, began: room.Head.Began}
		for _, p := range room.Came() {
			if p.Visitor {
				m.visitors = append(m.visitors, p.Name)
			}
		}
		m.of, err = marksOf(room, n)
	})
	if m.code == "" {
		s.tell(w, http.StatusNotFound, "school-not-yours")
		return m, false
	}
	if err == nil {
		err = s.o.Audit.Note(r.Context(), p, school.GaveOut, m.code)
	}
	if err != nil {
		s.trouble(w, err)
		return m, false
	}
	return m, true
}

// marksOf are the marks of those on the roster in a set of a room.
func marksOf(room *class.Room, n int) (all []set.Result, err error) {
	for _, p := range room.People() {
		if p.Visitor {
			continue
		}
		m, err := room.Marked(p, n)
		if err != nil {
			return nil, err
		}
		all = append(all, m)
	}
	return all, nil
}
