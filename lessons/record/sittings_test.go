package record_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"scratchpass/lessons/postgres/postgrestest"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
)

// What is done again by someone who was stopped before they heard of it is kept once.
func TestTwiceIsOnce(t *testing.T) {
	r := open(t, place(t), "Ada")
	fold := schedule.Fold(items)
	for range 2 {
		if err := r.Append(nth(1), fold); err != nil {
			t.Fatal(err)
		}
		if err := r.AddTest(record.Test{At: time.UnixMilli(5), Got: 11, Of: 12}); err != nil {
			t.Fatal(err)
		}
	}
	sound(t, r, 1)
	other := nth(1)
	other.Given = "0.0614" // at the same moment, but another answer
	if err := r.Append(other, fold); err != nil {
		t.Fatal(err)
	}
	sound(t, r, 2)
}

func linesOf(t *testing.T, s *record.Sittings) string {
	t.Helper()
	lines, err := s.Lines()
	if err != nil {
		t.Fatal(err)
	}
	var all []string
	for _, l := range lines {
		all = append(all, string(l))
	}
	return strings.Join(all, " ")
}

// A sitting is kept line by line, each learner's apart, until it is cleared or another is
// begun.
func TestSittings(t *testing.T) {
	path := place(t)
	ada, ben := open(t, path, "Ada").Sittings(), open(t, path, "Ben").Sittings()
	if got := linesOf(t, ada); got != "" {
		t.Errorf("at first there is %q", got)
	}
	do := func(err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
	do(ada.Restart([]byte("a0")))
	do(ben.Restart([]byte("b0")))
	for i := range 12 {
		do(ada.Append([]byte(fmt.Sprintf("a%d", i+1))))
	}
	again := open(t, path, "Ada").Sittings() // another program
	if got := linesOf(t, again); got != "a0 a1 a2 a3 a4 a5 a6 a7 a8 a9 a10 a11 a12" {
		t.Error(got)
	}
	do(again.Append([]byte("more")))
	if err := ada.Append([]byte("behind")); !errors.Is(err, record.ErrElsewhere) {
		t.Error(err)
	}
	if got := linesOf(t, ada); !strings.HasSuffix(got, "a12 more") {
		t.Error(got)
	}
	do(again.Restart([]byte("new")))
	do(ada.Append([]byte("late"))) // of a sitting that another one has taken the place of
	if got := linesOf(t, again); got != "new" {
		t.Error(got)
	}
	do(again.Clear())
	if got := linesOf(t, open(t, path, "Ada").Sittings()); got != "" {
		t.Error(got)
	}
	if got := linesOf(t, ben); got != "b0" {
		t.Error(got)
	}
}

// Who forgets their answers forgets the sitting too.
func TestForgetForgetsTheSitting(t *testing.T) {
	r := open(t, place(t), "Ada")
	if err := r.Sittings().Restart([]byte("a0")); err != nil {
		t.Fatal(err)
	}
	if _, err := r.Forget(); err != nil {
		t.Fatal(err)
	}
	if got := linesOf(t, r.Sittings()); got != "" {
		t.Error(got)
	}
}

// On a server what someone has typed waits for the disk, and so does an answer; a line that is made anew
// does not, and the next one that does takes it along.
func TestWhatWaitsForTheDisk(t *testing.T) {
	r := open(t, postgrestest.Address(t), "Ada")
	for _, statement := range []string{
		"CREATE FUNCTION waits() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN RAISE EXCEPTION 'waits: %', current_setting('synchronous_commit'); END $$",
		"CREATE TRIGGER waits BEFORE INSERT ON answers FOR EACH ROW EXECUTE FUNCTION waits()",
		"CREATE TRIGGER waits AFTER INSERT ON sittings FOR EACH ROW WHEN (NEW.n > 0) EXECUTE FUNCTION waits()",
	} {
		if err := r.Exec(statement); err != nil {
			t.Fatal(err)
		}
	}
	s := r.Sittings()
	if err := s.Restart([]byte("start")); err != nil {
		t.Fatal(err)
	}
	for _, row := range []struct {
		name, want string
		do         func() error
	}{
		{"a reply", "waits: on", func() error { return s.Append([]byte("reply")) }},
		{"a page", "waits: off", func() error { return s.Note([]byte("shown")) }},
		{"a reply after a page", "waits: on", func() error { return s.Append([]byte("reply")) }},
		{"an answer", "waits: on", func() error { return r.Append(nth(1), nil) }},
	} {
		if err := row.do(); !says(err, row.want) {
			t.Errorf("%s: %v", row.name, err)
		}
	}
}
