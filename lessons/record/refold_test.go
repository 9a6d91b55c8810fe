package record_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/answer"
)

// in sets where the computer is while a test runs.
func in(t *testing.T, place *time.Location) {
	before := time.Local
	time.Local = place
	t.Cleanup(func() { time.Local = before })
}

// A record from the first form opens, keeps its answers and gets summaries.
func TestFirstFormOpens(t *testing.T) {
	in(t, time.UTC)
	path := filepath.Join(t.TempDir(), "old.db")
	script, err := os.ReadFile("testdata/first-form.sql")
	if err != nil {
		t.Fatal(err)
	}
	do(t, path, string(script))
	r := open(t, path, "Ada")
	if r.Mended != nil {
		t.Error("an old record was taken for a damaged one")
	}
	if all := kept(t, r); len(all) != 3 || all[1].Slip != "double" || all[1].Certainty != answer.Bet || !all[2].Hint || all[0].Situation != "" || all[0].Key != "" {
		t.Errorf("%+v", all)
	}
	needs := func(want bool, why string) {
		t.Helper()
		if old, err := r.NeedsRefold(rule); old != want || err != nil {
			t.Errorf("%v, %v: %s", old, err, why)
		}
	}
	needs(true, "answers, and no summary")
	if err := r.Refold(schedule.Fold(items), rule); err != nil {
		t.Fatal(err)
	}
	needs(false, "now there are summaries")
	of, n, err := r.Summaries()
	s := of["single-depth"]
	if n != 3 || err != nil || s.Answers != 3 || s.Right != 2 || s.Slips["double"] != 1 || s.Seconds != 75 || s.Card.Reps != 2 || s.SureWrong.UnixMilli() != 1_700_000_060_000 {
		t.Errorf("%+v, %d, %v", s, n, err)
	}
	r.Learner = "Ben"
	needs(true, "nobody knows by which rule")
}

// Summaries made anew are those that were kept with each answer, and what stood there
// before is gone, of this learner only.
func TestRefoldComesToTheSame(t *testing.T) {
	r, fold := fresh(t, 0), schedule.Fold(items)
	for n := range 60 {
		a := nth(n * 7)
		a.At = a.At.Local()
		if n%3 == 2 {
			a.Task = "radius-dial-plunge"
		}
		if n%11 == 5 {
			a.Verdict, a.Slip = answer.KnownError, "double"
		}
		if err := r.Append(a, fold); err != nil {
			t.Fatal(err)
		}
	}
	before, n, err := r.Summaries()
	if n != 60 || err != nil {
		t.Fatal(n, err)
	}
	for _, statement := range []string{
		"INSERT INTO states (learner, task, state) VALUES ('Ada', 'gone', '{\"answers\":9}'), ('Ben', 'single-depth', '{\"answers\":4}')",
		"UPDATE states SET state = '{}' WHERE learner = 'Ada' AND task = 'single-depth'",
	} {
		if err := r.Exec(statement); err != nil {
			t.Fatal(err)
		}
	}
	if err := r.Refold(fold, rule); err != nil {
		t.Fatal(err)
	}
	after, n, err := r.Summaries()
	if one, other := asJSON(t, before), asJSON(t, after); n != 60 || err != nil || one != other {
		t.Errorf("%d, %v\n%s\n%s", n, err, one, other)
	}
	var bens string
	if err := r.QueryRow("SELECT state FROM states WHERE learner = 'Ben'", &bens); bens != `{"answers":4}` || err != nil {
		t.Errorf("the summaries of someone else: %s, %v", bens, err)
	}
}

// Days are those of the place where an answer was given, wherever the computer is when they
// are counted, and wherever the answers were read in.
func TestDaysAreThoseOfTheirPlace(t *testing.T) {
	r, there := fresh(t, 0), time.FixedZone("", 10*3600)
	for _, at := range []time.Time{time.Date(2026, 3, 1, 13, 59, 0, 0, time.UTC), time.Date(2026, 3, 1, 14, 0, 0, 0, time.UTC)} {
		a := nth(0)
		a.At = at.In(there) // a minute before midnight, and at midnight
		if err := r.Append(a, schedule.Fold(items)); err != nil {
			t.Fatal(err)
		}
	}
	var out bytes.Buffer
	if _, err := r.Export(&out); err != nil || !strings.Contains(out.String(), "T23:59:00+10:00") {
		t.Errorf("%s %v", out.String(), err)
	}
	in(t, time.UTC)
	other := fresh(t, 0)
	if _, err := importInto(other, &out, schedule.Fold(items)); err != nil {
		t.Fatal(err)
	}
	if err := r.Refold(schedule.Fold(items), rule); err != nil {
		t.Fatal(err)
	}
	for name, r := range map[string]*record.Record{"folded anew": r, "read in": other} {
		if of, _, err := r.Summaries(); of["single-depth"].Card.Reps != 2 || err != nil {
			t.Errorf("%s: reviewed on %d days, %v", name, of["single-depth"].Card.Reps, err)
		}
	}
}

