package rehearse

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/content"
	"scratchpass/lessons/face/text"
	"scratchpass/lessons/page"
	"scratchpass/lessons/postgres"
	"scratchpass/lessons/postgres/postgrestest"
	"scratchpass/lessons/record"
	"scratchpass/lessons/rehearsal"
	"scratchpass/lessons/schedule"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/bench"
	"scratchpass/quiz/machine"
)

// scripted is a face that answers as it is told, and keeps what was said.
type scripted struct {
	answers []string
	asked   int
	said    strings.Builder
}

func (f *scripted) Show(p page.Page) error {
	for _, line := range text.Lines(p, true) {
		f.said.WriteString(line.Text + " ")
	}
	return nil
}

func (f *scripted) Ask(q page.Prompt) (string, error) {
	f.said.WriteString(q.Text + " ")
	if f.asked == len(f.answers) {
		return "", page.ErrStopped
	}
	f.asked++
	return f.answers[f.asked-1], nil
}

// learner is someone at a face, with a record in a database.
type learner struct {
	*sitting.Session
	face   *scripted
	record *record.Record
}

func newLearner(t *testing.T, rec *record.Record, answers ...string) learner {
	t.Helper()
	face := &scripted{answers: answers}
	s, err := sitting.NewSession(face, content.Shipped(), machine.Imperial, machine.InchLathe, func() sitting.Seeds { return sitting.Seeds{} })
	if err != nil {
		t.Fatal(err)
	}
	book, err := schedule.NewBook(rec, s.System)
	if err != nil {
		t.Fatal(err)
	}
	s.KeepIn(book, rec.Sittings())
	s.Attended = true
	return learner{s, face, rec}
}

// stud is a rehearsal before its first move.
func stud(t *testing.T, s *sitting.Session) *rehearsal.Rehearsal {
	t.Helper()
	h, job, err := findJob(cli.New(nil, io.Discard, io.Discard), s.Library, "pump-stud", &jobFlags{})
	if err != nil {
		t.Fatal(err)
	}
	h.Bench = bench.New(job)
	return &h
}

// places are where logs are kept: each opens that of another program with the same learner and job.
var places = map[string]func(*testing.T) func(l learner, h *rehearsal.Rehearsal) (keeper, error){
	"file": func(t *testing.T) func(learner, *rehearsal.Rehearsal) (keeper, error) {
		path := filepath.Join(t.TempDir(), "x", "stud.log")
		return func(l learner, _ *rehearsal.Rehearsal) (keeper, error) {
			file, err := openFileLog(l.Session, path, func(phrase string, pairs ...any) {
				_ = l.Face.Show(page.Page{page.Paragraph{Text: l.Say(phrase, pairs...)}})
			})
			return file, err
		}
	},
	"record": func(t *testing.T) func(learner, *rehearsal.Rehearsal) (keeper, error) {
		return func(l learner, h *rehearsal.Rehearsal) (keeper, error) {
			return newRecordLog(l.record, l.Session, h), nil
		}
	},
}

// everywhere runs a test at each place.
func everywhere(t *testing.T, test func(t *testing.T, someone func(answers ...string) learner, open func(l learner) (*moveLog, error))) {
	t.Setenv("HOME", t.TempDir())
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	for name, place := range places {
		t.Run(name, func(t *testing.T) {
			db, err := postgres.Open(t.Context(), postgrestest.Address(t))
			if err != nil {
				t.Fatal(err)
			}
			t.Cleanup(func() { _ = db.Close() })
			keeper := place(t)
			test(t, func(answers ...string) learner { return newLearner(t, record.In(db, "Ada"), answers...) }, func(l learner) (*moveLog, error) {
				h := stud(t, l.Session)
				kept, err := keeper(l, h)
				if err != nil {
					return nil, err
				}
				log := &moveLog{kept: kept, session: l.Session, rehearsal: h}
				h.Keep = log.keep
				return log, log.takeUp(&call{})
			})
		})
	}
}

// What is kept is there for the next program, in order; one that goes on adds to it; one that begins
// anew sets it aside and says so; one without a move takes no other's place.
func TestLogs(t *testing.T) {
	everywhere(t, func(t *testing.T, someone func(...string) learner, open func(learner) (*moveLog, error)) {
		opened := func(answers ...string) (learner, *moveLog) {
			t.Helper()
			l := someone(answers...)
			log, err := open(l)
			if err != nil {
				t.Fatal(err)
			}
			return l, log
		}
		do := func(errs ...error) {
			t.Helper()
			if err := errors.Join(errs...); err != nil {
				t.Fatal(err)
			}
		}
		says := func(l learner, text string, want bool) {
			t.Helper()
			if got := strings.Contains(l.face.said.String(), text); got != want {
				t.Errorf("%q: %v in %s", text, got, l.face.said.String())
			}
		}
		l, log := opened()
		do(log.keep("dress"), log.keep("key out", "start"), log.close())
		says(l, "kept", false)

		l, log = opened("1") // yes, go on
		says(l, "Moves made: 3", true)
		if !log.resumed || len(log.rehearsal.Bench.Log) != 3 {
			t.Error(log.resumed, len(log.rehearsal.Bench.Log))
		}
		do(log.keep("stop"), log.keep("undo"), log.keep("oil"), log.close())

		_, log = opened("2") // no, start over, and leave at once
		do(log.close())
		l, log = opened("2")
		says(l, "Moves made: 4", true)
		do(log.keep("dress"), log.close())
		says(l, "kept", true)
		l, log = opened("1")
		says(l, "Moves made: 1", true)
		do(log.close())
		if texts := everyLog(t, log, l); !slices.Equal(texts, []string{"dress key out start stop undo oil", "dress"}) {
			t.Error(texts)
		}
	})
}

