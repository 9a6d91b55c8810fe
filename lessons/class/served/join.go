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
	Says   string
	Code   string   // of the room; empty where it is asked for
	Title  string   // of the room
	Names  []string // to tap, where the instructor has chosen that
	Typed  string   // a name that nobody here has
	Waits  bool     // for the instructor
	Paused bool
}

// door asks for a room code.
func (s *Server) door(w http.ResponseWriter, r *http.Request) {
	if typed := r.URL.Query().Get("code"); typed != "" {
		if l := s.find(w, r, class.ReadCode(typed)); l != nil {
			http.Redirect(w, r, "/r/"+class.ReadCode(typed), http.StatusSeeOther)
		}
		return
	}
	s.write(w, "door", doorPage{})
}

// short leads from the short address, which is in the QR code, to the room.
func (s *Server) short(w http.ResponseWriter, r *http.Request) {
	code := class.ReadCode(r.PathValue("code"))
	if l := s.find(w, r, code); l != nil {
		http.Redirect(w, r, "/r/"+code, http.StatusSeeOther)
	}
}

// atDoor shows who has no name in the room how to come in.
func (s *Server) atDoor(w http.ResponseWriter, r *http.Request, l *class.Live, says, typed string) {
	page := doorPage{Says: says, Typed: typed}
	l.See(func(room *class.Room) {
		page.Code, page.Title = room.Head.Code, room.Head.Title
		p := room.Claimed(device(r, room.Head.Code))
		switch {
		case p != nil:
			page.Waits = true
		case says != "":
		case room.Shut || room.Ended:
			page.Says = s.say("class-shut")
		}
		if room.Head.Listed && !room.Shut {
			for _, p := range room.People() {
				if !p.Visitor && p.Device == "" {
					page.Names = append(page.Names, p.Name)
				}
			}
		}
	})
	s.write(w, "door", page)
}

// join gives a phone a name. It is that of the roster, the code of a paper strip, or one that a
// visitor chooses.
func (s *Server) join(w http.ResponseWriter, r *http.Request, l *class.Live) {
	code := class.ReadCode(r.PathValue("code"))
	name := strings.TrimSpace(r.PostFormValue("name"))
	if name == "" {
		s.atDoor(w, r, l, s.say("class-name-missing"), "")
		return
	}
	if !s.limits.mayPost(address(r) + " joins") {
		s.tooFast(w)
		return
	}
	e := class.Event{Kind: class.Joined}
	says := ""
	l.See(func(room *class.Room) {
		p := room.Named(name)
		switch {
		case room.Shut || room.Ended:
			says = s.say("class-shut")
		case p != nil:
			e.Who = p.ID
		case r.PostFormValue("visitor") == "":
			says = s.say("class-no-name", "name", name)
		default:
			if e.Name = room.NickName(name); e.Name == "" {
				says = s.say("class-name-taken", "name", name)
			}
			e.Who = "visitor-" + strings.ToLower(rand.Text()[:10])
		}
	})
	if says != "" {
		s.atDoor(w, r, l, says, name)
		return
	}
	if e.Text = device(r, code); e.Text == "" {
		e.Text = s.newDevice(w, code)
	}
	if err := l.Do(r.Context(), e, nil); err != nil {
		s.trouble(w, err)
		return
	}
	http.Redirect(w, r, "/r/"+code, http.StatusSeeOther)
}

// leave makes a phone nobody's again: the next person takes it.
func (s *Server) leave(w http.ResponseWriter, r *http.Request, _ *class.Live) {
	code := class.ReadCode(r.PathValue("code"))
	http.SetCookie(w, &http.Cookie{Name: "room-" + code, Path: "/r/" + code, MaxAge: -1, HttpOnly: true, Secure: s.o.Secure, SameSite: http.SameSiteStrictMode})
	http.Redirect(w, r, "/r/"+code, http.StatusSeeOther)
}

// errNoDevice says that a phone has no name here.
var errNoDevice = errors.New("this phone has no name in the room")
