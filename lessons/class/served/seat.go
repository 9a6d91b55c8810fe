package served

import (
	"fmt"
	"html/template"
	"net/http"
	"strconv"
	"time"

	"scratchpass/lessons/class"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/page"
)

// seatPage is what a phone shows.
type seatPage struct {
	class.Seat
	Code    string
	Title   string
	Name    string
	Version string // of what is shown: see class.Room.Version
	ID      string // of the question, for what was typed and not sent
	Until   string
	Calls   bool
	Keeps   bool
	Body    template.HTML
	Aid     template.HTML // what a help word gave
	Form    template.HTML
	Lines   []class.Line
	At      int // the place that is shown; -1 for none
}

// seat shows someone where they are.
func (s *Server) seat(w http.ResponseWriter, r *http.Request, l *class.Live) {
	code := class.ReadCode(r.PathValue("code"))
	if code != r.PathValue("code") { // cookies hang on the path
		http.Redirect(w, r, "/r/"+code, http.StatusSeeOther)
		return
	}
	if _, _, ok := who(l, r); !ok {
		s.atDoor(w, r, l, "", "")
		return
	}
	s.showSeat(w, r, l, "seat", nil)
}

// seatPart is the seat without the page around it.
func (s *Server) seatPart(w http.ResponseWriter, r *http.Request, l *class.Live) {
	_, device, ok := who(l, r)
	switch {
	case !ok:
		http.Error(w, errNoDevice.Error(), http.StatusForbidden)
	case !s.limits.mayFetch(device):
		s.tooFast(w)
	default:
		s.showSeat(w, r, l, "seat-part", nil)
	}
}

// showSeat writes a seat. aid is what is shown under the question.
func (s *Server) showSeat(w http.ResponseWriter, r *http.Request, l *class.Live, template string, aid page.Page) {
	id, device, _ := who(l, r)
	s.presence.heard(device, s.o.Clock())
	p, err := s.seatOf(l, id, wish(r), aid)
	if err != nil {
		s.trouble(w, err)
		return
	}
	w.Header().Set("X-Version", p.Version)
	s.write(w, template, p)
}

// wish is the place that someone would see; -1 for the next.
func wish(r *http.Request) int {
	if n, err := strconv.Atoi(r.FormValue("at")); err == nil {
		return n
	}
	return -1
}

// seatOf makes the page of someone's seat.
func (s *Server) seatOf(l *class.Live, id string, wish int, aid page.Page) (seatPage, error) {
	var at class.At
	var err error
	p := seatPage{At: -1}
	l.See(func(room *class.Room) {
		person := room.Person(id)
		if person == nil {
			err = errNoDevice
			return
		}
		p.Code, p.Title, p.Name, p.Version = room.Head.Code, room.Head.Title, person.Name, room.Version(person)
		at, err = room.At(person, wish, s.o.Clock())
	})
	if err != nil {
		return p, err
	}
	p.Seat = at.Seat(s.o.Session)
	p.Until, p.Calls, p.Keeps = at.Until(s.o.Session, time.Local), at.Person.Calls, at.Person.Keeps
	if at.Way == class.OwnPace || at.Way == class.Ticket {
		p.Lines = at.Lines
	}
	if p.Body, err = web.Blocks(p.Seat.Body, p.Seat.Prompt); err != nil {
		return p, err
	}
	if p.Aid, err = web.Blocks(aid, page.Prompt{}); err != nil {
		return p, err
	}
	if at.Item.Problem == nil {
		return p, nil
	}
	p.At = at.Item.Place
	p.ID = fmt.Sprint(p.Code, ".", p.Name, ".", at.Set, ".", at.Item.Place)
	if p.Seat.Prompt.Takes == nil {
		return p, nil
	}
	f := web.Form{To: "/r/" + p.Code + "/answer", Prompt: p.Seat.Prompt, Given: p.Seat.Given, Marked: true, SureLabel: s.say("say-how-sure"),
		Hidden: []web.Sent{{Name: "set", Value: strconv.Itoa(at.Set)}, {Name: "place", Value: strconv.Itoa(at.Item.Place)}}}
	for _, c := range p.Seat.Sure {
		f.Sure = append(f.Sure, web.Choice{Value: string(c.Value), Name: c.Name, Now: c.Now})
	}
	words := s.o.Words
	words.Send = s.say("class-send")
	p.Form, err = f.Write(words)
	return p, err
}
