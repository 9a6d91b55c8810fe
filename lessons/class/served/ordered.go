package served

import (
	"fmt"
	"net/http"
	"net/url"
	"strconv"

	"scratchpass/calc"
	"scratchpass/lessons/class"
)

// act does what the instructor wants. What can't be taken back is asked about once.
func (s *Server) act(w http.ResponseWriter, r *http.Request, l *class.Live) {
	if err := r.ParseForm(); err != nil {
		s.wrong(w, r, l, fmt.Errorf("the form can't be read: %w", err))
		return
	}
	e, wrong := s.ordered(r.PostForm, l)
	switch {
	case wrong != nil:
		s.wrong(w, r, l, wrong)
		return
	case r.PostForm.Get("sure") != "yes" && s.asksFirst(r.PostForm, l, e) != "":
		s.confirm(w, r, l, e)
		return
	}
	var err error
	if e.Kind == class.Asked {
		err = s.asked(r, l, e)
	} else {
		err = l.Do(r.Context(), e)
	}
	switch {
	case err != nil:
		s.trouble(w, err)
	case wantsJSON(r):
		w.WriteHeader(http.StatusNoContent)
	default:
		http.Redirect(w, r, backTo(r), http.StatusSeeOther)
	}
}

// ordered reads what is to be done; wrong says what is wrong with it.
func (s *Server) ordered(form url.Values, l *class.Live) (e class.Event, wrong error) {
	name := form.Get("do")
	var again class.Repeat
	l.See(func(room *class.Room) {
		e.Set = room.Now
		if form.Has("set") {
			n, err := strconv.Atoi(form.Get("set"))
			if err != nil || n < 0 || n >= len(room.Sets) {
				wrong = fmt.Errorf("there is no set %s in this room", calc.Quoted(form.Get("set")))
				return
			}
			e.Set = n
		}
		o := order{form, room, s.o.Clock(), &e}
		do, ok := acts[name]
		switch {
		case name == "bench":
			e, wrong = s.benchOrder(form, room)
		case name == "ask":
			level, _ := strconv.Atoi(form.Get("level")) // 0 is no level
			e.Kind = class.Asked
			var task string
			if task, wrong = s.taskMeant(form.Get("task")); wrong == nil {
				e.Text, wrong = room.OneMore(s.o.Session.Tasks, task, level)
			}
		case name == "start":
			e.Kind = class.Asked
			e.Text, e.Name, wrong = s.start(form, room)
		case name == "again":
			if wrong = o.place(); wrong == nil {
				e.Kind = class.Asked
				again, wrong = room.Again(e.Set, e.Place)
			}
		case !ok:
			wrong = fmt.Errorf("there is nothing called %s to do", calc.Quoted(name))
		default:
			wrong = do(o)
		}
	})
	if name == "again" && wrong == nil { // other numbers are looked for while the phones go on
		e.Text, wrong = again.Blueprint()
	}
	return e, wrong
}

// asked adds a set to the room. One of one question has no way of its own: it is opened for all.
func (s *Server) asked(r *http.Request, l *class.Live, e class.Event) error {
	if e.Name != "" {
		return l.Ask(r.Context(), e.Text, class.Way(e.Name))
	}
	if err := l.Ask(r.Context(), e.Text, class.Together); err != nil {
		return err
	}
	open := class.Event{Kind: class.Opened}
	l.See(func(room *class.Room) { open.Set = room.Now })
	return l.Do(r.Context(), open)
}

// asksFirst is what is asked before something is done; empty for what is done at once, as to close
// a question that tells nothing yet.
func (s *Server) asksFirst(form url.Values, l *class.Live, e class.Event) (phrase string) {
	name := form.Get("do")
	l.See(func(room *class.Room) {
		switch {
		case name == "lock" && (room.Sets[e.Set].Way == class.Together || room.Sets[e.Set].Never()):
		case name == "start" && unasked(room) == 0:
		case name == "leave" && closedRound(room):
		default:
			phrase = asksFirst[name]
		}
	})
	return phrase
}

// backTo is the page that something was asked for on.
func backTo(r *http.Request) string {
	code := class.ReadCode(r.PathValue("code"))
	switch r.PostForm.Get("to") {
	case "wall":
		return "/wall/" + code
	case "person":
		return "/desk/" + code + "/person/" + url.PathEscape(r.PostForm.Get("who"))
	}
	return "/desk/" + code
}
