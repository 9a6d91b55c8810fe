// Package served serves a school to browsers: signing on, the groups of an instructor with their
// rooms, a learner's own study, the audit for who may read it, and rooms to phones that have a code.
// Any node can answer any request.
package served

import (
	"context"
	"errors"
	"html/template"
	"net/http"
	"net/url"
	"strings"
	"sync"
	"time"
	"unicode/utf8"

	"scratchpass/lessons/class"
	rooms "scratchpass/lessons/class/served"
	"scratchpass/lessons/course"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/postgres"
	"scratchpass/lessons/progress"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/lessons/school"
	"scratchpass/lessons/school/oneroster"
	"scratchpass/lessons/school/signon"
	"scratchpass/lessons/sitting"
)

// Options are what a school is served with.
type Options struct {
	Settings school.Settings
	DB       *postgres.DB
	Sessions school.Sessions
	Audit    school.Audit
	SignOn   *signon.SignOn
	Hall     *class.Hall
	Rosters  oneroster.Rosters
	Book     *oneroster.Book                                                         // nil where marks go nowhere
	Sent     func(oneroster.Sent)                                                    // of each sending to it
	Rooms    func(ctx context.Context, group string, most int) ([]class.Head, error) // of a group, the latest first
	Session  *sitting.Session                                                        // the words
	Clock    func() time.Time
	Study    func(who school.Person, at *web.Talk) error // runs a learner's study at a browser until it ends
	Fail     func(error)

	Behind  bool         // a proxy
	Earlier http.Handler // answers for rooms that an earlier version of the program began; nil for none
}

// Server serves a school.
type Server struct {
	o     Options
	say   func(string, ...any) string
	host  string // as browsers name it
	rooms *rooms.Server
	words web.Words
	pages *template.Template
	study *studies
	noted noted

	view  func() (progress.View, error) // of a learner, before it is known of whom
	ticks func() []stageTasks           // that a room can be begun with, none of them ticked

	items   []schedule.Item // what a learner learns
	special map[string]bool // that a first thread does not need
}

// New returns a server of a school.
func New(o Options) (*Server, error) {
	u, err := url.Parse(o.Settings.Address)
	if err != nil {
		return nil, err
	}
	s := &Server{o: o, say: o.Session.Say, host: u.Host, noted: noted{at: map[saw]time.Time{}}}
	s.pages, s.words = templates(s.say), web.WordsOf(s.say)
	s.study = &studies{run: o.Study, clock: o.Clock, fail: o.Fail, of: map[string]*study{},
		place: func(who string) (string, error) { return record.In(o.DB, who).Sittings().At() }}
	s.view = sync.OnceValues(func() (progress.View, error) { return progress.ViewOf(o.Session) })
	s.ticks = sync.OnceValue(s.allTasks)
	lessons := course.Load(o.Session.Library)
	s.items, s.special = lessons.Order(o.Session.System), lessons.Special()
	s.rooms = rooms.New(o.Hall, rooms.Options{Hosts: []string{u.Host}, Words: s.words, Session: o.Session, Clock: o.Clock, Address: u.Host,
		Secure: u.Scheme == "https", Fail: o.Fail, May: s.mayDesk, Behind: o.Behind, Earlier: o.Earlier})
	return s, nil
}

// Stop ends the streams of rooms and the studies on this node; they go on at another.
func (s *Server) Stop() {
	s.rooms.Stop()
	s.study.stop()
}

// route is one page or form, and what one has to be allowed for it.
type route struct {
	Path  string // with its method, as http.ServeMux has it
	Act   school.Act
	Group bool // it is of the group in the address
	serve func(http.ResponseWriter, *http.Request, school.Person)
}

// anyone is the act of routes that want someone who has signed on, whoever they are.
const anyone school.Act = ""

// routes are all pages that want someone who has signed on.
func (s *Server) routes() []route {
	return []route{
		{"GET /home", anyone, false, s.home},
		{"POST /sign-off", anyone, false, s.signOff},
		{"GET /study", school.Study, false, s.studyPage},
		{"POST /study/answer", school.Study, false, s.studyAnswer},
		{"GET /mine.jsonl", school.Study, false, s.mine},
		{"GET /groups/{group}", school.Watch, true, s.group},
		{"GET /groups/{group}/learners/{person}", school.Watch, true, s.learner},
		{"POST /groups/{group}/list", school.Teach, true, s.fetchList},
		{"POST /groups/{group}/rooms", school.Teach, true, s.beginRoom},
		{"POST /groups/{group}/sets/delete", school.Teach, true, s.deleteSet},
		{"GET /groups/{group}/rooms/{code}", school.Grade, true, s.room},
		{"GET /groups/{group}/rooms/{code}/{form}/{n}", school.Grade, true, s.marks},
		{"POST /groups/{group}/rooms/{code}/send/{n}", school.Grade, true, s.send},
		{"GET /people/{person}/record.jsonl", anyone, false, s.record}, // who may, the page itself tells
		{"GET /audit", school.ReadAudit, false, s.audit},
		{"GET /people", school.Delete, false, s.people},
		{"POST /people/delete", school.Delete, false, s.deletePerson},
	}
}

