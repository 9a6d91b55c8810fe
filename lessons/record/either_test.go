package record_test

import (
	"bytes"
	"database/sql"
	"errors"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"scratchpass/lessons/postgres/postgrestest"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
)

// onServer is whether tests keep their records on a server.
var onServer bool

// place is where a record may be begun: a file, or a server that has none.
func place(t testing.TB) string {
	t.Helper()
	if onServer {
		return postgrestest.Address(t)
	}
	return filepath.Join(t.TempDir(), "r.db")
}

// either are the tests of what a record is, wherever it is kept.
var either = map[string]func(*testing.T){
	"append": TestAppendAndReadBack, "fold": TestAppendFolds, "numbers": TestAppendNumbersAnswers, "broken off": TestAnswersBrokenOff,
	"at once": TestManyAtOnce, "once": TestTwiceIsOnce, "days": TestDays, "sittings": TestSittings, "sitting unsure": TestLineKeptUnheard,
	"sitting forgotten": TestForgetForgetsTheSitting, "places": TestPlaces, "mixed tests": TestLastTest, "situations": TestSituations,
	"export and import": TestExportAndImport, "fields": TestExportHasTheseFields, "import again": TestImportLeavesOutWhatIsThere,
	"import in order": TestImportFoldsInOrder, "marked anew": TestImportMarksAnew, "import errors": TestImportErrors,
	"rehearsals": TestRehearsalsAreKept, "rehearsals forgotten": TestRehearsalsExportForgetImport, "rehearsal errors": TestRehearsalImportErrors,
	"killed": TestKilledProcessLosesNothing, "killed at random": TestKilledAtRandom, "two programs": TestTwoProcessesLoseNothing,
	"begun by many": TestBegunByManyAtOnce, "rehearsals killed": TestRehearsalsKilledAtRandom,
	"moves": TestMoves, "moves at two": TestMovesNeverMix, "moves tell": TestMovesTellWhereOneIs, "moves unsure": TestMovesKeptUnheard,
	"moves exported": TestMovesExportCopyForget,
	"refold":         TestRefoldComesToTheSame, "zones": TestDaysAreThoseOfTheirPlace, "clock set back": TestClockSetBack, "needs refold": TestNeedsRefold,
}

// atOnce are those of them in which several write at once: the short run, which looks for races, has
// these alone.
var atOnce = map[string]bool{"at once": true, "two programs": true, "moves at two": true, "moves unsure": true}

// What a file alone has is tested for files alone: a journal of SQLite's that a killed program has
// left, damage and its mending, the copy of a day, a file that can't grow or be written, locks beside
// it. Those are the server's on a server, and what of them is ours is in TestServerFaults.

func TestOnAServer(t *testing.T) {
	postgrestest.Address(t) // or there is none
	onServer = true
	defer func() { onServer = false }()
	for name, test := range either {
		if !testing.Short() || atOnce[name] {
			t.Run(name, test)
		}
	}
}

// Programs that keep answers of one learner at once, and make the summaries anew meanwhile, lose
// none and count each once, in numbers without a gap.
func TestManyAtOnce(t *testing.T) {
	at, fold := place(t), schedule.Fold(items)
	var all sync.WaitGroup
	for program := range 4 {
		r := open(t, at, "Ada")
		all.Go(func() {
			for i := range 15 {
				if err := r.Append(nth(program*100+i), fold); err != nil {
					t.Error(err)
				}
				if i == 7 {
					if err := r.Refold(fold, rule); err != nil {
						t.Error(err)
					}
				}
			}
		})
	}
	all.Wait()
	r := open(t, at, "Ada")
	sound(t, r, 60)
	var numbers int
	if err := r.QueryRow("SELECT MAX(n) FROM answers", &numbers); numbers != 60 || err != nil {
		t.Error(numbers, err)
	}
	if needs, err := r.NeedsRefold(rule); needs || err != nil {
		t.Error(needs, err)
	}
}

