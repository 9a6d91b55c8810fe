package oneroster_test

import (
	"context"
	"errors"
	"fmt"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"scratchpass/lessons/postgres"
	"scratchpass/lessons/postgres/postgrestest"
	"scratchpass/lessons/school"
	"scratchpass/lessons/school/oneroster"
	"scratchpass/lessons/school/oneroster/onerostertest"
)

// office is a school whose lists are fetched, with one node or more.
type office struct {
	t       *testing.T
	service *onerostertest.Server
	db      *postgres.DB
	group   school.Group
	s       school.Settings

	mu   sync.Mutex
	now  time.Time
	told []oneroster.Fetched
}

func newOffice(t *testing.T) *office {
	t.Helper()
	db, err := postgres.Open(t.Context(), postgrestest.Address(t))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { db.Close() })
	return officeOn(t, db)
}

// officeOn is an office of a service of its own, on a database that is there.
func officeOn(t *testing.T, db *postgres.DB) *office {
	t.Helper()
	o := &office{t: t, service: onerostertest.New(t), db: db, now: time.Date(2026, 11, 27, 9, 0, 0, 0, time.UTC), group: school.Group{Name: "turning-1", Class: "17"}}
	settings := o.service.Settings()
	o.s = school.Settings{OneRoster: &settings, Departments: []school.Department{{Groups: []school.Group{o.group, {Name: "by-file", Roster: "x.csv"}, {Name: "none"}}}}}
	o.service.Class("17", onerostertest.Students(28)...)
	return o
}

func (o *office) clock() time.Time {
	o.mu.Lock()
	defer o.mu.Unlock()
	return o.now
}

func (o *office) later(d time.Duration) {
	o.mu.Lock()
	defer o.mu.Unlock()
	o.now = o.now.Add(d)
}

// fetched are the fetchings that were told since.
func (o *office) fetched() []oneroster.Fetched {
	o.mu.Lock()
	defer o.mu.Unlock()
	told := o.told
	o.told = nil
	return told
}

// node is a node of the school's; it does not wait between two tries.
func (o *office) node() oneroster.Rosters {
	o.t.Helper()
	service := service(o.t, o.service, time.Now)
	var waits []time.Duration
	service.Waits(&waits)
	return oneroster.Rosters{Settings: o.s, DB: o.db, Service: service, Clock: o.clock, Told: func(f oneroster.Fetched) {
		o.mu.Lock()
		defer o.mu.Unlock()
		o.told = append(o.told, f)
	}}
}

func (o *office) list(r oneroster.Rosters) oneroster.List {
	o.t.Helper()
	l, err := r.Of(o.t.Context(), o.group)
	if err != nil {
		o.t.Fatal(err)
	}
	return l
}

func (o *office) due(r oneroster.Rosters) {
	o.t.Helper()
	if err := r.FetchDue(o.t.Context()); err != nil {
		o.t.Fatal(err)
	}
}

// A list is fetched once when it is due, on one of several nodes, and again after its time; what all
// nodes have is what was fetched.
func TestFetchDue(t *testing.T) {
	o := newOffice(t)
	nodes := []oneroster.Rosters{o.node(), o.node(), o.node()}
	if l := o.list(nodes[0]); !l.Fetched || !l.At.IsZero() || len(l.People) > 0 || l.Fault != "" {
		t.Errorf("before the first: %+v", l)
	}
	all := func(want int) {
		t.Helper()
		var due sync.WaitGroup
		for _, n := range nodes {
			due.Go(func() { o.due(n) })
		}
		due.Wait()
		told := o.fetched()
		if len(told) != want {
			t.Errorf("fetched %d times, want %d: %+v", len(told), want, told)
		}
		for _, f := range told {
			if f.Err != nil || f.Group != "turning-1" {
				t.Errorf("%+v", f)
			}
		}
	}
	all(1)
	begun := o.clock()
	for _, n := range nodes {
		if l := o.list(n); len(l.People) != 28 || l.People[27].Name != "Given27 Family27" || !l.At.Equal(begun) || l.Fault != "" {
			t.Errorf("%+v", l)
		}
	}
	o.later(24*time.Hour - time.Millisecond)
	o.service.Class("17", onerostertest.Students(29)...)
	all(0)
	o.later(time.Millisecond)
	all(1)
	if l := o.list(nodes[1]); len(l.People) != 29 {
		t.Error(len(l.People))
	}
	o.group.Class = "18" // the settings have another class now: the list of the old one is nobody's
	o.s.Departments[0].Groups[0].Class = "18"
	o.service.Class("18", onerostertest.Students(3)...)
	if l := o.list(nodes[0]); len(l.People) > 0 || l.Fault != "" {
		t.Error("the list of another class: ", len(l.People))
	}
	all(1)
	if l := o.list(nodes[0]); len(l.People) != 3 {
		t.Error(len(l.People))
	}
}

