package journal_test

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"scratchpass/lessons/class"
	"scratchpass/lessons/class/journal"
	"scratchpass/quiz/answer"
)

// Phones that answer at once are each acknowledged once, numbered without a gap, and told of in
// their order before they are acknowledged; what comes twice is kept once.
func TestManyAtOnce(t *testing.T) { onBoth(t, manyAtOnce) }

func manyAtOnce(t *testing.T, at string) {
	j := open(t, at)
	var mu sync.Mutex
	told := map[string]int64{}
	j.Follow(func(room string, events []class.Event) {
		mu.Lock()
		defer mu.Unlock()
		for _, e := range events {
			if e.Seq != told[room]+1 {
				t.Errorf("%s: event %d was told after %d", room, e.Seq, told[room])
			}
			told[room] = e.Seq
		}
	})
	begin(t, j, "A")
	begin(t, j, "B")
	var all sync.WaitGroup
	for i := range 600 { // more than one batch takes
		for range 3 { // each is sent three times
			all.Go(func() {
				room := []string{"A", "B"}[i%2]
				e, err := j.Append(context.Background(), room, class.Event{Kind: class.Answered, At: time.UnixMilli(int64(i)).UTC(), Who: "w", Text: strconv.Itoa(i), Key: strconv.Itoa(i)})
				mu.Lock()
				defer mu.Unlock()
				if err != nil || e.Text != strconv.Itoa(i) || e.Seq > told[room] {
					t.Error("acknowledged: ", e, err, told[room])
				}
			})
		}
	}
	all.Wait()
	if _, err := j.Append(t.Context(), "C", class.Event{Kind: class.Paused, Key: "x"}); !errors.Is(err, class.ErrNoRoom) {
		t.Error("in a room that is not there: ", err)
	}
	if err := j.Close(); err != nil {
		t.Fatal(err)
	}
	if _, err := j.Append(t.Context(), "A", class.Event{Key: "late"}); !errors.Is(err, journal.ErrClosed) {
		t.Error("after it was closed: ", err)
	}
	j = open(t, at)
	defer j.Close()
	for _, room := range []string{"A", "B"} {
		events, err := j.After(t.Context(), room, 0)
		if err != nil || len(events) != 300 {
			t.Fatal(room, len(events), err)
		}
	}
}

// A file is served once, and one that holds something else is left as it is.
func TestWhoseFile(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.class")
	j := open(t, path)
	if _, err := journal.Open(path); err == nil || !strings.Contains(err.Error(), "served already") {
		t.Error("a second program serves it: ", err)
	}
	reading, err := journal.OpenToRead(path)
	if err != nil {
		t.Fatal("it can't be read meanwhile: ", err)
	}
	if err := errors.Join(reading.Close(), j.Close()); err != nil {
		t.Fatal(err)
	}
	other := filepath.Join(dir, "roster.csv")
	if err := os.WriteFile(other, []byte("id,name\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := journal.Open(other); err == nil || journal.Is(other) || !journal.Is(path) {
		t.Error("a roster was opened: ", err)
	}
	if text, _ := os.ReadFile(other); string(text) != "id,name\n" {
		t.Error("it was changed")
	}
}

// A room is begun once, and found by its code; of all, the latest is the first.
func TestHeads(t *testing.T) {
	onBoth(t, func(t *testing.T, at string) {
		j := open(t, at)
		defer j.Close()
		for i, code := range []string{"B", "C", "A"} {
			if err := j.Begin(t.Context(), class.Head{Code: code, Title: "Zoë's \u0000 lesson", Began: time.UnixMilli(int64(i)).UTC(), Roster: []class.Apprentice{{ID: "1", Name: "Zoë"}}}); err != nil {
				t.Fatal(err)
			}
		}
		if err := j.Begin(t.Context(), class.Head{Code: "C"}); !errors.Is(err, class.ErrTaken) {
			t.Error("begun twice: ", err)
		}
		if _, err := j.Head(t.Context(), "D"); !errors.Is(err, class.ErrNoRoom) {
			t.Error("one that is not there: ", err)
		}
		if h, err := j.Head(t.Context(), "C"); err != nil || h.Code != "C" || h.Title != "Zoë's \u0000 lesson" || h.Roster[0].Name != "Zoë" || !h.Began.Equal(time.UnixMilli(1)) {
			t.Error(h, err)
		}
		all, err := j.Heads(t.Context())
		if err != nil || len(all) != 3 || all[0].Code != "A" || all[2].Code != "B" {
			t.Error(all, err)
		}
	})
}

// What an event holds comes back as it was, and only what comes after another is read.
func TestEventsComeBack(t *testing.T) {
	onBoth(t, func(t *testing.T, at string) {
		j := open(t, at)
		defer j.Close()
		begin(t, j, "A")
		var want []class.Event
		for i, e := range []class.Event{
			{Kind: class.Answered, Who: "1", Set: 2, Place: 3, N: -4, Text: "0.05 \" ' ; -- \n é 螺 \x7f", Name: "1/2 − 3", Certainty: answer.Bet, Key: "a"},
			{Kind: class.Paused, Key: "b"},
			{Kind: class.Until, Text: strings.Repeat("x", 100_000), Key: "c"},
		} {
			e.At = time.UnixMilli(1_795_745_646_123 + int64(i)).UTC()
			kept, err := j.Append(t.Context(), "A", e)
			e.Seq = int64(i + 1)
			if err != nil || kept != e {
				t.Error(kept, err)
			}
			want = append(want, e)
		}
		for seq := range int64(4) {
			if got, err := j.After(t.Context(), "A", seq); err != nil || !slices.Equal(got, want[seq:]) {
				t.Error(seq, got, err)
			}
		}
	})
}

// A text that a database does not take is refused alone: whoever sends one keeps nobody else's
// answer from being kept.
func TestUnkeepable(t *testing.T) {
	onBoth(t, func(t *testing.T, at string) {
		j := open(t, at)
		defer j.Close()
		begin(t, j, "A")
		var all sync.WaitGroup
		for i := range 40 {
			all.Go(func() {
				e := class.Event{Kind: class.Answered, Text: "0.05", Key: fmt.Sprint(i)}
				switch {
				case i%4 == 0:
					e.Key += "\x00"
				case i%4 == 1:
					e.Text += "\xff"
				}
				if _, err := j.Append(context.Background(), "A", e); (err != nil) != (i%4 < 2) {
					t.Error(i, err)
				}
			})
		}
		all.Wait()
		if events, err := j.After(t.Context(), "A", 0); err != nil || len(events) != 20 {
			t.Error(len(events), err)
		}
	})
}

// A room that was forgotten is not there, the others are.
func TestForget(t *testing.T) {
	onBoth(t, func(t *testing.T, at string) {
		j := open(t, at)
		defer j.Close()
		for _, room := range []string{"A", "B"} {
			begin(t, j, room)
			if _, err := j.Append(t.Context(), room, class.Event{Kind: class.Answered, Text: "a very odd answer", Key: "k"}); err != nil {
				t.Fatal(err)
			}
		}
		if err := j.Forget(t.Context(), "A"); err != nil {
			t.Fatal(err)
		}
		if _, err := j.Append(t.Context(), "A", class.Event{Key: "k"}); !errors.Is(err, class.ErrNoRoom) {
			t.Error("it takes answers: ", err)
		}
		for room, n := range map[string]int{"A": 0, "B": 1} {
			if events, err := j.After(t.Context(), room, 0); err != nil || len(events) != n {
				t.Error(room, events, err)
			}
		}
		if all, err := j.Heads(t.Context()); err != nil || len(all) != 1 {
			t.Error(all, err)
		}
	})
}

// Nothing of a room that was forgotten stays in the file.
func TestForgottenInTheFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.class")
	j := open(t, path)
	begin(t, j, "A")
	if _, err := j.Append(t.Context(), "A", class.Event{Kind: class.Answered, Text: "a very odd answer", Key: "k"}); err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(j.Forget(t.Context(), "A"), j.Close()); err != nil {
		t.Fatal(err)
	}
	found, err := filepath.Glob(path + "*")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range found {
		if text, err := os.ReadFile(name); err != nil || strings.Contains(string(text), "a very odd answer") {
			t.Error("it still stands in ", name, err)
		}
	}
}

