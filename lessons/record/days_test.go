package record_test

import (
	"fmt"
	"testing"
	"time"

	"scratchpass/lessons/record"
	"scratchpass/quiz/answer"
)

// Days are those of the place where each answer was given: midnight there parts them, and
// nothing else does, wherever it is asked.
func TestDays(t *testing.T) {
	r := fresh(t, 0)
	for _, a := range []struct {
		at      time.Time
		verdict answer.Verdict
	}{
		{time.Date(2026, 3, 1, 13, 59, 59, 999_000_000, time.UTC), answer.Right},
		{time.Date(2026, 3, 1, 14, 0, 0, 0, time.UTC), answer.Convention},
		{time.Date(2026, 3, 1, 23, 59, 59, 999_000_000, time.UTC), answer.Wrong},
		{time.Date(2026, 3, 2, 0, 0, 0, 0, time.UTC), answer.WrongUnit},
		{time.Date(2026, 3, 2, 13, 59, 0, 0, time.UTC), answer.Right},
		{time.Date(2026, 2, 28, 12, 0, 0, 0, time.UTC), answer.Right}, // kept last, given first
	} {
		if err := r.Append(record.Answer{At: a.at.UTC(), Task: "t", Verdict: a.verdict, Seconds: 1.5}, nil); err != nil {
			t.Fatal(err)
		}
	}
	east := time.FixedZone("", 10*3600)
	for _, row := range []struct {
		since time.Time
		want  string
		why   string
	}{
		{time.Date(2026, 2, 1, 0, 0, 0, 0, time.UTC), "[{2026-02-28 1 1 1.5} {2026-03-01 3 2 4.5} {2026-03-02 2 1 3}]", "days of Greenwich"},
		{time.Date(2026, 2, 1, 0, 0, 0, 0, east), "[{2026-02-28 1 1 1.5} {2026-03-01 3 2 4.5} {2026-03-02 2 1 3}]", "asked ten hours further east"},
		{time.Date(2026, 3, 1, 14, 0, 0, 0, time.UTC), "[{2026-03-01 2 1 3} {2026-03-02 2 1 3}]", "the moment itself counts"},
		{time.Date(2026, 3, 1, 14, 0, 0, 1_000_000, time.UTC), "[{2026-03-01 1 0 1.5} {2026-03-02 2 1 3}]", "what was before it does not"},
		{time.Date(2026, 3, 3, 0, 0, 0, 0, time.UTC), "[]", "nothing since"},
	} {
		days, err := r.Days(row.since)
		if got := fmt.Sprint(days); got != row.want || err != nil {
			t.Errorf("since %v: %s, %v: %s", row.since, got, err, row.why)
		}
	}
	for _, at := range []time.Time{time.Date(2026, 3, 1, 13, 59, 59, 0, time.UTC), time.Date(2026, 3, 1, 14, 0, 0, 0, time.UTC)} { // midnight in the east
		r.Learner = "Eve"
		if err := r.Append(record.Answer{At: at.In(east), Task: "t", Verdict: answer.Right, Seconds: 1}, nil); err != nil {
			t.Fatal(err)
		}
	}
	if days, err := r.Days(time.Date(2026, 2, 1, 0, 0, 0, 0, time.UTC)); fmt.Sprint(days) != "[{2026-03-01 1 1 1} {2026-03-02 1 1 1}]" || err != nil {
		t.Errorf("given in the east: %v, %v", days, err)
	}
	r.Learner = "Ben"
	if days, err := r.Days(time.Time{}); len(days) != 0 || err != nil {
		t.Errorf("days of someone else: %v, %v", days, err)
	}
}
