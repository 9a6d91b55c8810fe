package record_test

import (
	"bytes"
	"database/sql/driver"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"modernc.org/sqlite"

	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
)

var lives = flag.Int("kills", 24, "how often a program is killed while it writes")

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
// ones before it, and a file that the next one writes on in.
func TestKilledProcessLosesNothing(t *testing.T) {
	kills := *lives
	if testing.Short() {
		kills = 8
	}
	path := filepath.Join(t.TempDir(), "r.db")
	if err := open(t, path, "Ada").Append(nth(0), schedule.Fold(items)); err != nil { // there is a summary to write over
		t.Fatal(err)
	}
	there := 1
	for life := range kills {
		dies := []string{beforeFold, inSummary, beforeSaid, afterSaid}[life%4]
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
		sound(t, open(t, path, "Ada"), there)
		if t.Failed() {
			t.Fatalf("life %d of %d answers: %s", life, answers, dies)
		}
	}
}

// Two processes that write at once lose nothing.
func TestTwoProcessesLoseNothing(t *testing.T) {
	n := 2_000
	if testing.Short() {
		n = 200
	}
	path := filepath.Join(t.TempDir(), "r.db")
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
	rounds := 12
	if testing.Short() {
		rounds = 2
	}
	for range rounds {
		path := filepath.Join(t.TempDir(), "r.db")
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
			sound(t, open(t, path, fmt.Sprint("learner ", i)), 1)
		}
	}
}

// A kill or a power cut at any moment leaves of the log what had been written of it until
// then. However much that is, the record opens and holds the answers whose writing was
// finished, each counted once.
func TestLogCutOffAnywhere(t *testing.T) {
	path := filepath.Join(t.TempDir(), "r.db")
	r, fold := open(t, path, "Ada"), schedule.Fold(items)
	size := func() int {
		info, err := os.Stat(path + "-wal")
		if err != nil {
			t.Fatal(err)
		}
		return int(info.Size())
	}
	var finished []int // how long the log is with so many answers, from none
	for n := range 6 {
		finished = append(finished, size())
		if err := r.Append(nth(n), fold); err != nil {
			t.Fatal(err)
		}
	}
	finished = append(finished, size())
	file, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	log, err := os.ReadFile(path + "-wal")
	if err != nil {
		t.Fatal(err)
	}
	const header, frame = 32, 24 + 4096
	if (len(log)-header)%frame != 0 {
		t.Fatalf("a log of %d bytes is not one of pages of 4096 bytes", len(log))
	}
	var cuts []int
	for end := header; end <= len(log); end += frame {
		cuts = append(cuts, end-1, end, end+25) // a byte short, a whole page, the next one begun
	}
	if testing.Short() {
		cuts = cuts[len(cuts)-30:]
	}
	for _, cut := range append(cuts, 0) {
		cut = min(cut, len(log))
		again := filepath.Join(t.TempDir(), "r.db")
		if err := os.WriteFile(again, file, 0o600); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(again+"-wal", log[:cut], 0o600); err != nil {
			t.Fatal(err)
		}
		want := 0
		for n, end := range finished {
			if cut >= end {
				want = n
			}
		}
		r, err := record.Open(again, "Ada")
		if err != nil {
			t.Fatalf("cut after %d of %d bytes: %v", cut, len(log), err)
		}
		sound(t, r, want)
		if err := r.Append(nth(want), fold); err != nil {
			t.Error(err)
		}
		sound(t, r, want+1)
		r.Close()
		if t.Failed() {
			t.Fatalf("cut after %d of %d bytes; answers were finished at %s", cut, len(log), strings.Trim(fmt.Sprint(finished), "[]"))
		}
	}
}
