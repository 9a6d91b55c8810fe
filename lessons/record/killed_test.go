package record_test

import (
	"bufio"
	"bytes"
	"database/sql/driver"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"modernc.org/sqlite"

	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
)

var lives = flag.Int("kills", 24, "how often a program is killed while it writes")

var randomLives = flag.Int("random-kills", 12, "how often a program is killed at any moment while it writes")

// Moments at which the other process dies, in the midst of one answer.
const (
	beforeFold  = "the answer is written, the summary is not"
	inSummary   = "the summary is being written"
	beforeSaid  = "all is kept, but nobody was told"
	afterSaid   = "the answer was acknowledged"
	notAtAll    = ""
	dieInTests  = "die_in_tests"
	writerTable = "CREATE TEMP TRIGGER deadly AFTER UPDATE ON states WHEN NEW.task <> '' BEGIN SELECT " + dieInTests + "(); END"
)

func die() { p, _ := os.FindProcess(os.Getpid()); _ = p.Kill(); select {} }

// other is this test binary as another process that writes answers, from the n-th to the
// one before last, and dies in the midst of the last of them.
func other(path, learner string, from, to int, dies string) *exec.Cmd {
	cmd := exec.Command(os.Args[0], "-test.run", "^TestWriterProcess$")
	cmd.Env = append(os.Environ(), "RECORD_WRITER="+path, "RECORD_LEARNER="+learner, fmt.Sprintf("RECORD_ANSWERS=%d %d", from, to), "RECORD_DIES="+dies)
	return cmd
}

// TestWriterProcess is no test: it is the other process of the tests below. It says
// each answer after it was acknowledged.
func TestWriterProcess(t *testing.T) {
	path, dies := os.Getenv("RECORD_WRITER"), os.Getenv("RECORD_DIES")
	if path == "" {
		t.Skip("only run by other tests")
	}
	sqlite.MustRegisterScalarFunction(dieInTests, 0, func(*sqlite.FunctionContext, []driver.Value) (driver.Value, error) { die(); return nil, nil })
	var from, to int
	fmt.Sscan(os.Getenv("RECORD_ANSWERS"), &from, &to)
	r, err := record.Open(path, os.Getenv("RECORD_LEARNER"))
	if err != nil {
		t.Fatal(err)
	}
	fold := schedule.Fold(items)
	for n := from; n < to; n++ {
		now := notAtAll
		if n == to-1 {
			now = dies
		}
		if now == inSummary {
			if err := r.Exec(writerTable); err != nil {
				t.Fatal(err)
			}
		}
		err := r.Append(nth(n), func(s record.Summary, a record.Answer, item int) record.Summary {
			if now == beforeFold {
				die()
			}
			return fold(s, a, item)
		})
		if err != nil {
			t.Fatal(err)
		}
		if now == beforeSaid {
			die()
		}
		os.Stdout.WriteString(fmt.Sprintf("kept %d\n", n))
		if now == afterSaid {
			die()
		}
	}
	r.Close()
}

// A program that is killed in the midst of an answer leaves it whole or not at all, the
// ones before it, and a record that the next one writes on in.
func TestKilledProcessLosesNothing(t *testing.T) {
	kills, moments := *lives, []string{beforeFold, inSummary, beforeSaid, afterSaid}
	if testing.Short() {
		kills = 8
	}
	if onServer { // where a program can't be killed inside a statement: see TestServerCutAtAnyStatement
		kills, moments = kills/3, []string{beforeFold, beforeSaid, afterSaid}
	}
	path := place(t)
	if err := open(t, path, "Ada").Append(nth(0), schedule.Fold(items)); err != nil { // there is a summary to write over
		t.Fatal(err)
	}
	there := 1
	for life := range kills {
		dies := moments[life%len(moments)]
		answers := 1 + life*7%30
		out, err := other(path, "Ada", there, there+answers, dies).CombinedOutput()
		acknowledged := bytes.Count(out, []byte("kept "))
		want, said := answers-1, answers-1 // the last one is lost
		switch dies {
		case beforeSaid:
			want = answers
		case afterSaid:
			want, said = answers, answers
		}
		if err == nil || acknowledged != said {
			t.Fatalf("life %d, %s: %d of %d answers were acknowledged, %v\n%.500s", life, dies, acknowledged, said, err, out)
		}
		there += want
		r := open(t, path, "Ada")
		sound(t, r, there)
		r.Close()
		if t.Failed() {
			t.Fatalf("life %d of %d answers: %s", life, answers, dies)
		}
	}
}

// killed runs a program that says what it has kept, kills it a little while after it has said so much,
// and returns all that it has said.
func killed(t *testing.T, cmd *exec.Cmd, after int) (kept []string) {
	t.Helper()
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	for lines := bufio.NewScanner(out); ; {
		if len(kept) == after {
			time.Sleep(time.Duration(rand.IntN(10_000)) * time.Microsecond)
			_ = cmd.Process.Kill() // it may have ended
		}
		if !lines.Scan() {
			break
		}
		if what, ok := strings.CutPrefix(lines.Text(), "kept "); ok {
			kept = append(kept, what)
		}
	}
	_ = cmd.Wait() // that it was killed is no news
	return kept
}

