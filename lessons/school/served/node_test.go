package served_test

import (
	"errors"
	"io"
	"math/rand/v2"
	"net/http"
	"net/http/httptest"
	"net/url"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"scratchpass/content"
	"scratchpass/lessons/class"
	"scratchpass/lessons/class/journal"
	"scratchpass/lessons/course"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/home"
	"scratchpass/lessons/internal/scripted"
	"scratchpass/lessons/page"
	"scratchpass/lessons/postgres"
	"scratchpass/lessons/postgres/postgrestest"
	"scratchpass/lessons/practice"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/lessons/school"
	"scratchpass/lessons/school/oneroster"
	"scratchpass/lessons/school/oneroster/onerostertest"
	"scratchpass/lessons/school/served"
	"scratchpass/lessons/school/signon"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/set"
)

const host = "threads.example.school"

const settings = `address: https://` + host + `
sign-on: {issuer: "https://login.example.school", client: scratchpass}
administrators: [it-staff]
auditors: [inspectors]
one-roster: {address: SERVICE, token: SERVICE/token, client: scratchpass, secret-file: SECRET}
departments:
  - name: Machining
    heads: [metal-heads]
    groups:
      - {name: turning-1, title: First year, instructors: [teach-1], learners: [first-year], roster: ROSTER, class: "17"}
      - {name: turning-2, title: Second year, instructors: [teach-2], learners: [second-year], class: "18"}
  - name: Evening school
    heads: [evening-heads]
    groups:
      - {name: evening, title: Home turners, instructors: [teach-evening]}
`

// node is one of the computers of a school.
type node struct {
	t        testing.TB
	db       *postgres.DB
	server   *served.Server
	handler  http.Handler
	hall     *class.Hall
	journal  *journal.Database
	sessions school.Sessions
	audit    school.Audit
	secrets  school.Secrets
	leave    func()

	mu      sync.Mutex
	fails   []error
	fetched []oneroster.Fetched
	sent    []oneroster.Sent
}

// campus is what all nodes of a school share.
type campus struct {
	address  string
	settings school.Settings
	seal     school.Seal
	service  *onerostertest.Server // its class 17 is that of the roster; 18 is fetched

	earlier http.Handler                                                 // an earlier version of the program
	study   func(db *postgres.DB, who school.Person, at *web.Talk) error // nil for that of the program
}

func newCampus(t testing.TB) campus {
	t.Helper()
	return campusAt(t, postgrestest.Address(t))
}

// campusAt is a school with a database at an address.
func campusAt(t testing.TB, address string) campus {
	t.Helper()
	c := campus{address: address, service: onerostertest.New(t)}
	c.service.Class("17", onerostertest.Student{ID: "a1", Given: "Ada", Family: "Brook"}, onerostertest.Student{ID: "b2", Given: "Ben", Family: "Carr"})
	c.service.Class("18", onerostertest.Students(3)...)
	roster := filepath.Join(t.TempDir(), "roster.csv")
	write(t, roster, "id,name\na1,Ada Brook\nb2,Ben Carr\n")
	var err error
	if c.settings, err = school.Parse("school.yaml", []byte(strings.NewReplacer("ROSTER", roster, "SERVICE", c.service.URL, "SECRET", c.service.Settings().SecretFile).Replace(settings))); err != nil {
		t.Fatal(err)
	}
	if c.seal, err = school.NewSeal(school.NewKey()); err != nil {
		t.Fatal(err)
	}
	return c
}

// node starts one.
func (c campus) node(t testing.TB) *node {
	t.Helper()
	return c.nodeBy(t, time.Now)
}

