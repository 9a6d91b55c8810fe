package served

import (
	"errors"
	"fmt"
	"net/url"
	"slices"
	"strconv"

	"scratchpass/calc"
	"scratchpass/lessons/class"
)

// Further is a set that may be asked after the first.
type Further struct {
	Title string
	Text  string    // the blueprint
	Way   class.Way // that it is run if no other is chosen
}

// deskFurther is one that was not asked yet, with its place among all.
type deskFurther struct {
	N     int
	Title string
	Way   class.Way
	Ways  []class.Way
}

// furtherOf are the sets that were not asked in a room yet.
func (s *Server) furtherOf(room *class.Room) []deskFurther {
	var all []deskFurther
	for n, f := range s.o.Further {
		if !wasAsked(room, f) {
			all = append(all, deskFurther{n, f.Title, f.Way, class.Ways})
		}
	}
	return all
}

func wasAsked(room *class.Room, f Further) bool {
	return slices.ContainsFunc(room.Sets, func(a *class.Asking) bool { return a.Text == f.Text })
}

// start reads which further set is to be asked, and how it is run.
func (s *Server) start(form url.Values, room *class.Room) (blueprint, way string, wrong error) {
	n, err := strconv.Atoi(form.Get("n"))
	switch {
	case err != nil || n < 0 || n >= len(s.o.Further):
		return "", "", fmt.Errorf("there is no further set %s: the program was not started with it", calc.Quoted(form.Get("n")))
	case wasAsked(room, s.o.Further[n]):
		return "", "", errors.New("that set was asked already: go back to it below Sets and files")
	case room.Ended:
		return "", "", errors.New("the lesson is over: open it again first")
	}
	w := s.o.Further[n].Way
	if form.Has("way") {
		if w, err = class.ParseWay(form.Get("way")); err != nil {
			return "", "", err
		}
	}
	return s.o.Further[n].Text, string(w), nil
}
