package served

import (
	"crypto/subtle"
	"encoding/csv"
	"net/http"
	"strconv"
	"strings"

	"scratchpass/lessons/class"
	"scratchpass/quiz/set"
)

// deskPaths are the pages that need the instructor's private link: who needs help, and the wall.
func (s *Server) deskPaths() map[string]func(http.ResponseWriter, *http.Request, *class.Live) {
	return map[string]func(http.ResponseWriter, *http.Request, *class.Live){
		"GET /desk/{code}":                  s.deskPage,
		"GET /desk/{code}/part":             s.deskPage,
		"GET /desk/{code}/events":           s.deskEvents,
		"GET /desk/{code}/person/{id}":      s.personPage,
		"GET /desk/{code}/person/{id}/part": s.personPage,
		"GET /desk/{code}/answers/{n}":      s.answersCSV,
		"GET /desk/{code}/visitors/{n}":     s.answersCSV,
		"GET /desk/{code}/set/{n}":          s.setYAML,
		"POST /desk/{code}/do":              s.act,
		"GET /wall/{code}":                  s.wallPage,
		"GET /wall/{code}/part":             s.wallPage,
	}
}

// desk adds them.
func (s *Server) desk(mux *http.ServeMux) {
	for path, serve := range s.deskPaths() {
		mux.HandleFunc(path, s.inRoom(s.withKey(serve)))
	}
}

// withKey lets through who has the instructor's link, which is kept in the browser, so that the
// address can be seen by others then; in a school, who teaches the room's group.
func (s *Server) withKey(serve func(http.ResponseWriter, *http.Request, *class.Live)) func(http.ResponseWriter, *http.Request, *class.Live) {
	return func(w http.ResponseWriter, r *http.Request, l *class.Live) {
		var head class.Head
		l.See(func(room *class.Room) { head = room.Head })
		if s.o.May != nil {
			if !s.o.May(r, head) {
				http.Error(w, s.say("class-no-key"), http.StatusForbidden)
				return
			}
			serve(w, r, l)
			return
		}
		code, key := head.Code, head.Key
		same := func(given string) bool { return subtle.ConstantTimeCompare([]byte(given), []byte(key)) == 1 }
		name := "desk-" + code
		if given := r.URL.Query().Get("key"); given != "" && same(given) {
			http.SetCookie(w, &http.Cookie{Name: name, Value: key, Path: "/", HttpOnly: true, Secure: s.o.Secure, SameSite: http.SameSiteStrictMode})
			http.Redirect(w, r, r.URL.Path, http.StatusSeeOther)
			return
		}
		c, err := r.Cookie(name)
		if err != nil || !same(c.Value) {
			s.limits.guessed(r)
			http.Error(w, s.say("class-no-key"), http.StatusForbidden)
			return
		}
		serve(w, r, l)
	}
}

// deskEvents is the stream of all the instructor's pages.
func (s *Server) deskEvents(w http.ResponseWriter, r *http.Request, l *class.Live) {
	s.stream(w, r, l, s.deskVersion)
}

// answersCSV are the answers to a set of the room as set mark reads them: those of the people on
// the roster, by the codes of their sheets, or those of the visitors. Answers that came late and
// were not let are left out.
func (s *Server) answersCSV(w http.ResponseWriter, r *http.Request, l *class.Live) {
	n, ok := numberOf(r, "n")
	visitors, name := strings.Contains(r.URL.Path, "/visitors/"), "answers"
	if visitors {
		name = "visitors"
	}
	var rows [][]string
	l.See(func(room *class.Room) {
		if ok = ok && n >= 0 && n < len(room.Sets); ok {
			rows = Answers(room, n, visitors)
		}
	})
	if !ok {
		http.NotFound(w, r)
		return
	}
	w.Header().Set("Content-Type", "text/csv; charset=utf-8")
	w.Header().Set("Content-Disposition", "attachment; filename="+numbered(name, n)+".csv")
	out := csv.NewWriter(w)
	_ = out.WriteAll(rows) // who has gone needs no file
}

// Answers are the answers to a set as rows of a table that set mark reads. visitors are those in
// no roster; they stand in a table of their own.
func Answers(room *class.Room, n int, visitors bool) [][]string {
	rows := [][]string{{"code", "item", "answer", "sure", "name", "id"}}
	if n < 0 || n >= len(room.Sets) {
		return rows
	}
	for _, given := range class.Given(room, n, visitors) {
		rows = append(rows, []string{given.Code, strconv.Itoa(given.Item), set.Safe(given.Text), string(given.Certainty), set.Safe(given.Who), set.Safe(given.ID)})
	}
	return rows
}

// setYAML is the blueprint of a set of the room.
func (s *Server) setYAML(w http.ResponseWriter, r *http.Request, l *class.Live) {
	n, ok := numberOf(r, "n")
	text := ""
	l.See(func(room *class.Room) {
		if ok = ok && n >= 0 && n < len(room.Sets); ok {
			text = room.Sets[n].Text
		}
	})
	if !ok {
		http.NotFound(w, r)
		return
	}
	w.Header().Set("Content-Type", "application/yaml; charset=utf-8")
	w.Header().Set("Content-Disposition", "attachment; filename="+numbered("set", n)+".yaml")
	_, _ = w.Write([]byte(text)) // who has gone needs no file
}

// numbered is the name of a file of a set: the first has none of its own.
func numbered(name string, n int) string {
	if n == 0 {
		return name
	}
	return name + "-" + strconv.Itoa(n+1)
}

// numberOf is a number in the address.
func numberOf(r *http.Request, name string) (n int, ok bool) {
	n, err := strconv.Atoi(r.PathValue(name))
	return n, err == nil
}