// nodeBy starts one on a computer with a clock of its own.
func (c campus) nodeBy(t testing.TB, own func() time.Time) *node {
	t.Helper()
	db, err := postgres.Open(t.Context(), c.address)
	if err != nil {
		t.Fatal(err)
	}
	of, err := db.Clock(t.Context(), own)
	if err != nil {
		t.Fatal(err)
	}
	clock := of.Now
	n := &node{t: t, db: db, sessions: school.Sessions{DB: db, Clock: clock}, audit: school.Audit{DB: db, Clock: clock}, secrets: school.Secrets{DB: db, Seal: c.seal}}
	fail := func(err error) {
		n.mu.Lock()
		defer n.mu.Unlock()
		n.fails = append(n.fails, err)
	}
	s := session(t, &scripted.Face{})
	j := journal.Over(db)
	n.journal = j
	n.hall = class.NewHall(j, func(h class.Head) class.Maker {
		return func(blueprint string, people []string) (*class.Questions, error) {
			secret, err := n.secrets.Of(t.Context(), h.Group)
			if err != nil {
				return nil, err
			}
			return class.MakerOf(set.Secret(secret), s.Library, s.Tasks, func(string) (machine.Lathe, error) { return machine.InchLathe, nil })(blueprint, people)
		}
	}, clock, fail)
	n.leave = n.hall.Sharing(t.Context(), j)
	on, err := signon.New(c.settings.SignOn, c.settings.Address+"/back", c.seal, time.Now)
	if err != nil {
		t.Fatal(err)
	}
	service, err := oneroster.New(*c.settings.OneRoster, time.Now)
	if err != nil {
		t.Fatal(err)
	}
	lists := oneroster.Rosters{Settings: c.settings, DB: db, Service: service, Clock: time.Now, Told: func(f oneroster.Fetched) {
		n.mu.Lock()
		defer n.mu.Unlock()
		n.fetched = append(n.fetched, f)
	}}
	n.server, err = served.New(served.Options{Settings: c.settings, DB: db, Sessions: n.sessions, Audit: n.audit, SignOn: on, Hall: n.hall, Rosters: lists, Book: &oneroster.Book{Service: service, DB: db, Clock: time.Now}, Sent: func(s oneroster.Sent) {
		n.mu.Lock()
		defer n.mu.Unlock()
		n.sent = append(n.sent, s)
	}, Rooms: j.Of, Session: s, Clock: clock,
		Study: func(who school.Person, at *web.Talk) error {
			if c.study != nil {
				return c.study(db, who, at)
			}
			return study(t, db, who, at)
		}, Fail: fail, Earlier: c.earlier})
	if err != nil {
		t.Fatal(err)
	}
	n.handler = n.server.Handler()
	t.Cleanup(func() {
		n.server.Stop()
		n.leave()
		_ = j.Close()
		n.mu.Lock()
		defer n.mu.Unlock()
		for _, err := range n.fails {
			t.Error("went wrong: ", err)
		}
	})
	return n
}

