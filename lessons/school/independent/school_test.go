package main

import (
	"io"
	"net/http"
	"net/http/cookiejar"
	"net/http/httptest"
	"net/url"
	"os"
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
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/internal/scripted"
	"scratchpass/lessons/postgres"
	"scratchpass/lessons/postgres/postgrestest"
	"scratchpass/lessons/school"
	"scratchpass/lessons/school/served"
	"scratchpass/lessons/school/signon"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/machine"
)

const settings = `address: SCHOOL
sign-on: {issuer: "ISSUER", client: scratchpass, secret-file: SECRET, groups-claim: groups, scopes: groups}
administrators: [it-staff]
auditors: [inspectors]
departments:
  - name: Machining
    heads: [metal-heads]
    groups:
      - {name: turning-1, title: "Turning, first year", instructors: [teach-turning-1], learners: [first-year]}
`

// both are a school and its sign-on, each on a port of its own.
type both struct {
	t        *testing.T
	school   string // http://host:port
	provider *httptest.Server
	later    atomic.Int64 // how many seconds the school's clock is ahead

	mu    sync.Mutex
	fails []string
}

func newBoth(t *testing.T, secret string, tells Telling) *both {
	t.Helper()
	b := &both{t: t}
	started := func(handler func(address string) http.Handler) *httptest.Server {
		var of http.Handler
		s := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) { of.ServeHTTP(w, r) }))
		of = handler(s.URL) // nobody has come yet
		t.Cleanup(s.Close)
		return s
	}
	b.school = started(func(address string) http.Handler {
		b.provider = started(func(issuer string) http.Handler { return Provider(issuer, address+"/back", secret, tells) })
		return b.serve(address, secret)
	}).URL
	return b
}

// serve is a school as the program serves it, without what learners study.
func (b *both) serve(address, secret string) http.Handler {
	b.t.Helper()
	must := func(err error) {
		b.t.Helper()
		if err != nil {
			b.t.Fatal(err)
		}
	}
	file := ""
	if secret != "" {
		file = filepath.Join(b.t.TempDir(), "client-secret")
		must(os.WriteFile(file, []byte(secret+"\n"), 0o600))
	}
	read, err := school.Parse("school.yaml", []byte(strings.NewReplacer("SCHOOL", address, "ISSUER", b.provider.URL, "SECRET", `"`+file+`"`).Replace(settings)))
	must(err)
	seal, err := school.NewSeal(school.NewKey())
	must(err)
	db, err := postgres.Open(b.t.Context(), postgrestest.Address(b.t))
	must(err)
	b.t.Cleanup(func() { _ = db.Close() })
	clock := func() time.Time { return time.Now().Add(time.Duration(b.later.Load()) * time.Second) }
	fail := func(err error) {
		b.mu.Lock()
		defer b.mu.Unlock()
		b.fails = append(b.fails, err.Error())
	}
	on, err := signon.New(read.SignOn, address+"/back", seal, clock)
	must(err)
	s, err := sitting.NewSession(&scripted.Face{}, content.Shipped(), machine.Imperial, machine.InchLathe, func() sitting.Seeds { return sitting.Seeds{} })
	must(err)
	j := journal.Over(db)
	hall := class.NewHall(j, func(class.Head) class.Maker { return nil }, clock, fail)
	server, err := served.New(served.Options{Settings: read, DB: db, Sessions: school.Sessions{DB: db, Clock: clock}, Audit: school.Audit{DB: db, Clock: clock}, SignOn: on,
		Hall: hall, Rooms: j.Of, Session: s, Clock: clock, Study: func(school.Person, *web.Talk) error { return nil }, Fail: fail})
	must(err)
	b.t.Cleanup(server.Stop)
	return server.Handler()
}

// failed is what the school's log has, for whoever looks for why someone was refused.
func (b *both) failed() string {
	b.mu.Lock()
	defer b.mu.Unlock()
	return strings.Join(b.fails, "\n")
}

// browser is one that keeps cookies and follows links. It stops before the addresses that have stop
// in them.
type browser struct {
	*both
	client *http.Client
	stop   string
}

func (b *both) browser() *browser {
	jar, err := cookiejar.New(nil)
	if err != nil {
		b.t.Fatal(err)
	}
	r := &browser{both: b, client: &http.Client{Jar: jar}}
	r.client.CheckRedirect = func(next *http.Request, _ []*http.Request) error {
		if r.stop != "" && strings.Contains(next.URL.String(), r.stop) {
			return http.ErrUseLastResponse
		}
		return nil
	}
	return r
}

// came is what a browser has come to.
type came struct {
	status int
	path   string // of the page
	to     string // where it was stopped
	page   string
}

func (r *browser) came(answer *http.Response, err error) came {
	r.t.Helper()
	if err != nil {
		r.t.Fatal(err)
	}
	defer func() { _ = answer.Body.Close() }()
	page, err := io.ReadAll(answer.Body)
	if err != nil {
		r.t.Fatal(err)
	}
	return came{answer.StatusCode, answer.Request.URL.Path, answer.Header.Get("Location"), string(page)}
}

func (r *browser) get(address string) came { r.t.Helper(); return r.came(r.client.Get(address)) }

func (r *browser) post(address string, form url.Values) came {
	r.t.Helper()
	return r.came(r.client.PostForm(address, form))
}

// form is the provider's page to sign on, which a page of the school has led to.
func (r *browser) form(path string) (id string) {
	r.t.Helper()
	at := r.get(r.school + path)
	found := regexp.MustCompile(`name="id" value="([^"]+)"`).FindStringSubmatch(at.page)
	if at.path != "/login/username" || found == nil {
		r.t.Fatalf("%s has led to %s: %s", path, at.path, at.page)
	}
	return found[1]
}

// fill fills in the provider's page.
func (r *browser) fill(id, user string) came {
	r.t.Helper()
	return r.post(r.provider.URL+"/login/username", url.Values{"id": {id}, "username": {user}, "password": {password}})
}

// signOn is someone who wants a page and signs on first.
func (r *browser) signOn(path, user string) came {
	r.t.Helper()
	return r.fill(r.form(path), user)
}

// left is someone who has signed on there and is on the way back: the address that they are sent to.
func (r *browser) left(user string) string {
	r.t.Helper()
	r.stop = "/back?"
	at := r.signOn("/home", user)
	r.stop = ""
	if !strings.HasPrefix(at.to, r.school+"/back?") {
		r.t.Fatalf("not on the way back: %d %s %s", at.status, at.to, at.page)
	}
	return at.to
}

// cookies are the browser's for the school.
func (r *browser) cookies() (all []*http.Cookie, named map[string]string) {
	u, err := url.Parse(r.school)
	if err != nil {
		r.t.Fatal(err)
	}
	all, named = r.client.Jar.Cookies(u), map[string]string{}
	for _, c := range all {
		named[c.Name] = c.Value
	}
	return all, named
}
