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
	head, came, ok := s.cameIn(w, r)
	if !ok {
		return
	}
	g, _, _ := s.o.Settings.Group(r.PathValue("group"))
	page := roomPage{Group: g.Name, Head: head, Sends: s.sends(g)}
	for _, asked := range came.Sets {
		page.Sets = append(page.Sets, asked.Title)
	}
	s.write(w, "room", page)
}

// cameIn is what came of the room with the code in the address, if it is one of the group there: as it
// is now, or as it was kept where another version of the program drew its numbers. ok is false after an
// error was sent.
func (s *Server) cameIn(w http.ResponseWriter, r *http.Request) (head class.Head, came school.CameOf, ok bool) {
	l, err := s.o.Hall.Room(r.Context(), class.ReadCode(r.PathValue("code")))
	var other class.OtherDraws
	switch {
	case err == nil:
		l.See(func(room *class.Room) {
			if head = room.Head; head.Group == r.PathValue("group") {
				came, err = school.CameOfRoom(room)
			}
		})
	case errors.As(err, &other):
		if head = other.Head; head.Group == r.PathValue("group") {
			came, err = school.Marks{DB: s.o.DB}.Of(r.Context(), head.Code)
		}
	}
	switch {
	case errors.Is(err, class.ErrNoRoom) || head.Code != "" && head.Group != r.PathValue("group"):
		s.tell(w, http.StatusNotFound, "school-not-yours")
	case errors.Is(err, school.ErrNoMarks):
		s.tell(w, http.StatusServiceUnavailable, "class-other-draws")
	case err != nil:
		s.trouble(w, err)
	default:
		return head, came, true
	}
	return head, came, false
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
	f, err := begin(w, m.Set, m.began.Format(time.DateOnly))
	for _, one := range m.Of {
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
	school.SetMark
	code  string
	began time.Time // as the clock on the wall had it: of an evening, in Greenwich it is another day
}

// marksIn are the marks of a set of the room in the address, for someone to take them out: that is noted
// first. ok is false after an error was sent.
func (s *Server) marksIn(w http.ResponseWriter, r *http.Request, p school.Person, n int) (m marked, ok bool) {
	head, came, ok := s.cameIn(w, r)
	if !ok {
		return m, false
	}
	if n < 0 || n >= len(came.Sets) {
		s.tell(w, http.StatusNotFound, "school-not-yours")
		return m, false
	}
	if err := s.o.Audit.Note(r.Context(), p, school.GaveOut, head.Code); err != nil {
		s.trouble(w, err)
		return m, false
	}
	return marked{came.Sets[n], head.Code, head.Began.Local()}, true
}
