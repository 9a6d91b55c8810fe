package served

import (
	"context"
	"crypto/rand"
	"errors"
	"net/http"
	"slices"
	"strings"
	"time"

	"scratchpass/lessons/class"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/progress"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/lessons/school"
	"scratchpass/lessons/school/oneroster"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/set"
)

// groupPage is a group: its people, and its rooms.
type groupPage struct {
	school.Group
	Department string
	Learners   []learnerRow
	Common     []commonRow
	Listed     int // people on the roster
	List       oneroster.List
	Fetches    bool // the list may be fetched by hand
	Teach      bool
	Grade      bool
	Rooms      []roomRow
	Ways       []class.Way
	Stages     []stageTasks
	Given      begun  // of the form to begin a room
	Wrong      string // with what was sent
}

// roomRow is a room in a list.
type roomRow struct {
	class.Head
	school.CameOf // as far as it was kept: a room that goes on may be further
}

// learnerRow is how someone stands who has signed on and studied.
type learnerRow struct {
	ID, Name   string
	Answers    int
	Shown, Of  int       // tasks that a first thread needs, and how many of them are shown
	Last       time.Time // when they answered last; zero where they never did
	ReadyToAsk bool
}

// commonRow is an error that keeps coming back among the learners of a group.
type commonRow struct {
	Title, Says     string
	Learners, Times int
}

// mostCommon is how many of them the page of a group has.
const mostCommon = 8

// mostRooms is how many rooms of a group its page lists, the latest first.
const mostRooms = 50

func (s *Server) group(w http.ResponseWriter, r *http.Request, p school.Person) {
	s.groupAs(w, r, p, http.StatusOK, begun{}, nil)
}

func (s *Server) groupAs(w http.ResponseWriter, r *http.Request, p school.Person, status int, given begun, wrong error) {
	g, d, _ := s.o.Settings.Group(r.PathValue("group"))
	page := groupPage{Group: g, Department: d.Name, Ways: class.Ways, Given: given, Stages: s.stages(given)}
	page.Teach, page.Grade = s.o.Settings.May(p, school.Teach, g.Name), s.o.Settings.May(p, school.Grade, g.Name)
	if wrong != nil {
		page.Wrong = web.Problem(wrong)
	}
	var err error
	if page.Learners, page.Common, err = s.learners(r, g); err != nil {
		s.trouble(w, err)
		return
	}
	if page.Rooms, err = s.roomsOf(r.Context(), g.Name); err != nil {
		s.trouble(w, err)
		return
	}
	page.List, err = s.o.Rosters.Of(r.Context(), g)
	page.Listed, page.Fetches = len(page.List.People), page.Teach && page.List.Fetched
	if err != nil && page.List.Fetched {
		s.trouble(w, err)
		return
	}
	if err != nil && page.Wrong == "" {
		page.Wrong = web.Problem(err)
	}
	s.writeAs(w, status, "group", page)
}

// roomsOf are the rooms of a group, the latest first.
func (s *Server) roomsOf(ctx context.Context, group string) (rows []roomRow, err error) {
	heads, err := s.o.Rooms(ctx, group, mostRooms)
	if err != nil {
		return nil, err
	}
	var codes []string
	for _, h := range heads {
		codes = append(codes, h.Code)
	}
	came, err := school.Marks{DB: s.o.DB}.OfRooms(ctx, codes)
	for _, h := range heads {
		rows = append(rows, roomRow{h, came[h.Code]})
	}
	return rows, err
}

// learners are those of a group who have signed on, by name, with how they stand, and what keeps going
// wrong with several of them.
func (s *Server) learners(r *http.Request, g school.Group) (rows []learnerRow, common []commonRow, err error) {
	people, err := s.o.Sessions.InGroups(r.Context(), g.Learners)
	if err != nil {
		return nil, nil, err
	}
	var names []string
	for _, p := range people {
		names = append(names, p.ID)
	}
	standings, err := record.Standings(r.Context(), s.o.DB, names)
	if err != nil {
		return nil, nil, err
	}
	for _, p := range people {
		one := standings[p.ID]
		ready := schedule.ReadinessOf(s.items, s.special, one.Of, one.Test, one.Tested)
		shown := len(ready.SafetyCriticalShown) + len(ready.CoreShown)
		row := learnerRow{ID: p.ID, Name: p.Name, Answers: one.Answers, Shown: shown, ReadyToAsk: ready.Ask,
			Of: shown + len(ready.SafetyCriticalOpen) + len(ready.CoreOpen) + len(ready.NotHeld)}
		for _, sum := range one.Of {
			if sum.Last.After(row.Last) {
				row.Last = sum.Last
			}
		}
		rows = append(rows, row)
	}
	for _, c := range progress.CommonOf(s.items, standings, mostCommon) {
		words, err := s.o.Session.Library.Task(c.Task)
		if err != nil {
			return nil, nil, err
		}
		common = append(common, commonRow{words.Title, strings.TrimSpace(words.Slips[c.Slip]), c.Learners, c.Times})
	}
	return rows, common, nil
}

