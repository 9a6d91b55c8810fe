package journal_test

import (
	"context"
	"flag"
	"fmt"
	"math/rand/v2"
	"reflect"
	"sync"
	"testing"
	"time"

	"scratchpass/lessons/class"
	"scratchpass/lessons/class/journal"
	"scratchpass/lessons/postgres/postgrestest"
)

// hallAt is a hall of a program of its own.
func hallAt(t *testing.T, at string) (*class.Hall, *journal.Database) {
	t.Helper()
	j := database(t, at)
	h := hallOn(j, func(err error) { t.Error(err) })
	h.Notices(j)
	return h, j
}

// kindsAtRandom are what may happen in a room that has begun.
var kindsAtRandom = []class.Kind{class.Ran, class.Freed, class.Opened, class.Locked, class.Showed, class.Paused, class.Resumed, class.Longer, class.Let, class.Renamed, class.Merged, class.Removed,
	class.Shut, class.Unshut, class.Counted, class.Seen, class.Ended, class.Goes, class.Joined, class.Joined, class.Answered, class.Answered, class.Answered, class.Hinted, class.Called, class.Unclear, class.Keeps}

func eventAtRandom(random *rand.Rand) class.Event {
	pick := func(all ...string) string { return all[random.IntN(len(all))] }
	return class.Event{Kind: kindsAtRandom[random.IntN(len(kindsAtRandom))], Who: pick("1", "2", "3", "visitor-a", "visitor-b", "nobody"), Place: random.IntN(3), N: random.IntN(3),
		Text: pick("phone 0", "phone 1", "0.05", "0.1", "1", "2", "own-pace", "together"), Name: pick("", "Zoe", "Yan"), Key: pick("", fmt.Sprint(random.IntN(200)))}
}

// seeds is how many courses of things two halls are tried with.
var seeds = flag.Uint64("seeds", 3, "courses of events that two halls are tried with")

// picture is all that can be seen of a room.
func picture(t *testing.T, l *class.Live) (all map[string]any) {
	t.Helper()
	begin := time.Date(2026, 11, 26, 9, 0, 0, 0, time.UTC)
	l.See(func(r *class.Room) {
		standing, err := r.Standing(r.Now, begin, func(string) bool { return false })
		if err != nil {
			t.Error(err)
		}
		wall, err := r.Wall()
		if err != nil {
			t.Error(err)
		}
		versions := map[string]string{}
		for _, p := range r.Everyone() {
			versions[p.ID] = r.Version(p, begin)
		}
		all = map[string]any{"seq": r.Seq, "now": r.Now, "paused": r.Paused, "ended": r.Ended, "shut": r.Shut, "people": r.Everyone(), "standing": standing, "wall": wall, "versions": versions,
			"given": []any{class.Given(r, 0, false), class.Given(r, 0, true)}}
	})
	return all
}

// Two programs with one room open, in which any things are done at both at once, some of them the
// same: whatever their order, and whether they hear of each other or only look, both end with the
// same room, and so does a third that reads it anew.
func TestTwoHalls(t *testing.T) {
	for seed := range *seeds {
		t.Run(fmt.Sprint(seed), func(t *testing.T) {
			at := postgrestest.Address(t)
			ctx, cancel := context.WithCancel(t.Context())
			var sharing sync.WaitGroup
			defer sharing.Wait()
			defer cancel()
			halls, journals := make([]*class.Hall, 2), make([]*journal.Database, 2)
			for n := range halls {
				h, j := hallAt(t, at)
				halls[n], journals[n] = h, j
				if seed%3 > uint64(n) { // none hears of the other, one does, both do
					sharing.Go(func() { h.Share(ctx, j, nil) })
				}
			}
			codes := []string{"AAAAAA", "CCCCCC"}
			roster := []class.Apprentice{{ID: "1", Name: "Ada Brink"}, {ID: "2", Name: "Ben Corrie"}, {ID: "3", Name: "Cy Dale"}}
			for i, code := range codes {
				if _, err := halls[i].Begin(ctx, class.Head{Code: code, Roster: roster}, lesson, class.Together); err != nil {
					t.Fatal(err)
				}
			}
			var all sync.WaitGroup
			for n, h := range halls {
				for hand := range uint64(4) {
					all.Go(func() {
						random := rand.New(rand.NewPCG(seed, uint64(n)*10+hand))
						for range 25 {
							l, err := h.Room(ctx, codes[random.IntN(2)])
							if err == nil {
								err = l.Do(ctx, eventAtRandom(random))
							}
							if err != nil {
								t.Error(err)
							}
						}
					})
				}
			}
			all.Wait()
			third, j := hallAt(t, at)
			for _, code := range codes {
				fresh, err := third.Room(ctx, code)
				if err != nil {
					t.Fatal(err)
				}
				want := picture(t, fresh)
				numbered(t, j, code, int(want["seq"].(int64)))
				for n, h := range halls {
					if err := h.Look(ctx, journals[n]); err != nil {
						t.Fatal(err)
					}
					l, err := h.Room(ctx, code)
					if err != nil {
						t.Fatal(err)
					}
					for name, got := range picture(t, l) {
						if !reflect.DeepEqual(got, want[name]) {
							t.Errorf("%s at %d: %s is %+v, not %+v", code, n, name, got, want[name])
						}
					}
				}
			}
		})
	}
}

// What one program keeps is soon in the room of another that hears of it; what it does not hear of
// is there after a look, and a room that was forgotten is gone.
func TestHearing(t *testing.T) {
	at := postgrestest.Address(t)
	one, _ := hallAt(t, at)
	two, j := hallAt(t, at)
	here, err := one.Begin(t.Context(), class.Head{Code: "AAAAAA"}, lesson, class.Together)
	if err != nil {
		t.Fatal(err)
	}
	there, err := two.Room(t.Context(), "AAAAAA")
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(t.Context())
	look, ended := make(chan time.Time), make(chan bool)
	go func() { two.Share(ctx, j, look); close(ended) }()
	look <- time.Time{} // it listens, or will look once more when it does
	for i := range 5 {
		seq := int64(0)
		there.See(func(r *class.Room) { seq = r.Seq })
		changed := there.Changed(seq)
		if err := here.Do(t.Context(), class.Event{Kind: []class.Kind{class.Paused, class.Resumed}[i%2]}); err != nil {
			t.Fatal(err)
		}
		for seq < int64(i+2) { // no look is asked for: it hears of it
			<-changed
			there.See(func(r *class.Room) { seq = r.Seq })
			changed = there.Changed(seq)
		}
	}
	if err := j.Forget(t.Context(), "AAAAAA"); err != nil {
		t.Fatal(err)
	}
	look <- time.Time{}
	look <- time.Time{} // the one before is done
	if _, err := two.Room(t.Context(), "AAAAAA"); err != class.ErrNoRoom {
		t.Error(err)
	}
	cancel()
	<-ended
}
