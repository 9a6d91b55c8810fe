package record_test

import (
	"bufio"
	"bytes"
	"database/sql"
	"errors"
	"flag"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"

	"scratchpass/lessons/mastery"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/answer"
)

var killed = flag.Int("kills", 120, "how often the program is killed while it writes")

var items = []schedule.Item{{Task: "single-depth", Minutes: 1}, {Task: "radius-dial-plunge", SafetyCritical: true, Rule: mastery.Rule{SafetyCritical: true}, Minutes: 1}}

func nthAnswer(i int) record.Answer {
	return record.Answer{
		At: time.UnixMilli(1_700_000_000_000 + int64(i)*60_000), Task: "single-depth", Code: fmt.Sprintf("single-depth@1-%04x", i),
		Given: "0.0613", Verdict: "right", Points: 1, Seconds: 30, Key: fmt.Sprint(i), Content: "00000000",
	}
}

func open(t testing.TB, path, learner string) *record.Record {
	t.Helper()
	r, err := record.Open(path, learner)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { r.Close() })
	return r
}

func count(t testing.TB, r *record.Record) int {
	t.Helper()
	n := 0
	for _, err := range r.Answers(0) {
		if err != nil {
			t.Fatal(err)
		}
		n++
	}
	return n
}

func TestAppendAndReadBack(t *testing.T) {
	path := filepath.Join(t.TempDir(), "new", "folder with ? and #", "record.db")
	r, fold := open(t, path, "Ada"), schedule.Fold(items)
	for i := range 20 {
		a := nthAnswer(i)
		if i%4 == 3 {
			a.Verdict, a.Slip, a.Certainty, a.Hint = answer.KnownError, "double", answer.Bet, true
		}
		if err := r.Append(a, fold); err != nil {
			t.Fatal(err)
		}
	}
	all, n, err := r.Summaries()
	if s := all["single-depth"]; err != nil || n != 20 || s.Answers != 20 || s.Right != 15 || s.Slips["double"] != 5 || s.Seconds != 600 || s.SureWrong.IsZero() {
		t.Errorf("%+v, %d, %v", all, n, err)
	}
	last := record.Answer{}
	for a, err := range r.Answers(3) {
		if err != nil {
			t.Fatal(err)
		}
		last = a
	}
	if last.Code != "single-depth@1-0013" || last.Learner != "Ada" || !last.At.Equal(nthAnswer(19).At) {
		t.Errorf("%+v", last)
	}
	// Another learner on the same machine has a record of his own.
	if n := count(t, open(t, path, "Ben")); n != 0 {
		t.Errorf("%d answers of someone else", n)
	}
	if runtime.GOOS != "windows" {
		for _, p := range []string{path, path + "-wal"} {
			info, err := os.Stat(p)
			if err != nil || info.Mode().Perm()&0o077 != 0 {
				t.Errorf("%s: %v %v", p, info.Mode(), err)
			}
		}
	}
}

func TestPlaces(t *testing.T) {
	r := open(t, filepath.Join(t.TempDir(), "r.db"), "Ada")
	if _, ok, err := r.Place("dial-book"); ok || err != nil {
		t.Error(ok, err)
	}
	for _, part := range []int{1, 3} {
		if err := r.SetPlace("dial-book", part); err != nil {
			t.Fatal(err)
		}
	}
	if part, ok, err := r.Place("dial-book"); part != 3 || !ok || err != nil {
		t.Error(part, ok, err)
	}
	if err := r.SetPlace("dial-book", -1); err != nil {
		t.Fatal(err)
	}
	if _, ok, _ := r.Place("dial-book"); ok {
		t.Error("a finished lesson has a place")
	}
}

