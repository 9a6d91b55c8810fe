package journal_test

import (
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"scratchpass/lessons/class"
	"scratchpass/lessons/class/journal"
	"scratchpass/lessons/postgres"
	"scratchpass/lessons/postgres/postgrestest"
)

// numbered checks that the events of a room have numbers without a gap and keys without a double.
func numbered(t *testing.T, j class.Journal, room string, want int) {
	t.Helper()
	events, err := j.After(t.Context(), room, 0)
	if err != nil || len(events) != want {
		t.Fatal(room, ": ", len(events), " events, not ", want, err)
	}
	keys := map[string]bool{}
	for i, e := range events {
		if e.Seq != int64(i+1) || keys[e.Key] {
			t.Errorf("%s: event %d has the number %d and the key %s", room, i+1, e.Seq, e.Key)
		}
		keys[e.Key] = true
	}
}

// Three programs that keep events in the same rooms at once, in any order, some of them the same:
// none waits for ever, no number is missing, no key is there twice, and all are told the same event
// for the same key.
func TestProgramsShareRooms(t *testing.T) {
	at := postgrestest.Address(t)
	programs := []*journal.Database{database(t, at), database(t, at), database(t, at)}
	codes := []string{"A", "B", "C", "D", "E"}
	for _, code := range codes {
		begin(t, programs[0], code)
	}
	const keys = 60 // of each room
	var mu sync.Mutex
	told := map[string]class.Event{}
	var all sync.WaitGroup
	for n, j := range programs {
		for range 15 {
			all.Go(func() {
				random := rand.New(rand.NewPCG(uint64(n), rand.Uint64()))
				for range 40 {
					code := codes[random.IntN(len(codes))]
					key := fmt.Sprint(random.IntN(keys))
					e, err := j.Append(context.Background(), code, class.Event{Kind: class.Answered, Who: "w", Text: fmt.Sprint("from ", n), Key: key})
					mu.Lock()
					if before, ok := told[code+key]; err != nil || ok && before != e {
						t.Error(code, key, before, e, err)
					}
					told[code+key] = e
					mu.Unlock()
				}
			})
		}
	}
	all.Wait()
	for _, code := range codes {
		n := 0
		for name := range told {
			if strings.HasPrefix(name, code) {
				n++
			}
		}
		numbered(t, programs[1], code, n)
	}
}

// A program that goes on with a room after another has forgotten it keeps nothing in it.
func TestForgottenByAnother(t *testing.T) {
	at := postgrestest.Address(t)
	one, two := database(t, at), database(t, at)
	for i := range 20 {
		code := fmt.Sprint("R", i)
		begin(t, one, code)
		var all sync.WaitGroup
		for k := range 10 {
			all.Go(func() {
				if _, err := one.Append(context.Background(), code, class.Event{Kind: class.Answered, Key: fmt.Sprint(k)}); err != nil && !errors.Is(err, class.ErrNoRoom) {
					t.Error(err)
				}
			})
		}
		all.Go(func() {
			if err := two.Forget(context.Background(), code); err != nil {
				t.Error(err)
			}
		})
		all.Wait()
		numbered(t, two, code, 0)
	}
}

// The database goes away and comes back. Who wants to keep something meanwhile is told at once that
// it is away; what is sent again with its key is kept once. That is noticed once, and so is that it
// is back.
func TestDatabaseAway(t *testing.T) {
	at := postgrestest.Address(t)
	proxy := postgrestest.Through(t, at)
	j := database(t, proxy.Address)
	var noticed []string
	j.Notice(func(why error) {
		if !errors.Is(why, class.ErrAway) && why != nil {
			t.Error(why)
		}
		noticed = append(noticed, fmt.Sprint(why != nil))
	})
	begin(t, j, "A")
	for round := range 3 {
		proxy.Cut()
		var all sync.WaitGroup
		for i := range 10 {
			all.Go(func() {
				_, err := j.Append(context.Background(), "A", class.Event{Kind: class.Answered, Key: fmt.Sprint(round, i)})
				if !errors.Is(err, class.ErrAway) || !postgres.Gone(err) {
					t.Error(err)
				}
			})
		}
		all.Wait()
		if _, err := j.Head(t.Context(), "A"); !errors.Is(err, class.ErrAway) {
			t.Error(err)
		}
		proxy.Mend()
		for range 2 {
			for i := range 10 {
				if _, err := j.Append(t.Context(), "A", class.Event{Kind: class.Answered, Key: fmt.Sprint(round, i)}); err != nil {
					t.Error(err)
				}
			}
		}
		numbered(t, j, "A", 10*(round+1))
	}
	if want := strings.Fields("true false true false true false"); !slices.Equal(noticed, want) {
		t.Error(noticed)
	}
}

