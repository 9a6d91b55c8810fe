package served

import (
	"cmp"
	"fmt"
	"html/template"
	"net/http"
	"strconv"
	"time"

	"scratchpass/lessons/class"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/page"
	"scratchpass/quiz/answer"
)

// seatPage is what a phone shows.
type seatPage struct {
	class.Seat
	Code    string
	Title   string
	Name    string
	Who     string // the tag of whose seat it is: see class.Room.Tag
	Set     int
	Version string // of what is shown: see class.Room.Version
	ID      string // of the question, for what was typed and not sent
	Until   string
	Calls   bool
	Keeps   bool
	Body    template.HTML
	Told    template.HTML // what came of the answer
	Aid     template.HTML // what a help word gave
	Use     string        // the value of a sum, which may be the answer
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
	id, device, ok := who(l, r)
	if !ok {
		s.atDoor(w, r, l, doorPage{})
		return
	}
	s.presence.heard(device, s.o.Clock())
	s.showSeat(w, l, id, "seat", draft{wish: wish(r)})
}

// draft is what someone has at a question that is shown to them again.
type draft struct {
	wish  int       // the place that they would see; -1 for the next
	aid   page.Page // what is shown under the question
	given string    // what they have typed
	sure  answer.Certainty
	asked bool   // how sure they are was asked: the next time it is sent as it is
	use   string // the value of a sum, which may be their answer
	pass  bool   // they are asked whether to send that they do not know
}

// seatPart is the seat without the page around it.
func (s *Server) seatPart(w http.ResponseWriter, r *http.Request, l *class.Live) {
	id, device, ok := who(l, r)
	switch {
	case !ok:
		http.Error(w, errNoDevice.Error(), http.StatusForbidden)
	case !s.limits.mayFetch(device):
		s.tooFast(w)
	default:
		s.presence.heard(device, s.o.Clock())
		s.showSeat(w, l, id, "seat-part", draft{wish: wish(r)})
	}
}

// showSeat writes someone's seat.
func (s *Server) showSeat(w http.ResponseWriter, l *class.Live, id, template string, d draft) {
	p, err := s.seatOf(l, id, d)
	if err != nil {
		s.trouble(w, err)
		return
	}
	w.Header().Set("X-Version", p.Version)
	s.write(w, template, p)
}

// wish is the place that someone would see; -1 for the next.
func wish(r *http.Request) int {
	if n, err := strconv.Atoi(r.URL.Query().Get("at")); err == nil {
		return n
	}
	return -1
}

// seatOf makes the page of someone's seat.
func (s *Server) seatOf(l *class.Live, id string, d draft) (seatPage, error) {
	var at class.At
	var err error
	p := seatPage{At: -1}
	l.See(func(room *class.Room) {
		person := room.Person(id)
		if person == nil {
			err = errNoDevice
			return
		}
		p.Code, p.Title, p.Name, p.Version = room.Head.Code, room.Head.Title, person.Short(), room.Version(person, s.o.Clock())
		p.Who = room.Tag(person.ID)
		at, err = room.At(person, d.wish, s.o.Clock())
	})
	if err != nil {
		return p, err
	}
	p.Seat = at.Seat(s.o.Session)
	if err = s.benchSeat(&p, at); err != nil {
		return p, err
	}
	p.Set = at.Set
	p.Until, p.Calls, p.Keeps = at.Until(s.o.Session, time.Local), at.Person.Calls, at.Person.Keeps
	if at.Way == class.OwnPace || at.Way == class.Ticket || at.Scene == class.Over {
		p.Lines = at.Lines
	}
	if p.Body, err = web.Blocks(p.Seat.Body, p.Seat.Prompt); err != nil {
		return p, err
	}
	if p.Told, err = web.Blocks(p.Seat.Came, page.Prompt{}); err != nil {
		return p, err
	}
	p.Use = d.use
	if p.Aid, err = web.Blocks(d.aid, page.Prompt{}); err != nil {
		return p, err
	}
	switch {
	case at.Bench != nil:
		return p, s.benchForm(&p, *at.Bench, d)
	case at.Item.Problem == nil:
		return p, nil
	}
	p.At = at.Item.Place
	p.ID = fmt.Sprint(p.Who, ".", at.Set, ".", at.Item.Place)
	if p.Seat.Prompt.Takes == nil {
		return p, nil
	}
	p.Form, err = s.form(p, d)
	return p, err
}

// form is what takes an answer: with what was typed, else with the answer that is kept.
func (s *Server) form(p seatPage, d draft) (template.HTML, error) {
	f := web.Form{To: "/r/" + p.Code + "/answer", Prompt: p.Seat.Prompt, Given: cmp.Or(d.given, p.Seat.Given), Marked: true, Still: true, SureLabel: s.say("say-how-sure"),
		Hidden: []web.Sent{{Name: "set", Value: strconv.Itoa(p.Set)}, {Name: "place", Value: strconv.Itoa(p.At)}, {Name: "who", Value: p.Who}}}
	if d.pass {
		f.PassTo, f.PassSure = f.To+"?pass=sure", s.say("class-pass-sure")
	}
	if d.asked {
		f.Hidden = append(f.Hidden, web.Sent{Name: "asked", Value: "yes"})
	}
	for _, c := range p.Seat.Sure {
		now := c.Now
		if d.given != "" {
			now = c.Value == d.sure
		}
		f.Sure = append(f.Sure, web.Choice{Value: string(c.Value), Name: c.Name, Now: now})
	}
	words := s.o.Words
	words.Send = s.say("class-send")
	return f.Write(words)
}