// What is exported can be read in elsewhere, twice without harm, and comes to the
// same.
func TestExportAndImport(t *testing.T) {
	fold := schedule.Fold(items)
	from := open(t, filepath.Join(t.TempDir(), "a.db"), "Ada")
	for i := range 50 {
		if err := from.Append(nthAnswer(i), fold); err != nil {
			t.Fatal(err)
		}
	}
	var out bytes.Buffer
	if n, err := from.Export(&out); n != 50 || err != nil {
		t.Fatal(n, err)
	}
	to := open(t, filepath.Join(t.TempDir(), "b.db"), "Ada at home")
	for _, want := range [][2]int{{50, 0}, {0, 50}} {
		added, known, err := to.Import(strings.NewReader(out.String()), fold)
		if err != nil || added != want[0] || known != want[1] {
			t.Fatal(added, known, err)
		}
	}
	a, _, _ := from.Summaries()
	b, n, err := to.Summaries()
	if err != nil || n != 50 || fmt.Sprint(a["single-depth"].State) != fmt.Sprint(b["single-depth"].State) || !a["single-depth"].Card.Due.Equal(b["single-depth"].Card.Due) {
		t.Errorf("%+v\n%+v", a, b)
	}
	for _, bad := range []string{"{\"task\":\"x\"}\n", "not json\n", out.String() + "{\n", strings.Repeat("x", 100_000)} {
		before := count(t, to)
		if _, _, err := to.Import(strings.NewReader(bad), fold); err == nil || !strings.Contains(err.Error(), "nothing was read in") {
			t.Errorf("%.20q: %v", bad, err)
		}
		if count(t, to) != before {
			t.Errorf("%.20q: something was read in", bad)
		}
	}
}

