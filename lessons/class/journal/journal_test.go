package journal_test

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"scratchpass/lessons/class"
	"scratchpass/lessons/class/journal"
)

func open(t *testing.T, path string) *journal.File {
	t.Helper()
	j, err := journal.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

func begin(t *testing.T, j *journal.File, code string) {
	t.Helper()
	if err := j.Begin(t.Context(), class.Head{Code: code, Began: time.UnixMilli(1).UTC()}); err != nil {
		t.Fatal(err)
	}
}

// Phones that answer at once are each acknowledged once, numbered without a gap, and told of in
// their order before they are acknowledged; what comes twice is kept once.
func TestManyAtOnce(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.class")
	j := open(t, path)
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
	for i := range 60 {
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
	j = open(t, path)
	defer j.Close()
	for _, room := range []string{"A", "B"} {
		events, err := j.After(t.Context(), room, 0)
		if err != nil || len(events) != 30 {
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

// Nothing of a room that was forgotten stays in the file.
func TestForget(t *testing.T) {
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

// kills is how often the writing program is killed; the project's own check has more.
func kills() int {
	if n, err := strconv.Atoi(os.Getenv("SCRATCHPASS_KILLS")); err == nil {
		return n
	}
	return 6
}

// TestMain is the program that is killed, where it is asked to be.
func TestMain(m *testing.M) {
	if path := os.Getenv("JOURNAL_WRITES"); path != "" {
		writeUntilKilled(path)
		return
	}
	os.Exit(m.Run())
}

// writeUntilKilled answers from 20 phones and says what was acknowledged.
func writeUntilKilled(path string) {
	j, err := journal.Open(path)
	if err != nil {
		fmt.Println("error", err)
		return
	}
	from := os.Getenv("JOURNAL_FROM")
	for phone := range 20 {
		go func() {
			for i := 0; ; i++ {
				key := fmt.Sprint(from, "-", phone, "-", i)
				e := class.Event{Kind: class.Answered, Key: key}
				if phone%2 == 0 { // as many make moves
					e.Kind, e.N, e.Text = class.Moved, i, "cross out 0.1"
				}
				if _, err := j.Append(context.Background(), "A", e); err == nil {
					fmt.Println(key)
				}
			}
		}()
	}
	select {}
}

// However often the program is killed: what it acknowledged is there, once.
func TestKilled(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.class")
	j := open(t, path)
	begin(t, j, "A")
	if err := j.Close(); err != nil {
		t.Fatal(err)
	}
	acknowledged := map[string]bool{}
	for round := range kills() {
		cmd := exec.Command(os.Args[0])
		cmd.Env = append(os.Environ(), "JOURNAL_WRITES="+path, "JOURNAL_FROM="+strconv.Itoa(round))
		out, err := cmd.StdoutPipe()
		if err != nil {
			t.Fatal(err)
		}
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		lines := bufio.NewScanner(out)
		for n := 0; lines.Scan(); n++ {
			key := lines.Text()
			if strings.HasPrefix(key, "error") {
				t.Fatal(key)
			}
			acknowledged[key] = true
			if n == 50+37*round%200 { // in the midst of it, each time elsewhere
				_ = cmd.Process.Kill() // it may have ended
			}
		}
		_ = cmd.Wait() // it was killed
	}
	j = open(t, path)
	defer j.Close()
	events, err := j.After(t.Context(), "A", 0)
	if err != nil {
		t.Fatal(err)
	}
	times := map[string]int{}
	next := map[string]int{} // the move of each phone that comes next
	for i, e := range events {
		if e.Seq != int64(i+1) {
			t.Fatalf("event %d has number %d", i+1, e.Seq)
		}
		if phone := e.Key[:strings.LastIndex(e.Key, "-")]; e.Kind == class.Moved {
			if e.N != next[phone] {
				t.Errorf("move %s stands where %d was to come", e.Key, next[phone])
			}
			next[phone]++
		}
		times[e.Key]++
	}
	for key := range acknowledged {
		if times[key] != 1 {
			t.Errorf("%s was acknowledged and is there %d times", key, times[key])
		}
	}
	t.Logf("%d acknowledged, %d kept, %d kills", len(acknowledged), len(events), kills())
}

// How long an answer takes until it is on disk, when 30 phones answer at once.
func BenchmarkThirtyAtOnce(b *testing.B) {
	j, err := journal.Open(filepath.Join(b.TempDir(), "a.class"))
	if err != nil {
		b.Fatal(err)
	}
	defer j.Close()
	if err := j.Begin(b.Context(), class.Head{Code: "A"}); err != nil {
		b.Fatal(err)
	}
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
}
