package rehearse

import (
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/content"
	"scratchpass/lessons/page"
	"scratchpass/lessons/postgres"
	"scratchpass/lessons/postgres/postgrestest"
	"scratchpass/lessons/record"
	"scratchpass/lessons/sitting"
)

// school is a database, and learners of it at whichever node.
type school struct {
	t  *testing.T
	db *postgres.DB
}

func newSchool(t *testing.T) school {
	t.Helper()
	t.Setenv("HOME", t.TempDir())
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	db, err := postgres.Open(t.Context(), postgrestest.Address(t))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = db.Close() })
	return school{t, db}
}

// at is a learner at a node, and the rehearsals there.
func (s school) at(answers ...string) (learner, Kept) {
	s.t.Helper()
	l := newLearner(s.t, record.In(s.db, "Ada"), answers...)
	return l, InRecord(cli.New(nil, io.Discard, io.Discard), l.record)
}

// begins goes to the bench from the menu, and stops where the answers end.
func (s school) begins(answers ...string) (learner, error) {
	l, k := s.at(answers...)
	return l, k.Begin(l.Session)
}

// goesOn is another node that goes on with what is going on.
func (s school) goesOn(answers ...string) (learner, error) {
	l, k := s.at(answers...)
	return l, l.GoOn(k)
}

// studLine is the line of the menu with the pump stud.
func studLine() string {
	return strconv.Itoa(slices.Index(content.Shipped().JobNames(), "pump-stud") + 1)
}

var studMoves = []string{"dress", "key out", "feed off", "undo", "speed 70", "start", "hint", "stop", "card", "done"}

// Wherever a rehearsal is stopped, another node goes on at that place without a question, and it comes
// to the same, kept once with its moves.
func TestGoesOnAtAnotherNode(t *testing.T) {
	s := newSchool(t)
	for n := range len(studMoves) + 1 {
		l, err := s.begins(append([]string{studLine()}, studMoves[:n]...)...)
		if n < len(studMoves) {
			if !errors.Is(err, page.ErrStopped) {
				t.Fatal(n, err)
			}
			if l, err = s.goesOn(studMoves[n:]...); err != nil || l.face.asked != len(studMoves)-n {
				t.Fatal(n, err, l.face.said.String())
			}
		}
		if said := l.face.said.String(); err != nil || !strings.Contains(said, l.Say("bench-debrief")) || strings.Contains(said, "Moves made") {
			t.Error(n, err, said)
		}
		if _, err := s.goesOn(); !errors.Is(err, sitting.ErrNothingStored) {
			t.Error(n, "it still goes on: ", err)
		}
		logs, err := l.record.Logs()
		if err != nil || len(logs) != n+1 || !strings.HasSuffix(logs[n].Text, "\ndress\nkey out\nfeed off\nundo\nspeed 70\nstart\nstop\ndone\n") {
			t.Error(n, err, logs)
		}
		all, err := l.record.Rehearsals()
		if err != nil || len(all) != n+1 || all[n].Hints != 1 {
			t.Errorf("%d: %v %+v", n, err, all)
		}
	}
}

// A move that can't be stored has not been made when one goes on; those before it have.
func TestFaultAtAMove(t *testing.T) {
	s := newSchool(t)
	for n, move := range []string{"dress", "key out", "feed off"} {
		fault := fmt.Sprintf("CREATE FUNCTION fails%d() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN IF NEW.line = '%s\n' THEN RAISE 'no room'; END IF; RETURN NEW; END $$;"+
			"CREATE TRIGGER fails BEFORE INSERT ON moves FOR EACH ROW EXECUTE FUNCTION fails%d()", n, move, n)
		if _, err := s.db.Exec(fault); err != nil {
			t.Fatal(err)
		}
		l, err := s.begins(studLine(), "dress", "key out", "feed off")
		if err == nil || !strings.Contains(l.face.said.String(), "no room") || !strings.Contains(err.Error(), move) { // they were asked whether to try again
			t.Fatal(move, err, l.face.said.String())
		}
		if _, err := s.db.Exec("DROP TRIGGER fails ON moves"); err != nil {
			t.Fatal(err)
		}
		if l, err = s.goesOn("oil", "done"); err != nil {
			t.Fatal(move, err)
		}
		logs, err := l.record.Logs()
		want := strings.Join(append([]string{"", "dress", "key out"}[:n+1], "oil", "done", ""), "\n")
		if err != nil || len(logs) != n+1 || !strings.HasSuffix(logs[n].Text, want) || strings.Contains(logs[n].Text, move) {
			t.Errorf("%s: %v %v", move, err, logs)
		}
	}
}

