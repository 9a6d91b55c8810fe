package home

import (
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"scratchpass/lessons/internal/scripted"
	"scratchpass/lessons/page"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/machine"
)

// visit opens the home screen for someone who types these things there, and returns what
// was said. Doors that are nil are left out.
func visit(t *testing.T, r *record.Record, replies ...string) string {
	t.Helper()
	l := scripted.NewLearner(t, 5, machine.Imperial, (*scripted.Learner).Key)
	if r != nil {
		book, err := schedule.NewBook(r, machine.Imperial)
		if err != nil {
			t.Fatal(err)
		}
		l.Session.KeepIn(book, r.Sittings())
	}
	l.Session.Clock = func() time.Time { return time.Date(2026, 11, 26, 20, 0, 0, 0, time.UTC) }
	n := 0
	l.Answer = func(q page.Prompt) (string, error) {
		if n++; n > len(replies) {
			return "", page.ErrStopped
		}
		for i, o := range q.Options() {
			if strings.HasPrefix(o, replies[n-1]) {
				return strconv.Itoa(i + 1), nil
			}
		}
		return replies[n-1], nil
	}
	if err := Run(l.Session, Doors{SaveLathe: func(machine.Lathe) (string, error) { return "lathe.yaml", nil }}); err != nil && n <= len(replies) {
		t.Fatal(err)
	}
	return l.Log.String()
}

func fresh(t *testing.T) *record.Record {
	t.Helper()
	r, err := record.Open(filepath.Join(t.TempDir(), "r.db"), "Ada")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { r.Close() })
	return r
}

// A first visit has where to start and nothing else but the lathe and the way out; one
// line opens the whole menu.
func TestAFirstVisit(t *testing.T) {
	log := visit(t, fresh(t), "Leave")
	for _, want := range []string{"Start here: Safety first, about 18 minutes.", "1) Start here: Safety first (18 min)\n2) Describe your lathe", "3) I have a record, or want to look round\n4) Leave\n"} {
		if !strings.Contains(log, want) {
			t.Errorf("no %q in\n%s", want, log)
		}
	}
	if strings.Contains(log, "All lessons") || strings.Contains(log, "shown") {
		t.Error(log)
	}
	log = visit(t, fresh(t), "I have a record", "Leave")
	if !strings.Contains(log, "--record FILE") || !strings.Contains(log, "2) Practise what is best for me now\n3) All lessons\n") {
		t.Error(log)
	}
}

// Someone who was here before has the plan: the lesson is the first line of the menu, and
// the list says how far each is.
func TestALaterVisit(t *testing.T) {
	r := fresh(t)
	visit(t, r, "Start here", "", "stop")
	if err := r.SetPlace("reading-the-job", 1); err != nil {
		t.Fatal(err)
	}
	log := visit(t, r, "All lessons", "Not needed", "Back", "Back", "Leave")
	for _, want := range []string{
		"Tonight: nothing is due. Go on with Reading the job, part 2 of",
		"0 of ", "1) Go on with Reading the job, part 2 of 6\n2) Practise what is best",
		"» Reading the job (18 min): begun, part 2 of 6\n", "→ Safety first (18 min): next\n", "· The dial book (15 min)\n",
		") Not needed for a first thread: 10 more lessons\n", "1) · The callout",
	} {
		if !strings.Contains(log, want) {
			t.Errorf("no %q in\n%s", want, log)
		}
	}
}

// Without a record there is no plan, and the menu has what needs none.
func TestAVisitWithoutARecord(t *testing.T) {
	log := visit(t, nil, "All lessons", "Back", "Leave")
	if strings.Contains(log, "Start here") || strings.Contains(log, "due") || !strings.Contains(log, "1) All lessons\n") || !strings.Contains(log, "· Safety first") {
		t.Error(log)
	}
}
