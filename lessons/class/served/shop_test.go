package served_test

import (
	"context"
	"encoding/csv"
	"fmt"
	"io"
	"net"
	"net/http"
	"net/http/cookiejar"
	"net/url"
	"path/filepath"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"scratchpass/content"
	"scratchpass/lessons/class"
	"scratchpass/lessons/class/journal"
	"scratchpass/lessons/class/served"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/internal/scripted"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/set"
	"scratchpass/quiz/tasks"
)

const (
	roomCode   = "ACDEFH"
	privateKey = "thekeyoftheprivatelink"
	secretText = "a secret that stands in a test of phones"
)

// shop is a computer that serves one room, which can be killed and started again.
type shop struct {
	t    *testing.T
	in   journal.At // what it is kept in
	at   string     // host and port, the same after a restart
	base string
	live *class.Live
	hall *class.Hall

	clock func() time.Time
	by    func(class.Journal) class.Journal // how its journal is reached; nil for straight on
	cut   atomic.Int32                      // so many answers are kept and then not acknowledged
	stop  func()
	mu    sync.Mutex
	fails []error // what the computer was told of
}

// people is a roster with names and ids that stand nowhere else.
func people(n int) []class.Apprentice {
	var all []class.Apprentice
	for i := range n {
		all = append(all, class.Apprentice{ID: fmt.Sprintf("idzq-%02d", i+1), Name: fmt.Sprintf("Ona%02d Zquill%02d", i+1, i+1)})
	}
	return all
}

// inFile is a journal in a file that is not there yet.
func inFile(t *testing.T) journal.At { return journal.At(filepath.Join(t.TempDir(), "lesson.class")) }

// openShop begins a room with a blueprint, in a file, and serves it.
func openShop(t *testing.T, head class.Head, blueprint string, way class.Way) *shop {
	t.Helper()
	return openShopOn(t, inFile(t), head, blueprint, way)
}

// openShopOn begins a room in a journal that is empty.
func openShopOn(t *testing.T, in journal.At, head class.Head, blueprint string, way class.Way) *shop {
	t.Helper()
	s := &shop{t: t, in: in, clock: time.Now}
	head.Code, head.Key = roomCode, privateKey
	if head.Title == "" {
		head.Title = "Before your first thread"
	}
	s.start(&head, blueprint, way)
	t.Cleanup(func() { s.stop() })
	return s
}

// start serves the room of the journal; a head begins it.
func (s *shop) start(head *class.Head, blueprint string, way class.Way) {
	s.t.Helper()
	j, err := s.in.Open(s.t.Context())
	if err != nil {
		s.t.Fatal(err)
	}
	if s.by != nil {
		j = s.by(j)
	}
	session, err := sitting.NewSession(&scripted.Face{}, content.Shipped(), machine.Imperial, machine.InchLathe, nil)
	if err != nil {
		s.t.Fatal(err)
	}
	fail := func(err error) {
		s.mu.Lock()
		defer s.mu.Unlock()
		s.fails = append(s.fails, err)
	}
	lathe := func(string) (machine.Lathe, error) { return machine.InchLathe, nil }
	makes := class.MakerOf(set.Secret(secretText), session.Library, tasks.Set{}, lathe)
	s.hall = class.NewHall(j, func(class.Head) class.Maker { return makes }, func() time.Time { return s.clock() }, fail)
	leave := s.hall.Sharing(s.t.Context(), j)
	if head != nil {
		s.live, err = s.hall.Begin(s.t.Context(), *head, blueprint, way)
	} else {
		s.live, err = s.hall.Room(s.t.Context(), roomCode)
	}
	if err != nil {
		s.t.Fatal(err)
	}
	if s.at == "" {
		s.at = "127.0.0.1:0"
	}
	l, err := net.Listen("tcp", s.at)
	if err != nil {
		s.t.Fatal(err)
	}
	s.at, s.base = l.Addr().String(), "http://"+l.Addr().String()
	server := served.New(s.hall, served.Options{Hosts: []string{s.at}, Words: web.WordsOf(session.Say), Session: session, Clock: func() time.Time { return s.clock() }, Address: s.at, Fail: fail})
	h := &http.Server{Handler: s.cutting(server.Handler())}
	served := make(chan struct{})
	go func() { defer close(served); _ = h.Serve(l) }()
	s.stop = sync.OnceFunc(func() { // as a kill: nothing is said to anyone
		_ = h.Close()
		server.Stop()
		<-served
		leave()
		_ = j.Close()
	})
}

// restart kills the computer and starts it again.
func (s *shop) restart(down func()) {
	s.t.Helper()
	s.stop()
	if down != nil {
		down()
	}
	s.start(nil, "", "")
}

// cutting keeps answers and cuts the connection before that is said, as often as s.cut has it.
func (s *shop) cutting(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		answer := r.Method == http.MethodPost && (strings.HasSuffix(r.URL.Path, "/answer") || strings.HasSuffix(r.URL.Path, "/join") || strings.HasSuffix(r.URL.Path, "/move") || strings.HasSuffix(r.URL.Path, "/unclear"))
		if !answer || s.cut.Add(-1) < 0 {
			next.ServeHTTP(w, r)
			return
		}
		next.ServeHTTP(&nowhere{header: http.Header{}}, r)
		panic(http.ErrAbortHandler)
	})
}

