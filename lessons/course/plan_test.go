package course

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"scratchpass/content"
	"scratchpass/lessons/mastery"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
)

// now is an evening.
var now = time.Date(2026, 11, 26, 19, 0, 0, 0, time.UTC)

// held is a task that was shown and held, and is due again in so many days; days below 0
// are days ago.
func held(dueIn int) record.Summary {
	s := record.Summary{State: mastery.State{Answers: 4, Right: 4, Mastered: true, Held: true, Days: 2}}
	s.Last = now.AddDate(0, 0, -3)
	s.Shown = mastery.MomentOf(s.Last)
	s.LastShown = s.Last
	s.Seconds = 4 * 90
	s.Card.Due = now.AddDate(0, 0, dueIn)
	return s
}

// records is a record of which only what a plan reads is there.
type records struct {
	of      map[string]record.Summary
	answers int
	places  []record.Left
	test    *record.Test
}

func (r records) Summaries() (map[string]record.Summary, int, error) { return r.of, r.answers, nil }
func (r records) Places() ([]record.Left, error)                     { return r.places, nil }
func (r records) LastTest() (record.Test, bool, error) {
	if r.test == nil {
		return record.Test{}, false, nil
	}
	return *r.test, true, nil
}

// say has the shipped words.
func say(t *testing.T) Say {
	t.Helper()
	screens, err := content.Shipped().Screens()
	if err != nil {
		t.Fatal(err)
	}
	return func(phrase string, pairs ...any) string {
		if screens[phrase] == "" {
			t.Errorf("no phrase is called %s", phrase)
		}
		return content.FillPairs(screens[phrase], pairs...)
	}
}

// The plan at its edges: what comes first, and what is said of it.
func TestPlan(t *testing.T) {
	lessons := Load(content.Shipped())
	all := func(dueIn int) map[string]record.Summary {
		of := map[string]record.Summary{}
		for _, it := range schedule.Catalogue(machine.Imperial) {
			of[it.Task] = held(dueIn)
		}
		return of
	}
	finished := func(l content.Lesson) record.Left { return record.Left{Lesson: l.Name, Part: len(l.Parts)} }
	second := lessons[1]
	oneDay := held(9) // shown on one day, and can hurt someone: it wants another
	oneDay.Mastered, oneDay.Held, oneDay.Days, oneDay.Card.Due = false, false, 1, time.Time{}
	slow := held(-1)
	slow.Seconds = 4 * 300
	for name, c := range map[string]struct {
		r    records
		best Step
		says string
	}{
		"no record yet":   {records{}, Start, "Tonight: nothing is due. Next lesson: Safety first,"},
		"a lesson begun":  {records{places: []record.Left{{Lesson: second.Name, Part: 2}}}, GoOn, "Tonight: nothing is due. Go on with Reading the job, part 3 of "},
		"the latest":      {records{places: []record.Left{{Lesson: second.Name}, {Lesson: lessons[0].Name, Part: 1}}}, GoOn, "Go on with Reading the job, part 1 of "},
		"a lesson done":   {records{answers: 20, places: []record.Left{finished(lessons[0])}}, NextOne, "Tonight: nothing is due. Next lesson: Reading the job,"},
		"done by answers": {records{answers: 20, of: tasksOf(lessons[0], held(9))}, NextOne, "Next lesson: Reading the job,"},
		"begun again":     {records{answers: 20, of: tasksOf(lessons[0], held(9)), places: []record.Left{{Lesson: lessons[0].Name, Part: 1}}}, GoOn, "Go on with Safety first, part 2 of "},
		"no such lesson":  {records{answers: 1, places: []record.Left{{Lesson: "no-longer-there", Part: 1}}}, NextOne, "Next lesson: Safety first,"},
		"one due":         {records{answers: 4, of: map[string]record.Summary{"single-depth": held(-1)}}, Review, "Tonight: 1 due, about 2 min. Next lesson"},
		"due now":         {records{answers: 4, of: map[string]record.Summary{"single-depth": held(0)}}, Review, "1 due"},
		"due tomorrow":    {records{answers: 4, of: map[string]record.Summary{"single-depth": held(1)}}, NextOne, "nothing is due"},
		"another day":     {records{answers: 4, of: map[string]record.Summary{"ready-to-start": oneDay}}, Review, "1 due"},
		"too much":        {records{answers: 12, of: map[string]record.Summary{"single-depth": slow, "pitch-from-tpi": slow, "blank-diameter": slow}}, Review, "Tonight: 3 due, about 15 min in all. A sitting ends after 12."},
		"no times known": {records{answers: 4, of: map[string]record.Summary{"single-depth": func() record.Summary { s := held(-1); s.Seconds = 0; return s }()}}, Review,
			"1 due, about 2 min"},
		"all shown": {records{answers: 900, of: all(9)}, Test, "Tonight: nothing is due. Only the mixed test is missing."},
		"all shown, and the test": {records{answers: 900, of: all(9), test: &record.Test{Got: 12, Of: 12}}, Practise,
			"Tonight: nothing is due. Ready to ask your instructor."},
	} {
		p, err := lessons.Plan(c.r, machine.Imperial, now)
		if err != nil {
			t.Fatal(err)
		}
		if got := p.Today(say(t), now); p.Best() != c.best || !strings.Contains(got, c.says) {
			t.Errorf("%s: step %d, %q; want step %d, %q", name, p.Best(), got, c.best, c.says)
		}
		if p.Shown+p.Started > p.Of || p.Held > p.Critical || p.Of == 0 {
			t.Errorf("%s: %+v", name, p.Readiness(say(t)))
		}
	}
}

