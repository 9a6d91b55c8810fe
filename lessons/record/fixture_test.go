package record_test

import (
	"database/sql"
	"fmt"
	"strings"
	"testing"
	"time"

	"scratchpass/lessons/mastery"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/answer"
)

var items = []schedule.Item{
	{Task: "single-depth", Minutes: 1},
	{Task: "radius-dial-plunge", SafetyCritical: true, Rule: mastery.Rule{SafetyCritical: true}, Minutes: 1},
}

// rule is the number of the rule that the tests fold by.
const rule = 7

// nth is the n-th answer of a learner, one a minute, each to a problem of its own.
func nth(n int) record.Answer {
	return record.Answer{
		At: time.UnixMilli(1_700_000_000_000 + int64(n)*60_000), Task: "single-depth", Code: fmt.Sprintf("single-depth@1-%04x", n),
		Given: "0.0613", Verdict: answer.Right, Points: 1, Seconds: 30, Key: fmt.Sprint(n), Content: "00000000",
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

// fresh is a new record of Ada's, with so many answers.
func fresh(t testing.TB, answers int) *record.Record {
	t.Helper()
	r, fold := open(t, place(t), "Ada"), schedule.Fold(items)
	for n := range answers {
		if err := r.Append(nth(n), fold); err != nil {
			t.Fatal(err)
		}
	}
	return r
}

// kept are the answers that are there.
func kept(t testing.TB, r *record.Record) []record.Answer {
	t.Helper()
	var all []record.Answer
	for a, err := range r.Answers() {
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, a)
	}
	return all
}

// sound reports what is wrong with a record that should hold so many answers, all of them
// to one task: each must be there and counted once.
func sound(t testing.TB, r *record.Record, answers int) {
	t.Helper()
	if got := len(kept(t, r)); got != answers {
		t.Errorf("%d answers, want %d", got, answers)
	}
	of, n, err := r.Summaries()
	if err != nil || n != answers || of["single-depth"].Answers != answers {
		t.Errorf("the summaries count %d and %d of %d answers, %v", n, of["single-depth"].Answers, answers, err)
	}
}

// do runs statements on a file behind the record's back.
func do(t testing.TB, path, statements string) {
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

// says reports whether an error says a thing.
func says(err error, what string) bool { return err != nil && strings.Contains(err.Error(), what) }

// oneAtATime skips, where races are looked for, a test in which one program does one thing at a time:
// there are none to find, and the database takes minutes with what looks for them.
func oneAtATime(t *testing.T) {
	t.Helper()
	if testing.Short() {
		t.Skip("one thing at a time has no races")
	}
}
