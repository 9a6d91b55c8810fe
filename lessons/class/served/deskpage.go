package served

import (
	"cmp"
	"fmt"
	"html/template"
	"net/http"
	"strings"
	"time"

	"scratchpass/content"
	"scratchpass/lessons/class"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/page"
)

// deskVersion changes with the room.
func deskVersion(room *class.Room) string { return fmt.Sprint(room.Seq) }

// deskData is what the instructor sees.
type deskData struct {
	class.Standing
	Code, Title string
	Version     string
	Set, Sets   int
	Way         class.Way
	Ways        []class.Way
	Open        int // the place at hand; -1 for none
	Shown       int
	Lines       int // of the working of the question at hand
	Locked      bool
	Paused      bool
	Shut        bool
	Ended       bool
	Until       string
	Came        int
	Roster      int
	Address     string
}

func (s *Server) deskPage(w http.ResponseWriter, r *http.Request, l *class.Live) {
	s.showDesk(w, l, "desk")
}

func (s *Server) deskPart(w http.ResponseWriter, _ *http.Request, l *class.Live) {
	s.showDesk(w, l, "desk-part")
}

func (s *Server) showDesk(w http.ResponseWriter, l *class.Live, name string) {
	var d deskData
	var err error
	now := s.o.Clock()
	l.See(func(room *class.Room) {
		d = deskData{Code: room.Head.Code, Title: room.Head.Title, Version: deskVersion(room), Set: room.Now, Sets: len(room.Sets), Ways: class.Ways, Open: -1,
			Paused: room.Paused, Shut: room.Shut, Ended: room.Ended, Came: len(room.Came()), Roster: len(room.Head.Roster), Address: s.o.Address}
		d.Standing, err = room.Standing(room.Now, now, func(device string) bool { return s.presence.away(device, now) })
		if a := room.Asking(); a != nil && err == nil {
			d.Way, d.Open, d.Locked = a.Way, a.Open, a.Locked
			if !a.Until.IsZero() {
				d.Until = a.Until.In(time.Local).Format("15:04")
			}
			if a.Open >= 0 {
				d.Shown = a.Shown(a.Open)
			}
		}
	})
	if err != nil {
		s.trouble(w, err)
		return
	}
	w.Header().Set("X-Version", d.Version)
	s.write(w, name, d)
}

// Mark is a cell's sign: seen without its colour.
func (d deskData) Mark(c class.Cell) string {
	return map[class.State]string{class.IsRight: "✓", class.IsPartly: "½", class.IsKnown: "✗", class.IsWrong: "✗", class.IsOpen: "?", class.IsPassed: "–", class.IsGiven: "…", class.Here: "·"}[c.State]
}

// personData is what someone typed, and what was asked.
type personData struct {
	Code, Title string
	Row         class.Row
	Lines       []personLine
}

// personLine is one question of theirs.
type personLine struct {
	Number int
	Place  int
	Cell   class.Cell
	Asked  template.HTML
	Name   string // of the mistake
}

// personPage is one person: their questions, what they typed, and what can be done for them.
func (s *Server) personPage(w http.ResponseWriter, r *http.Request, l *class.Live) {
	var d personData
	var err error
	found := false
	now := s.o.Clock()
	l.See(func(room *class.Room) {
		p := room.Person(r.PathValue("id"))
		if p == nil || room.Asking() == nil {
			return
		}
		d.Code, d.Title = room.Head.Code, room.Head.Title
		var all class.Standing
		if all, err = room.Standing(room.Now, now, func(device string) bool { return s.presence.away(device, now) }); err != nil {
			return
		}
		for _, row := range all.Rows {
			if row.ID == p.ID {
				d.Row, found = row, true
			}
		}
		items, e := room.Asking().Items(p.ID)
		if err = e; err != nil {
			return
		}
		for _, it := range items {
			line := personLine{Number: it.Number, Place: it.Place}
			if it.Place < len(d.Row.Cells) {
				line.Cell = d.Row.Cells[it.Place]
			}
			line.Name = cmp.Or(it.Words.Task.Slips[line.Cell.Mistake], "")
			if strings.Contains(line.Name, "${") {
				line.Name = strings.ReplaceAll(line.Cell.Mistake, "-", " ")
			}
			if line.Asked, err = web.Blocks(page.Page{s.o.Session.QuestionOf(it.Problem, it.Words)}, page.Prompt{}); err != nil {
				return
			}
			d.Lines = append(d.Lines, line)
		}
	})
	switch {
	case err != nil:
		s.trouble(w, err)
	case !found:
		http.Error(w, fmt.Sprintf("there is nobody %q here", content.Printable(r.PathValue("id"))), http.StatusNotFound)
	default:
		s.write(w, "person", d)
	}
}

// wallData is what all may see.
type wallData struct {
	class.Wall
	Version string
	Address string
	QR      template.HTML
	Body    template.HTML
	Working template.HTML
}

func (s *Server) wallPage(w http.ResponseWriter, _ *http.Request, l *class.Live) {
	s.showWall(w, l, "wall")
}

func (s *Server) wallPart(w http.ResponseWriter, _ *http.Request, l *class.Live) {
	s.showWall(w, l, "wall-part")
}

func (s *Server) showWall(w http.ResponseWriter, l *class.Live, name string) {
	var d wallData
	var err error
	l.See(func(room *class.Room) {
		d.Version = deskVersion(room)
		d.Wall, err = room.Wall()
	})
	d.Address = s.o.Address
	if err == nil && d.Item.Problem != nil {
		d.Body, err = web.Blocks(d.Asked(s.o.Session), page.Prompt{})
		if err == nil {
			d.Working, err = web.Blocks(d.Wall.Working(s.o.Session), page.Prompt{})
		}
	}
	if err == nil && s.o.Address != "" {
		d.QR, err = qrSVG(s.o.Link(d.Head.Code))
	}
	if err != nil {
		s.trouble(w, err)
		return
	}
	w.Header().Set("X-Version", d.Version)
	s.write(w, name, d)
}