// Forgetting deletes: the words that were typed are nowhere in the files.
func TestForgetReallyDeletes(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "r.db")
	r, fold := open(t, path, "Ada"), schedule.Fold(items)
	for i := range 500 {
		a := nthAnswer(i)
		a.Given = "SECRETWORD"
		if err := r.Append(a, fold); err != nil {
			t.Fatal(err)
		}
	}
	ben := open(t, path, "Ben")
	if err := ben.Append(nthAnswer(1), fold); err != nil {
		t.Fatal(err)
	}
	ben.Close()
	if n, err := r.Forget(); n != 500 || err != nil {
		t.Fatal(n, err)
	}
	err := filepath.WalkDir(dir, func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := os.ReadFile(p)
		if bytes.Contains(text, []byte("SECRETWORD")) {
			t.Errorf("%s still holds it", p)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	if n := count(t, open(t, path, "Ben")); n != 1 {
		t.Errorf("%d answers of the other learner are left", n)
	}
}

// A record from the first form opens, keeps its answers and gets summaries.
func TestFirstFormOpens(t *testing.T) {
	path := filepath.Join(t.TempDir(), "old.db")
	script, err := os.ReadFile("testdata/first-form.sql")
	if err != nil {
		t.Fatal(err)
	}
	db, err := sql.Open("sqlite", path)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := db.Exec(string(script)); err != nil {
		t.Fatal(err)
	}
	db.Close()
	r := open(t, path, "Ada")
	if n := count(t, r); n != 3 {
		t.Errorf("%d answers", n)
	}
	if old, err := r.NeedsRefold(); !old || err != nil {
		t.Error(old, err)
	}
	if err := r.Refold(schedule.Fold(items)); err != nil {
		t.Fatal(err)
	}
	if all, n, err := r.Summaries(); n != 3 || all["single-depth"].Right != 2 || err != nil {
		t.Error(all, n, err)
	}
}

// A file of a newer program is left alone.
func TestNewerFormIsRefused(t *testing.T) {
	path := filepath.Join(t.TempDir(), "new.db")
	open(t, path, "Ada").Close()
	db, err := sql.Open("sqlite", path)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := db.Exec("PRAGMA user_version = 99"); err != nil {
		t.Fatal(err)
	}
	db.Close()
	if _, err := record.Open(path, "Ada"); err == nil || !strings.Contains(err.Error(), "newer program") {
		t.Error(err)
	}
}

// A damaged file is set aside, whole, and a new one begun.
func TestDamagedFileIsSetAside(t *testing.T) {
	for name, spoil := range map[string]func([]byte) []byte{
		"no database": func([]byte) []byte { return []byte(strings.Repeat("this is no database ", 500)) },
		"torn header": func(b []byte) []byte { copy(b[20:], "xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx"); return b },
		"torn schema": func(b []byte) []byte { copy(b[100:], bytes.Repeat([]byte{0xff}, 1000)); return b },
	} {
		path := filepath.Join(t.TempDir(), "r.db")
		r := open(t, path, "Ada")
		for i := range 100 {
			if err := r.Append(nthAnswer(i), nil); err != nil {
				t.Fatal(err)
			}
		}
		r.Close()
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		spoilt := spoil(text)
		if err := os.WriteFile(path, spoilt, 0o600); err != nil {
			t.Fatal(err)
		}
		r, err = record.Open(path, "Ada")
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if r.SetAside == "" {
			t.Errorf("%s: nothing was set aside", name)
			r.Close()
			continue
		}
		kept, err := os.ReadFile(r.SetAside)
		if err != nil || !bytes.Equal(kept, spoilt) {
			t.Errorf("%s: what was set aside is not what was there (%v)", name, err)
		}
		if err := r.Append(nthAnswer(1), nil); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		r.Close()
	}
}

// helper runs this test binary as another process that writes answers.
func helper(t *testing.T, path, learner string, n int) *exec.Cmd {
	t.Helper()
	cmd := exec.Command(os.Args[0], "-test.run", "^TestWriterProcess$")
	cmd.Env = append(os.Environ(), "RECORD_WRITER="+path, "RECORD_LEARNER="+learner, fmt.Sprintf("RECORD_COUNT=%d", n))
	return cmd
}

// TestWriterProcess is no test: it is the other process of the tests below. It says
// each answer after it was acknowledged.
func TestWriterProcess(t *testing.T) {
	path := os.Getenv("RECORD_WRITER")
	if path == "" {
		t.Skip("only run by other tests")
	}
	var n, from int
	fmt.Sscan(os.Getenv("RECORD_COUNT"), &n)
	fmt.Sscan(os.Getenv("RECORD_FROM"), &from) // each life has answers of its own
	r, err := record.Open(path, os.Getenv("RECORD_LEARNER"))
	if err != nil {
		t.Fatal(err)
	}
	fold := schedule.Fold(items)
	for i := range n {
		if err := r.Append(nthAnswer(from+i), fold); err != nil {
			t.Fatal(err)
		}
		os.Stdout.WriteString(fmt.Sprintf("kept %d\n", i))
	}
	r.Close()
}

// Two processes that write at once lose nothing.
func TestTwoProcessesLoseNothing(t *testing.T) {
	n := 10_000
	if testing.Short() {
		n = 500
	}
	path := filepath.Join(t.TempDir(), "r.db")
	var wg sync.WaitGroup
	for _, learner := range []string{"Ada", "Ben"} {
		wg.Add(1)
		go func() {
			defer wg.Done()
			if out, err := helper(t, path, learner, n).CombinedOutput(); err != nil {
				t.Errorf("%s: %v\n%.2000s", learner, err, out)
			}
		}()
	}
	wg.Wait()
	for _, learner := range []string{"Ada", "Ben"} {
		r := open(t, path, learner)
		if got := count(t, r); got != n {
			t.Errorf("%s: %d of %d answers", learner, got, n)
		}
		if all, items, err := r.Summaries(); err != nil || items != n || all["single-depth"].Answers != n {
			t.Errorf("%s: %d counted, %v", learner, items, err)
		}
	}
}

// A program that is killed at any moment loses no answer that was acknowledged, and
// the file stays sound.
func TestKilledProcessLosesNothing(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("kills with SIGKILL")
	}
	kills := *killed
	if testing.Short() {
		kills = 15
	}
	path := filepath.Join(t.TempDir(), "r.db")
	acknowledged, early := 0, 0
	for i := range kills {
		cmd := helper(t, path, "Ada", 100_000)
		cmd.Env = append(cmd.Env, fmt.Sprintf("RECORD_FROM=%d", i*100_000))
		out, err := cmd.StdoutPipe()
		if err != nil {
			t.Fatal(err)
		}
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		said := bufio.NewScanner(out)
		if i%5 == 4 {
			// Now and then it dies while it starts or opens the file: how far it
			// gets is its affair.
			time.Sleep(time.Duration(i*7%60) * time.Millisecond)
			early++
		} else {
			// The others die after so many answers, and a little into the next
			// one: counted, so that a slow machine tests the same.
			for n := 1 + i*7%60; n > 0 && said.Scan(); {
				if strings.HasPrefix(said.Text(), "kept ") {
					n--
					acknowledged++
				}
			}
			time.Sleep(time.Duration(i*37%400) * time.Microsecond)
		}
		_ = cmd.Process.Kill()
		for said.Scan() { // what it had said before it died counts too
			if strings.HasPrefix(said.Text(), "kept ") {
				acknowledged++
			}
		}
		_ = cmd.Wait()
	}
	r := open(t, path, "Ada")
	kept := count(t, r)
	if kept < acknowledged || kept > acknowledged+kills {
		t.Errorf("%d answers are there, %d were acknowledged in %d lives", kept, acknowledged, kills)
	}
	if all, n, err := r.Summaries(); err != nil || n != kept || all["single-depth"].Answers != kept {
		t.Errorf("summaries count %d of %d, %v", n, kept, err)
	}
	if acknowledged < kills-early {
		t.Errorf("only %d answers were acknowledged in %d lives, %d of them cut short: the other process doesn't write", acknowledged, kills, early)
	}
	t.Logf("%d answers acknowledged over %d kills", acknowledged, kills)
}

