package journal_test

import (
	"bufio"
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"math/rand/v2"
	"net"
	"net/http"
	"net/http/cookiejar"
	"net/http/httptest"
	"net/url"
	"path/filepath"
	"runtime"
	"slices"
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
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/set"
	"scratchpass/quiz/tasks"
)

// A full load: go test ./lessons/class/journal -run Load -v -rooms 40 -phones 30 -spread 5s -slow 10ms -cut 1000
var (
	rooms  = flag.Int("rooms", 3, "rooms in the load test")
	phones = flag.Int("phones", 8, "phones in each of them")
	spread = flag.Duration("spread", 300*time.Millisecond, "they all answer within this time")
	slow   = flag.Duration("slow", 0, "each sync of the disk takes so much longer")
	cut    = flag.Int("cut", 20, "connections that are cut before the acknowledgement arrives")
)

const lesson = "set: load\ntitle: Load\nunits: in\nrules: {feedback: end}\nslots:\n- {tasks: [compound-travel]}\n- {tasks: [single-depth]}\n"

// loaded is a server with rooms full of phones.
type loaded struct {
	t      *testing.T
	file   *journal.File
	hall   *class.Hall
	server *httptest.Server
	codes  []string
	cuts   atomic.Int64 // that are still to come
	phones atomic.Int64
}

func newLoaded(t *testing.T) *loaded {
	t.Helper()
	l := &loaded{t: t, file: open(t, filepath.Join(t.TempDir(), "load.class"))}
	t.Cleanup(func() { _ = l.file.Close() }) // the test has looked at what it holds
	l.file.SlowSync(*slow)
	makes := class.MakerOf(set.Secret("a secret that stands in a test"), content.Shipped(), tasks.Set{}, func(string) (machine.Lathe, error) { return machine.InchLathe, nil })
	l.hall = class.NewHall(l.file, func(class.Head) class.Maker { return makes }, time.Now, func(err error) { t.Error(err) })
	s, err := sitting.NewSession(nil, content.Shipped(), machine.Imperial, machine.InchLathe, nil)
	if err != nil {
		t.Fatal(err)
	}
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	serves := served.New(l.hall, served.Options{Hosts: []string{listener.Addr().String()}, Words: web.WordsOf(s.Say), Session: s, Clock: time.Now, Fail: func(err error) { t.Log(err) }})
	l.server = &httptest.Server{Listener: listener, Config: &http.Server{Handler: serves.Handler()}}
	l.server.Start()
	t.Cleanup(func() { serves.Stop(); l.server.CloseClientConnections(); l.server.Close() })
	for range *rooms {
		head := class.Head{Code: class.NewCode(), Title: "Load", Key: "k"}
		for i := range *phones {
			head.Roster = append(head.Roster, class.Apprentice{ID: fmt.Sprint("p", i), Name: fmt.Sprint("Person ", i)})
		}
		live, err := l.hall.Begin(t.Context(), head, lesson, class.Together)
		if err != nil {
			t.Fatal(err)
		}
		if err := live.Do(t.Context(), class.Event{Kind: class.Opened, Place: 0}); err != nil {
			t.Fatal(err)
		}
		l.codes = append(l.codes, head.Code)
	}
	return l
}

// errCut is what a phone sees of a connection that was cut.
var errCut = errors.New("the connection was cut")

// cutting is a way to the server that is cut now and then, after the answer has arrived there and
// before its acknowledgement comes back.
type cutting struct {
	to *http.Transport
	l  *loaded
}

func (c cutting) RoundTrip(r *http.Request) (*http.Response, error) {
	answer, err := c.to.RoundTrip(r)
	if err == nil && r.Method == http.MethodPost && strings.HasSuffix(r.URL.Path, "/answer") && c.l.cuts.Add(-1) >= 0 {
		answer.Body.Close()
		return nil, errCut
	}
	return answer, err
}

// from is where a phone calls from. Each has an address of its own, as in a real network, where
// this computer has so many.
func from(phone int64) *net.Dialer {
	if runtime.GOOS != "linux" {
		return &net.Dialer{}
	}
	return &net.Dialer{LocalAddr: &net.TCPAddr{IP: net.IPv4(127, 1, byte(phone>>8), byte(phone))}}
}

