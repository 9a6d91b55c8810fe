package journal_test

import (
	"context"
	"flag"
	"fmt"
	"io"
	"math/rand/v2"
	"net/http"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"scratchpass/lessons/class"
	"scratchpass/lessons/postgres"
	"scratchpass/lessons/postgres/postgrestest"
)

// A full load: go test ./lessons/class/journal -run Load -v -rooms 40 -phones 30 -spread 5s -slow 10ms -cut 1000 -away 20s
var (
	roomsOf = flag.Int("rooms", 3, "rooms in the load test")
	phones  = flag.Int("phones", 8, "phones in each of them")
	spread  = flag.Duration("spread", 300*time.Millisecond, "they all answer within this time")
	slow    = flag.Duration("slow", 0, "each sync of the disk takes so much longer")
	cut     = flag.Int("cut", 20, "connections that are cut before the acknowledgement arrives")
	away    = flag.Duration("away", 300*time.Millisecond, "the database is out of reach for this time")
)

const lesson = "set: load\ntitle: Load\nunits: in\nrules: {feedback: end}\nslots:\n- {tasks: [compound-travel]}\n- {tasks: [single-depth]}\n"

// loaded are nodes with rooms full of phones, and an instructor in each room.
type loaded struct {
	t       *testing.T
	nodes   []*node
	codes   []string
	clients []*phone
	screens map[string]*screen // of the instructors, by room
	cuts    atomic.Int64       // that are still to come
	phones  atomic.Int64
}

// deskKey is that of the instructors' links.
const deskKey = "k"

func newLoaded(t *testing.T, at string, nodes ...string) *loaded {
	t.Helper()
	l := &loaded{t: t, screens: map[string]*screen{}}
	j := open(t, at)
	hall := hallOn(j, func(err error) { t.Error(err) })
	for range *roomsOf {
		head := class.Head{Code: class.NewCode(), Title: "Load", Key: deskKey}
		for i := range *phones {
			head.Roster = append(head.Roster, class.Apprentice{ID: fmt.Sprint("p", i), Name: fmt.Sprint("Person ", i)})
		}
		live, err := hall.Begin(t.Context(), head, lesson, class.Together)
		if err != nil {
			t.Fatal(err)
		}
		if err := live.Do(t.Context(), class.Event{Kind: class.Opened, Place: 0}); err != nil {
			t.Fatal(err)
		}
		l.codes = append(l.codes, head.Code)
	}
	if err := j.Close(); err != nil {
		t.Fatal(err)
	}
	for _, at := range nodes {
		l.nodes = append(l.nodes, newNode(t, at))
	}
	return l
}

// screen is an instructor's page at the last node.
type screen struct {
	mu    sync.Mutex
	shows []shown
}

// shown is when all events up to one were on a screen.
type shown struct {
	seq int64
	at  time.Time
}

// watch opens the instructor's page of a room, and fetches it anew as its script does.
func (l *loaded) watch(ctx context.Context, code string) {
	s := &screen{}
	l.screens[code] = s
	base := l.nodes[len(l.nodes)-1].base + "/desk/" + code
	client := &http.Client{Transport: withCookie("desk-" + code + "=" + deskKey)}
	news := make(chan bool, 1)
	go read(ctx, client, base+"/events", func(line string) {
		if strings.HasPrefix(line, "data:") {
			select {
			case news <- true:
			default:
			}
		}
	})
	go func() {
		for {
			select {
			case <-ctx.Done():
				return
			case <-news:
			}
			answer, err := client.Get(base + "/part")
			if err != nil {
				continue
			}
			_, _ = io.Copy(io.Discard, answer.Body) // only its number is looked at
			answer.Body.Close()
			number, _, _ := strings.Cut(answer.Header.Get("X-Version"), "-")
			if seq, err := strconv.ParseInt(number, 10, 64); err == nil {
				s.mu.Lock()
				s.shows = append(s.shows, shown{seq, time.Now()})
				s.mu.Unlock()
			}
		}
	}()
}

// when is when an event was on the screen; ok is false where it never was.
func (s *screen) when(seq int64) (at time.Time, ok bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	for _, show := range s.shows {
		if show.seq >= seq {
			return show.at, true
		}
	}
	return at, false
}

// withCookie sends a cookie with every request.
type withCookie string

func (c withCookie) RoundTrip(r *http.Request) (*http.Response, error) {
	r.Header.Set("Cookie", string(c))
	return http.DefaultTransport.RoundTrip(r)
}

// round lets all phones answer. midway is called when half of the answers are acknowledged.
func (l *loaded) round(name string, midway func()) (all []sent) {
	var mu sync.Mutex
	var answering sync.WaitGroup
	for _, p := range l.clients {
		wait := rand.N(*spread + 1)
		answering.Go(func() {
			time.Sleep(wait)
			s := p.answer(fmt.Sprint(name, " ", p.code, " ", p.i))
			mu.Lock()
			defer mu.Unlock()
			if all = append(all, s); len(all) == len(l.clients)/2 {
				answering.Go(midway)
			}
		})
	}
	answering.Wait()
	return all
}

