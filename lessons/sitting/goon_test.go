package sitting_test

import (
	"errors"
	"flag"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"scratchpass/content"
	"scratchpass/lessons/course"
	"scratchpass/lessons/internal/scripted"
	"scratchpass/lessons/page"
	"scratchpass/lessons/practice"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/machine"
)

var everyWrite = flag.Bool("every-write", false, "die at every single write, not at one in thirteen: two minutes")

// memory is a store and a book that outlive a program, and that can fail: after so many
// writes the program is dead.
type memory struct {
	lines   [][]byte
	answers []record.Answer
	tests   []record.Test
	places  map[string]int
	writes  int
	dieAt   int  // the write at which the program dies; 0 never
	after   bool // it dies after the write, not before it
}

var errKilled = errors.New("killed")

func (m *memory) write(do func()) error {
	m.writes++
	if m.writes == m.dieAt {
		if m.after {
			do()
		}
		return errKilled
	}
	do()
	return nil
}

func (m *memory) Restart(line []byte) error { return m.write(func() { m.lines = [][]byte{line} }) }
func (m *memory) Append(line []byte) error {
	return m.write(func() { m.lines = append(m.lines, line) })
}
func (m *memory) Note(line []byte) error   { return m.Append(line) }
func (m *memory) Lines() ([][]byte, error) { return slices.Clone(m.lines), nil }
func (m *memory) Clear() error             { return m.write(func() { m.lines = nil }) }

func (m *memory) Keep(a record.Answer) error {
	return m.write(func() {
		if !slices.ContainsFunc(m.answers, func(b record.Answer) bool { // as the record does
			return a.At.Equal(b.At) && a.Task == b.Task && a.Code == b.Code && a.Given == b.Given
		}) {
			m.answers = append(m.answers, a)
		}
	})
}

func (m *memory) AddTest(t record.Test) error {
	return m.write(func() {
		if !slices.Contains(m.tests, t) {
			m.tests = append(m.tests, t)
		}
	})
}

func (m *memory) Places() ([]record.Left, error)           { return nil, nil }
func (m *memory) BeginRehearsal(record.Begun) error        { return nil }
func (m *memory) FinishRehearsal(record.Rehearsal) error   { return nil }
func (m *memory) Rehearsals() ([]record.Rehearsal, error)  { return nil, nil }
func (m *memory) BegunRehearsals() ([]record.Begun, error) { return nil, nil }
func (m *memory) LastTest() (record.Test, bool, error)     { return record.Test{}, false, nil }

func (m *memory) Situations(task string, n int) ([]string, error) {
	var all []string
	for _, a := range slices.Backward(m.answers) {
		if a.Task == task && len(all) < n {
			all = append(all, a.Situation)
		}
	}
	return all, nil
}

func (m *memory) Place(lesson string) (int, bool, error) {
	part, ok := m.places[lesson]
	return part, ok, nil
}

func (m *memory) SetPlace(lesson string, part int) error {
	return m.write(func() { m.places[lesson] = part })
}

func (m *memory) Summaries() (map[string]record.Summary, int, error) {
	of, fold := map[string]record.Summary{}, schedule.Fold(schedule.Catalogue(machine.Imperial))
	for i, a := range m.answers {
		of[a.Task] = fold(of[a.Task], a, i+1)
	}
	return of, len(m.answers), nil
}

// start is a session in a new program that stands on the same memory. Its clock never goes
// back.
func start(t testing.TB, m *memory, at *time.Time, answer func(q page.Prompt) (string, error)) (*scripted.Face, *sitting.Session) {
	t.Helper()
	face := &scripted.Face{Answer: answer}
	s, err := sitting.NewSession(face, content.Shipped(), machine.Imperial, machine.InchLathe, func() sitting.Seeds { return sitting.Seeds{Seed: 5, Short: true} })
	if err != nil {
		t.Fatal(err)
	}
	s.Book, s.Store = m, m
	s.Clock = func() time.Time { *at = at.Add(7 * time.Second); return *at }
	return face, s
}

var flows = []sitting.Flow{
	course.Lesson{Lesson: "half-nut-and-thread-dial"},
	practice.Practice{Tasks: []string{"compound-travel", "reversing-a-screwed-chuck", "one-full-pass"}, Level: 2, Count: 6},
	practice.Best{Level: 1},
	practice.MixedTest{Level: 1},
	practice.HandedOut{Codes: []string{"compound-travel@1-7f3a", "thread-dial-line@2-0001", "cross-slide-return@1-0002"}, Sure: true},
	practice.Drill{Tasks: []string{"infeed-left", "single-depth"}, Length: 90 * time.Second, Level: 1},
}