// join lets one phone in, and opens its stream.
func (l *loaded) join(ctx context.Context, code string, i int) *http.Client {
	jar, err := cookiejar.New(nil)
	if err != nil {
		l.t.Fatal(err)
	}
	client := &http.Client{Jar: jar, Transport: cutting{&http.Transport{MaxIdleConnsPerHost: 2, DialContext: from(l.phones.Add(1)).DialContext}, l}}
	r, err := client.PostForm(l.server.URL+"/r/"+code+"/join", url.Values{"name": {fmt.Sprint("Person ", i)}})
	if err != nil {
		l.t.Fatal(err)
	}
	page, _ := io.ReadAll(r.Body) // the test below looks at it
	r.Body.Close()
	if r.StatusCode != http.StatusOK || !strings.Contains(string(page), "compound") {
		l.t.Fatalf("%s, person %d is not let in: %d %.300s", code, i, r.StatusCode, page)
	}
	go func() {
		r, err := http.NewRequestWithContext(ctx, http.MethodGet, l.server.URL+"/r/"+code+"/events", nil)
		if err != nil {
			return
		}
		if answer, err := client.Do(r); err == nil {
			defer answer.Body.Close()
			for lines := bufio.NewScanner(answer.Body); lines.Scan(); {
			}
		}
	}()
	return client
}

// answer sends an answer until it is acknowledged, and returns how long the last try took.
func (l *loaded) answer(client *http.Client, code, key string) (took time.Duration, tries int) {
	form := url.Values{"set": {"0"}, "place": {"0"}, "answer": {"0.05"}, "key": {key}}
	for {
		tries++
		r, err := http.NewRequest(http.MethodPost, l.server.URL+"/r/"+code+"/answer", strings.NewReader(form.Encode()))
		if err != nil {
			l.t.Error(err)
			return 0, tries
		}
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		r.Header.Set("Accept", "application/json")
		began := time.Now()
		answer, err := client.Do(r)
		if err == nil {
			_, _ = io.Copy(io.Discard, answer.Body) // it may be cut
			answer.Body.Close()
			if answer.StatusCode == http.StatusOK {
				return time.Since(began), tries
			}
			if answer.StatusCode == http.StatusTooManyRequests { // a phone that was cut off over and over
				time.Sleep(time.Second)
				continue
			}
			l.t.Error(code, key, answer.Status)
			return 0, tries
		}
		if tries > 1000 {
			l.t.Error(err)
			return 0, tries
		}
	}
}

// Rooms full of phones that all answer at about the same time, some of them through connections
// that are cut: every answer is acknowledged, is there, and counts once. How long that took is
// told and never judged.
func TestLoad(t *testing.T) {
	l := newLoaded(t)
	ctx, cancel := context.WithCancel(t.Context())
	defer cancel()
	clients := make([][]*http.Client, len(l.codes))
	var in sync.WaitGroup
	for k, code := range l.codes {
		clients[k] = make([]*http.Client, *phones)
		in.Go(func() {
			for i := range *phones {
				clients[k][i] = l.join(ctx, code, i)
			}
		})
	}
	in.Wait()
	l.cuts.Store(int64(*cut))
	rounds := max(1, (*cut+*rooms**phones-1)/(*rooms**phones))
	var mu sync.Mutex
	var took []time.Duration
	retried := 0
	for round := range rounds {
		var all sync.WaitGroup
		for k, code := range l.codes {
			for i := range *phones {
				wait := time.Duration(rand.Int64N(int64(*spread) + 1))
				all.Go(func() {
					time.Sleep(wait)
					d, tries := l.answer(clients[k][i], code, fmt.Sprint("key ", round, " ", i))
					mu.Lock()
					defer mu.Unlock()
					took, retried = append(took, d), retried+tries-1
				})
			}
		}
		all.Wait()
	}
	for _, code := range l.codes {
		events, err := l.file.After(t.Context(), code, 0)
		if err != nil {
			t.Fatal(err)
		}
		times := map[string]int{}
		for _, e := range events {
			if e.Kind == class.Answered {
				times[e.Key]++
			}
		}
		if len(times) != *phones*rounds {
			t.Errorf("%s: %d answers are there, not %d", code, len(times), *phones*rounds)
		}
		for key, n := range times {
			if n != 1 {
				t.Errorf("%s: %s counts %d times", code, key, n)
			}
		}
	}
	if left := l.cuts.Load(); left > 0 {
		t.Errorf("%d connections were to be cut and were not", left)
	}
	slices.Sort(took)
	at := func(share float64) time.Duration { return took[min(len(took)-1, int(share*float64(len(took))))] }
	var memory runtime.MemStats
	runtime.ReadMemStats(&memory)
	t.Logf("%d rooms of %d, %d answers within %v, syncs slower by %v: p50 %v, p95 %v, p99 %v; %d sent again after a cut; %d MB from the system, phones of the test included",
		*rooms, *phones, len(took), *spread, *slow, at(0.5), at(0.95), at(0.99), retried, memory.Sys>>20)
}