// An answer that was given before the newest one, since the clock was set back, counts in its
// place: the summaries are those that the answers come to anew.
func TestClockSetBack(t *testing.T) {
	r, fold := fresh(t, 0), schedule.Fold(items)
	for _, n := range []int{0, 5, 2, 9, 1} {
		a := nth(n)
		if n == 2 {
			a.Verdict = answer.Wrong
		}
		if err := r.Append(a, fold); err != nil {
			t.Fatal(err)
		}
	}
	before, n, err := r.Summaries()
	if err != nil || n != 5 {
		t.Fatal(n, err)
	}
	if err := r.Refold(fold, rule); err != nil {
		t.Fatal(err)
	}
	after, _, err := r.Summaries()
	if one, other := asJSON(t, before), asJSON(t, after); err != nil || one != other {
		t.Errorf("%v\n%s\n%s", err, one, other)
	}
}

// Whatever is not right with the summaries is noticed: another rule, another count of answers
// in all or of one task, one that can't be read.
func TestNeedsRefold(t *testing.T) {
	for _, spoil := range []string{
		"",
		"UPDATE states SET state = '{\"answers\":3,\"fold\":6}' WHERE task = ''",
		"UPDATE states SET state = '{\"answers\":2,\"fold\":7}' WHERE task = ''",
		"UPDATE states SET state = '{}' WHERE task = 'single-depth'",
		"UPDATE states SET state = '{' WHERE task = 'single-depth'",
		"UPDATE states SET state = '{' WHERE task = ''",
		"DELETE FROM states WHERE task = ''",
		"DELETE FROM states WHERE task = 'single-depth'",
		"DELETE FROM states",
		"INSERT INTO states (learner, task, state) VALUES ('Ada', 'gone', '{\"answers\":1}')",
	} {
		r := fresh(t, 3)
		if err := r.Refold(schedule.Fold(items), rule); err != nil {
			t.Fatal(err)
		}
		if spoil != "" {
			if err := r.Exec(spoil); err != nil {
				t.Fatal(err)
			}
		}
		if needs, err := r.NeedsRefold(rule); needs != (spoil != "") || err != nil {
			t.Errorf("%v, %v after %q", needs, err, spoil)
		}
		if err := r.Refold(schedule.Fold(items), rule); err != nil {
			t.Fatal(err)
		}
		if needs, err := r.NeedsRefold(rule); needs || err != nil {
			t.Errorf("%v, %v after it was made good", needs, err)
		}
		sound(t, r, 3)
	}
}

// While the summaries are made anew, no other program keeps an answer that they would
// then leave out.
func TestRefoldLeavesOutNoAnswerOfAnotherProgram(t *testing.T) {
	path := filepath.Join(t.TempDir(), "r.db")
	r, other := open(t, path, "Ada"), open(t, path, "Ada")
	if err := other.Exec("PRAGMA busy_timeout = 0"); err != nil { // it would wait: here it says so
		t.Fatal(err)
	}
	fold := schedule.Fold(items)
	for n := range 3 {
		if err := r.Append(nth(n), fold); err != nil {
			t.Fatal(err)
		}
	}
	answers := 3
	meddling := func(s record.Summary, a record.Answer, item int) record.Summary {
		if item == 2 {
			if err := other.Append(nth(99), fold); err == nil {
				answers++
			} else if !says(err, "locked") {
				t.Error(err)
			}
		}
		return fold(s, a, item)
	}
	if err := r.Refold(meddling, rule); err != nil {
		t.Fatal(err)
	}
	sound(t, r, answers)
	if _, err := importInto(r, strings.NewReader(asJSON(t, nth(50))), meddling); err != nil {
		t.Fatal(err)
	}
	sound(t, r, answers+1)
}
