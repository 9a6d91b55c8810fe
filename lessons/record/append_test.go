package record_test

import (
	"os"
	"path/filepath"
	"reflect"
	"runtime"
	"testing"
	"time"

	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/answer"
)

// Every field comes back as it was kept, but for what Append says of them.
func TestAppendAndReadBack(t *testing.T) {
	path := filepath.Join(t.TempDir(), "new", "folder with ? and # and %", "record.db")
	if onServer {
		path = place(t)
	}
	r, fold := open(t, path, "Ada"), schedule.Fold(items)
	full := record.Answer{
		Learner: "someone else", At: time.Date(2026, 3, 1, 9, 0, 0, 123_456_789, time.FixedZone("", 10*3600)), Task: "single-depth", Code: "single-depth@2m-7f3a",
		Given: "0,0613 in \"x\"", Verdict: answer.KnownError, Slip: "double", Cause: "diameter", Points: 0.5, Certainty: answer.Fairly,
		Hint: true, Seconds: 12.5, Situation: "outside", Key: "0.0307 in", Content: "0123abcd",
	}
	empty := record.Answer{At: time.UnixMilli(0)}
	for _, a := range []record.Answer{full, empty} {
		if err := r.Append(a, fold); err != nil {
			t.Fatal(err)
		}
	}
	full.Learner, full.At = "Ada", full.At.Truncate(time.Millisecond)
	empty.Learner = "Ada"
	got := kept(t, r)
	for i, want := range []record.Answer{full, empty} {
		if !got[i].At.Equal(want.At) {
			t.Errorf("at %v, want %v", got[i].At, want.At)
		}
		got[i].At = want.At // the same moment, told in another zone
		if !reflect.DeepEqual(got[i], want) {
			t.Errorf("%+v, want %+v", got[i], want)
		}
	}
	// Another learner on the same machine has a record of his own.
	ben := open(t, path, "Ben")
	if all := kept(t, ben); len(all) != 0 {
		t.Errorf("%d answers of someone else", len(all))
	}
	if of, n, err := ben.Summaries(); len(of) != 0 || n != 0 || err != nil {
		t.Errorf("summaries of someone else: %v, %d, %v", of, n, err)
	}
	if onServer || runtime.GOOS == "windows" {
		return // they know no such permissions
	}
	for _, p := range []string{path, path + "-journal", path + ".copy", path + ".lock"} {
		info, err := os.Stat(p)
		if err != nil || info.Mode().Perm()&0o077 != 0 {
			t.Errorf("others may read %s: %v %v", p, info.Mode(), err)
		}
	}
}

func TestAppendFolds(t *testing.T) {
	r, fold := fresh(t, 0), schedule.Fold(items)
	for n := range 20 {
		a := nth(n)
		if n%4 == 3 {
			a.Verdict, a.Slip, a.Certainty = answer.KnownError, "double", answer.Bet
		}
		if n%5 == 4 {
			a.Task = "radius-dial-plunge"
		}
		if err := r.Append(a, fold); err != nil {
			t.Fatal(err)
		}
	}
	of, n, err := r.Summaries()
	if err != nil || n != 20 || len(of) != 2 {
		t.Errorf("%d answers to %d tasks, %v", n, len(of), err)
	}
	if s := of["single-depth"]; s.Answers != 16 || s.Right != 12 || s.Slips["double"] != 4 || s.Seconds != 480 || !s.SureWrong.Equal(nth(15).At) {
		t.Errorf("%+v", s)
	}
	if s := of["radius-dial-plunge"]; s.Answers != 4 || s.Right != 3 || s.Run.Length != 0 || !s.Last.Equal(nth(19).At) {
		t.Errorf("%+v", s)
	}
}

// The fold hears the number of the answer among all, whichever task it was to; without a
// fold an answer is kept all the same, and counted when the summaries are made anew.
func TestAppendNumbersAnswers(t *testing.T) {
	r := fresh(t, 0)
	var numbers []int
	fold := func(s record.Summary, _ record.Answer, item int) record.Summary {
		numbers = append(numbers, item)
		s.Answers++
		return s
	}
	for n, f := range []record.Fold{fold, fold, nil, fold} {
		a := nth(n)
		if n == 1 {
			a.Task = "another"
		}
		if err := r.Append(a, f); err != nil {
			t.Fatal(err)
		}
	}
	if !reflect.DeepEqual(numbers, []int{1, 2, 3}) {
		t.Errorf("numbers %v", numbers)
	}
	if got := len(kept(t, r)); got != 4 {
		t.Errorf("%d answers", got)
	}
}

// What no test can bring about is that the power goes; that the disk is waited for is a
// setting, and so is that all that was acknowledged lies in
// the one file.
func TestSettings(t *testing.T) {
	r := fresh(t, 0)
	for name, want := range map[string]string{"synchronous": "2", "journal_mode": "truncate", "secure_delete": "1", "busy_timeout": "20000"} {
		if got, err := r.Setting(name); got != want || err != nil {
			t.Errorf("%s is %s, %v", name, got, err)
		}
	}
}

// One may stop in the middle, and the record goes on working.
func TestAnswersBrokenOff(t *testing.T) {
	r := fresh(t, 3)
	for a, err := range r.Answers() {
		if err != nil || a.Code != nth(0).Code {
			t.Errorf("the first is %s, %v", a.Code, err)
		}
		break
	}
	if err := r.Append(nth(3), schedule.Fold(items)); err != nil {
		t.Fatal(err)
	}
	sound(t, r, 4)
}
