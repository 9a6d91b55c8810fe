package served

import (
	"fmt"
	"html/template"
	"net/url"
	"slices"
	"strconv"
	"strings"
	"time"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/lessons/class"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/page"
	"scratchpass/lessons/rehearsal"
	"scratchpass/quiz/machine"
)

// deskRound is a bench round as the instructor sees it.
type deskRound struct {
	Title  string // which pass
	Job    string
	Name   string // of the job, to begin the same again
	Pass   int
	Hints  bool
	Closed bool
	Few    bool // too few made a move for counts on the wall
	Shown  int  // moves of the pass that are on the wall
	Rows   []deskBench
	Spread class.RoundSpread
	Made   []bar
	Goes   template.HTML // how the pass goes by the card
}

// deskBench is one person at the bench.
type deskBench struct {
	class.RoundRow
	Does     deskRow // what can be done about them
	Mistakes []string
}

// roundOf is the round at hand; nil where questions are.
func (s *Server) roundOf(room *class.Room, now time.Time) (*deskRound, error) {
	round, n := room.Round()
	if round == nil {
		return nil, nil
	}
	o, err := s.onePass(*round)
	if err != nil {
		return nil, err
	}
	d := &deskRound{Title: class.Bench{Round: *round}.Title(o), Job: round.Pass.Plan.Job.Title, Name: round.Name, Pass: round.Pass.N,
		Hints: round.Hints, Closed: round.Closed, Shown: max(0, round.Shown-1)}
	rows := room.RoundStanding(n, now, s.awayAt(now))
	for _, row := range rows {
		d.Rows = append(d.Rows, deskBench{row, s.rowOf(row.Row), o.Titles(row.Work.Bench)})
	}
	d.Spread = class.SpreadOf(rows)
	d.Few = round.Shown > 0 && d.Spread.Few() && !round.Counts
	d.Made = s.madeBars(o, d.Spread)
	d.Goes, err = web.Blocks(page.Page{o.Goes()}, page.Prompt{})
	return d, err
}

// madeBars are the mistakes of a round, and how many people made each.
func (s *Server) madeBars(o rehearsal.OnePass, spread class.RoundSpread) []bar {
	var all []bar
	for _, m := range spread.Made {
		all = append(all, bar{o.Words.Mistakes[string(m.Name)].Title, m.People, spread.Began, false})
	}
	if spread.Off > 0 {
		all = append(all, bar{s.say("class-bar-depth"), spread.Off, spread.Began, false})
	}
	return all
}

// atBench puts the round at hand on the instructor's page, if there is one.
func (s *Server) atBench(room *class.Room, now time.Time, d *deskData) (err error) {
	if d.Round, err = s.roundOf(room, now); err != nil || d.Round == nil {
		return err
	}
	if err = d.steps(room); err == nil {
		d.Now = s.nowOf(*d, nil)
	}
	if d.Round.Few && !d.Ended {
		d.Few = s.say("class-few-moved", "n", class.FewestShown)
	}
	return err
}

// now says where a round is.
func (d *deskRound) now(say func(string, ...any) string, came int) string {
	key := "class-now-bench"
	switch {
	case d.Shown > 0:
		key = "class-now-bench-moves"
	case d.Closed:
		key = "class-now-bench-closed"
	}
	return say(key, "title", d.Title, "job", d.Job, "through", d.Spread.Through, "scrap", d.Spread.Scrap, "came", came, "lines", d.Shown)
}

// rowsOf are the people of the room as they stand in what is at hand.
func (s *Server) rowsOf(room *class.Room, now time.Time) ([]class.Row, error) {
	if _, n := room.Round(); n >= 0 {
		var rows []class.Row
		for _, row := range room.RoundStanding(n, now, s.awayAt(now)) {
			rows = append(rows, row.Row)
		}
		return rows, nil
	}
	all, err := room.Standing(room.Now, now, s.awayAt(now))
	return all.Rows, err
}

// personRound is what someone did in a bench round.
type personRound struct {
	Title, Job string
	Stage      class.Stage
	Hints      int
	Mistakes   []string
	Log        []string
}

// roundsOf are the rounds in which someone did something, the last first.
func (s *Server) roundsOf(room *class.Room, id string, now time.Time) (all []personRound, err error) {
	for n, round := range room.Rounds {
		o, err := s.onePass(*round)
		if err != nil {
			return nil, err
		}
		for _, row := range room.RoundStanding(n, now, s.awayAt(now)) {
			if row.ID == id && len(row.Work.Moves) > 0 {
				all = append(all, personRound{class.Bench{Round: *round}.Title(o), o.Plan.Job.Title, row.Stage, row.Work.Hints, o.Titles(row.Work.Bench), o.Log(row.Work.Bench)})
			}
		}
	}
	slices.Reverse(all)
	return all, nil
}

// jobsOf are the jobs that ship and have a pass to rehearse, with their titles.
func jobsOf(lib *content.Library) []taskName {
	var all []taskName
	for _, name := range lib.JobNames() {
		written, err := lib.Job(name)
		if err != nil {
			continue // to begin it says why
		}
		text, err := class.JobText(name, written, machine.InchLathe)
		if err != nil {
			continue
		}
		if _, err := class.NewRound(text, 1); err == nil {
			all = append(all, taskName{name, written.Title})
		}
	}
	return all
}

// jobsFor are the jobs that can be rehearsed in a room: those of its rounds first, which may be
// the instructor's own.
func (s *Server) jobsFor(room *class.Room) []taskName {
	all := slices.Clone(s.jobs())
	for _, round := range room.Rounds {
		all = slices.DeleteFunc(all, func(t taskName) bool { return t.Name == round.Name })
		all = slices.Insert(all, 0, taskName{round.Name, round.Pass.Plan.Job.Title})
	}
	return all
}

// benchOrder reads which pass of which job is to be rehearsed.
func (s *Server) benchOrder(form url.Values, room *class.Room) (e class.Event, wrong error) {
	e.Kind = class.Benched
	name := strings.TrimSpace(form.Get("job"))
	if e.Text, wrong = s.jobText(room, name); wrong != nil {
		return e, wrong
	}
	if e.N, wrong = strconv.Atoi(strings.TrimSpace(form.Get("pass"))); wrong != nil {
		return e, fmt.Errorf("pass %s: give the number that it has on the card, or 0 for the set-up and the first one", calc.Quoted(form.Get("pass")))
	}
	if form.Get("hints") != "" {
		e.Name = class.WithHints
	}
	_, wrong = class.NewRound(e.Text, e.N)
	return e, wrong
}

// closedRound reports whether the round at hand takes no more moves.
func closedRound(room *class.Room) bool {
	round, _ := room.Round()
	return round == nil || round.Closed
}

// jobText is a job of an earlier round of the room as it was then, or one that ships.
func (s *Server) jobText(room *class.Room, name string) (string, error) {
	for _, round := range slices.Backward(room.Rounds) {
		if round.Name == name {
			return round.Text, nil
		}
	}
	lib := s.o.Session.Library
	written, err := lib.Job(name)
	if content.ErrNotThere(err) {
		return "", fmt.Errorf("no job is called %s%s: give one of %s", calc.Quoted(name), content.DidYouMean(name, lib.JobNames()), strings.Join(lib.JobNames(), ", "))
	}
	if err != nil {
		return "", err
	}
	return class.JobText(name, written, s.o.Session.Lathe)
}