func tasksOf(l content.Lesson, s record.Summary) map[string]record.Summary {
	of := map[string]record.Summary{}
	for _, part := range l.Parts {
		of[part.Task] = s
	}
	return of
}

// Today is tonight from five in the afternoon until four in the morning.
func TestTonight(t *testing.T) {
	for hour, want := range map[int]string{3: "Tonight", 4: "Today", 9: "Today", 16: "Today", 17: "Tonight", 23: "Tonight", 0: "Tonight"} {
		at := time.Date(2026, 11, 26, hour, 30, 0, 0, time.UTC)
		if got := (Plan{}).Today(say(t), at); !strings.HasPrefix(got, want+":") {
			t.Errorf("at %d: %q", hour, got)
		}
	}
}

// A lesson that was begun, or comes next, says so in the list, with a mark.
func TestLabels(t *testing.T) {
	lessons := Load(content.Shipped())
	p, err := lessons.Plan(records{places: []record.Left{{Lesson: lessons[1].Name, Part: 2}, {Lesson: lessons[0].Name, Part: 99}}}, machine.Imperial, now)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, l := range p.Lessons[:5] {
		got = append(got, l.Label(say(t), l.Name == p.Next.Name))
	}
	for i, want := range []string{"✓ Safety first (18 min): done", "» Reading the job (18 min): begun, part 3 of ", "· ", "→ ", "· "} {
		if !strings.HasPrefix(got[i], want) {
			t.Errorf("%q, want %q", got[i], want)
		}
	}
	if !p.Lessons[2].Special || p.Next.Special {
		t.Error("a lesson that a first thread does not need is never next")
	}
}

// A record that may only be read has a plan as any other, though its summaries are made
// anew; what was gained on the last day is told.
func TestPlanOfAReadOnlyRecord(t *testing.T) {
	r, err := record.Open(filepath.Join(t.TempDir(), "r.db"), "Ada")
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	book, err := schedule.NewBook(r, machine.Imperial)
	if err != nil {
		t.Fatal(err)
	}
	for i := range 3 {
		for j := range 6 {
			task := fmt.Sprintf("other-%d", j)
			if j == 5 {
				task = "no-longer-there"
			}
			if err := book.Keep(record.Answer{At: now.Add(time.Duration(i*6+j)*time.Minute - 30*time.Hour), Task: task, Verdict: answer.Right}); err != nil {
				t.Fatal(err)
			}
		}
	}
	r.ReadOnly = true
	if err := r.Refold(schedule.Fold(schedule.Catalogue(machine.Imperial)), schedule.FoldVersion); err != nil {
		t.Fatal(err)
	}
	p, err := Load(content.Shipped()).Plan(book, machine.Imperial, now)
	if err != nil || p.First || p.Answers != 18 || p.Best() != NextOne || !p.Last.IsZero() {
		t.Errorf("%+v, %v", p, err)
	}
}

// The last day tells what it has shown, and else what was worked on.
func TestLastTime(t *testing.T) {
	today, before := held(9), held(9)
	before.Last = now.AddDate(0, 0, -9)
	before.Shown = mastery.MomentOf(before.Last)
	answered := record.Summary{State: mastery.State{Answers: 1}, Last: now.AddDate(0, 0, -3)}
	lessons := Load(content.Shipped())
	p, err := lessons.Plan(records{answers: 9, of: map[string]record.Summary{"single-depth": today, "pitch-from-tpi": before, "blank-diameter": answered}}, machine.Imperial, now)
	if err != nil || fmt.Sprint(p.Gained) != "[single-depth]" || len(p.Worked) != 2 || p.Started != 1 || p.Shown != 2 {
		t.Errorf("%v: gained %v, worked on %v, %d begun, %d shown", err, p.Gained, p.Worked, p.Started, p.Shown)
	}
}
