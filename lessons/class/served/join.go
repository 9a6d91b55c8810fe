package served

import (
	"crypto/rand"
	"errors"
	"net/http"
	"strings"

	"scratchpass/lessons/class"
)

// doorPage is what is shown to who has no room, or no name in it.
type doorPage struct {
	Says  string
	Code  string   // of the room; empty where it is asked for
	Title string   // of the room
	Names []listed // to tap, where the instructor has chosen that
	Typed string   // a name that nobody here has
	Near  string   // who may be meant by it, as that person's phone would show it
	Waits bool     // for the instructor
	List  bool     // there is a class list; without one all are visitors
	Strip bool     // sheets with codes may have been given out
	Back  bool     // nothing can be done here but to go back to the room
}

// listed is a name to tap, and what is sent for it.
type listed struct{ Tag, Name string }

// door asks for a room code.
func (s *Server) door(w http.ResponseWriter, r *http.Request) {
	typed := r.URL.Query().Get("code")
	code := class.ReadCode(typed)
	switch {
	case typed == "":
		s.write(w, "door", doorPage{})
	case class.IsCode(code):
		http.Redirect(w, r, "/r/"+code, http.StatusSeeOther)
	default:
		s.noRoom(w, r)
	}
}

// short leads from the short address, which is in the QR code, to the room. The room is looked
// for there, where a phone shows who it is.
func (s *Server) short(w http.ResponseWriter, r *http.Request) {
	code := class.ReadCode(r.PathValue("code"))
	if !class.IsCode(code) || strings.Contains(r.URL.Path, ".") { // favicon.ico has the letters of a code
		s.noRoom(w, r)
		return
	}
	http.Redirect(w, r, "/r/"+code, http.StatusSeeOther)
}

// atDoor shows who has no name in the room how to come in. The phone gets its token here, before
// it asks for a name: if the answer to that is lost, it asks again as the same phone.
func (s *Server) atDoor(w http.ResponseWriter, r *http.Request, l *class.Live, page doorPage) {
	l.See(func(room *class.Room) {
		page.Code, page.Title = room.Head.Code, room.Head.Title
		page.List, page.Strip = len(room.Head.Roster) > 0, room.Head.Sheets
		token := device(r, page.Code)
		page.Waits = room.Claimed(token) != nil
		switch {
		case page.Says != "" || page.Near != "" || page.Waits:
		case room.Gone(token):
			page.Says = s.say("class-other-phone")
		case room.Shut || room.Ended:
			page.Says = s.say("class-shut")
		case token == "" && r.URL.Query().Has("came"):
			page.Says = s.say("class-cookies")
		}
		if room.Head.Listed && !room.Shut && !room.Ended {
			for _, p := range room.People() {
				if !p.Visitor && p.Device == "" {
					page.Names = append(page.Names, listed{room.Tag(p.ID), p.Name})
				}
			}
		}
	})
	if device(r, page.Code) == "" {
		s.newDevice(w, page.Code)
	}
	s.write(w, "door", page)
}

// join gives a phone a name. It is that of the roster, the code of a paper strip, or one that a
// visitor chooses.
func (s *Server) join(w http.ResponseWriter, r *http.Request, l *class.Live) {
	code := class.ReadCode(r.PathValue("code"))
	name, tag := strings.TrimSpace(r.PostFormValue("name")), r.PostFormValue("who")
	if name == "" && tag == "" {
		s.atDoor(w, r, l, doorPage{Says: s.say("class-name-missing")})
		return
	}
	if !s.limits.mayJoin(r) {
		s.tooFast(w)
		return
	}
	e := class.Event{Kind: class.Joined, Text: device(r, code)}
	var page doorPage
	has := false
	l.See(func(room *class.Room) {
		page = s.named(room, &e, typed{name, tag, r.PostFormValue("visitor") != "", r.PostFormValue("is") != ""})
		p := room.Holder(e.Text)
		has = p != nil && p.ID == e.Who
	})
	if e.Who == "" {
		page.Typed = name
		s.atDoor(w, r, l, page)
		return
	}
	if e.Text == "" {
		e.Text = s.newDevice(w, code)
	}
	if !has {
		if err := l.Do(r.Context(), e); err != nil {
			s.trouble(w, err)
			return
		}
	}
	http.Redirect(w, r, "/r/"+code+"?came", http.StatusSeeOther)
}

// typed is what someone has said of who they are.
type typed struct {
	name, tag string
	visitor   bool // they are on no list
	is        bool // they are who they were asked about
}

// named finds who wants to come in, or what they are to be told or asked instead.
func (s *Server) named(room *class.Room, e *class.Event, t typed) doorPage {
	p, twice := room.Named(t.name)
	if t.tag != "" && room.Head.Listed {
		p, twice = room.Tagged(t.tag), false
	}
	visitor := t.visitor || len(room.Head.Roster) == 0
	switch {
	case room.Shut || room.Ended:
		return doorPage{Says: s.say("class-shut")}
	case p != nil:
		e.Who = p.ID
		return doorPage{}
	case twice:
		return doorPage{Says: s.say("class-name-twice", "name", t.name)}
	case !visitor:
		return s.near(room, e, t)
	}
	if now := room.Holder(e.Text); now != nil && now.Visitor && now.Name == t.name { // the form was sent twice
		e.Who = now.ID
		return doorPage{}
	}
	if e.Name = room.NickName(t.name); e.Name == "" {
		return doorPage{Says: s.say("class-name-taken", "name", t.name)}
	}
	e.Who = "visitor-" + strings.ToLower(rand.Text()[:10])
	return doorPage{}
}

// near finds who is meant by a name that is not on the list as it was typed.
func (s *Server) near(room *class.Room, e *class.Event, t typed) doorPage {
	near := room.Near(t.name)
	switch {
	case near.Several:
		return doorPage{Says: s.say("class-name-several", "name", t.name)}
	case near.Person == nil:
		return doorPage{Says: s.say("class-no-name", "name", t.name)}
	case near.Sure || t.is:
		e.Who = near.Person.ID
		return doorPage{}
	}
	return doorPage{Near: near.Person.Short()}
}

// leave makes a phone nobody's again: the next person takes it, and who had it goes on where they
// were, here or on another.
func (s *Server) leave(w http.ResponseWriter, r *http.Request, l *class.Live) {
	e := class.Event{Kind: class.Left}
	l.See(func(room *class.Room) {
		e.Text = device(r, room.Head.Code)
		p := room.Holder(e.Text)
		if p == nil {
			p = room.Claimed(e.Text)
		}
		if p != nil {
			e.Who = p.ID
		}
	})
	if e.Who != "" {
		if err := l.Do(r.Context(), e); err != nil {
			s.trouble(w, err)
			return
		}
	}
	code := class.ReadCode(r.PathValue("code"))
	http.SetCookie(w, &http.Cookie{Name: "room-" + code, Path: "/r/" + code, MaxAge: -1, HttpOnly: true, Secure: s.o.Secure, SameSite: http.SameSiteLaxMode})
	http.Redirect(w, r, "/r/"+code, http.StatusSeeOther)
}

// errNoDevice says that a phone has no name here.
var errNoDevice = errors.New("this phone has no name in the room")