// kept looks for answers among the events that are kept: each is there once. It returns the
// numbers of their events.
func (l *loaded) kept(at string, all []sent) map[string]int64 {
	j := open(l.t, at)
	defer j.Close()
	seqs, times := map[string]int64{}, map[string]int{}
	for _, code := range l.codes {
		events, err := j.After(l.t.Context(), code, 0)
		if err != nil {
			l.t.Fatal(err)
		}
		for i, e := range events {
			if e.Seq != int64(i+1) {
				l.t.Fatalf("%s: event %d has the number %d", code, i+1, e.Seq)
			}
			if _, key, is := strings.Cut(e.Key, " "); is && e.Kind == class.Answered {
				seqs[key], times[key] = e.Seq, times[key]+1
			}
		}
	}
	for _, s := range all {
		if times[s.key] != 1 {
			l.t.Errorf("%s was acknowledged and is there %d times", s.key, times[s.key])
		}
	}
	if len(times) != len(all) {
		l.t.Errorf("%d answers were acknowledged and %d are there", len(all), len(times))
	}
	return seqs
}

// Rooms full of phones that all answer at about the same time, some of them through connections
// that are cut. On a database there are two nodes; it goes away in the middle of a round, and one
// of the nodes is killed in the middle of the last. Every answer that was acknowledged is there,
// and counts once. How long that took is told and never judged.
func TestLoad(t *testing.T) { onBoth(t, load) }

func load(t *testing.T, at string) {
	nodes, proxy := []string{at}, (*postgrestest.Proxy)(nil)
	if postgres.Is(at) {
		proxy = postgrestest.Through(t, at)
		nodes = []string{proxy.Address, proxy.Address}
	}
	l := newLoaded(t, at, nodes...)
	ctx, cancel := context.WithCancel(t.Context())
	defer cancel()
	l.comeIn(ctx)
	all := map[string][]sent{}
	order := []string{"plain"}
	all["plain"] = l.round("plain", func() {})
	l.cuts.Store(int64(*cut))
	for n := 0; l.cuts.Load() > 0; n++ {
		all["cut"] = append(all["cut"], l.round(fmt.Sprint("cut-", n), func() {})...)
	}
	order = append(order, "cut")
	var since time.Time // when it was as before, or was killed
	if proxy != nil {
		all["away"] = l.round("away", func() { proxy.Cut(); time.Sleep(*away); proxy.Mend(); since = time.Now() })
		t.Logf("away %v: the last answer that waited came %v after", *away, longest(all["away"], since))
		all["killed"] = l.round("killed", func() { since = time.Now(); l.nodes[0].kill() })
		t.Logf("killed: a phone of that node was acknowledged by the other within %v", longest(all["killed"], since))
		order = append(order, "away", "killed")
	}
	time.Sleep(600 * time.Millisecond) // the screens show the last answers
	cancel()
	for _, n := range l.nodes {
		n.kill()
	}
	var every []sent
	for _, name := range order {
		every = append(every, all[name]...)
	}
	seqs := l.kept(at, every)
	t.Logf("%d rooms of %d, answers within %v, syncs slower by %v, %d nodes", *roomsOf, *phones, *spread, *slow, len(l.nodes))
	for _, name := range order {
		l.tell(name, all[name], seqs)
	}
	var memory runtime.MemStats
	runtime.ReadMemStats(&memory)
	t.Logf("%d MB from the system for the phones of the test", memory.Sys>>20)
}

// comeIn lets all phones in, and opens the instructors' pages.
func (l *loaded) comeIn(ctx context.Context) {
	l.clients = make([]*phone, *roomsOf**phones)
	var in sync.WaitGroup
	for k, code := range l.codes {
		l.watch(ctx, code)
		in.Go(func() {
			for i := range *phones {
				l.clients[k**phones+i] = l.join(ctx, code, i)
			}
		})
	}
	in.Wait()
}

// longest is how long an answer that was sent again took at most, since a moment or since it was
// first sent.
func longest(all []sent, since time.Time) (took time.Duration) {
	for _, s := range all {
		if s.tries > 1 {
			took = max(took, min(s.took.Sub(s.first), s.took.Sub(since)))
		}
	}
	return took.Round(time.Millisecond)
}

// tell tells how long the answers of rounds took: to the acknowledgement, from the last time that
// they were sent, and to the screen of the instructor, who is at the last node.
func (l *loaded) tell(name string, all []sent, seqs map[string]int64) {
	var took, seen []time.Duration
	again := 0
	for _, s := range all {
		took, again = append(took, s.took.Sub(s.last)), again+s.tries-1
		code := strings.Fields(s.key)[1]
		if at, ok := l.screens[code].when(seqs[s.key]); ok && (len(l.nodes) == 1 || s.to != l.nodes[len(l.nodes)-1]) {
			seen = append(seen, at.Sub(s.last))
		}
	}
	l.t.Logf("%-7s %5d answers: %s; on the screen of %s %d: %s; sent again %d", name, len(all), shares(took), map[bool]string{true: "the node", false: "another node"}[len(l.nodes) == 1], len(seen), shares(seen), again)
}

func shares(all []time.Duration) string {
	if len(all) == 0 {
		return "none"
	}
	slices.Sort(all)
	at := func(share float64) time.Duration {
		return all[min(len(all)-1, int(share*float64(len(all))))].Round(100 * time.Microsecond)
	}
	return fmt.Sprintf("p50 %v, p95 %v, p99 %v", at(0.5), at(0.95), at(0.99))
}