func newMemory() *memory { return &memory{places: map[string]int{}} }

// whole runs a flow without a break, as someone who is mostly right answers, and returns
// what was typed.
func whole(t *testing.T, f sitting.Flow) (replies []string, shown []page.Page, m *memory) {
	t.Helper()
	m = newMemory()
	at := time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC)
	l := scripted.NewLearner(t, 5, machine.Imperial, scripted.Varied)
	l.Session.Book, l.Session.Store = m, m
	l.Session.Clock = func() time.Time { at = at.Add(7 * time.Second); return at }
	if _, err := l.Session.Run(f); err != nil {
		t.Fatal(err)
	}
	return l.Replies, l.Shown, m
}

// resume runs a flow that dies, and takes it up again until it comes to its end. It
// returns what was shown in the last life, and how many lives it took.
func resume(t *testing.T, m *memory, f sitting.Flow, replies []string) (last *scripted.Face, lives int) {
	t.Helper()
	at := time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC)
	typed := 0
	answer := func(page.Prompt) (string, error) {
		if typed >= len(replies) {
			return "", fmt.Errorf("asked for more than %d replies", len(replies))
		}
		typed++
		return replies[typed-1], nil
	}
	face, s := start(t, m, &at, answer)
	_, err := s.Run(f)
	for lives = 1; errors.Is(err, errKilled); lives++ {
		m.dieAt = 0
		// What was typed and not stored is typed again; what was stored is not.
		typed = 0
		for _, line := range m.lines {
			if strings.Contains(string(line), `"kind":"reply"`) {
				typed++
			}
		}
		if len(m.lines) == 0 { // dead before or after the sitting
			if len(m.answers) > 0 {
				return face, lives
			}
			face, s = start(t, m, &at, answer)
			_, err = s.Run(f)
			continue
		}
		face, s = start(t, m, &at, answer)
		err = s.GoOn(flows...)
	}
	if err != nil {
		t.Fatal(err)
	}
	return face, lives
}

// Each flow, killed before or after every single write, can be taken up again at the
// prompt where it was left: the rest is asked as it would have been, every answer is kept,
// and none twice.
func TestEveryFlowIsTakenUpAgain(t *testing.T) {
	for _, f := range flows {
		t.Run(f.Name(), func(t *testing.T) {
			replies, shown, want := whole(t, f)
			step := 13
			switch {
			case *everyWrite:
				step = 1
			case testing.Short():
				step = 53
			}
			for dieAt := 1 + len(f.Name())%step; dieAt <= want.writes; dieAt += step {
				for _, after := range []bool{false, true} {
					m := newMemory()
					m.dieAt, m.after = dieAt, after
					last, lives := resume(t, m, f, replies)
					if lives < 2 && dieAt < want.writes {
						t.Fatalf("write %d of %d never came", dieAt, want.writes)
					}
					if got, wanted := codes(m.answers), codes(want.answers); got != wanted {
						t.Fatalf("killed at write %d (after %v): kept\n%s\nwant\n%s", dieAt, after, got, wanted)
					}
					if len(m.tests) != len(want.tests) || fmt.Sprint(m.places) != fmt.Sprint(want.places) {
						t.Fatalf("killed at write %d (after %v): %d tests, places %v; want %d, %v", dieAt, after, len(m.tests), m.places, len(want.tests), want.places)
					}
					if len(m.lines) != 0 {
						t.Fatalf("killed at write %d (after %v): %d lines stay behind", dieAt, after, len(m.lines))
					}
					if dieAt < want.writes && len(last.Shown) > 0 {
						tail := shown[len(shown)-min(len(shown), len(last.Shown)):]
						if g, w := scripted.Words(last.Shown[len(last.Shown)-1]), scripted.Words(tail[len(tail)-1]); g != w {
							t.Fatalf("killed at write %d (after %v): it ends with\n%s\nwant\n%s", dieAt, after, g, w)
						}
					}
				}
			}
		})
	}
}

// codes are the answers that were kept: what was asked, typed and found.
func codes(answers []record.Answer) string {
	var b strings.Builder
	for _, a := range answers {
		fmt.Fprintln(&b, a.Code, a.Given, a.Verdict, a.Certainty, a.Hint)
	}
	return b.String()
}

