package served

import (
	_ "embed"
	"html/template"
	"net/http"
	"net/url"
	"time"

	"scratchpass/content"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/postgres"
)

//go:embed school.gohtml
var source string

// templates reads the pages. They are part of the program, and a test reads them.
func templates(say func(string, ...any) string) *template.Template {
	return template.Must(template.New("school").Funcs(template.FuncMap{
		"printable": content.Printable, "say": say, "segment": url.PathEscape, "asset": web.Asset,
		"minute": func(at time.Time) string { return at.Format("2006-01-02 15:04") },
	}).Parse(source))
}

func (s *Server) write(w http.ResponseWriter, name string, data any) {
	s.writeAs(w, http.StatusOK, name, data)
}

func (s *Server) writeAs(w http.ResponseWriter, status int, name string, data any) {
	if err := web.Write(w, status, s.pages, name, data); err != nil {
		s.o.Fail(err)
		http.Error(w, s.say("school-trouble"), http.StatusInternalServerError)
	}
}

// told is one thing that is said, and where to go from there: an address of its own where the browser
// has come by another.
type told struct{ Says, To string }

// tell says one thing, and nothing else.
func (s *Server) tell(w http.ResponseWriter, status int, phrase string) {
	s.writeAs(w, status, "told", told{s.say(phrase, "address", s.o.Settings.Address), "/"})
}

// trouble says that something went wrong that is nobody's here to mend: what it was is in the log. A
// database that is out of reach may be back soon.
func (s *Server) trouble(w http.ResponseWriter, err error) {
	s.o.Fail(err)
	if postgres.Gone(err) {
		w.Header().Set("Retry-After", "5")
		s.tell(w, http.StatusServiceUnavailable, "school-away")
		return
	}
	s.tell(w, http.StatusInternalServerError, "school-trouble")
}