// One that was left is offered again, and goes on or is set aside as they say; what is going on at
// another node hears of it. Nothing that is said there names a file or an option.
func TestLeftAndOfferedAgain(t *testing.T) {
	s := newSchool(t)
	if _, err := s.begins(studLine(), "dress", "key out", "leave"); !errors.Is(err, page.ErrStopped) {
		t.Fatal(err)
	}
	if _, err := s.begins(studLine(), "1", "start"); !errors.Is(err, page.ErrStopped) {
		t.Fatal(err)
	}
	late, k := s.at("oil") // goes on by what it had read, after another has begun anew
	var anew learner
	late.Clock = func() time.Time {
		if anew.Session == nil {
			var err error
			if anew, err = s.begins(studLine(), "2", "dress"); !errors.Is(err, page.ErrStopped) {
				t.Error(err)
			}
		}
		return time.Now()
	}
	if err := late.GoOn(k); !errors.Is(err, record.ErrElsewhere) {
		t.Error("two mix: ", err)
	}
	if said := anew.face.said.String(); !strings.Contains(said, "Moves made: 3") || !strings.Contains(said, anew.Say("bench-moves-aside")) {
		t.Error(said)
	}
	logs, err := anew.record.Logs()
	if err != nil || len(logs) != 2 || !strings.HasSuffix(logs[0].Text, "\ndress\nkey out\nstart\n") || !strings.HasSuffix(logs[1].Text, "\ndress\n") {
		t.Error(err, logs)
	}
	done, err := s.goesOn("look", "log", "card", "help", "moves", "hint", "done")
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range []learner{late, anew, done} {
		for _, no := range []string{".log", "FILE", "dryrun", os.TempDir()} {
			if strings.Contains(l.face.said.String(), no) {
				t.Errorf("%q is offered in %s", no, l.face.said.String())
			}
		}
	}
}

// Rehearsals of two jobs that were left both go on, the earlier one too.
func TestTwoJobsLeft(t *testing.T) {
	s := newSchool(t)
	const yes, firstJob = "1", "1"
	for _, answers := range [][]string{{studLine(), "dress"}, {firstJob, "dress"}, {studLine(), yes, "oil"}, {firstJob, yes, "oil"}} {
		if l, err := s.begins(append(answers, "leave")...); !errors.Is(err, page.ErrStopped) || l.face.asked != len(answers)+1 {
			t.Fatal(answers, err, l.face.said.String())
		}
	}
	logs, err := record.In(s.db, "Ada").Logs()
	if err != nil || len(logs) != 2 || !strings.HasSuffix(logs[0].Text, "\ndress\noil\n") || !strings.HasSuffix(logs[1].Text, "\ndress\noil\n") {
		t.Error(logs, err)
	}
}

// A school that works in other units has all jobs, each on its lathe.
func TestEveryJobInAnyUnits(t *testing.T) {
	s := newSchool(t)
	for _, units := range []string{"in", "mm"} {
		for i := range content.Shipped().JobNames() {
			l, k := s.at(strconv.Itoa(i+1), "dress", "leave")
			k.run.Units = units
			if err := k.Begin(l.Session); !errors.Is(err, page.ErrStopped) {
				t.Error(units, i, err)
			}
			if _, err := l.record.Forget(); err != nil {
				t.Fatal(err)
			}
		}
	}
}

// A rehearsal whose job reads otherwise now can't go on, and says so; its moves stay.
func TestAnotherJobNow(t *testing.T) {
	s := newSchool(t)
	if _, err := s.begins(studLine(), "dress"); !errors.Is(err, page.ErrStopped) {
		t.Fatal(err)
	}
	if _, err := s.db.Exec("UPDATE moves SET line = 'job another' WHERE n = 0"); err != nil {
		t.Fatal(err)
	}
	l, err := s.goesOn("start")
	if !errors.Is(err, sitting.ErrChanged) {
		t.Error(err)
	}
	if logs, err := l.record.Logs(); len(logs) != 1 || err != nil {
		t.Error(logs, err)
	}
}