// everyLog are the moves of all logs, the earliest first.
func everyLog(t *testing.T, log *moveLog, l learner) (moves []string) {
	t.Helper()
	var texts []string
	if path := log.where(); path != "" {
		found, err := filepath.Glob(filepath.Join(filepath.Dir(path), "stud*.log"))
		if err != nil {
			t.Fatal(err)
		}
		slices.SortFunc(found, func(a, b string) int { return len(b) - len(a) }) // what was set aside has the longer name
		for _, path := range found {
			text, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			texts = append(texts, string(text))
		}
	} else {
		logs, err := l.record.Logs()
		if err != nil {
			t.Fatal(err)
		}
		for _, l := range logs {
			texts = append(texts, l.Text)
		}
	}
	for _, text := range texts {
		script, err := bench.ParseScript("log", []byte(text))
		if err != nil {
			t.Fatal(err)
		}
		var lines []string
		for _, line := range script.Lines {
			lines = append(lines, line.Text)
		}
		moves = append(moves, strings.Join(lines, " "))
	}
	return moves
}

// Two programs never mix their moves in one log: the second is told, and what it would add is not there.
func TestLogsNeverMix(t *testing.T) {
	everywhere(t, func(t *testing.T, someone func(...string) learner, open func(learner) (*moveLog, error)) {
		l := someone()
		first, err := open(l)
		if err != nil {
			t.Fatal(err)
		}
		if err := first.keep("dress"); err != nil {
			t.Fatal(err)
		}
		second, err := open(someone("1"))
		if err == nil {
			if err = second.keep("key out"); err != nil {
				t.Fatal("who goes on has it: ", err)
			}
			if err = first.keep("start"); !errors.Is(err, record.ErrElsewhere) {
				t.Error("the one before is not told: ", err)
			}
			first = second
		}
		if err == nil || !strings.Contains(err.Error(), "another") {
			t.Error("nobody is told: ", err)
		}
		if err := first.keep("oil"); err != nil {
			t.Error(err)
		}
		if texts := everyLog(t, first, l); len(texts) != 1 || strings.Contains(texts[0], "start") {
			t.Error(texts)
		}
		if err := first.close(); err != nil {
			t.Error(err)
		}
	})
}

// killing is a log whose program is killed at one of its writes, before it or after it.
type killing struct {
	keeper
	left   int // writes until then
	before bool
}

var errKilled = errors.New("killed")

func (k *killing) dies(write func() error) error {
	k.left--
	if k.left < 0 || k.left == 0 && k.before {
		return errKilled
	}
	if err := write(); err != nil || k.left > 0 {
		return err
	}
	return errKilled
}

func (k *killing) begin(lines []string) error {
	return k.dies(func() error { return k.keeper.begin(lines) })
}

func (k *killing) add(lines []string) error {
	return k.dies(func() error { return k.keeper.add(lines) })
}

// A rehearsal that is killed at any of its writes, before or after it, goes on with every move that was
// acknowledged and with none twice, and comes to the same.
func TestLogsKilledAtEachWrite(t *testing.T) {
	moves := []string{"dress", "key out", "feed off", "undo", "speed 70", "start", "stop", "done"}
	everywhere(t, func(t *testing.T, someone func(...string) learner, open func(learner) (*moveLog, error)) {
		run := func(answers []string, kill func(keeper) keeper) (*moveLog, error) {
			l := someone(answers...)
			log, err := open(l)
			if err != nil {
				t.Fatal(err)
			}
			if kill != nil {
				log.kept = kill(log.kept)
			}
			if err = (rehearsal.Flow{Session: l.Session}).Run(log.rehearsal); err == nil && l.face.asked < len(answers) {
				t.Error("it ended early")
			}
			if k, ok := log.kept.(*killing); ok {
				log.kept = k.keeper
			}
			return log, errors.Join(err, log.close())
		}
		var want bench.Bench
		for n := range len(moves) {
			for _, before := range []bool{true, false} {
				log, err := run(moves, func(k keeper) keeper { return &killing{k, n + 1, before} })
				if !errors.Is(err, errKilled) {
					t.Fatal(n, before, err)
				}
				there := n
				if !before {
					there++
				}
				rest := moves[there:]
				if !(there == len(moves)) { // the last is done: nothing to go on with
					if there > 0 {
						rest = append([]string{"1"}, rest...)
					}
					if log, err = run(rest, nil); err != nil {
						t.Fatal(n, before, err)
					}
				} else if _, err := open(someone()); err != nil { // it is kept by who comes back
					t.Fatal(err)
				}
				if want.Job.Title == "" {
					want = log.rehearsal.Bench
				}
				if !reflect.DeepEqual(log.rehearsal.Bench, want) {
					t.Errorf("%d %v: %v", n, before, log.rehearsal.Bench.Log)
				}
			}
		}
		if all, err := someone().record.Rehearsals(); len(all) != 2*len(moves) || err != nil {
			t.Errorf("%d rehearsals are kept of %d, %v", len(all), 2*len(moves), err)
		}
	})
}