// The connection is cut after events were kept and before that was said. Who sends them again is
// told the same events, and the room of the program has them though nobody delivered them.
func TestLostCommit(t *testing.T) {
	at := postgrestest.Address(t)
	proxy := postgrestest.Through(t, at)
	j := database(t, proxy.Address)
	hall := hallOn(j, func(err error) { t.Error(err) })
	live, err := hall.Begin(t.Context(), class.Head{Code: "AAAAAA"}, lesson, class.Together)
	if err != nil {
		t.Fatal(err)
	}
	for i := range 5 {
		e := class.Event{Kind: class.Joined, Who: fmt.Sprint("visitor-", i), Name: fmt.Sprint("Zoe ", i), Text: fmt.Sprint("phone ", i), Key: fmt.Sprint(i)}
		proxy.LoseCommits(1)
		if err := live.Do(t.Context(), e); !errors.Is(err, class.ErrAway) {
			t.Error("the first time: ", err)
		}
		if err := live.Do(t.Context(), e); err != nil {
			t.Error("the second time: ", err)
		}
		live.See(func(r *class.Room) {
			if r.Seq != int64(i+2) || r.Person(e.Who) == nil {
				t.Error(i, ": the room is at ", r.Seq)
			}
		})
	}
	numbered(t, j, "AAAAAA", 6)
}

// A class goes on with the latest room of its blueprint that has not ended.
func TestGoesOn(t *testing.T) {
	j := database(t, postgrestest.Address(t))
	do := func(code string, at int64, events ...class.Event) {
		if err := j.Begin(t.Context(), class.Head{Code: code, Began: time.UnixMilli(at).UTC()}); err != nil {
			t.Fatal(err)
		}
		for i, e := range events {
			e.Key = fmt.Sprint(i)
			if _, err := j.Append(t.Context(), code, e); err != nil {
				t.Fatal(err)
			}
		}
	}
	asked := func(text string) class.Event { return class.Event{Kind: class.Asked, Text: text} }
	ended, reopened := class.Event{Kind: class.Ended}, class.Event{Kind: class.Goes}
	do("A", 1, asked("one"))
	do("B", 2, asked("one"), asked("two"))
	do("C", 3, asked("one"), ended)
	do("D", 4, asked("two"), ended, reopened)
	do("E", 5, asked("two"), ended, reopened, ended)
	do("F", 6)
	do("G", 7, asked("three"), ended)
	for blueprint, want := range map[string]string{"one": "B", "two": "D"} {
		if h, err := j.GoesOn(t.Context(), class.Asked, blueprint); err != nil || h.Code != want {
			t.Error(blueprint, h, err)
		}
	}
	for _, blueprint := range []string{"three", "", "on"} {
		if h, err := j.GoesOn(t.Context(), class.Asked, blueprint); !errors.Is(err, class.ErrNoRoom) {
			t.Error(blueprint, h, err)
		}
	}
}

// What is the last event of rooms is one question; those that are not there are left out.
func TestLast(t *testing.T) {
	j := database(t, postgrestest.Address(t))
	for i, code := range []string{"A", "B"} {
		begin(t, j, code)
		for k := range i {
			if _, err := j.Append(t.Context(), code, class.Event{Kind: class.Paused, Key: fmt.Sprint(k)}); err != nil {
				t.Fatal(err)
			}
		}
	}
	last, err := j.Last(t.Context(), []string{"A", "B", "C"})
	if err != nil || len(last) != 2 || last["A"] != 0 || last["B"] != 1 {
		t.Error(last, err)
	}
	if last, err = j.Last(t.Context(), nil); err != nil || len(last) != 0 {
		t.Error(last, err)
	}
}
