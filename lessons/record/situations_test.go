package record_test

import (
	"fmt"
	"testing"
	"time"

	"scratchpass/lessons/record"
	"scratchpass/quiz/answer"
)

// The situations of the last answers to a task, the latest first, whenever they were kept.
func TestSituations(t *testing.T) {
	r := fresh(t, 0)
	at := time.Date(2026, 11, 26, 19, 0, 0, 0, time.UTC)
	for i, one := range []struct{ task, situation string }{{"a", "first"}, {"b", "other"}, {"a", "second"}, {"a", "third"}} {
		if err := r.Append(record.Answer{At: at.Add(time.Duration(i) * time.Minute), Task: one.task, Verdict: answer.Right, Situation: one.situation}, nil); err != nil {
			t.Fatal(err)
		}
	}
	if err := r.Append(record.Answer{At: at.Add(-time.Hour), Task: "a", Verdict: answer.Right, Situation: "long ago"}, nil); err != nil {
		t.Fatal(err)
	}
	if got, err := r.Situations("a", 2); fmt.Sprint(got) != "[third second]" || err != nil {
		t.Error(got, err)
	}
	if got, err := r.Situations("c", 2); len(got) != 0 || err != nil {
		t.Error(got, err)
	}
}
