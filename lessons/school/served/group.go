package served

import (
	"crypto/rand"
	"errors"
	"net/http"
	"strings"
	"time"

	"scratchpass/lessons/class"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/lessons/school"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/set"
)

// groupPage is a group: its people, and its rooms.
type groupPage struct {
	school.Group
	Department string
	Learners   []learnerRow
	Listed     int // people on the roster
	Teach      bool
	Grade      bool
	Rooms      []class.Head
	Ways       []class.Way
	Given      begun  // of the form to begin a room
	Wrong      string // with what was sent
}

// learnerRow is how someone stands who has signed on and studied.
type learnerRow struct {
	ID, Name   string
	Answers    int
	Shown, Of  int       // tasks that a first thread needs, and how many of them are shown
	Last       time.Time // when they answered last; zero where they never did
	ReadyToAsk bool
}

// mostRooms is how many rooms of a group its page lists, the latest first.
const mostRooms = 50

func (s *Server) group(w http.ResponseWriter, r *http.Request, p school.Person) {
	s.groupAs(w, r, p, http.StatusOK, begun{}, nil)
}

func (s *Server) groupAs(w http.ResponseWriter, r *http.Request, p school.Person, status int, given begun, wrong error) {
	g, d, _ := s.o.Settings.Group(r.PathValue("group"))
	page := groupPage{Group: g, Department: d.Name, Ways: class.Ways, Given: given}
	page.Teach, page.Grade = s.o.Settings.May(p, school.Teach, g.Name), s.o.Settings.May(p, school.Grade, g.Name)
	if wrong != nil {
		page.Wrong = wrong.Error()
	}
	var err error
	if page.Learners, err = s.learners(r, g); err != nil {
		s.trouble(w, err)
		return
	}
	if page.Rooms, err = s.o.Rooms(r.Context(), g.Name, mostRooms); err != nil {
		s.trouble(w, err)
		return
	}
	people, err := roster(g)
	page.Listed = len(people)
	if err != nil && page.Wrong == "" {
		page.Wrong = err.Error()
	}
	s.writeAs(w, status, "group", page)
}

// learners are those of a group who have signed on, by name, with how they stand.
func (s *Server) learners(r *http.Request, g school.Group) ([]learnerRow, error) {
	people, err := s.o.Sessions.InGroups(r.Context(), g.Learners)
	if err != nil {
		return nil, err
	}
	var rows []learnerRow
	for _, p := range people {
		rec := record.In(s.o.DB, p.ID)
		of, n, err := rec.Summaries()
		if err != nil {
			return nil, err
		}
		test, tested, err := rec.LastTest()
		if err != nil {
			return nil, err
		}
		ready := schedule.ReadinessOf(s.items, s.special, of, test, tested)
		shown := len(ready.SafetyCriticalShown) + len(ready.CoreShown)
		row := learnerRow{ID: p.ID, Name: p.Name, Answers: n, Shown: shown, ReadyToAsk: ready.Ask,
			Of: shown + len(ready.SafetyCriticalOpen) + len(ready.CoreOpen) + len(ready.NotHeld)}
		for _, sum := range of {
			if sum.Last.After(row.Last) {
				row.Last = sum.Last
			}
		}
		rows = append(rows, row)
	}
	return rows, nil
}

// roster is who is on the list of a group; it is read anew each time, so that a new file is the
// school's list at once.
func roster(g school.Group) ([]class.Apprentice, error) {
	if g.Roster == "" {
		return nil, nil
	}
	return set.ReadRoster(g.Roster, nil)
}

// noLathe is for a blueprint that names a lathe of its own.
func noLathe(string) (machine.Lathe, error) {
	return machine.Lathe{}, errors.New("a lathe of its own can't be named here: leave lathe out")
}

// begun is what was sent to begin a room.
type begun struct{ Blueprint, Tasks, Way string }

// beginRoom begins a room of a group, from a blueprint or from tasks.
func (s *Server) beginRoom(w http.ResponseWriter, r *http.Request, p school.Person) {
	given := begun{r.PostFormValue("blueprint"), strings.TrimSpace(r.PostFormValue("tasks")), r.PostFormValue("way")}
	head, text, way, err := s.roomOf(r.PathValue("group"), given)
	if err != nil {
		s.groupAs(w, r, p, http.StatusBadRequest, given, err)
		return
	}
	if err := s.o.Audit.Note(r.Context(), p, school.BeganRoom, head.Code); err != nil {
		s.trouble(w, err)
		return
	}
	if _, err := s.o.Hall.Begin(r.Context(), head, text, way); err != nil {
		s.trouble(w, err)
		return
	}
	http.Redirect(w, r, "/desk/"+head.Code, http.StatusSeeOther)
}

// roomOf is the room that is to begin.
func (s *Server) roomOf(group string, given begun) (head class.Head, blueprint string, way class.Way, err error) {
	if way, err = class.ParseWay(given.Way); err != nil {
		return head, "", "", err
	}
	blueprint = strings.ReplaceAll(given.Blueprint, "\r\n", "\n")
	tasks := strings.FieldsFunc(given.Tasks, func(r rune) bool { return r == ',' || r == ' ' || r == '\n' || r == '\r' })
	switch {
	case strings.TrimSpace(blueprint) == "" && len(tasks) == 0:
		return head, "", "", errors.New("there are no questions: give a blueprint, or the names of tasks")
	case strings.TrimSpace(blueprint) != "" && len(tasks) > 0:
		return head, "", "", errors.New("there are a blueprint and tasks: give one of both")
	case len(tasks) > 0:
		blueprint = set.OfTasks("room-"+s.o.Clock().Format("2006-01-02"), s.say("class-title"), s.o.Session.System, tasks, 1)
	}
	read, err := set.ParseBlueprint("the blueprint", []byte(blueprint), s.o.Session.Tasks, noLathe)
	if err != nil {
		return head, "", "", err
	}
	g, _, _ := s.o.Settings.Group(group)
	people, err := roster(g)
	if err != nil {
		return head, "", "", err
	}
	return class.Head{Code: class.NewCode(), Title: read.Title, Key: rand.Text(), Roster: people, Group: group}, blueprint, way, nil
}
