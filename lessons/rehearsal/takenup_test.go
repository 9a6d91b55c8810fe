package rehearsal

import (
	"errors"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"

	"scratchpass/lessons/page"
	"scratchpass/quiz/bench"
)

// takenUp is another program that goes on with what a rehearsal has kept.
func takenUp(t *testing.T, path string, moves []string, answers ...string) (said string, r *Rehearsal, stopped error) {
	t.Helper()
	s, term, r := kept(t, path, "adjusting-screw", answers...)
	script, err := bench.ParseScript("log", []byte("job adjusting-screw\n"+strings.Join(moves, "\n")))
	if err != nil {
		t.Fatal(err)
	}
	again, err := script.Replay("log", r.Bench.Job)
	if err != nil {
		t.Fatal(err)
	}
	r.Bench, r.TakenBack = again.Bench, again.TakenBack
	r.Keep = func(lines ...string) error { return nil }
	stopped = s.Run(r)
	return flat(term), r, stopped
}

// broken are moves of which the last breaks something.
var broken = []string{"key out", "start", "stop", "reverse"}

// Who was stopped where something broke, at the question whether to take that back, is asked again,
// and the rehearsal goes on or is over as they say; it is kept once.
func TestTakenUpWhereItBroke(t *testing.T) {
	path := filepath.Join(t.TempDir(), "r.db")
	s, _, r := kept(t, path, "adjusting-screw", broken...)
	r.Keep = func(lines ...string) error {
		if lines[0] == "reverse" {
			return page.ErrStopped // killed with this move kept
		}
		return nil
	}
	if err := s.Run(r); !errors.Is(err, page.ErrStopped) {
		t.Fatal(err)
	}
	said, r, err := takenUp(t, path, broken, "back", "leave")
	if !errors.Is(err, page.ErrStopped) || !strings.Contains(said, "take that move back") || r.Bench.Over || len(r.Bench.Log) != 3 || len(r.TakenBack) != 1 {
		t.Error(err, said, r.Bench.Over, len(r.Bench.Log))
	}
	if said, _, err = takenUp(t, path, broken, ""); err != nil || !strings.Contains(said, s.Say("bench-debrief")) {
		t.Error(err, said)
	}
	// The debrief was kept, and perhaps not seen: it is told again, and not counted again.
	again, _, err := takenUp(t, path, broken)
	if err != nil || !strings.Contains(again, s.Say("bench-debrief")) || strings.Contains(again, "take that move back") || strings.Contains(again, "last time") {
		t.Error(err, again)
	}
	if all, err := s.Book.Rehearsals(); len(all) != 1 || err != nil {
		t.Error(len(all), err)
	}
	if begun, err := s.Book.BegunRehearsals(); len(begun) != 0 || err != nil {
		t.Error(begun, err)
	}
}

// On a page nobody ends the input: who is cut off at that question has said nothing, and nothing is
// kept of it yet.
func TestCutOffWhereItBroke(t *testing.T) {
	s, term, r := kept(t, filepath.Join(t.TempDir(), "r.db"), "adjusting-screw", broken...)
	answer := term.Answer
	term.Answer = func(q page.Prompt) (string, error) {
		if strings.Contains(q.Text, "take that move back") {
			return "", page.ErrStopped
		}
		return answer(q)
	}
	s.OnPages = true
	if err := s.Run(r); !errors.Is(err, page.ErrStopped) {
		t.Error(err)
	}
	if all, err := s.Book.Rehearsals(); len(all) != 0 || err != nil {
		t.Error(len(all), err)
	}
}

// What can be taken back can be taken back by who goes on with it.
func TestTakenUpAndUndone(t *testing.T) {
	none, _, _ := atBench(t, "adjusting-screw")
	said, r, err := takenUp(t, filepath.Join(t.TempDir(), "r.db"), []string{"dress", "key out", "feed off", "undo"}, "undo", "undo", "undo", "leave")
	if !errors.Is(err, page.ErrStopped) || !strings.Contains(said, "Taken back: key out.") || !strings.Contains(said, "Taken back: dress.") || !strings.Contains(said, none.Say("bench-no-undo")) || len(r.Bench.Log) != 0 {
		t.Error(err, said)
	}
}

// A pass by the clock that broke something is taken back by who goes on with it, to where the half-nut
// was open, and its moves are kept together: a wait, close, a wait.
func TestTakenUpInAPassByTheClock(t *testing.T) {
	var kept [][]string
	keep := func(lines ...string) error { kept = append(kept, lines); return nil }
	r := liveBenchKept(t, &handsOn{mark: 1, sleep: true}, keep, "close")
	if !r.Bench.Over || len(kept[len(kept)-1]) != 3 {
		t.Fatal(r.Bench.Over, kept)
	}
	before := Rehearsal{Name: r.Name, Bench: r.Bench}
	before.recall()
	s, _, _ := atBench(t, "adjusting-screw", "back")
	var undone []string
	before.Keep = func(lines ...string) error { undone = append(undone, lines...); return nil }
	var err error
	if before.words, err = s.Library.Bench(); err == nil {
		err = s.askedAgain(&before)
	}
	if err != nil || before.Bench.Over || before.Bench.Nut || len(undone) != 2 || !reflect.DeepEqual(before.Bench.Log, r.Bench.Log[:len(before.Bench.Log)]) {
		t.Error(err, before.Bench.Over, undone, kept[len(kept)-1])
	}
}

// Notes of when it was begun stay with a rehearsal that is taken up.
func TestTakenUpKeepsItsBeginning(t *testing.T) {
	path := filepath.Join(t.TempDir(), "r.db")
	s, _, r := kept(t, path, "adjusting-screw", "dress", "leave")
	s.Clock = func() time.Time { return time.UnixMilli(1_800_000_000_000) }
	if err := s.Run(r); !errors.Is(err, page.ErrStopped) {
		t.Fatal(err)
	}
	if _, r, _ := takenUp(t, path, []string{"dress"}, "leave"); r.Begun.UnixMilli() != 1_800_000_000_000 {
		t.Error(r.Begun)
	}
}