// A program that is killed at any moment at all loses nothing that it had acknowledged, and
// what is there is counted once.
func TestKilledAtRandom(t *testing.T) {
	kills := *randomLives
	if testing.Short() {
		kills = 4
	}
	path := place(t)
	there, acknowledged := 0, 0
	for life := range kills {
		if life%200 == 199 { // a long record takes long to look through
			path, there = place(t), 0
		}
		said := len(killed(t, other(path, "Ada", there, there+1_000, notAtAll), rand.IntN(60)))
		acknowledged += said
		left(t, path)
		r, err := record.Open(path, "Ada")
		if err != nil {
			t.Fatalf("life %d: %v", life, err)
		}
		if r.Mended != nil {
			t.Fatalf("life %d: it was taken for damaged: %+v", life, r.Mended)
		}
		now := len(kept(t, r))
		if now < there+said || now > there+said+1 { // the last may be kept, and nobody was told
			t.Fatalf("life %d: %d answers, %d of them new; %d were acknowledged", life, now, now-there, said)
		}
		if now > 0 {
			sound(t, r, now)
		}
		there = now
		r.Close()
	}
	t.Logf("%d kills, %d answers acknowledged, none lost", kills, acknowledged)
}

// Two processes that write at once lose nothing.
func TestTwoProcessesLoseNothing(t *testing.T) {
	n := 600
	if testing.Short() || onServer {
		n = 200
	}
	path := place(t)
	var wg sync.WaitGroup
	for _, learner := range []string{"Ada", "Ben"} {
		wg.Go(func() {
			if out, err := other(path, learner, 0, n, notAtAll).CombinedOutput(); err != nil {
				t.Errorf("%s: %v\n%.2000s", learner, err, out)
			}
		})
	}
	wg.Wait()
	for _, learner := range []string{"Ada", "Ben"} {
		sound(t, open(t, path, learner), n)
	}
}

// Many programs that begin one record at the same moment all get it open.
func TestBegunByManyAtOnce(t *testing.T) {
	rounds := 5
	if testing.Short() || onServer {
		rounds = 2
	}
	for range rounds {
		path := place(t)
		var wg sync.WaitGroup
		for i := range 12 {
			wg.Go(func() {
				if out, err := other(path, fmt.Sprint("learner ", i), 0, 1, notAtAll).CombinedOutput(); err != nil {
					t.Errorf("%v\n%.500s", err, out)
				}
			})
		}
		wg.Wait()
		for i := range 12 {
			r := open(t, path, fmt.Sprint("learner ", i))
			sound(t, r, 1)
			r.Close()
		}
	}
}

// A kill or a power cut in the midst of an answer leaves the file as it is at that moment, half
// of the new pages in it or none, and a journal. From that the record is again as it was
// before: all answers that were acknowledged, each counted once.
func TestCutOffInTheMidst(t *testing.T) {
	path := filepath.Join(t.TempDir(), "r.db")
	r, fold := open(t, path, "Ada"), schedule.Fold(items)
	if err := r.Exec("PRAGMA cache_size = 2"); err != nil { // so few pages that the rest is written before the end
		t.Fatal(err)
	}
	changed := 0
	for n := range 40 {
		before, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		a := nth(n)
		a.Content = strings.Repeat("x", 300*n) // over several pages
		meddling := func(s record.Summary, a record.Answer, item int) record.Summary {
			dir := t.TempDir()
			again := filepath.Join(dir, "r.db")
			for _, ending := range []string{"", "-journal"} {
				text, err := os.ReadFile(path + ending)
				if err != nil {
					t.Fatal(err)
				}
				if ending == "" && !bytes.Equal(text, before) {
					changed++
				}
				if err := os.WriteFile(again+ending, text, 0o600); err != nil {
					t.Fatal(err)
				}
			}
			cut := open(t, again, "Ada")
			if cut.Mended != nil {
				t.Errorf("cut off in answer %d it was taken for damaged", n)
			}
			sound(t, cut, n)
			if err := cut.Append(nth(n), fold); err != nil {
				t.Error(err)
			}
			sound(t, cut, n+1)
			return fold(s, a, item)
		}
		if err := r.Append(a, meddling); err != nil {
			t.Fatal(err)
		}
	}
	if changed < 10 {
		t.Errorf("only %d times anything had been written yet", changed)
	}
	sound(t, r, 40)
}

// Whoever copies the one file while a program has it open, or after it was killed, has all that
// was acknowledged.
func TestOneFileHasAll(t *testing.T) {
	path := filepath.Join(t.TempDir(), "r.db")
	r := open(t, path, "Ada")
	for n := range 10 {
		if err := r.Append(nth(n), schedule.Fold(items)); err != nil {
			t.Fatal(err)
		}
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		again := filepath.Join(t.TempDir(), "r.db")
		if err := os.WriteFile(again, text, 0o600); err != nil {
			t.Fatal(err)
		}
		sound(t, open(t, again, "Ada"), n+1)
	}
}
