package files

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
)

// everyKill kills the run that finishes an unfinished one too, at each of its steps, and the
// run after that at each of its own.
var everyKill = flag.Bool("every-kill", false, "kill also the third run at each of its steps: a minute")

var errKilled = errors.New("killed")

// killer stops a run before one of its steps and lets none after it come: what the disk
// holds then is what a kill leaves.
type killer struct {
	at    int // from 1; 0 kills nobody
	steps int
	last  string // the step before which it was killed
}

func (k *killer) disk() disk {
	return disk{quick: true, before: func(step, path string) error {
		k.steps++
		if k.at == 0 || k.steps < k.at {
			return nil
		}
		if k.steps == k.at {
			k.last = step + " " + filepath.Base(path)
		}
		return errKilled
	}}
}

// die leaves what a process leaves that is killed: the system closes its files and takes
// its locks, and nothing else is done.
func (f *Staged) die() {
	for file := range f.open {
		file.Close()
	}
	if f.lock != nil {
		f.lock.held.Close()
	}
}

// replaceKilled replaces the files of a folder and is killed on the way.
func replaceKilled(t *testing.T, dir string, k *killer, names ...string) error {
	t.Helper()
	out := Stage(dir)
	out.Sign, out.disk = "unfinished", k.disk()
	err := func() error {
		for _, name := range names {
			if err := out.Write(name, func(w io.Writer) error { _, err := io.WriteString(w, "new"); return err }); err != nil {
				return err
			}
		}
		return out.Commit(true, nil, keyNames)
	}()
	if k.last != "" {
		out.die()
	} else {
		out.Rollback()
	}
	return err
}

// seen is what someone sees in a folder: nothing hidden.
func seen(t *testing.T, dir string) string {
	t.Helper()
	var shown []string
	for _, file := range strings.Fields(holds(t, dir)) {
		if !strings.HasPrefix(file, ".") {
			shown = append(shown, file+" ")
		}
	}
	return strings.Join(shown, "")
}

// neverBoth wants that files of two runs don't stand side by side, and that a folder which
// is between the two says so.
func neverBoth(t *testing.T, dir, when string) {
	t.Helper()
	got := seen(t, dir)
	files := strings.ReplaceAll(strings.ReplaceAll(got, "notes.txt=old ", ""), SignName+"=unfinished\n", "")
	if strings.Contains(files, "=old") && strings.Contains(files, "=new") {
		t.Errorf("%s: old and new side by side: %s", when, got)
	}
	if got != allOld && got != allNew && !strings.Contains(got, SignName) {
		t.Errorf("%s: nothing says that it is unfinished: %s", when, got)
	}
}

// Wherever a run is killed that replaces files, and wherever the run is killed that
// finishes it, the folder is all old or all new in the end. What was gathered only goes.
func TestKilledAtEachStep(t *testing.T) {
	names := []string{"key.pdf", "codes/A.txt", "key.html"}
	base := before(t)
	outcomes := map[string]int{}
	kills, steps := 0, map[string]int{}
	var carryOn func(dir, when string, depth int)
	carryOn = func(dir, when string, depth int) {
		for at := 1; depth > 0; at++ {
			again := copied(t, dir)
			k := &killer{at: at}
			if _, err := mendKilled(again, k); err == nil && k.last == "" {
				break // it had no such step
			}
			kills++
			then := fmt.Sprintf("%s, then before %q", when, k.last)
			neverBoth(t, again, then)
			carryOn(again, then, depth-1)
		}
		m, err := mendKilled(dir, &killer{})
		if err != nil {
			t.Fatalf("%s: %v", when, err)
		}
		got := holds(t, dir)
		if got != allOld && got != allNew || m.Finished && got != allNew || len(m.Aside) > 0 {
			t.Fatalf("%s: %+v, the folder holds %s", when, m, got)
		}
		outcomes[map[bool]string{true: "old", false: "new"}[got == allOld]]++
	}
	depth := 1
	if *everyKill {
		depth = 2
	}
	for at := 1; ; at++ {
		dir := copied(t, base)
		k := &killer{at: at}
		err := replaceKilled(t, dir, k, names...)
		if k.last == "" {
			if err != nil || holds(t, dir) != allNew {
				t.Errorf("without a kill: %v, %s", err, holds(t, dir))
			}
			break
		}
		kills++
		steps[strings.Fields(k.last)[0]]++
		neverBoth(t, dir, k.last)
		carryOn(dir, fmt.Sprintf("killed before step %d, %q", at, k.last), depth)
	}
	t.Logf("%d kills, of the first run before %v; ended old %d, new %d", kills, steps, outcomes["old"], outcomes["new"])
	if outcomes["old"] == 0 || outcomes["new"] == 0 || steps["rename"] < 9 {
		t.Errorf("not every step was tried: %v %v", outcomes, steps)
	}
}

// mendKilled is what the next run does first, and is killed on the way.
func mendKilled(dir string, k *killer) (Mended, error) {
	lock, err := lockFolder(dir)
	if err != nil {
		return Mended{}, err
	}
	defer lock.free()
	return mendLocked(k.disk(), dir)
}

// copied is a folder like another.
func copied(t *testing.T, dir string) string {
	t.Helper()
	to, err := os.MkdirTemp(t.TempDir(), "")
	if err == nil {
		err = os.CopyFS(to, os.DirFS(dir))
	}
	if err != nil {
		t.Fatal(err)
	}
	return to
}

