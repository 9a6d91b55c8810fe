package record_test

import (
	"bytes"
	"database/sql/driver"
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

// crashing are what the other process of these tests can do to a record.
var crashing = map[string]func(r *record.Record) error{
	"open": func(*record.Record) error { return nil },
	"import": func(r *record.Record) error {
		var lines strings.Builder
		for n := range 50 {
			fmt.Fprintf(&lines, `{"at":"2026-03-01T09:%02d:00Z","task":"single-depth","code":"single-depth@1-%04x","given":"0.0613","verdict":"right"}`+"\n", n, n)
		}
		_, err := importInto(r, strings.NewReader(lines.String()), schedule.Fold(items))
		return err
	},
	"refold":   func(r *record.Record) error { return r.Refold(schedule.Fold(items), rule) },
	"forget":   func(r *record.Record) error { _, err := r.Forget(); return err },
	"rehearse": func(r *record.Record) error { return r.FinishRehearsal(played(2)) },
	"rehearse on": func(r *record.Record) error {
		for n := range 1000 {
			x := played(n)
			x.Job = fmt.Sprintf("job-%d-%d", os.Getpid(), n)
			if err := r.BeginRehearsal(record.Begun{Job: x.Job, At: x.Begun}); err != nil {
				return err
			}
			if err := r.FinishRehearsal(x); err != nil {
				return err
			}
			fmt.Printf("kept %s\n", x.Job)
		}
		return nil
	},
	"append": func(r *record.Record) error {
		for n := range 3 {
			a := nth(1000 + 10*os.Getpid() + n)
			if err := r.Append(a, schedule.Fold(items)); err != nil {
				return err
			}
			fmt.Printf("kept %s\n", a.Code)
		}
		return nil
	},
}

// TestCrashingProcess is no test: it is the other process of the tests below, which does one
// thing to a record and is killed at a moment, or at a statement.
func TestCrashingProcess(t *testing.T) {
	path := os.Getenv("RECORD_CRASH")
	if path == "" {
		t.Skip("only run by other tests")
	}
	dies := os.Getenv("RECORD_DIES")
	record.Passing(func(moment string) {
		if moment == dies {
			die()
		}
	})
	sqlite.MustRegisterScalarFunction(dieInTests, 0, func(*sqlite.FunctionContext, []driver.Value) (driver.Value, error) { die(); return nil, nil })
	r, err := record.Open(path, "Ada")
	if err != nil {
		t.Fatal(err)
	}
	if at, ok := strings.CutPrefix(dies, "statement: "); ok {
		if err := r.Exec("CREATE TEMP TRIGGER deadly " + at + " BEGIN SELECT " + dieInTests + "(); END"); err != nil {
			t.Fatal(err)
		}
	}
	if err := crashing[os.Getenv("RECORD_DOES")](r); err != nil {
		t.Fatal(err)
	}
}

// crash runs the other process, which is to be killed.
func crash(t *testing.T, path, does, dies string) {
	t.Helper()
	out, err := doing(path, does, dies).CombinedOutput()
	if err == nil || !strings.Contains(err.Error(), "killed") {
		t.Errorf("%s, to be killed at %q: %v\n%s", does, dies, err, out)
	}
}

// doing is the other process.
func doing(path, does, dies string) *exec.Cmd {
	cmd := exec.Command(os.Args[0], "-test.run", "^TestCrashingProcess$")
	cmd.Env = append(os.Environ(), "RECORD_CRASH="+path, "RECORD_DOES="+does, "RECORD_DIES="+dies)
	return cmd
}

// asides are the damaged files that were set aside.
func asides(t *testing.T, path string) (found []string) {
	t.Helper()
	all, err := filepath.Glob(path + ".damaged-*")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range all {
		if !strings.HasSuffix(name, "-journal") {
			found = append(found, name)
		}
	}
	return found
}

// Killed at any moment of a mending, there is a record, the damaged file is somewhere, whole,
// and whoever opens it next has all the answers that could be saved.
func TestMendingKilled(t *testing.T) {
	oneAtATime(t)
	for _, moment := range []string{"damage found", "read what can be read", "mended file written", "the damaged file has its other name", "set aside", "in its place"} {
		path := spoilable(t, 100, 60)
		spoilt := spoil(t, path, damageKinds["a letter of a newer answer"].how)
		crash(t, path, "open", moment)
		if _, err := os.Stat(path); err != nil {
			t.Errorf("killed at %q: there is no record: %v", moment, err)
		}
		r := open(t, path, "Ada")
		if all, lost := kept(t, r), lostNumbers(t, r, true); len(all) != 99 || len(lost) != 1 || lost[0] != 91 {
			t.Errorf("killed at %q: %d answers, lost %v", moment, len(all), lost)
		}
		whole := 0
		for _, name := range asides(t, path) {
			if was, err := os.ReadFile(name); err == nil && bytes.Equal(was, spoilt) {
				whole++
			}
		}
		if whole == 0 {
			t.Errorf("killed at %q: the damaged file is nowhere", moment)
		}
	}
}

// statements are those at which a program is killed that changes all of a record.
var statements = []struct{ does, dies string }{
	{"import", "AFTER INSERT ON answers WHEN NEW.n = 4"},
	{"import", "AFTER INSERT ON answers WHEN NEW.n = 53"},
	{"import", "BEFORE DELETE ON states"},
	{"import", "BEFORE INSERT ON states WHEN NEW.task = ''"},
	{"import", "AFTER INSERT ON states WHEN NEW.task = ''"},
	{"refold", "BEFORE DELETE ON states"},
	{"refold", "AFTER DELETE ON states"},
	{"refold", "AFTER INSERT ON states WHEN NEW.task = 'single-depth'"},
	{"forget", "AFTER DELETE ON answers WHEN OLD.n = 2"},
	{"forget", "AFTER DELETE ON states"},
}

// Killed at any statement, an import is there with its summaries or not at all.
func TestChangesKilled(t *testing.T) {
	for _, row := range statements {
		path := filepath.Join(t.TempDir(), "r.db")
		r := open(t, path, "Ada")
		for n := range 3 {
			if err := r.Append(nth(n), schedule.Fold(items)); err != nil {
				t.Fatal(err)
			}
		}
		if err := r.Refold(schedule.Fold(items), rule); err != nil {
			t.Fatal(err)
		}
		r.Close()
		crash(t, path, row.does, "statement: "+row.dies)
		r = open(t, path, "Ada")
		if r.Mended != nil {
			t.Errorf("%s, %s: it was taken for damaged", row.does, row.dies)
		}
		sound(t, r, 3)
		if old, err := r.NeedsRefold(rule); old || err != nil {
			t.Errorf("%s, %s: the summaries are others, %v", row.does, row.dies, err)
		}
	}
}

// Killed at any moment of forgetting: who forgets once more finds nothing left of it, and no
// mending brings anything back once it was deleted.
func TestForgettingKilled(t *testing.T) {
	oneAtATime(t)
	for _, moment := range []string{"the copy is forgotten", "the answers are deleted", "the file is clean"} {
		dir := t.TempDir()
		path := filepath.Join(dir, "r.db")
		withSecrets(t, path, 20).Close()
		open(t, path, "Ada").Close() // there is a copy
		crash(t, path, "forget", moment)
		r := open(t, path, "Ada")
		deleted := moment != "the copy is forgotten"
		if n := len(kept(t, r)); deleted != (n == 0) {
			t.Errorf("killed at %q: %d answers", moment, n)
		}
		r.Close()
		if deleted {
			spoil(t, path, func(b []byte) []byte { copy(b[100:], bytes.Repeat([]byte{0xff}, 500)); return b })
			r = open(t, path, "Ada")
			if n := len(kept(t, r)); n > 0 {
				t.Errorf("killed at %q: a mending brought %d answers back", moment, n)
			}
			r.Close()
		}
		r = open(t, path, "Ada")
		if _, err := r.Forget(); err != nil {
			t.Fatal(err)
		}
		for _, name := range holds(t, dir, secret) {
			if !strings.Contains(name, ".damaged-") {
				t.Errorf("killed at %q, and forgotten once more: %s holds it", moment, name)
			}
		}
	}
}

// Many programs that begin on one damaged record at the same moment: one of them mends it, the
// damaged file is kept, and no acknowledged answer is lost.
func TestManyOnOneDamagedRecord(t *testing.T) {
	rounds := *damages / 8
	if testing.Short() {
		rounds = 1
	}
	for range rounds {
		path := spoilable(t, 100, 60)
		spoilt := spoil(t, path, damageKinds["the list of the tables"].how)
		var wg sync.WaitGroup
		var lock sync.Mutex
		acknowledged := map[string]bool{}
		for range 4 {
			wg.Go(func() {
				out, err := doing(path, "append", "").CombinedOutput()
				if err != nil {
					t.Errorf("%v\n%s", err, out)
				}
				lock.Lock()
				defer lock.Unlock()
				for line := range strings.Lines(string(out)) {
					if code, ok := strings.CutPrefix(strings.TrimSpace(line), "kept "); ok {
						acknowledged[code] = true
					}
				}
			})
		}
		wg.Wait()
		r := open(t, path, "Ada")
		for _, a := range kept(t, r) {
			delete(acknowledged, a.Code)
		}
		if len(acknowledged) > 0 {
			t.Errorf("acknowledged and lost: %v", acknowledged)
		}
		if err := r.Refold(schedule.Fold(items), rule); err != nil { // as every program does first
			t.Fatal(err)
		}
		sound(t, r, 100+4*3)
		found := asides(t, path)
		if len(found) != 1 {
			t.Fatalf("set aside: %v", found)
		}
		if was, err := os.ReadFile(found[0]); err != nil || !bytes.Equal(was, spoilt) {
			t.Errorf("the damaged file was changed, %v", err)
		}
	}
}