// What fails leaves the list that was there, says so with when it is from, and is tried again sooner.
// An empty class in the place of one with people is such a failure.
func TestFetchFails(t *testing.T) {
	o := newOffice(t)
	r := o.node()
	o.due(r)
	first := o.clock()
	o.fetched()
	for want, fail := range map[string]func(){
		"says 500": func() {
			o.service.Fail(func(*http.Request) onerostertest.Failure { return onerostertest.Failure{Status: 500} })
		},
		"an empty class":       func() { o.service.Fail(nil); o.service.Class("17") },
		"person 1 of the list": func() { o.service.Fail(nil); o.service.Class("17", onerostertest.Student{ID: "x"}) },
	} {
		fail()
		o.later(24 * time.Hour)
		o.due(r)
		if told := o.fetched(); len(told) != 1 || told[0].Err == nil || !strings.Contains(told[0].Err.Error(), want) {
			t.Errorf("%s: %+v", want, told)
		}
		l := o.list(r)
		if len(l.People) != 28 || !l.At.Equal(first) || l.Fault == "" || !l.Tried.Equal(o.clock()) {
			t.Errorf("%s: %d people of %v, %q at %v", want, len(l.People), l.At, l.Fault, l.Tried)
		}
		o.later(15*time.Minute - time.Millisecond)
		o.due(r)
		if told := o.fetched(); len(told) > 0 {
			t.Errorf("%s: tried again at once: %+v", want, told)
		}
		o.later(time.Millisecond)
		o.due(r)
		if told := o.fetched(); len(told) != 1 {
			t.Errorf("%s: not tried again: %+v", want, told)
		}
	}
	o.service.Class("17", onerostertest.Students(2)...)
	o.service.Fail(nil)
	if err := r.Fetch(t.Context(), o.group); err != nil {
		t.Error(err)
	}
	if l := o.list(r); len(l.People) != 2 || l.Fault != "" || !l.At.Equal(o.clock()) {
		t.Errorf("%+v", l)
	}
	if told := o.fetched(); len(told) != 1 || told[0].People != 2 {
		t.Errorf("%+v", told)
	}
	o.later(24 * time.Hour)
	if err := o.db.Close(); err != nil {
		t.Fatal(err)
	}
	if r.FetchDue(t.Context()) == nil || len(o.fetched()) > 0 {
		t.Error("without a database something is fetched")
	}
}

// A list that a node is at is left alone, by hand too, until that node must be lost; what a lost node
// brings after another has begun is not kept.
func TestFetchedByOne(t *testing.T) {
	o := newOffice(t)
	slow, other := o.node(), o.node()
	held, held2 := make(chan struct{}), make(chan struct{})
	o.service.Fail(func(r *http.Request) onerostertest.Failure {
		if strings.HasSuffix(r.URL.Path, "/students") {
			select {
			case held2 <- struct{}{}: // only the first is held
				<-held
			default:
			}
		}
		return onerostertest.Failure{}
	})
	slowly := make(chan error)
	go func() { slowly <- slow.Fetch(t.Context(), o.group) }()
	<-held2
	if err := other.Fetch(t.Context(), o.group); !errors.Is(err, oneroster.ErrBeingFetched) {
		t.Error(err)
	}
	o.due(other)
	o.later(16 * time.Minute)
	o.service.Class("17", onerostertest.Students(5)...)
	o.due(other)
	o.service.Class("17", onerostertest.Students(6)...)
	close(held)
	<-slowly
	if told := o.fetched(); len(told) != 2 {
		t.Errorf("%+v", told)
	}
	var tries int
	if err := o.db.QueryRow("SELECT tries FROM rosters").Scan(&tries); err != nil || tries != 2 {
		t.Error(tries, err)
	}
	if l := o.list(other); len(l.People) != 5 || l.Fault != "" {
		t.Errorf("%+v", l)
	}
}

