package served

import (
	"errors"
	"fmt"
	"net/http"
	"strconv"
	"strings"
	"time"

	"scratchpass/lessons/class"
)

// acts are what the instructor can do, by the name on a form.
var acts = map[string]func(*http.Request, *class.Room, *class.Event) error{
	"open": func(r *http.Request, room *class.Room, e *class.Event) error {
		e.Kind = class.Opened
		return place(r, room, e)
	},
	"lock": func(r *http.Request, room *class.Room, e *class.Event) error {
		e.Kind = class.Locked
		return nil
	},
	"show": func(r *http.Request, room *class.Room, e *class.Event) error {
		e.Kind, e.N = class.Showed, number(r, "n")
		return place(r, room, e)
	},
	"way": func(r *http.Request, _ *class.Room, e *class.Event) error {
		e.Kind, e.Text = class.Ran, r.PostFormValue("way")
		_, err := class.ParseWay(e.Text)
		return err
	},
	"until":  until,
	"pause":  simple(class.Paused),
	"resume": simple(class.Resumed),
	"shut":   simple(class.Shut),
	"unshut": simple(class.Unshut),
	"end":    simple(class.Ended),
	"reopen": simple(class.Goes),
	"longer": about(class.Longer, func(r *http.Request, e *class.Event) error {
		e.N = number(r, "n")
		if e.N < 0 || e.N > mostMinutes {
			return fmt.Errorf("%d minutes: give 0 to %d", e.N, mostMinutes)
		}
		return nil
	}),
	"let":    about(class.Let, text("device")),
	"refuse": about(class.Refused, text("device")),
	"rename": about(class.Renamed, text("name")),
	"merge":  about(class.Merged, text("with")),
	"remove": about(class.Removed, nil),
	"seen":   about(class.Seen, nil),
	"count": about(class.Counted, func(r *http.Request, e *class.Event) error {
		e.Place = number(r, "place")
		return nil
	}),
}

// mostMinutes is how much longer someone may be given.
const mostMinutes = 600

func simple(kind class.Kind) func(*http.Request, *class.Room, *class.Event) error {
	return func(_ *http.Request, _ *class.Room, e *class.Event) error {
		e.Kind = kind
		return nil
	}
}

// about is an act about one person.
func about(kind class.Kind, more func(*http.Request, *class.Event) error) func(*http.Request, *class.Room, *class.Event) error {
	return func(r *http.Request, room *class.Room, e *class.Event) error {
		e.Kind, e.Who = kind, r.PostFormValue("who")
		if room.Person(e.Who) == nil {
			return fmt.Errorf("there is nobody %q here", e.Who)
		}
		if more == nil {
			return nil
		}
		return more(r, e)
	}
}

func text(field string) func(*http.Request, *class.Event) error {
	return func(r *http.Request, e *class.Event) error {
		if e.Text = line(r.PostFormValue(field)); e.Text == "" {
			return fmt.Errorf("%s is empty", field)
		}
		return nil
	}
}

func number(r *http.Request, field string) int {
	n, err := strconv.Atoi(r.PostFormValue(field))
	if err != nil {
		return -1
	}
	return n
}

func place(r *http.Request, room *class.Room, e *class.Event) error {
	e.Place = number(r, "place")
	if e.Set >= len(room.Sets) || e.Place < 0 || e.Place >= room.Sets[e.Set].Places() {
		return fmt.Errorf("there is no question %d", e.Place+1)
	}
	return nil
}

// until sets the end of the window: so many minutes from now, or none.
func until(r *http.Request, room *class.Room, e *class.Event) error {
	e.Kind = class.Until
	n := number(r, "n")
	switch {
	case r.PostFormValue("n") == "":
		return nil
	case n < 1 || n > mostMinutes:
		return fmt.Errorf("%s minutes: give 1 to %d", r.PostFormValue("n"), mostMinutes)
	}
	e.N = n
	return nil
}

// act does what the instructor wants.
func (s *Server) act(w http.ResponseWriter, r *http.Request, l *class.Live) {
	code := class.ReadCode(r.PathValue("code"))
	name := r.PostFormValue("do")
	if name == "ask" || name == "again" {
		if err := s.ask(r, l, name); err != nil {
			http.Error(w, err.Error(), http.StatusBadRequest)
			return
		}
		http.Redirect(w, r, "/desk/"+code, http.StatusSeeOther)
		return
	}
	do, ok := acts[name]
	if !ok {
		http.Error(w, fmt.Sprintf("there is nothing called %q to do", name), http.StatusBadRequest)
		return
	}
	var e class.Event
	var wrong error
	l.See(func(room *class.Room) {
		e.Set = room.Now
		if r.PostFormValue("set") != "" {
			e.Set = number(r, "set")
		}
		wrong = do(r, room, &e)
	})
	if wrong != nil {
		http.Error(w, wrong.Error(), http.StatusBadRequest)
		return
	}
	if e.Kind == class.Until && e.N > 0 {
		e.Text = s.o.Clock().Add(time.Duration(e.N) * time.Minute).UTC().Format(time.RFC3339)
	}
	if err := l.Do(r.Context(), e, nil); err != nil {
		s.trouble(w, err)
		return
	}
	if wantsJSON(r) {
		w.WriteHeader(http.StatusNoContent)
		return
	}
	back := "/desk/" + code
	if r.PostFormValue("back") == "wall" {
		back = "/wall/" + code
	}
	http.Redirect(w, r, back, http.StatusSeeOther)
}

// ask adds a set: one more question on the spot, or one of the set again with other numbers.
func (s *Server) ask(r *http.Request, l *class.Live, name string) error {
	var blueprint string
	var err error
	l.See(func(room *class.Room) {
		a := room.Asking()
		if a == nil {
			err = errors.New("the room has no set yet")
			return
		}
		if name == "again" {
			blueprint, err = room.Again(room.Now, number(r, "place"))
			return
		}
		blueprint, err = room.OneMore(strings.TrimSpace(r.PostFormValue("task")), number(r, "level"))
	})
	if err != nil {
		return err
	}
	return l.Ask(r.Context(), blueprint, class.Together)
}

// numberOf is a number in the address.
func numberOf(r *http.Request, name string) (n int, ok bool) {
	n, err := strconv.Atoi(r.PathValue(name))
	return n, err == nil
}

func itoa(n int) string { return strconv.Itoa(n) }