// How long an answer takes until it is on disk, when 30 phones answer at once.
func BenchmarkThirtyAtOnce(b *testing.B) {
	for name, empty := range engines {
		b.Run(name, func(b *testing.B) {
			j := open(b, empty(b))
			defer j.Close()
			begin(b, j, "A")
			for i := range b.N {
				var all sync.WaitGroup
				for phone := range 30 {
					all.Go(func() {
						if _, err := j.Append(b.Context(), "A", class.Event{Kind: class.Answered, Text: "0.05 in", Key: fmt.Sprint(i, " ", phone)}); err != nil {
							b.Error(err)
						}
					})
				}
				all.Wait()
			}
		})
	}
}

// A file of the first form opens with all that was in it, and goes on; one of a form that this program
// does not know is refused. Who adds a form writes a dump of it before it is released.
func TestFormsOfFiles(t *testing.T) {
	script, err := os.ReadFile("testdata/form-1.sql")
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "old.class")
	do := func(statements string) {
		t.Helper()
		db, err := sql.Open("sqlite", path)
		if err != nil {
			t.Fatal(err)
		}
		defer db.Close()
		if _, err := db.Exec(statements); err != nil {
			t.Fatal(err)
		}
	}
	do(string(script))
	j := open(t, path)
	heads, err := j.Heads(t.Context())
	if err != nil || len(heads) != 1 || heads[0].Code != "ACDEFH" || heads[0].Title != "Dumped" || heads[0].Roster[0].Name != "Ada Brook" {
		t.Error(heads, err)
	}
	want := []class.Event{
		{Seq: 1, At: time.UnixMilli(1_790_000_001_000).UTC(), Kind: class.Joined, Who: "a1", Text: "phone", Key: "one"},
		{Seq: 2, At: time.UnixMilli(1_790_000_002_123).UTC(), Kind: class.Answered, Who: "a1", Place: 1, Text: `0,05 "in" µ`, Certainty: answer.Bet, Key: "a1 two"},
	}
	if events, err := j.After(t.Context(), "ACDEFH", 0); err != nil || !slices.Equal(events, want) {
		t.Error(events, err)
	}
	if e, err := j.Append(t.Context(), "ACDEFH", want[1]); err != nil || e.Seq != 2 {
		t.Error("sent again: ", e, err)
	}
	if e, err := j.Append(t.Context(), "ACDEFH", class.Event{Kind: class.Paused, Key: "three"}); err != nil || e.Seq != 3 {
		t.Error("it does not go on: ", e, err)
	}
	if err := j.Close(); err != nil {
		t.Fatal(err)
	}
	do("PRAGMA user_version = 99")
	if _, err := journal.Open(path); err == nil || !strings.Contains(err.Error(), "newer program (form 99") {
		t.Error("one of a newer form: ", err)
	}
}