// Lists are fetched at each tick until the end, and those of groups that are no more go.
func TestKeep(t *testing.T) {
	o := newOffice(t)
	r := o.node()
	if _, err := o.db.Exec("INSERT INTO rosters VALUES ('gone', '1', '[]', 1, 1, 1, true, '')"); err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(t.Context())
	ticks, ended := make(chan time.Time), make(chan struct{})
	go func() { r.Keep(ctx, ticks, func(err error) { t.Error(err) }); close(ended) }()
	ticks <- time.Time{}
	o.later(24 * time.Hour)
	ticks <- time.Time{}
	ticks <- time.Time{}
	stop()
	<-ended
	if told := o.fetched(); len(told) != 2 {
		t.Errorf("%+v", told)
	}
	var names string
	if err := o.db.QueryRow("SELECT string_agg(name, ' ') FROM rosters").Scan(&names); err != nil || names != "turning-1" {
		t.Error(names, err)
	}
}

// A list that a node was at when it was stopped is another's at once, and no fault.
func TestStoppedWhileFetching(t *testing.T) {
	o := newOffice(t)
	r := o.node()
	ctx, stop := context.WithCancel(t.Context())
	o.service.Fail(func(r *http.Request) onerostertest.Failure {
		if strings.HasSuffix(r.URL.Path, "/students") {
			stop()
			return onerostertest.Failure{Status: 503}
		}
		return onerostertest.Failure{}
	})
	if r.Fetch(ctx, o.group) == nil || len(o.fetched()) > 0 || o.list(r).Fault != "" {
		t.Errorf("%+v", o.list(r))
	}
	o.service.Fail(nil)
	o.due(o.node())
	if l := o.list(r); len(l.People) != 28 {
		t.Errorf("%+v", l)
	}
}

// Lists of files are read anew each time; which are none is said.
func TestListsOfFiles(t *testing.T) {
	o := newOffice(t)
	r := o.node()
	dir := t.TempDir()
	plain := filepath.Join(dir, "plain.csv")
	if err := os.WriteFile(plain, []byte("id,name\na1,Ada Brook\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, row := range []struct {
		g    school.Group
		want string
	}{
		{school.Group{Name: "a"}, "0 <nil>"}, {school.Group{Roster: plain}, "1 <nil>"}, {school.Group{Roster: plain, Class: "17"}, "1 <nil>"},
		{school.Group{Roster: zipped(t, bulk()), Class: "turning-1"}, "2 <nil>"}, {school.Group{Roster: dir}, "several classes"}, {school.Group{Roster: dir, Class: "x"}, "manifest.csv"},
	} {
		l, err := r.Of(t.Context(), row.g)
		if got := fmt.Sprint(len(l.People), " ", err); !strings.Contains(got, row.want) || l.Fetched {
			t.Errorf("%+v: %s, want %s", row.g, got, row.want)
		}
		if err := r.Check(t.Context(), row.g); (err == nil) != strings.Contains(row.want, "<nil>") {
			t.Error("check: ", err)
		}
		if r.Fetch(t.Context(), row.g) == nil {
			t.Error("it was fetched")
		}
	}
	if err := r.Check(t.Context(), o.group); err != nil {
		t.Error(err)
	}
	o.service.Class("17")
	if err := r.Check(t.Context(), o.group); err == nil || !strings.Contains(err.Error(), `the class "17" has nobody in it`) {
		t.Error(err)
	}
}
