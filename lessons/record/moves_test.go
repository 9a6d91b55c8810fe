package record_test

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"scratchpass/lessons/postgres/postgrestest"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/answer"
)

// logsOf are a learner's logs, a line a log.
func logsOf(t *testing.T, r *record.Record) string {
	t.Helper()
	logs, err := r.Logs()
	if err != nil {
		t.Fatal(err)
	}
	var all []string
	for _, l := range logs {
		all = append(all, fmt.Sprintf("%s%s %q %d", l.Job, l.JobSum, l.Text, l.At.UnixMilli()))
	}
	return strings.Join(all, "\n")
}

// begun is a new log of a job at hand.
func begun(t *testing.T, r *record.Record, job string) (*record.Moves, int64) {
	t.Helper()
	m := r.Moves(job, "")
	id, err := m.New()
	if err != nil {
		t.Fatal(err)
	}
	if l, err := m.Use(id); err != nil || l.Text != "" {
		t.Fatal(l, err)
	}
	return m, id
}

func appends(t *testing.T, m *record.Moves, at int64, lines ...string) {
	t.Helper()
	if err := m.Append(time.UnixMilli(at), lines...); err != nil {
		t.Fatal(lines, err)
	}
}

// Moves are kept in order, each learner's and each job's apart; the log of an earlier rehearsal stays
// when another is begun, whole, and so do those of other jobs.
func TestMoves(t *testing.T) {
	at := place(t)
	ada, ben := open(t, at, "Ada"), open(t, at, "Ben")
	if l, err := ada.Moves("stud", "").Newest(); l.ID != 0 || err != nil {
		t.Fatal(l, err)
	}
	stud, first := begun(t, ada, "stud")
	if got := logsOf(t, ada); got != "" {
		t.Error("a rehearsal without a move takes a place: ", got)
	}
	appends(t, stud, 1, "job stud", "key out")
	nut, _ := begun(t, ben, "nut")
	appends(t, nut, 1, "job nut", "start")
	for i := range 12 {
		appends(t, stud, int64(2+i), fmt.Sprint("wait ", i))
	}
	appends(t, stud, 20, "close on 1", "run")
	want := `stud "job stud\nkey out\nwait 0\nwait 1\nwait 2\nwait 3\nwait 4\nwait 5\nwait 6\nwait 7\nwait 8\nwait 9\nwait 10\nwait 11\nclose on 1\nrun\n" 20`
	if got := logsOf(t, ada); got != want {
		t.Error(got)
	}
	if l, err := ada.Moves("stud", "").Newest(); l.ID != first || err != nil || l.At.UnixMilli() != 20 {
		t.Error(l, err)
	}
	other, _ := begun(t, ada, "nut")
	appends(t, other, 21, "job nut", "start")
	second, id := begun(t, ada, "stud")
	appends(t, second, 22, "job stud", "dress")
	if got := logsOf(t, ada); got != want+"\nnut \"job nut\\nstart\\n\" 21\nstud \"job stud\\ndress\\n\" 22" {
		t.Error(got)
	}
	var rows int
	if err := ada.QueryRow("SELECT COUNT(*) FROM moves WHERE learner = 'Ada'", &rows); rows != 1+2+2 || err != nil {
		t.Error("the earlier log lies in many rows: ", rows, err)
	}
	if l, err := ada.Moves("stud", "").Newest(); l.ID != id || err != nil {
		t.Error(l, err)
	}
	if l, err := ada.Moves("stud", "sum").Newest(); l.ID != 0 || err != nil {
		t.Error("a job of that name with a text of its own is another: ", l, err)
	}
	if got := logsOf(t, ben); got != `nut "job nut\nstart\n" 1` {
		t.Error(got)
	}
}

// Of two programs with one log the one that is behind hears so, and its move is not there; so does who
// has a log that goes on under another name, or after which another was begun.
func TestMovesNeverMix(t *testing.T) {
	at := place(t)
	here, id := begun(t, open(t, at, "Ada"), "stud")
	r := open(t, at, "Ada")
	there := r.Moves("stud", "")
	use := func(id int64) {
		t.Helper()
		if _, err := there.Use(id); err != nil {
			t.Fatal(err)
		}
	}
	elsewhere := func(m *record.Moves, why string) {
		t.Helper()
		before := logsOf(t, r)
		if err := m.Append(time.UnixMilli(9), "late"); !errors.Is(err, record.ErrElsewhere) {
			t.Error(why, err)
		}
		if got := logsOf(t, r); got != before {
			t.Error(why, got)
		}
	}
	use(id)
	appends(t, here, 1, "job stud", "key out")
	elsewhere(there, "begun by both: ")
	use(id)
	appends(t, there, 2, "start")
	elsewhere(here, "gone on with by both: ")
	renewed, err := there.Renew(id)
	if err != nil || renewed <= id {
		t.Fatal(renewed, err)
	}
	elsewhere(there, "under another name: ")
	if _, err := there.Renew(id); !errors.Is(err, record.ErrElsewhere) {
		t.Error("renewed twice: ", err)
	}
	use(renewed)
	appends(t, there, 3, "stop")
	later, _ := begun(t, open(t, at, "Ada"), "nut")
	appends(t, later, 4, "job nut", "start")
	elsewhere(there, "after another was begun: ")
	early := r.Moves("stud", "")
	if _, err := early.Use(id); err != nil {
		t.Fatal(err)
	}
	elsewhere(early, "begun after a later one: ")
}