// Two runs don't write into one folder at once, and the second says so and leaves all as it
// is. A folder is free again when a run has ended, however it ended.
func TestTwoRunsOnOneFolder(t *testing.T) {
	dir := before(t)
	first := stage(t, dir, "key.pdf")
	second := Stage(dir)
	if _, _, err := second.Create("key.pdf"); !errors.Is(err, ErrHeld) || !strings.Contains(err.Error(), dir) {
		t.Errorf("while another run writes: %v", err)
	}
	second.Rollback()
	if m, err := Mend(dir); err != nil || m.Finished {
		t.Errorf("a folder that is written to has nothing to finish: %+v, %v", m, err)
	}
	if err := first.Commit(true, nil, keyNames); err != nil {
		t.Fatal(err)
	}
	first.Rollback()
	killed := stage(t, dir, "key.pdf")
	killed.die()
	third := stage(t, dir, "key.pdf") // the file of the lock is there still
	third.Rollback()
	if got := holds(t, dir); got != "codes/A.txt=old key.pdf=new notes.txt=old " {
		t.Errorf("left %s", got)
	}
}

// Of many runs that each want to write one after the other no two do at once.
func TestManyRunsOnOneFolder(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "sheets")
	var inside, most atomic.Int32
	var runs sync.WaitGroup
	for range 8 {
		runs.Go(func() {
			for wrote := 0; wrote < 10; {
				out := Stage(dir)
				err := out.Write("x", func(io.Writer) error {
					if n := inside.Add(1); n > most.Load() {
						most.Store(n)
					}
					runtime.Gosched()
					inside.Add(-1)
					return nil
				})
				if err == nil {
					wrote++
				} else if !errors.Is(err, ErrHeld) && !errors.Is(err, fs.ErrNotExist) { // the folder went with a run that ended
					t.Error(err)
					wrote++
				}
				out.Rollback()
				runtime.Gosched()
			}
		})
	}
	runs.Wait()
	if most.Load() != 1 || holds(t, filepath.Dir(dir)) != "" {
		t.Errorf("%d at once, left %s", most.Load(), holds(t, filepath.Dir(dir)))
	}
}

// Files that an earlier version set aside are named and stay, and the run goes on.
func TestSetAsideIsNamed(t *testing.T) {
	dir := before(t)
	aside := filepath.Join(dir, gatheredIn+"77")
	for _, name := range []string{"old/key-003.pdf", "new/key.pdf"} {
		path := filepath.Join(aside, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte("old"), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	out := stage(t, dir, "key.pdf", "codes/A.txt", "key.html")
	if err := out.Commit(true, nil, keyNames); err != nil {
		t.Fatal(err)
	}
	out.Rollback()
	m, err := Mend(dir)
	if err != nil || m.Finished || len(m.Aside) != 1 || m.Aside[0] != aside || len(out.Mended.Aside) != 1 {
		t.Errorf("%+v, %+v, %v", m, out.Mended, err)
	}
	if got := seen(t, dir); got != allNew || !isThere(filepath.Join(aside, "old", "key-003.pdf")) {
		t.Errorf("the folder holds %s", holds(t, dir))
	}
}

// A plan that reaches out of its folder, or can't be read, is carried out by nobody, and
// what lies there stays.
func TestStrangePlans(t *testing.T) {
	for _, text := range []string{`{"away":["../mine.txt"]}`, `{"in":["/etc/passwd"]}`, `{"in":["."]}`, `{"away":["codes/../../x"]}`, `{"away`, ``} {
		parent := t.TempDir()
		dir := filepath.Join(parent, "sheets")
		tmp := filepath.Join(dir, gatheredIn+"1")
		if err := os.MkdirAll(tmp, 0o700); err != nil {
			t.Fatal(err)
		}
		for path, text := range map[string]string{filepath.Join(tmp, planName): text, filepath.Join(parent, "mine.txt"): "mine"} {
			if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		var unfinished *UnfinishedError
		if _, err := Mend(dir); !errors.As(err, &unfinished) || !strings.Contains(err.Error(), planName) {
			t.Errorf("%s: %v", text, err)
		}
		if got := holds(t, parent); !strings.HasPrefix(got, "mine.txt=mine sheets/.scratchpass-1/plan.json=") {
			t.Errorf("%s: left %s", text, got)
		}
	}
}

// Who may not write into a folder learns that, and an unfinished one says that it is one.
func TestReadOnlyFolder(t *testing.T) {
	if os.Getuid() == 0 || os.PathSeparator != '/' {
		t.Skip("root may write anywhere, and the modes are those of Unix")
	}
	dir := before(t)
	if err := os.Chmod(dir, 0o500); err != nil {
		t.Fatal(err)
	}
	defer os.Chmod(dir, 0o700)
	out := Stage(dir)
	if _, _, err := out.Create("key.pdf"); !errors.Is(err, fs.ErrPermission) {
		t.Error(err)
	}
	out.Rollback()
	if got := holds(t, dir); got != allOld {
		t.Error(got)
	}
}

// A sign that someone else put up, and a folder in the place of a file, stay.
func TestOthersThingsInTheFolder(t *testing.T) {
	dir := before(t)
	if err := os.WriteFile(filepath.Join(dir, SignName), []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	out := stage(t, dir, "key.pdf", "codes/A.txt", "key.html")
	out.Sign = "unfinished"
	if err := out.Commit(true, nil, keyNames); err != nil {
		t.Fatal(err)
	}
	out.Rollback()
	if got := holds(t, dir); got != SignName+"=mine "+allNew {
		t.Error(got)
	}
	if err := os.MkdirAll(filepath.Join(dir, "key-002.pdf", "mine"), 0o700); err != nil {
		t.Fatal(err)
	}
	out = stage(t, dir, "key-002.pdf")
	err := out.Commit(true, nil, keyNames)
	out.Rollback()
	if err == nil || !strings.Contains(err.Error(), "is a folder") || !isThere(filepath.Join(dir, "key-002.pdf", "mine")) {
		t.Errorf("%v, %s", err, holds(t, dir))
	}
}