// nowhere is where an answer goes that no one gets.
type nowhere struct{ header http.Header }

func (n *nowhere) Header() http.Header         { return n.header }
func (n *nowhere) Write(b []byte) (int, error) { return len(b), nil }
func (n *nowhere) WriteHeader(int)             {}

// do is what the instructor does, by name and fields.
func (s *shop) do(name string, fields ...string) {
	s.t.Helper()
	form := url.Values{"do": {name}, "sure": {"yes"}}
	for i := 0; i < len(fields); i += 2 {
		form.Set(fields[i], fields[i+1])
	}
	r, err := http.NewRequest(http.MethodPost, s.base+"/desk/"+roomCode+"/do", strings.NewReader(form.Encode()))
	if err != nil {
		s.t.Fatal(err)
	}
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	r.AddCookie(&http.Cookie{Name: "desk-" + roomCode, Value: privateKey})
	answer, err := http.DefaultTransport.RoundTrip(r)
	if err != nil {
		s.t.Fatal(err)
	}
	defer answer.Body.Close()
	if body, _ := io.ReadAll(answer.Body); answer.StatusCode >= 400 {
		s.t.Fatal(name, fields, answer.Status, string(body))
	}
}

// answers are the rows of the file that set mark reads.
func (s *shop) answers(n int) [][]string {
	s.t.Helper()
	r, err := http.NewRequest(http.MethodGet, fmt.Sprint(s.base, "/desk/", roomCode, "/answers/", n), nil)
	if err != nil {
		s.t.Fatal(err)
	}
	r.AddCookie(&http.Cookie{Name: "desk-" + roomCode, Value: privateKey})
	answer, err := http.DefaultTransport.RoundTrip(r)
	if err != nil {
		s.t.Fatal(err)
	}
	defer answer.Body.Close()
	rows, err := csv.NewReader(answer.Body).ReadAll()
	if err != nil {
		s.t.Fatal(err)
	}
	return rows[1:]
}

// see looks at the room.
func (s *shop) see(look func(*class.Room)) { s.live.See(look) }

// item is someone's question at a place.
func (s *shop) item(id string, n, place int) (it set.Item) {
	s.t.Helper()
	s.see(func(r *class.Room) {
		var err error
		if it, err = r.Sets[n].Item(id, place); err != nil {
			s.t.Fatal(err)
		}
	})
	return it
}

// right is someone's right answer as it is typed.
func (s *shop) right(id string, n, place int) string {
	s.t.Helper()
	it := s.item(id, n, place)
	return it.Words.KeyNumber(it.Problem)
}

// kept is the answer of someone; ok is false for none.
func (s *shop) kept(id string, n, place int) (a class.Answer, ok bool) {
	s.see(func(r *class.Room) { a, ok = r.Person(id).Answers[class.Question{Set: n, Place: place}] })
	return a, ok
}

// phone is a browser without script.
type phone struct {
	s   *shop
	jar http.CookieJar
	c   *http.Client
	got func(*http.Response, string) // is told of all that comes
}

func (s *shop) phone() *phone {
	jar, err := cookiejar.New(nil)
	if err != nil {
		s.t.Fatal(err)
	}
	return &phone{s: s, jar: jar, c: &http.Client{Jar: jar}}
}

func (p *phone) get(path string) (int, string) { return p.send(http.MethodGet, path, nil, "") }

func (p *phone) post(path string, fields ...string) (int, string) {
	form := url.Values{}
	for i := 0; i < len(fields); i += 2 {
		form.Add(fields[i], fields[i+1])
	}
	return p.send(http.MethodPost, path, form, "")
}

// send sends a request to the room, unless the path begins at the root.
func (p *phone) send(method, path string, form url.Values, accept string) (int, string) {
	p.s.t.Helper()
	if !strings.HasPrefix(path, "/") {
		if path != "" && path[0] != '?' {
			path = "/" + path
		}
		path = "/r/" + roomCode + path
	}
	r, err := http.NewRequestWithContext(context.Background(), method, p.s.base+path, strings.NewReader(form.Encode()))
	if err != nil {
		p.s.t.Fatal(err)
	}
	if form != nil {
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	}
	if accept != "" {
		r.Header.Set("Accept", accept)
	}
	answer, err := p.c.Do(r)
	if err != nil {
		return 0, err.Error()
	}
	defer answer.Body.Close()
	body, err := io.ReadAll(answer.Body)
	if err != nil {
		return 0, err.Error()
	}
	if p.got != nil {
		p.got(answer, string(body))
	}
	return answer.StatusCode, string(body)
}

// comesIn takes a name.
func (p *phone) comesIn(name string) string {
	p.s.t.Helper()
	p.get("")
	status, page := p.post("join", "name", name)
	if status != http.StatusOK {
		p.s.t.Fatal(name, " comes in: ", status, page)
	}
	return page
}

// answers sends an answer to a question of the first set.
func (p *phone) answers(place int, text string, more ...string) (int, string) {
	p.s.t.Helper()
	return p.post("answer", append([]string{"set", "0", "place", fmt.Sprint(place), "answer", text}, more...)...)
}