// A line that was kept, which the program did not hear of, is kept once when it is tried again;
// two lines alike are two.
func TestLineKeptUnheard(t *testing.T) {
	s := open(t, place(t), "Ada").Sittings()
	for _, err := range []error{s.Restart([]byte("0")), s.Append([]byte("yes")), s.Append([]byte("yes"))} {
		if err != nil {
			t.Fatal(err)
		}
	}
	s.Unheard([]byte("no"))
	for _, line := range []string{"no", "no"} {
		if err := s.Append([]byte(line)); err != nil {
			t.Fatal(err)
		}
	}
	if got := linesOf(t, s); got != "0 yes yes no no" {
		t.Error(got)
	}
}

// filled is a record of Ada's with something of everything.
func filled(t *testing.T, at string) *record.Record {
	t.Helper()
	r := withRehearsals(t, at, 3)
	for n := range 700 { // more than are read at a time
		a := nth(n)
		a.Hint = n%7 == 0
		a.Seconds = float64(n) / 8
		a.Given = strings.Repeat("0,0613 \"in\" \u00b5 ", 1+n%3)
		a.At = a.At.In(time.FixedZone("", (n%5)*3600))
		if err := r.Append(a, nil); err != nil {
			t.Fatal(err)
		}
	}
	if err := r.Refold(schedule.Fold(items), rule); err != nil {
		t.Fatal(err)
	}
	m, _ := begun(t, r, "stud")
	appends(t, m, 3, "job stud", "dress")
	for _, err := range []error{r.AddTest(record.Test{At: time.UnixMilli(5), Got: 3, Of: 12}), r.AddTest(record.Test{At: time.UnixMilli(5), Got: 11, Of: 12}),
		r.SetPlace("dial-book", 2), r.SetPlace("thread-shape", 1), r.Sittings().Restart([]byte("{}")), r.Sittings().Append([]byte("x"))} {
		if err != nil {
			t.Fatal(err)
		}
	}
	return r
}

// A record that is copied from a file to a server and back is the same to the byte, and so is all
// that it comes to. What is there is not mixed with it.
func TestCopyThereAndBack(t *testing.T) {
	oneAtATime(t)
	a := filled(t, filepath.Join(t.TempDir(), "a.db"))
	b := open(t, postgrestest.Address(t), "Ada")
	c := open(t, filepath.Join(t.TempDir(), "c.db"), "Ada")
	if err := errors.Join(a.CopyTo(b), b.CopyTo(c)); err != nil {
		t.Fatal(err)
	}
	want := all(t, a)
	for name, r := range map[string]*record.Record{"server": b, "back": c} {
		if got := all(t, r); !reflect.DeepEqual(got, want) {
			t.Errorf("%s: %.300q\nwant %.300q", name, got, want)
		}
	}
	if err := a.CopyTo(b); !errors.Is(err, record.ErrNotEmpty) {
		t.Error("copied twice: ", err)
	}
	if err := b.CopyTo(b); !errors.Is(err, record.ErrNotEmpty) {
		t.Error("copied onto itself: ", err)
	}
	if ben := open(t, filepath.Join(t.TempDir(), "d.db"), "Ben"); !says(a.CopyTo(ben), `"Ben"`) {
		t.Error("copied under another name")
	}
	if err := a.Append(nth(9000), schedule.Fold(items)); err != nil { // it goes on
		t.Fatal(err)
	}
	if got := all(t, b); !reflect.DeepEqual(got, want) {
		t.Error("the copy changed")
	}
	r, err := record.OpenChecked(c.Path(), "Ada")
	if err != nil || r.Mended != nil {
		t.Error("the file that came of it: ", err)
	}
}

// all is everything that a record tells.
func all(t *testing.T, r *record.Record) []string {
	t.Helper()
	var out bytes.Buffer
	if _, err := r.Export(&out); err != nil {
		t.Fatal(err)
	}
	of, n, err := r.Summaries()
	if err != nil {
		t.Fatal(err)
	}
	test, _, err := r.LastTest()
	if err != nil {
		t.Fatal(err)
	}
	places, err := r.Places()
	if err != nil {
		t.Fatal(err)
	}
	begun, err := r.BegunRehearsals()
	if err != nil {
		t.Fatal(err)
	}
	return []string{out.String(), asJSON(t, of), asJSON(t, n), asJSON(t, test), asJSON(t, places), asJSON(t, begun), linesOf(t, r.Sittings()), logsOf(t, r)}
}

