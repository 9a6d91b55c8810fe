package served

import (
	"context"
	"errors"
	"net/http"
	"time"

	"scratchpass/lessons/class"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/progress"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/lessons/school"
	"scratchpass/lessons/school/oneroster"
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
	Sets       []school.Kept
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
	given := begun{}
	if name := r.URL.Query().Get("set"); name != "" {
		var err error
		given.Blueprint, err = s.sets().Blueprint(r.Context(), r.PathValue("group"), name)
		if errors.Is(err, school.ErrNoSet) {
			s.tell(w, http.StatusNotFound, "school-no-set")
			return
		}
		if err != nil {
			s.trouble(w, err)
			return
		}
	}
	s.groupAs(w, r, p, http.StatusOK, given, nil)
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
	if page.Sets, err = s.sets().Of(r.Context(), g.Name); err != nil {
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
	v, err := s.view()
	if err != nil {
		return nil, nil, err
	}
	say := v.Speaker()
	for _, c := range progress.CommonOf(s.items, standings, mostCommon) {
		common = append(common, commonRow{say.Title(c.Task), say.Slip(c.Task, c.Slip), c.Learners, c.Times})
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