// How far a rehearsal is tells its moments apart, and only while it goes on.
func TestMovesTellWhereOneIs(t *testing.T) {
	r := open(t, place(t), "Ada")
	m, _ := begun(t, r, "stud")
	seen := map[string]bool{}
	step := func(do error) {
		t.Helper()
		now, err := r.Sittings().At()
		if err != nil || do != nil || seen[now] {
			t.Fatal(now, err, do, seen)
		}
		seen[now] = true
	}
	step(nil)
	step(r.Sittings().Restart([]byte("{}")))
	step(m.Append(time.Now(), "job stud", "key out"))
	step(m.Append(time.Now(), "start"))
	step(m.Append(time.Now(), "stop", "start"))
	next, _ := begun(t, r, "stud")
	step(next.Append(time.Now(), "job stud", "key out"))
	if err := r.Sittings().ClearAll(); err != nil {
		t.Fatal(err)
	}
	if now, err := r.Sittings().At(); now != "" || err != nil {
		t.Error(now, err)
	}
}

// Moves that were kept, which the program did not hear of, are kept once when they are tried again;
// two alike are two, and others are told of.
func TestMovesKeptUnheard(t *testing.T) {
	r := open(t, place(t), "Ada")
	m, id := begun(t, r, "stud")
	m.UnheardMoves("job stud", "wait 1")
	appends(t, m, 2, "job stud", "wait 1")
	appends(t, m, 3, "wait 1")
	m.UnheardMoves("wait 2", "wait 3")
	for _, others := range [][]string{{"wait 2"}, {"wait 2", "wait 4"}, {"wait 2", "wait 3", "wait 4"}} {
		again := r.Moves("stud", "")
		if _, err := again.Use(id); err != nil {
			t.Fatal(err)
		}
		again.Behind(2)
		if err := again.Append(time.UnixMilli(4), others...); !errors.Is(err, record.ErrElsewhere) {
			t.Error(others, err)
		}
	}
	appends(t, m, 5, "wait 2", "wait 3")
	if got := logsOf(t, r); got != `stud "job stud\nwait 1\nwait 1\nwait 2\nwait 3\n" 1` {
		t.Error(got)
	}
}

// What is lost on the way back from the database, or cut off on the way there, is kept once.
func TestMovesThroughABadLine(t *testing.T) {
	at := postgrestest.Address(t)
	way := postgrestest.Through(t, at)
	r := open(t, way.Address, "Ada")
	m, _ := begun(t, r, "stud")
	for i := range 6 {
		lines := []string{fmt.Sprint("wait ", i)}
		if i == 0 {
			lines = []string{"job stud", "wait 0"}
		}
		switch i % 3 {
		case 0:
			way.LoseCommits(1)
		case 1:
			way.Cut()
		}
		err := m.Append(time.UnixMilli(int64(i)), lines...)
		for tries := 0; err != nil && tries < 5; tries++ {
			if !record.Passes(err) {
				t.Fatal(err)
			}
			way.Mend()
			err = m.Append(time.UnixMilli(int64(i)), lines...)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	if got := logsOf(t, open(t, at, "Ada")); !strings.HasPrefix(got, `stud "job stud\nwait 0\nwait 1\nwait 2\nwait 3\nwait 4\nwait 5\n"`) {
		t.Error(got)
	}
}

// Logs are exported, in lines that an import reads and leaves out, are copied with all else, and are
// forgotten with it.
func TestMovesExportCopyForget(t *testing.T) {
	r := fresh(t, 2)
	m, _ := begun(t, r, "stud")
	long := "as " + strings.Repeat("x", 20_000)
	appends(t, m, 1, "job stud", long)
	for range 300 {
		appends(t, m, 2, strings.Repeat("cross in 0.001 ", 8))
	}
	var out bytes.Buffer
	if x, err := r.Export(&out); err != nil || x.Answers != 2 || x.Rehearsals != 0 {
		t.Fatal(x, err)
	}
	for _, text := range strings.Split(out.String(), "\n") {
		if len(text) > 30_000 {
			t.Error("a line of ", len(text))
		}
	}
	if n := strings.Count(out.String(), `"moves":"`); n != 5 { // the head; the long line; 300 lines of 121 bytes, 135 a part
		t.Error("parts: ", n)
	}
	other := open(t, place(t), "Ada")
	got, err := other.Import(&out, func(a record.Answer) (record.Answer, error) { a.Verdict = answer.Right; return a, nil }, schedule.Fold(items), time.Now())
	if err != nil || got.Added != 2 || len(got.LeftOut) > 0 {
		t.Error(got, err)
	}
	if logs := logsOf(t, other); logs != "" {
		t.Error(logs)
	}
	copied := open(t, place(t), "Ada")
	if err := r.CopyTo(copied); err != nil {
		t.Fatal(err)
	}
	if a, b := logsOf(t, r), logsOf(t, copied); a != b || len(a) < 50_000 {
		t.Error("the copy differs")
	}
	if err := r.CopyTo(copied); !errors.Is(err, record.ErrNotEmpty) {
		t.Error(err)
	}
	if _, err := copied.Forget(); err != nil {
		t.Fatal(err)
	}
	if logs := logsOf(t, copied); logs != "" {
		t.Error("not forgotten: ", logs)
	}
}