// What is tried on a copy of what is on a server leaves no trace there.
func TestTrialOfAServer(t *testing.T) {
	at := postgrestest.Address(t)
	r := filled(t, at)
	before := all(t, r)
	trial, err := record.OpenTrial(at, "Ada")
	if err != nil {
		t.Fatal(err)
	}
	if got := all(t, trial); !reflect.DeepEqual(got, before) {
		t.Errorf("%.300q\nwant %.300q", got, before)
	}
	if err := trial.Append(nth(8000), schedule.Fold(items)); err != nil {
		t.Fatal(err)
	}
	if err := trial.Close(); err != nil {
		t.Fatal(err)
	}
	if got := all(t, r); !reflect.DeepEqual(got, before) {
		t.Error("it left a trace")
	}
}

// An answer on a server that was changed behind the record's back is noticed; a server that went
// away is named, and what was to be kept can be kept when it is back.
func TestServerFaults(t *testing.T) {
	at := postgrestest.Address(t)
	r, fold := open(t, at, "Ada"), schedule.Fold(items)
	if err := r.Append(nth(0), fold); err != nil {
		t.Fatal(err)
	}
	if err := r.Statement("SELECT pg_terminate_backend(pg_backend_pid())"); !errors.Is(err, record.ErrAway) {
		t.Error("it went away: ", err)
	}
	for range 2 {
		if err := r.Append(nth(1), fold); err != nil {
			t.Fatal(err)
		}
	}
	sound(t, r, 2)
	if err := r.Exec("UPDATE answers SET given = 'forged' WHERE n = 2"); err != nil {
		t.Fatal(err)
	}
	if _, err := record.OpenChecked(at, "Ada"); !record.Damaged(err) {
		t.Error("a forged answer: ", err)
	}
}

// left waits until a server has seen that a killed program is gone, with all connections: until then
// what it sent last may still be kept. It is done where the record is a file.
func left(t *testing.T, at string) {
	t.Helper()
	if !onServer {
		return
	}
	db, err := sql.Open("pgx", at)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	db.SetMaxOpenConns(1)
	for others := 1; others > 0; {
		err := db.QueryRow("SELECT COUNT(*) FROM pg_stat_activity WHERE application_name = current_setting('application_name') AND pid <> pg_backend_pid()").Scan(&others)
		if err != nil {
			t.Fatal(err)
		}
	}
}

// A connection that ends at any statement of a change, as it does when the program or the server is
// killed there, leaves the record as it was, with its summaries; and the change can be made again.
func TestServerCutAtAnyStatement(t *testing.T) {
	r := withRehearsals(t, postgrestest.Address(t), 2)
	for n := range 3 {
		if err := r.Append(nth(n), schedule.Fold(items)); err != nil {
			t.Fatal(err)
		}
	}
	if err := r.Refold(schedule.Fold(items), rule); err != nil {
		t.Fatal(err)
	}
	if err := r.Exec("CREATE FUNCTION die() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN PERFORM pg_terminate_backend(pg_backend_pid()); RETURN NULL; END $$"); err != nil {
		t.Fatal(err)
	}
	changes := slices.Clone(statements)
	for _, dies := range rehearsing {
		changes = append(changes, struct{ does, dies string }{"rehearse", dies})
	}
	want := all(t, r)
	for _, row := range changes {
		when, condition, _ := strings.Cut(row.dies, " WHEN ")
		_, table, _ := strings.Cut(when, " ON ")
		if condition == "" {
			condition = "true"
		}
		if err := r.Exec("CREATE TRIGGER deadly " + when + " FOR EACH ROW WHEN (" + condition + ") EXECUTE FUNCTION die()"); err != nil {
			t.Fatal(err)
		}
		if err := crashing[row.does](r); !errors.Is(err, record.ErrAway) {
			t.Errorf("%s, %s: %v", row.does, row.dies, err)
		}
		if got := all(t, r); !reflect.DeepEqual(got, want) {
			t.Errorf("%s, %s: %.300q\nwant %.300q", row.does, row.dies, got, want)
		}
		if err := r.Exec("DROP TRIGGER deadly ON " + table); err != nil {
			t.Fatal(err)
		}
	}
	for _, does := range []string{"import", "refold", "rehearse", "forget"} {
		if err := crashing[does](r); err != nil {
			t.Errorf("%s, after the fault was mended: %v", does, err)
		}
	}
}