// Taken up again, the page that was left stands there once more, and nothing before it.
func TestGoOnShowsThePageThatWasLeft(t *testing.T) {
	m := newMemory()
	at := time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC)
	n := 0
	stopping := func(page.Prompt) (string, error) {
		if n++; n == 3 {
			return "STOP", nil // as good as Ctrl-C
		}
		return "0.05", nil
	}
	first, s := start(t, m, &at, stopping)
	_, err := s.Run(practice.Practice{Tasks: []string{"compound-travel"}, Level: 1, Count: 4})
	var stopped page.Stopped
	if !errors.As(err, &stopped) || stopped.Farewell != "Stopped. 2 answered, 0 right." {
		t.Fatal(err, stopped)
	}
	second, s := start(t, m, &at, func(page.Prompt) (string, error) { return "", page.ErrStopped })
	if err := s.GoOn(flows...); !errors.Is(err, page.ErrStopped) {
		t.Fatal(err)
	}
	if _, s = start(t, m, &at, func(page.Prompt) (string, error) { return "stop", nil }); !errors.Is(s.GoOn(flows...), page.ErrStopped) {
		t.Fatal("stopped twice, and it did not stop the second time")
	}
	left := first.Shown[len(first.Shown)-2:] // what came of the second answer, and the third question
	if len(second.Shown) != 2 || scripted.Words(second.Shown[0]) != scripted.Words(left[0]) || scripted.Words(second.Shown[1]) != scripted.Words(left[1]) {
		t.Errorf("%d pages:\n%s", len(second.Shown), second.Log.String())
	}
}

// An answer whose certainty was asked when the learner stopped counts, and it counts once
// when they go on.
func TestStoppedAtHowSure(t *testing.T) {
	m := newMemory()
	at := time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC)
	n := 0
	_, s := start(t, m, &at, func(q page.Prompt) (string, error) {
		if n++; n == 2 {
			return "", page.ErrStopped
		}
		return "1", nil
	})
	f := practice.HandedOut{Codes: []string{"reversing-a-screwed-chuck@1-0001", "single-depth@1-0001"}, Sure: true}
	if _, err := s.Run(f); !errors.Is(err, page.ErrStopped) || len(m.answers) != 1 {
		t.Fatalf("%v, %d answers", err, len(m.answers))
	}
	_, s = start(t, m, &at, func(q page.Prompt) (string, error) {
		if q.Takes == (page.GoOn{}) {
			return "", nil
		}
		return "1", nil
	})
	if err := s.GoOn(flows...); err != nil || len(m.answers) != 2 {
		t.Errorf("%v, %d answers", err, len(m.answers))
	}
}

// Where the program asks something else now, it says so instead of mixing two sittings up.
func TestGoOnNoticesOtherWords(t *testing.T) {
	for name, spoil := range map[string]func([][]byte) [][]byte{
		"another prompt": func(lines [][]byte) [][]byte {
			for i, l := range lines {
				lines[i] = []byte(strings.Replace(string(l), `"asked":"`, `"asked":"x`, 1))
			}
			return lines
		},
		"a line is missing": func(lines [][]byte) [][]byte { return slices.Delete(lines, 2, 3) },
		"another flow": func(lines [][]byte) [][]byte {
			lines[0] = []byte(strings.Replace(string(lines[0]), `"flow":"practice"`, `"flow":"dance"`, 1))
			return lines
		},
	} {
		m := newMemory()
		at := time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC)
		n := 0
		_, s := start(t, m, &at, func(page.Prompt) (string, error) {
			if n++; n > 2 {
				return "stop", nil
			}
			return "0.05", nil
		})
		if _, err := s.Run(practice.Practice{Tasks: []string{"compound-travel"}, Level: 1, Count: 4}); !errors.Is(err, page.ErrStopped) {
			t.Fatal(err)
		}
		m.lines = spoil(m.lines)
		_, s = start(t, m, &at, func(page.Prompt) (string, error) { return "stop", nil })
		if err := s.GoOn(flows...); !errors.Is(err, sitting.ErrChanged) {
			t.Errorf("%s: %v", name, err)
		}
	}
	_, s := start(t, newMemory(), new(time.Time), nil)
	if err := s.GoOn(flows...); !errors.Is(err, sitting.ErrNothingStored) {
		t.Error(err)
	}
}
