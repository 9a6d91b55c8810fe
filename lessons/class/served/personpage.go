package served

import (
	"fmt"
	"html/template"
	"net/http"
	"slices"
	"strings"
	"time"

	"scratchpass/calc"
	"scratchpass/lessons/class"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/page"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/set"
)

// personData is what someone typed, and what was asked.
type personData struct {
	Code, Title string
	Version     string
	Wrong       string
	Row         deskRow
	Minutes     int // that they have more than others
	Set         int
	Ended       bool
	Lines       []personLine
	Rounds      []personRound // at the bench
	List        []taskName    // who a visitor may turn out to be, by id
}

// personLine is one question of theirs.
type personLine struct {
	Number int // on their phone
	Place  int
	Title  string
	Cell   class.Cell
	Asked  template.HTML
	Solved template.HTML // the working, with their numbers
	Name   string        // of the mistake, as a sentence
	Look   string        // where it is taught
	Sure   string        // how sure they were, in words; empty where that was not asked
}

// personPage is one person: their questions, what they typed, and what can be done for them.
func (s *Server) personPage(w http.ResponseWriter, r *http.Request, l *class.Live) {
	d, found, err := s.personOf(l, r.PathValue("id"))
	switch {
	case err != nil:
		s.trouble(w, err)
	case !found:
		s.wrongAs(w, l, http.StatusNotFound, fmt.Sprintf("there is nobody %s here", calc.Quoted(r.PathValue("id"))))
	default:
		s.live(w, r, "person", d.Version, d)
	}
}

// personOf makes the page of one person.
func (s *Server) personOf(l *class.Live, id string) (d personData, found bool, err error) {
	s.taught() // the first time it is read from files: while nobody waits for the room
	l.See(func(room *class.Room) {
		p := room.Person(id)
		if p == nil {
			return
		}
		now := s.o.Clock()
		row, has, e := s.personRow(room, p.ID, now)
		if err = e; err != nil || !has {
			return
		}
		d = personData{Code: room.Head.Code, Title: room.Head.Title, Version: s.deskVersion(room), Minutes: int(p.Extra.Minutes()), Set: room.Now, Ended: room.Ended}
		d.Row, found, d.List = s.rowOf(row), true, listFor(room, p, s.say)
		d.Rounds, err = s.roundsOf(room, p.ID, now)
		a := room.Asking()
		if err != nil || a == nil {
			return
		}
		items, e := a.Items(p.ID)
		if err = e; err != nil {
			return
		}
		for _, it := range items {
			line, e := s.lineOf(it, d.Row.Row)
			if err = e; err != nil {
				return
			}
			d.Lines = append(d.Lines, line)
		}
	})
	return d, found, err
}

// personRow is how someone stands at the questions, with what they need the instructor for in what
// is at hand.
func (s *Server) personRow(room *class.Room, id string, now time.Time) (row class.Row, found bool, err error) {
	rows, err := s.rowsOf(room, now)
	i := slices.IndexFunc(rows, func(row class.Row) bool { return row.ID == id })
	if err != nil || i < 0 {
		return row, false, err
	}
	row = rows[i]
	if round, _ := room.Round(); round == nil {
		return row, true, nil
	}
	all, err := room.Standing(room.Now, now, s.awayAt(now))
	for _, at := range all.Rows {
		if at.ID == id {
			at.Why, at.Needs = row.Why, row.Needs
			row = at
		}
	}
	return row, true, err
}

// listFor are those that a visitor may turn out to be; nobody for who is on the list.
// Who has a phone is marked: a visitor is seldom they.
func listFor(room *class.Room, p *class.Person, say func(string, ...any) string) []taskName {
	var list []taskName
	for _, other := range room.People() {
		if p.Visitor && !other.Visitor {
			name := other.Name
			if other.Device != "" {
				name = say("class-has-phone", "name", name)
			}
			list = append(list, taskName{other.ID, name})
		}
	}
	return list
}

// lineOf is one question of someone's.
func (s *Server) lineOf(it set.Item, row class.Row) (personLine, error) {
	line := personLine{Number: it.Number, Place: it.Place, Title: it.Words.Task.Title}
	if it.Place < len(row.Cells) {
		line.Cell = row.Cells[it.Place]
	}
	if m := line.Cell.Mistake; m != "" {
		if line.Name = it.Words.Task.Slips[m]; strings.Contains(line.Name, "${") {
			line.Name = strings.ReplaceAll(m, "-", " ")
		}
		line.Look = s.lessonOf(it.Problem.Task.Name)
	}
	if line.Cell.Key == "" {
		line.Cell.Key = it.Words.KeyNumber(it.Problem)
	}
	if sure := line.Cell.Certainty; sure != "" && sure != answer.NotAsked {
		line.Sure = s.say("say-sure-" + string(sure))
	}
	q := s.o.Session.QuestionOf(it.Problem, it.Words)
	q.Code = ""
	var err error
	if line.Asked, err = web.Blocks(page.Page{q}, page.Prompt{}); err != nil {
		return line, err
	}
	line.Solved, err = web.Blocks(class.Solution(s.o.Session, it), page.Prompt{})
	return line, err
}

// confirmData asks once whether something is meant.
type confirmData struct {
	Code, Title string
	Asks        string
	Does        string // what the button says
	To          string // the page to go back to
	Fields      []web.Field
}

// confirm asks once whether what can't be taken back is meant.
func (s *Server) confirm(w http.ResponseWriter, r *http.Request, l *class.Live, e class.Event) {
	name := r.PostForm.Get("do")
	d := confirmData{To: backTo(r), Does: s.say("class-do-" + name), Fields: []web.Field{{Name: "do", Value: name}, {Name: "sure", Value: "yes"}}}
	for _, field := range []string{"who", "with", "set", "n", "way"} {
		if r.PostForm.Has(field) {
			d.Fields = append(d.Fields, web.Field{Name: field, Value: r.PostForm.Get(field)})
		}
	}
	l.See(func(room *class.Room) {
		d.Code, d.Title = room.Head.Code, room.Head.Title
		d.Asks = s.say(asksFirst[name], "name", nameIn(room, e.Who), "with", nameIn(room, e.Text), "left", unasked(room))
	})
	s.write(w, "confirm", d)
}

func nameIn(room *class.Room, id string) string {
	if p := room.Person(id); p != nil {
		return p.Name
	}
	return ""
}

// wrong tells what is wrong with what was asked for: to a script in a line, else on the page
// that it was asked for on.
func (s *Server) wrong(w http.ResponseWriter, r *http.Request, l *class.Live, wrong error) {
	if wantsJSON(r) {
		http.Error(w, web.Problem(wrong), http.StatusBadRequest)
		return
	}
	if r.PostForm.Get("to") == "person" {
		if d, found, err := s.personOf(l, r.PostForm.Get("who")); found && err == nil {
			d.Wrong = web.Problem(wrong)
			s.writeAs(w, http.StatusBadRequest, "person", d)
			return
		}
	}
	s.wrongAs(w, l, http.StatusBadRequest, web.Problem(wrong))
}

// wrongAs tells it on the instructor's page.
func (s *Server) wrongAs(w http.ResponseWriter, l *class.Live, status int, wrong string) {
	d, err := s.deskOf(l)
	if err != nil {
		s.trouble(w, err)
		return
	}
	d.Wrong = wrong
	s.writeAs(w, status, "desk", d)
}