func session(t testing.TB, face page.Face) *sitting.Session {
	t.Helper()
	var seed atomic.Uint64
	s, err := sitting.NewSession(face, content.Shipped(), machine.Imperial, machine.InchLathe, func() sitting.Seeds { return sitting.Seeds{Seed: seed.Add(1), Stream: rand.Uint64()} })
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// study is a learner's study, as the program runs it.
func study(t testing.TB, db *postgres.DB, who school.Person, at *web.Talk) error {
	s := session(t, at)
	rec := record.In(db, who.ID)
	book, err := schedule.NewBook(rec, s.System)
	if err != nil {
		return err
	}
	s.KeepIn(book, rec.Sittings())
	s.Attended = true
	if err := s.GoOn(course.Lesson{}, practice.Practice{}, practice.Best{}); err != nil && !errors.Is(err, sitting.ErrNothingStored) && !errors.Is(err, page.ErrStopped) {
		return err
	}
	return home.Run(s, home.Doors{OneRecord: true, AtMenu: func() error { return rec.Sittings().ClearAll() }})
}

// token signs someone on who is in groups of the sign-on.
func (n *node) token(name string, groups ...string) string {
	n.t.Helper()
	token, err := n.sessions.Begin(n.t.Context(), school.Person{ID: "https://login.example.school " + name, Name: name, Groups: groups})
	if err != nil {
		n.t.Fatal(err)
	}
	return token
}

// ask sends a request as a browser would that holds a token; form nil is for a page.
func (n *node) ask(token, path string, form url.Values) (status int, page string, head http.Header) {
	n.t.Helper()
	r := httptest.NewRequest(http.MethodGet, "https://"+host+path, nil)
	if form != nil {
		r = httptest.NewRequest(http.MethodPost, "https://"+host+path, strings.NewReader(form.Encode()))
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		r.Header.Set("Sec-Fetch-Site", "same-origin")
	}
	if token != "" {
		r.AddCookie(&http.Cookie{Name: "school", Value: token})
	}
	w := httptest.NewRecorder()
	n.handler.ServeHTTP(w, r)
	text, err := io.ReadAll(w.Result().Body)
	if err != nil {
		n.t.Fatal(err)
	}
	return w.Code, string(text), w.Result().Header
}

// page wants a page.
func (n *node) page(token, path string) string {
	n.t.Helper()
	status, text, head := n.ask(token, path, nil)
	if status != http.StatusOK {
		n.t.Fatalf("%s: %d %s %s", path, status, head.Get("Location"), text)
	}
	return text
}

// sends sends a form, and wants to be led somewhere.
func (n *node) sends(token, path string, pairs ...string) string {
	n.t.Helper()
	form := url.Values{}
	for i := 0; i+1 < len(pairs); i += 2 {
		form.Add(pairs[i], pairs[i+1])
	}
	status, text, head := n.ask(token, path, form)
	if status != http.StatusSeeOther {
		n.t.Fatalf("%s: %d %s", path, status, text)
	}
	return head.Get("Location")
}

// prompt is the name of the prompt that a page of a study asks.
func prompt(t testing.TB, page string) string {
	t.Helper()
	found := regexp.MustCompile(`name="prompt" value="([^"]+)"`).FindStringSubmatch(page)
	if found == nil {
		t.Fatal("nothing is asked on ", page)
	}
	return found[1]
}

func has(t testing.TB, page string, all ...string) {
	t.Helper()
	for _, text := range all {
		if !strings.Contains(page, text) {
			t.Errorf("no %q in %s", text, page)
		}
	}
}

// room begins a room of a group, and returns its code.
func (n *node) room(token, group string) string {
	n.t.Helper()
	return strings.TrimPrefix(n.sends(token, "/groups/"+group+"/rooms", "tasks", "compound-travel no-cloth-on-turning-work", "way", "together"), "/desk/")
}

// changed sends a form that is changed first.
func (n *node) changed(token, path string, change func(*http.Request)) int {
	n.t.Helper()
	r := httptest.NewRequest(http.MethodPost, "https://"+host+path, strings.NewReader(""))
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	r.Header.Set("Sec-Fetch-Site", "same-origin")
	r.AddCookie(&http.Cookie{Name: "school", Value: token})
	change(r)
	w := httptest.NewRecorder()
	n.handler.ServeHTTP(w, r)
	return w.Code
}

// phone is a browser in a room, whichever node it comes to.
type phone struct{ cookies []*http.Cookie }

func (p *phone) do(n *node, method, path string, form url.Values) (status int, page string) {
	r := httptest.NewRequest(method, "https://"+host+path, strings.NewReader(form.Encode()))
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	r.Header.Set("Sec-Fetch-Site", "same-origin")
	for _, c := range p.cookies {
		r.AddCookie(c)
	}
	w := httptest.NewRecorder()
	n.handler.ServeHTTP(w, r)
	p.cookies = append(p.cookies, w.Result().Cookies()...)
	return w.Code, w.Body.String()
}

// comesIn comes into a room by its code and a name, and looks at its page; form is what else is sent.
func (p *phone) comesIn(n *node, code, name string, form ...string) {
	n.t.Helper()
	sent := url.Values{"name": {name}}
	for i := 0; i+1 < len(form); i += 2 {
		sent.Set(form[i], form[i+1])
	}
	var page string
	for _, step := range []struct {
		method, path string
		form         url.Values
	}{{http.MethodGet, "/r/" + code, nil}, {http.MethodPost, "/r/" + code + "/join", sent}, {http.MethodGet, "/r/" + code, nil}} {
		var status int
		if status, page = p.do(n, step.method, step.path, step.form); status >= http.StatusBadRequest {
			n.t.Fatal(step.path, status, page)
		}
	}
	has(n.t, page, `id="seat"`)
}

// phone is one that comes in.
func (n *node) phone(code, name string, form ...string) *phone {
	n.t.Helper()
	p := &phone{}
	p.comesIn(n, code, name, form...)
	return p
}
