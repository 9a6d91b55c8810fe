package set

import (
	"bytes"
	"fmt"
	"reflect"
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

func noLathe(string) (machine.Lathe, error) { return machine.InchLathe, nil }

func maker(t testing.TB, blueprint string) *Maker {
	t.Helper()
	b, err := ParseBlueprint("test.yaml", []byte(blueprint), noLathe)
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
	if got := m.Code("mf-01") + " " + a[2].Problem.Code.String(); got != "YFS-VWAA compound-travel@1-12fbb158" {
		t.Errorf("the pinned question is %s; sheets handed out earlier can no longer be marked", got)
	}
	if codes(a) == codes(items(t, m, "mf-02")) {
		t.Error("two apprentices have the same questions")
	}
	m.secret = Secret("another secret, as long as it must be")
	if codes(a) == codes(items(t, m, "mf-01")) || m.Code("mf-01") == "YFS-VWAA" {
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

// Everything that is wrong with a blueprint is said at once, with what would work.
func TestBlueprints(t *testing.T) {
	for text, want := range map[string]string{
		"set: a\ntitel: b": "unknown key \"titel\"; here the keys are set, title, units",
		"set: A b\ntitle: x\nunits: in\nslots: [{tasks: [single-depth]}]":                                                            `set "A b": give a short name`,
		"set: a\ntitle: x\nunits: cm\nslots: [{tasks: [single-depth]}]":                                                              `units "cm": give in or mm`,
		"set: a\ntitle: x\nunits: in\nslots: []":                                                                                     "slots: give 1 to 60",
		"set: a\ntitle: x\nunits: in\nslots: [{tasks: [single-dept]}]":                                                               "slot 1: no task is called \"single-dept\"; did you mean single-depth",
		"set: a\ntitle: x\nunits: in\nslots: [{stage: shapes}]":                                                                      `stage "shapes": give one of`,
		"set: a\ntitle: x\nunits: in\nslots: [{stage: shape, tasks: [single-depth]}]":                                                "give tasks or a stage, not both",
		"set: a\ntitle: x\nunits: in\nslots: [{}]":                                                                                   "slot 1: give tasks or a stage",
		"set: a\ntitle: x\nunits: in\nslots: [{tasks: [single-depth], level: 4}]":                                                    "level 4: give 1, 2 or 3",
		"set: a\ntitle: x\nunits: in\nslots: [{tasks: [single-depth], points: 1.3}]":                                                 "points 1.3: give half a point to 100, in halves",
		"set: a\ntitle: x\nunits: in\nslots: [{tasks: [single-depth], points: 0}]":                                                   "points 0: give half a point",
		"set: a\ntitle: x\nunits: in\nrules: {conventions: some}\nslots: [{tasks: [single-depth]}]":                                  `conventions "some": give full, half or none`,
		"set: a\ntitle: x\nunits: in\nslots: [{name: h, tasks: [single-depth]}, {tasks: [compound-travel], takes: {pitch: h}}]":      `takes pitch from "h", which asks for something else (h, not P)`,
		"set: a\ntitle: x\nunits: in\nslots: [{tasks: [single-depth], count: 70}]":                                                   "count 70: give 1 to",
		"set: a\ntitle: x\nunits: in\npaper: A5\nslots: [{tasks: [single-depth]}]":                                                   `paper "A5": give A4 or Letter`,
		"set: a\ntitle: x\nunits: in\ndate: today\nslots: [{tasks: [single-depth]}]":                                                 `date "today": give a day`,
		"set: a\ntitle: x\nunits: in\nslots: [{tasks: [infeed-left], takes: {total: travel}}]":                                       `takes total from "travel": no slot above has that name`,
		"set: a\ntitle: x\nunits: in\nslots: [{name: travel, tasks: [compound-travel]}, {tasks: [infeed-left], takes: {x: travel}}]": `infeed-left has no input "x" to take over; it has`,
		"set: a\ntitle: x\nunits: mm\nslots: [{tasks: [inch-designation]}]":                                                          "inch-designation is not set in mm",
		"": "the file is empty; it wants set, title",
	} {
		if _, err := ParseBlueprint("b.yaml", []byte(text), noLathe); err == nil || !strings.Contains(err.Error(), want) || !strings.Contains(err.Error(), "b.yaml") {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
	_, err := ParseBlueprint("b.yaml", []byte("set: A\ntitle: ''\nunits: x\nslots: [{tasks: [nothing], level: 9}]"), noLathe)
	if n := strings.Count(err.Error(), "b.yaml"); n != 5 {
		t.Errorf("%d findings at once: %v", n, err)
	}
	for name, text := range content.Examples() {
		if strings.HasSuffix(name, ".yaml") {
			if _, err := ParseBlueprint(name, text, noLathe); err != nil {
				t.Error(err)
			}
		}
	}
}

// A mixed slot gives apprentices different tasks, a shuffled set another order.
func TestMixAndShuffle(t *testing.T) {
	m := example(t, "exit-ticket.yaml")
	orders, mixed := map[string]bool{}, map[string]bool{}
	for _, who := range roster(60) {
		order := ""
		for i, it := range items(t, m, who.ID) {
			order += fmt.Sprint(it.Place)
			if it.Number != i+1 {
				t.Fatalf("question %d is printed as %d", i+1, it.Number)
			}
			if it.Place == 4 {
				mixed[it.Problem.Task.Name] = true
			}
		}
		orders[order] = true
	}
	if len(orders) < 30 || len(mixed) != 2 {
		t.Errorf("%d orders, tasks %v", len(orders), mixed)
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

func TestSafeCells(t *testing.T) {
	for in, want := range map[string]string{"=1+1": "'=1+1", "@SUM(A1)": "'@SUM(A1)", "-0.0015": "-0.0015", "+0.2": "+0.2", "-2+3": "'-2+3", "-cmd": "'-cmd", "\t=1": "'\t=1", "Ada": "Ada", "": "", "0.5": "0.5", "|x": "'|x"} {
		if got := Safe(in); got != want {
			t.Errorf("%q is written as %q, want %q", in, got, want)
		}
	}
}

// The identity of a blueprint holds what the numbers hang on and nothing else.
func TestIdentity(t *testing.T) {
	const base = "set: a\ntitle: x\nunits: in\nslots: [{tasks: [single-depth]}]"
	id := func(text string) string {
		b, err := ParseBlueprint("b", []byte(text), noLathe)
		if err != nil {
			t.Fatal(err)
		}
		return string(b.identity())
	}
	for change, same := range map[string]bool{"title: x": true, "units: in": false, "slots: [{tasks: [single-depth]}]": false} {
		other := strings.Replace(base, change, map[string]string{"title: x": "title: y\ntime: 9 minutes\npaper: Letter\nnotes: [z]", "units: in": "units: mm",
			"slots: [{tasks: [single-depth]}]": "slots: [{tasks: [single-depth], level: 2}]"}[change], 1)
		if got := id(base) == id(other); got != same {
			t.Errorf("%q changed: same numbers %v", change, got)
		}
	}
	if points := strings.Replace(base, "single-depth]", "single-depth], points: 5", 1); !reflect.DeepEqual(id(base), id(points)) {
		t.Error("other points give other numbers")
	}
}
