package set

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"

	"scratchpass/content"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/handout"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/tasks"
)

var testSecret = Secret("the secret of the tests, known to all")

func maker(t testing.TB, blueprint string) *Maker {
	t.Helper()
	b, err := ParseBlueprint("test.yaml", []byte(blueprint), tasks.Set{}, noLathe)
	if err != nil {
		t.Fatal(err)
	}
	m, err := NewMaker(b, testSecret, content.Shipped())
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func example(t testing.TB, name string) *Maker {
	return maker(t, string(content.Examples()[name]))
}

func roster(n int) []Apprentice {
	all := make([]Apprentice, n)
	for i := range all {
		all[i] = Apprentice{ID: fmt.Sprintf("mf-%04d", i), Name: fmt.Sprintf("Apprentice %d", i)}
	}
	return all
}

func items(t testing.TB, m *Maker, who string) []Item {
	t.Helper()
	all, err := m.Items(who)
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// everyTask is a blueprint with all tasks, a level each in turn.
func everyTask(system machine.System) []string {
	var parts []string
	slots := ""
	n := 0
	for _, task := range tasks.All() {
		if !task.Allows(system) {
			continue
		}
		slots += fmt.Sprintf("  - {tasks: [%s], level: %d}\n", task.Name, n%3+1)
		if n++; n%30 == 0 {
			parts, slots = append(parts, slots), ""
		}
	}
	if slots != "" {
		parts = append(parts, slots)
	}
	for i := range parts {
		parts[i] = fmt.Sprintf("set: all-%d\ntitle: All\nunits: %s\nslots:\n%s", i, system, parts[i])
	}
	return parts
}

// The same secret, set and apprentice give the same questions, on every machine: the
// code of one is pinned. Any other of the three gives others.
func TestNumbersHangOnSecretSetAndApprentice(t *testing.T) {
	m := example(t, "first-thread.yaml")
	a, again := items(t, m, "mf-01"), items(t, example(t, "first-thread.yaml"), "mf-01")
	codes := func(all []Item) string {
		var c []string
		for _, it := range all {
			c = append(c, it.Problem.Code.String())
		}
		return strings.Join(c, " ")
	}
	if codes(a) != codes(again) {
		t.Error("made again, the questions are others")
	}
	if got := m.Code("mf-01") + " " + a[2].Problem.Code.String(); got != "9BW-FBY3 compound-travel@1-f1cc800d" {
		t.Errorf("the pinned question is %s; sheets handed out earlier can no longer be marked", got)
	}
	if codes(a) == codes(items(t, m, "mf-02")) {
		t.Error("two apprentices have the same questions")
	}
	m.secret = Secret("another secret, as long as it must be")
	if codes(a) == codes(items(t, m, "mf-01")) || m.Code("mf-01") == "9BW-FBY3" {
		t.Error("another secret gives the same questions")
	}
	other := maker(t, strings.Replace(string(content.Examples()["first-thread.yaml"]), "set: first-thread", "set: second-thread", 1))
	if codes(a) == codes(items(t, other, "mf-01")) {
		t.Error("another set gives the same questions")
	}
	mended := maker(t, strings.Replace(string(content.Examples()["first-thread.yaml"]), "title: Before", "title: Just before", 1))
	if codes(a) != codes(items(t, mended, "mf-01")) {
		t.Error("a mended title gives other questions")
	}
}

// All apprentices have the same tasks, equal in steps and digits; their numbers differ.
func TestProblemsAreAlike(t *testing.T) {
	for _, system := range []machine.System{machine.Imperial, machine.Metric} {
		for _, blueprint := range everyTask(system) {
			m := maker(t, blueprint)
			same := make([]map[string]bool, m.Blueprint.Items())
			unlike := 0
			const class = 25
			for _, who := range roster(class) {
				for i, it := range items(t, m, who.ID) {
					if shapeOf(it.Problem) != m.places[i].shapes[it.Problem.Task.Name] {
						unlike++
					}
					if same[i] == nil {
						same[i] = map[string]bool{}
					}
					same[i][fmt.Sprint(it.Problem.Values.Givens(), it.Problem.Values.Situation(), it.Problem.Expected.Options)] = true
				}
			}
			if unlike > 0 {
				t.Errorf("%s: %d problems are not alike", m.Blueprint.Set, unlike)
			}
			for i, numbers := range same {
				if len(numbers) < 2 {
					t.Errorf("%s: question %d, %s, has the same numbers for all", m.Blueprint.Set, i+1, m.places[i].tasks[0])
				}
			}
		}
	}
}

// No question of a sheet gives the figure that another one asks for.
func TestNoQuestionTellsAnother(t *testing.T) {
	m := maker(t, twenty(20))
	told := 0
	for _, who := range roster(100) {
		all := items(t, m, who.ID)
		for i, it := range all {
			keys := figuresOf(it.Words, it.Problem).keys
			for j, other := range all {
				if i == j {
					continue
				}
				given := figuresOf(other.Words, other.Problem).given
				for _, k := range keys {
					if slices.Contains(given, k) {
						told++
						t.Logf("%s: question %d asks for %s, question %d gives it", who.ID, i+1, k, j+1)
					}
				}
			}
		}
	}
	if told > 0 {
		t.Errorf("%d times in 100 sheets", told)
	}
}

// No number of a key stands on its sheet, but those that the question gives: in any of
// the tasks, in any format.
func TestNoKeyOnTheSheet(t *testing.T) {
	for _, system := range []machine.System{machine.Imperial, machine.Metric} {
		for _, blueprint := range everyTask(system) {
			m := maker(t, blueprint)
			p, err := NewPrinter(m, content.Shipped())
			if err != nil {
				t.Fatal(err)
			}
			for _, who := range roster(6) {
				all := items(t, m, who.ID)
				sheet, err := p.Sheet(who, all)
				if err != nil {
					t.Fatal(err)
				}
				for i := range sheet.Items {
					one := sheet
					one.Items = sheet.Items[i : i+1]
					var out bytes.Buffer
					w, err := handout.Text(&out, p.Options("x"))
					if err != nil {
						t.Fatal(err)
					}
					if err := w.Sheet(one); err != nil {
						t.Fatal(err)
					}
					if err := w.Close(); err != nil {
						t.Fatal(err)
					}
					own := all[i].Problem
					if kind := own.Task.Kind; kind != answer.Quantity && kind != answer.Readings {
						continue
					}
					given := fmt.Sprint(own.Values.Givens())
					for _, number := range decimalFigure.FindAllString(own.Expected.Text(), -1) {
						if slices.Contains(decimalFigure.FindAllString(out.String(), -1), number) && !strings.Contains(given, strings.TrimRight(number, "0")) {
							t.Errorf("%s of %s stands on its sheet:\n%s", number, own.Code, out.String())
						}
					}
				}
			}
		}
	}
}

func TestCodes(t *testing.T) {
	for in, want := range map[string]string{"k7f-2qxm": "K7F-2QXM", " K7F 2QXM ": "K7F-2QXM", "K7F2QXM": "K7F-2QXM", "K7F–2QXM": "K7F-2QXM", "x": "X"} {
		if got := cleanCode(in); got != want {
			t.Errorf("%q is read as %q, want %q", in, got, want)
		}
	}
	m := example(t, "first-thread.yaml")
	if codes, err := m.Codes(roster(20_000)); err != nil || len(codes) != 20_000 {
		t.Error(len(codes), err)
	}
}