// Handler is all that is served.
func (s *Server) Handler() http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("GET /{$}", s.door)
	mux.HandleFunc("GET /sign-on", s.signOn)
	mux.HandleFunc("GET "+Back, s.back)
	for _, r := range s.routes() {
		mux.Handle(r.Path, s.only(r))
	}
	mux.Handle("/", s.rooms.Handler()) // codes, phones, desks, walls, files
	return s.guarded(http.NewCrossOriginProtection().Handler(mux))
}

// guarded refuses other names of this host, and says how pages are to be treated.
func (s *Server) guarded(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		web.Guard(w.Header())
		w.Header().Set("Cache-Control", "no-store")
		if s.secure() {
			w.Header().Set("Strict-Transport-Security", "max-age=31536000")
		}
		if r.Host != s.host {
			s.writeAs(w, http.StatusMisdirectedRequest, "told", told{s.say("school-other-name", "address", s.o.Settings.Address), s.o.Settings.Address})
			return
		}
		next.ServeHTTP(w, r)
	})
}

func (s *Server) secure() bool { return strings.HasPrefix(s.o.Settings.Address, "https:") }

// only lets through who may do what a route wants. Who is not signed on is sent to sign on where a
// page is asked for; a group that someone has no part in is not there for them.
func (s *Server) only(to route) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		p, err := s.person(r)
		switch {
		case errors.Is(err, school.ErrNoSession) && r.Method == http.MethodGet:
			http.Redirect(w, r, "/sign-on?to="+url.QueryEscape(r.URL.RequestURI()), http.StatusSeeOther)
			return
		case errors.Is(err, school.ErrNoSession):
			s.tell(w, http.StatusForbidden, "school-signed-off")
			return
		case err != nil:
			s.trouble(w, err)
			return
		}
		group := ""
		if to.Group {
			group = r.PathValue("group")
		}
		if to.Act != anyone && !s.o.Settings.May(p, to.Act, group) {
			s.tell(w, map[bool]int{true: http.StatusNotFound, false: http.StatusForbidden}[to.Group], "school-not-yours")
			return
		}
		r.Body = http.MaxBytesReader(w, r.Body, mostSent)
		if !readable(r) {
			s.tell(w, http.StatusBadRequest, "school-unreadable")
			return
		}
		to.serve(w, r, p)
	})
}

// readable reports whether what was sent is text that a database can hold, and no more than is taken.
func readable(r *http.Request) bool {
	if r.ParseForm() != nil {
		return false
	}
	text := func(s string) bool { return utf8.ValidString(s) && !strings.ContainsRune(s, 0) }
	for name, values := range r.Form {
		if !text(name) || !text(strings.Join(values, " ")) {
			return false
		}
	}
	return text(r.URL.Path)
}

// mostSent is how many bytes a form may have: a blueprint is the longest.
const mostSent = 256 << 10

// cookie keeps the token of who is signed on.
const cookie = "school"

// person is who is signed on at a browser.
func (s *Server) person(r *http.Request) (school.Person, error) {
	c, err := r.Cookie(cookie)
	if err != nil {
		return school.Person{}, school.ErrNoSession
	}
	return s.o.Sessions.Person(r.Context(), c.Value)
}

// mayDesk reports whether who asks may see to a room: who teaches its group. That they saw keys, or
// changed what an answer counts, is noted first.
func (s *Server) mayDesk(r *http.Request, room class.Head) bool {
	p, err := s.person(r)
	if err != nil || !s.o.Settings.May(p, school.Teach, room.Group) {
		return false
	}
	did, now, sees := deskAct(r), s.o.Clock(), saw{p.ID, room.Code}
	if isPart(r) && !s.noted.lately(sees, now) { // fetched by itself, it has the keys all the same
		did = school.SawKeys
	}
	if did != "" {
		err = s.o.Audit.Note(r.Context(), p, did, room.Code)
	}
	if err != nil {
		s.o.Fail(err)
		return false
	}
	if did == school.SawKeys {
		s.noted.note(sees, now)
	}
	return true
}

// isPart reports whether a request is for the part of an instructor's page that the page fetches anew.
func isPart(r *http.Request) bool {
	return r.Pattern == "GET /desk/{code}/part" || r.Pattern == "GET /desk/{code}/person/{id}/part"
}

// deskAct is what is noted of each request to a desk; empty for nothing.
func deskAct(r *http.Request) school.Did {
	switch r.Pattern {
	case "GET /desk/{code}", "GET /desk/{code}/person/{id}":
		return school.SawKeys
	case "GET /desk/{code}/answers/{n}", "GET /desk/{code}/visitors/{n}":
		return school.GaveOut
	case "POST /desk/{code}/do":
		if do := r.FormValue("do"); do == "count" || do == "merge" {
			return school.ChangedIt
		}
	}
	return ""
}
