package progress_test

import (
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"scratchpass/content"
	"scratchpass/lessons/face/plain"
	"scratchpass/lessons/mastery"
	"scratchpass/lessons/page"
	"scratchpass/lessons/progress"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
)

var update = flag.Bool("update", false, "write the golden pages anew; read them before committing")

// speaker has the shipped words.
func speaker(t testing.TB) progress.Speaker {
	t.Helper()
	lib := content.Shipped()
	screens, err := lib.Screens()
	if err != nil {
		t.Fatal(err)
	}
	words := func(task string) content.TaskWords {
		w, err := lib.Task(task)
		if err != nil {
			t.Fatal(err)
		}
		return w
	}
	return progress.Speaker{
		Say: func(phrase string, pairs ...any) string {
			text, ok := screens[phrase]
			if !ok && phrase != "rehearsal" { // which stands with the cautions
				t.Errorf("no phrase is called %s", phrase)
			}
			return strings.TrimSpace(content.FillPairs(text, pairs...))
		},
		Title:   func(task string) string { return words(task).Title },
		Mistake: func(name string) string { return "Title of " + name },
		Way:     func(inches float64) string { return fmt.Sprintf("%.4f in", inches) },
		Job: func(name string) string {
			if j, err := lib.Job(name); err == nil {
				return j.Title
			}
			return name
		},
		Slip: func(task, slip string) string { return strings.TrimSpace(words(task).Slips[slip]) },
	}
}

// printed is a page as it stands on a terminal of 80 columns.
func printed(t testing.TB, p page.Page) string {
	t.Helper()
	var out strings.Builder
	if err := plain.New(context.Background(), strings.NewReader(""), &out, plain.Options{Width: 80, Columns: true}).Show(p); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// fits reports what of a page is more than one screen of 80 by 24, of which the last line
// is the prompt's.
func fits(t testing.TB, name, text string) {
	t.Helper()
	lines := strings.Split(strings.TrimRight(text, "\n"), "\n")
	if len(lines) > 23 {
		t.Errorf("%s: %d lines\n%s", name, len(lines), text)
	}
	for _, line := range lines {
		if len([]rune(line)) > 80 {
			t.Errorf("%s: %q", name, line)
		}
	}
}

// answered is what letters come to: r right, w wrong, s the first common error of the
// problem, u a wrong unit, one a minute with others between; | begins the next day.
func answered(t testing.TB, task, letters string) (schedule.Item, record.Summary) {
	t.Helper()
	of, err := (tasks.Set{}).Find(task)
	if err != nil {
		t.Fatal(err)
	}
	it := schedule.ItemOf(of, machine.Imperial)
	fold := schedule.Fold([]schedule.Item{it})
	var s record.Summary
	at := time.Date(2026, 11, 25, 18, 0, 0, 0, time.UTC)
	for i, c := range letters {
		at = at.Add(time.Minute)
		if c == '|' {
			at = time.Date(2026, 11, at.Day()+1, 18, 0, 0, 0, time.UTC)
			continue
		}
		system := machine.Imperial
		if !of.Allows(system) {
			system = machine.Metric
		}
		p, err := problem.New(of, problem.NewCode(task, problem.NumbersGiven, system, uint32(i), machine.DefaultLathe(system)))
		if err != nil {
			t.Fatal(err)
		}
		a := record.Answer{At: at, Task: task, Code: p.Code.String(), Situation: p.Values.Situation(), Key: p.Expected.Text()}
		switch c {
		case 'r':
			a.Verdict = answer.Right
		case 'w':
			a.Verdict = answer.Wrong
		case 'u':
			a.Verdict = answer.WrongUnit
		case 's':
			a.Verdict, a.Slip = answer.KnownError, of.Errors[0].Name
		}
		s = fold(s, a, 1+10*i)
	}
	return it, s
}

var now = time.Date(2026, 11, 26, 12, 0, 0, 0, time.UTC)

func TestWhyPages(t *testing.T) {
	w := speaker(t)
	for _, row := range []struct{ name, task, answers string }{
		{"not-begun", "single-depth", ""},
		{"two-right", "single-depth", "rr"},
		{"mistakes-alike", "compound-travel", "sswrsr"},
		{"long-run", "compound-travel", "ssrrrrrrrrr"},
		{"the-later-day", "compound-travel", "ssssrrrrrrrrrrrr"},
		{"decision", "metric-half-nut", "rsrr"},
		{"wrong-unit", "radius-dial-plunge", "urrwrr"},
		{"two-days", "radius-dial-plunge", "rrr"},
		{"shown-not-held", "single-depth", "rrr"},
		{"held", "single-depth", "rrr|r"},
		{"taken-back", "single-depth", "rrr|s"},
	} {
		it, s := answered(t, row.task, row.answers)
		why := progress.WhyOf(it, s, now)
		got := printed(t, why.Page(w))
		fits(t, row.name, got)
		document, err := json.MarshalIndent(why, "", "  ")
		if err != nil {
			t.Fatal(err)
		}
		golden(t, row.name, fmt.Sprintf("%s: %s\n\n%s\n%s\n", row.task, row.answers, got, document))
	}
}

func TestWhysPage(t *testing.T) {
	w := speaker(t)
	var items []schedule.Item
	of := map[string]record.Summary{}
	for i, task := range tasks.Names() {
		it, s := answered(t, task, []string{"r", "ssw", "", "rrrrrrrrrrrrrrrr", "wwr"}[i%5])
		items, of[task] = append(items, it), s
	}
	all := progress.Whys(items, of, now)
	for _, y := range all {
		if y.Answers == 0 || y.Shown {
			t.Errorf("%+v", y)
		}
	}
	for _, n := range []int{0, 1, 7, 8, len(all)} {
		got := printed(t, progress.WhysPage(all[:n], w))
		fits(t, fmt.Sprint(n), got)
		if n == 0 || n == 7 || n == 8 {
			golden(t, fmt.Sprint("list-of-", n), got)
		}
	}
}

// However much is missing, and however long the words for a task are, it stands on one
// screen.
func TestWhyFitsOneScreen(t *testing.T) {
	w := speaker(t)
	for _, it := range schedule.Catalogue(machine.Imperial) {
		task, err := (tasks.Set{}).Find(it.Task)
		if err != nil {
			t.Fatal(err)
		}
		s := record.Summary{State: mastery.State{Answers: 99, Mistakes: map[string]int{"": 9}, Run: mastery.Run{Length: 1, Key: "one"}}}
		for i, e := range task.Errors {
			s.Mistakes[e.Name] = 9 - i
		}
		fits(t, it.Task, printed(t, progress.WhyOf(it, s, now).Page(w)))
		s.Days, s.Shown = 1, mastery.MomentOf(now)
		fits(t, it.Task, printed(t, progress.WhyOf(it, s, now).Page(w)))
	}
}

// golden compares a text with its file.
func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("testdata", "why-"+name+".golden")
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil || string(want) != got {
		t.Errorf("%s: %v\n%s", name, err, got)
	}
}

// The mistakes made most often come first, then in the order of their names.
func TestWhyOrdersMistakes(t *testing.T) {
	it, s := answered(t, "single-depth", "r")
	s.Mistakes = map[string]int{"double": 1, "pitch": 3, "basic": 1, "": 7, "sharp-v": 2}
	var got []string
	for _, m := range progress.WhyOf(it, s, now).Mistakes {
		got = append(got, m.Slip)
	}
	if strings.Join(got, " ") != "pitch sharp-v basic double" {
		t.Error(got)
	}
}