// longestFetch is how long someone waits for a list that they fetch by hand.
const longestFetch = 40 * time.Second

// fetchList fetches the class list of a group by hand. What went wrong with it stands on the group's
// page, as if it had been fetched by the clock.
func (s *Server) fetchList(w http.ResponseWriter, r *http.Request, p school.Person) {
	g, _, _ := s.o.Settings.Group(r.PathValue("group"))
	ctx, cancel := context.WithTimeout(context.WithoutCancel(r.Context()), longestFetch)
	defer cancel()
	switch err := s.o.Rosters.Fetch(ctx, g); {
	case errors.Is(err, oneroster.ErrBeingFetched), errors.Is(err, oneroster.ErrNotFetched):
		s.groupAs(w, r, p, http.StatusConflict, begun{}, err)
	default:
		http.Redirect(w, r, "/groups/"+g.Name, http.StatusSeeOther)
	}
}

// NoLathe refuses a blueprint that names a lathe of its own: a file of whose computer would it be?
func NoLathe(string) (machine.Lathe, error) {
	return machine.Lathe{}, errors.New("a lathe of its own can't be named here: leave lathe out")
}

// begun is what was sent to begin a room.
type begun struct {
	Blueprint string
	Tasks     []string // names
	Way       string
}

// stageTasks are the tasks of a stage, to be ticked.
type stageTasks struct {
	Stage string
	Open  bool // one of them is ticked
	Tasks []askable
}

// askable is a task that can be asked in a room.
type askable struct {
	Name, Title string
	Ticked      bool
}

// stages are all tasks, by stage, with those ticked that were sent. One whose words can't be read is
// left out.
func (s *Server) stages(given begun) (all []stageTasks) {
	for _, t := range s.o.Session.Tasks.All() {
		words, err := s.o.Session.Library.Task(t.Name)
		if err != nil {
			continue
		}
		if title := s.say("stage-" + string(t.Stage)); len(all) == 0 || all[len(all)-1].Stage != title {
			all = append(all, stageTasks{Stage: title})
		}
		of := &all[len(all)-1]
		one := askable{t.Name, words.Title, slices.Contains(given.Tasks, t.Name)}
		of.Open = of.Open || one.Ticked
		of.Tasks = append(of.Tasks, one)
	}
	return all
}

// beginRoom begins a room of a group, from a blueprint or from tasks.
func (s *Server) beginRoom(w http.ResponseWriter, r *http.Request, p school.Person) {
	given := begun{Blueprint: r.PostFormValue("blueprint"), Way: r.PostFormValue("way")}
	given.Tasks = strings.Fields(strings.Join(r.PostForm["tasks"], " "))
	head, text, way, err := s.roomOf(r.Context(), r.PathValue("group"), given)
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
func (s *Server) roomOf(ctx context.Context, group string, given begun) (head class.Head, blueprint string, way class.Way, err error) {
	if way, err = class.ParseWay(given.Way); err != nil {
		return head, "", "", err
	}
	blueprint = strings.ReplaceAll(given.Blueprint, "\r\n", "\n")
	tasks := given.Tasks
	switch {
	case strings.TrimSpace(blueprint) == "" && len(tasks) == 0:
		return head, "", "", errors.New("there are no questions: tick tasks, or give a blueprint")
	case strings.TrimSpace(blueprint) != "" && len(tasks) > 0:
		return head, "", "", errors.New("there are a blueprint and tasks: give one of both")
	case len(tasks) > 0:
		blueprint = set.OfTasks("room-"+s.o.Clock().Format("2006-01-02"), s.say("class-title"), s.o.Session.System, tasks, 1)
	}
	read, err := set.ParseBlueprint("the blueprint", []byte(blueprint), s.o.Session.Tasks, NoLathe)
	if err != nil {
		return head, "", "", err
	}
	g, _, _ := s.o.Settings.Group(group)
	list, err := s.o.Rosters.Of(ctx, g)
	if err != nil {
		return head, "", "", err
	}
	return class.Head{Code: class.NewCode(), Title: read.Title, Key: rand.Text(), Roster: list.People, Group: group}, blueprint, way, nil
}
