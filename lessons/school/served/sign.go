package served

import (
	"errors"
	"net/http"
	"time"

	"scratchpass/lessons/class"
	"scratchpass/lessons/school"
	"scratchpass/lessons/school/signon"
)

// Back is the page that people come back to from the sign-on: its address is what the sign-on has to
// know.
const Back = "/back"

// away is the name of the cookie that waits, sealed, while someone signs on elsewhere.
const away = "school-away"

// left is the name of the cookie that says that someone has signed off at a browser: whoever comes
// next may be another, whom the sign-on must not take for them.
const left = "school-left"

// longestLeft is how long a browser knows of that: longer than a sign-on knows someone.
const longestLeft = 30 * 24 * time.Hour

// door asks for the code of a room, or to sign on; who is signed on goes home.
func (s *Server) door(w http.ResponseWriter, r *http.Request) {
	if typed := r.URL.Query().Get("code"); typed != "" {
		if code := class.ReadCode(typed); class.IsCode(code) {
			http.Redirect(w, r, "/r/"+code, http.StatusSeeOther)
			return
		}
		s.writeAs(w, http.StatusNotFound, "door", doorPage{Says: s.say("class-no-room", "code", typed)})
		return
	}
	if _, err := s.person(r); err == nil {
		http.Redirect(w, r, "/home", http.StatusSeeOther)
		return
	}
	s.write(w, "door", doorPage{})
}

// doorPage is what is shown to who is not signed on.
type doorPage struct{ Says string }

// signOn sends a browser to the school's sign-on.
func (s *Server) signOn(w http.ResponseWriter, r *http.Request) {
	to := r.URL.Query().Get("to")
	if to == "" {
		to = "/home"
	}
	_, hasLeft := r.Cookie(left)
	address, keep, err := s.o.SignOn.Leave(r.Context(), to, hasLeft == nil)
	if err != nil {
		s.o.Fail(err)
		s.tell(w, http.StatusServiceUnavailable, "school-no-sign-on")
		return
	}
	s.setCookie(w, away, keep, signon.LongestAway)
	http.Redirect(w, r, address, http.StatusSeeOther)
}

// back signs on who has come back.
func (s *Server) back(w http.ResponseWriter, r *http.Request) {
	c, err := r.Cookie(away)
	if err != nil {
		s.tell(w, http.StatusForbidden, "school-not-back")
		return
	}
	s.setCookie(w, away, "", -1)
	p, to, err := s.o.SignOn.Back(r, c.Value)
	switch {
	case errors.Is(err, signon.ErrNotBack):
		s.o.Fail(err)
		s.tell(w, http.StatusForbidden, "school-not-back")
		return
	case errors.Is(err, signon.ErrAway):
		s.o.Fail(err)
		s.tell(w, http.StatusServiceUnavailable, "school-no-sign-on")
		return
	case err != nil:
		s.trouble(w, err)
		return
	}
	token, err := s.o.Sessions.Begin(r.Context(), p)
	if err == nil {
		err = s.o.Audit.Note(r.Context(), p, school.SignedOn, "")
	}
	if err != nil {
		s.trouble(w, err)
		return
	}
	s.setCookie(w, cookie, token, 0)
	s.setCookie(w, left, "", -1)
	http.Redirect(w, r, to, http.StatusSeeOther)
}

// setCookie sets a cookie for this host alone, for a time, for 0 until the browser is closed; for less
// it is deleted. Coming back from the sign-on is a link from elsewhere: the cookies have to come with it.
func (s *Server) setCookie(w http.ResponseWriter, name, value string, last time.Duration) {
	age := int(last / time.Second)
	if last < 0 {
		age = -1
	}
	http.SetCookie(w, &http.Cookie{Name: name, Value: value, Path: "/", HttpOnly: true, Secure: s.secure(), SameSite: http.SameSiteLaxMode, MaxAge: age})
}

// signOff ends a session here. That of the sign-on itself is the sign-on's, but it has to ask anew
// before it lets someone in here from this browser.
func (s *Server) signOff(w http.ResponseWriter, r *http.Request, p school.Person) {
	if c, err := r.Cookie(cookie); err == nil {
		if err := s.o.Sessions.End(r.Context(), c.Value); err != nil {
			s.trouble(w, err)
			return
		}
	}
	s.study.leave(p.ID)
	s.setCookie(w, cookie, "", -1)
	s.setCookie(w, left, "yes", longestLeft)
	http.Redirect(w, r, "/", http.StatusSeeOther)
}