// A full disk is an error that says so, and what was acknowledged before is there.
func TestFullDisk(t *testing.T) {
	dir := t.TempDir()
	if err := exec.Command("mount", "-t", "tmpfs", "-o", "size=1m", "tmpfs", dir).Run(); err != nil {
		t.Skip("can't make a small disk here: ", err)
	}
	defer exec.Command("umount", dir).Run()
	path := filepath.Join(dir, "r.db")
	r := open(t, path, "Ada")
	acknowledged, failed := 0, error(nil)
	for i := range 50_000 {
		a := nthAnswer(i)
		a.Given = strings.Repeat("x", 200)
		if err := r.Append(a, schedule.Fold(items)); err != nil {
			failed = err
			break
		}
		acknowledged++
	}
	if failed == nil || !strings.Contains(failed.Error(), "could not be kept") {
		t.Fatalf("%d answers, %v", acknowledged, failed)
	}
	r.Close()
	r, err := record.Open(path, "Ada")
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	if n := count(t, r); n < acknowledged {
		t.Errorf("%d of %d answers", n, acknowledged)
	}
}

func TestOpenWhereNothingCanBeWritten(t *testing.T) {
	if _, err := record.Open(filepath.Join(t.TempDir(), "file", "x"), "Ada"); err != nil {
		t.Error(err)
	}
	blocked := filepath.Join(t.TempDir(), "blocked")
	if err := os.WriteFile(blocked, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := record.Open(filepath.Join(blocked, "r.db"), "Ada"); err == nil || errors.Is(err, os.ErrNotExist) {
		t.Error(err)
	}
}

// BenchmarkNextItem chooses what comes next from a record of 100,000 answers.
func BenchmarkNextItem(b *testing.B) {
	path := filepath.Join(b.TempDir(), "r.db")
	fill(b, path, 100_000)
	info, err := os.Stat(path)
	if err != nil {
		b.Fatal(err)
	}
	defer b.ReportMetric(float64(info.Size())/1e6, "MB")
	for b.Loop() {
		r, err := record.Open(path, "Ada")
		if err != nil {
			b.Fatal(err)
		}
		of, _, err := r.Summaries()
		if err != nil {
			b.Fatal(err)
		}
		if _, ok := schedule.Next(items, of, nil, time.Now()); !ok {
			b.Fatal("nothing to practise")
		}
		r.Close()
	}
}

func BenchmarkAppend(b *testing.B) {
	r := open(b, filepath.Join(b.TempDir(), "r.db"), "Ada")
	fold := schedule.Fold(items)
	i := 0
	for b.Loop() {
		if err := r.Append(nthAnswer(i), fold); err != nil {
			b.Fatal(err)
		}
		i++
	}
}

// fill writes a record by way of an import: one transaction.
func fill(b *testing.B, path string, n int) {
	b.Helper()
	r, err := record.Open(path, "Ada")
	if err != nil {
		b.Fatal(err)
	}
	defer r.Close()
	var lines strings.Builder
	for i := range n {
		fmt.Fprintf(&lines, `{"at":%q,"task":"task-%d","code":"task-%d@1-%08x","given":"0.0613 in","verdict":"right","points":1,"seconds":42.5,"form":"outside","key":"0.0613 in","content":"0123abcd"}`+"\n",
			nthAnswer(i).At.Format(time.RFC3339Nano), i%94, i%94, i)
	}
	if _, _, err := r.Import(strings.NewReader(lines.String()), schedule.Fold(items)); err != nil {
		b.Fatal(err)
	}
}

// Many programs that begin one record at the same moment all get it open.
func TestBegunByManyAtOnce(t *testing.T) {
	for range 12 {
		path := filepath.Join(t.TempDir(), "r.db")
		var wg sync.WaitGroup
		for i := range 12 {
			wg.Add(1)
			go func() {
				defer wg.Done()
				if out, err := helper(t, path, fmt.Sprint("learner ", i), 0).CombinedOutput(); err != nil {
					t.Errorf("%v\n%.500s", err, out)
				}
			}()
		}
		wg.Wait()
	}
}
