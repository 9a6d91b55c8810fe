package set

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"scratchpass/content"
	"scratchpass/quiz"
	"scratchpass/quiz/handout"
	"scratchpass/quiz/tasks"
)

var testSecret = Secret("the secret of the tests, known to all")

func noLathe(string) (quiz.Lathe, error) { return quiz.InchLathe, nil }

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
func everyTask(system quiz.System) []string {
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
	if got := m.Code("mf-01") + " " + a[2].Problem.Code.String(); got != "4R4-V3R5 compound-travel@1-cd0b358a" {
		t.Errorf("the pinned question is %s; sheets handed out earlier can no longer be marked", got)
	}
	if codes(a) == codes(items(t, m, "mf-02")) {
		t.Error("two apprentices have the same questions")
	}
	m.secret = Secret("another secret, as long as it must be")
	if codes(a) == codes(items(t, m, "mf-01")) || m.Code("mf-01") == "4R4-V3R5" {
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
	for _, system := range []quiz.System{quiz.Imperial, quiz.Metric} {
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
					same[i][fmt.Sprint(it.Problem.Values.Givens(), it.Problem.Values.Case(), it.Problem.Answer.Options)] = true
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

var figures = regexp.MustCompile(`\d+\.\d+`)

// No number of a key stands on its sheet, but those that the question gives: in any of
// the tasks, in any format.
func TestNoKeyOnTheSheet(t *testing.T) {
	for _, system := range []quiz.System{quiz.Imperial, quiz.Metric} {
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
					problem := all[i].Problem
					kind := problem.Answer.Kind.Name()
					if kind != "quantity" && kind != "readings" {
						continue
					}
					given := fmt.Sprint(problem.Values.Givens())
					for _, number := range figures.FindAllString(problem.Answer.Text(), -1) {
						if slices.Contains(figures.FindAllString(out.String(), -1), number) && !strings.Contains(given, strings.TrimRight(number, "0")) {
							t.Errorf("%s of %s stands on its sheet:\n%s", number, problem.Code, out.String())
						}
					}
				}
			}
		}
	}
}

// typed is a reply as it is written on paper.
func typed(p *quiz.Problem, r quiz.Reply) string {
	return strings.ReplaceAll(p.Answer.Kind.Show(&p.Answer, r), " then", "")
}

func mark(t testing.TB, m *Maker, class []Apprentice, answers []Given) []Result {
	t.Helper()
	k, err := NewMarker(m, class, answers)
	if err != nil {
		t.Fatal(err)
	}
	var all []Result
	if err := k.Each(func(r Result) error { all = append(all, r); return nil }); err != nil {
		t.Fatal(err)
	}
	return all
}

// The keys of all sheets of all tasks earn every point; each slip that is told in a key
// is marked as that slip.
func TestKeysEarnAllPoints(t *testing.T) {
	for _, system := range []quiz.System{quiz.Imperial, quiz.Metric} {
		for _, blueprint := range everyTask(system) {
			m := maker(t, blueprint)
			class := roster(4)
			var answers []Given
			for _, who := range class {
				for _, it := range items(t, m, who.ID) {
					answers = append(answers, Given{Code: m.Code(who.ID), Item: it.Number, Text: typed(it.Problem, it.Problem.Answer.Key), Where: "test"})
				}
			}
			for _, r := range mark(t, m, class, answers) {
				if r.Points != r.Of {
					for _, it := range r.Items {
						if it.Points != it.Of {
							t.Errorf("%s: key %q, given %q: %s", it.Code, it.Key, it.Given, it.Verdict)
						}
					}
				}
			}
		}
	}
}

// Three questions, each of which takes over the answer before it.
const linked = `
set: linked
title: Linked
units: in
slots:
  - {name: pitch, tasks: [pitch-from-tpi]}
  - {name: travel, tasks: [compound-travel], takes: {pitch: pitch}}
  - {tasks: [infeed-left], takes: {total: travel}}
`

// A slip costs once: what follows rightly from it earns its points, through two links.
func TestOneSlipCostsOnce(t *testing.T) {
	m := maker(t, linked)
	for _, who := range roster(12) {
		all := items(t, m, who.ID)
		for i := 1; i < 3; i++ {
			if q := all[i].Words.Question(all[i].Problem); !strings.Contains(q, fmt.Sprint("your answer to question ", i)) || strings.Contains(q, all[i-1].Problem.Answer.Text()) {
				t.Fatalf("question %d reads %q", i+1, q)
			}
		}
		code := m.Code(who.ID)
		give := func(texts ...string) Result {
			var answers []Given
			for i, text := range texts {
				if text != "" {
					answers = append(answers, Given{Code: code, Item: i + 1, Text: text, Where: "x"})
				}
			}
			return mark(t, m, []Apprentice{who}, answers)[0]
		}
		verdicts := func(r Result) string {
			return fmt.Sprint(r.Items[0].Verdict, " ", r.Items[1].Verdict, " ", r.Items[2].Verdict, " ", r.Points)
		}
		var half quiz.Reply
		all[0].Problem.SlipReplies(func(s *quiz.Slip, r quiz.Reply) {
			if s.Name == "half" {
				half = r
			}
		})
		travel, err := all[1].Problem.Following("pitch", half.X, "")
		if err != nil {
			t.Fatal(err)
		}
		left, err := all[2].Problem.Following("total", printed(travel), "")
		if err != nil {
			continue // with half the travel nothing is left to feed: there is no answer to carry
		}
		keys := []string{all[0].Problem.Answer.Text(), all[1].Problem.Answer.Text(), all[2].Problem.Answer.Text()}
		wrong := typed(all[0].Problem, half)
		for want, texts := range map[string][]string{
			"right right right 3":      keys,
			"slip carried carried 2":   {wrong, travel.Answer.Text(), left.Answer.Text()},
			"slip right right 2":       {wrong, keys[1], keys[2]}, // right all the same
			"slip carried right 2":     {wrong, travel.Answer.Text(), keys[2]},
			"slip carried safe-side 1": {wrong, travel.Answer.Text(), "0.0011"},
			"blank safe-side blank 0":  {"", travel.Answer.Text(), ""}, // nothing wrong before it: nothing is carried
		} {
			if got := verdicts(give(texts...)); got != want && !strings.Contains(want, "safe-side") {
				t.Errorf("%v: %s, want %s", texts, got, want)
			} else if strings.Contains(want, "safe-side") && !strings.HasSuffix(got, want[len(want)-2:]) {
				t.Errorf("%v: %s, want %s", texts, got, want)
			}
		}
	}
}

// Answers that were typed on a screen come back by their problems' codes, in any order;
// the first one counts.
func TestAnswersFromAScreen(t *testing.T) {
	m := example(t, "first-thread.yaml")
	class := roster(5)
	var file strings.Builder
	for _, who := range class[1:3] {
		all := items(t, m, who.ID)
		slices.Reverse(all)
		for _, it := range all {
			own, err := tasks.Remake(it.Problem.Code.String())
			if err != nil {
				t.Fatal(err)
			}
			fmt.Fprintf(&file, "{\"code\":%q,\"given\":%q,\"certainty\":\"bet\"}\n", it.Problem.Code, typed(own, own.Answer.Key))
			fmt.Fprintf(&file, "{\"code\":%q,\"given\":\"pass\"}\n", it.Problem.Code)
		}
	}
	answers, err := ParseAnswers("a.jsonl", []byte(file.String()))
	if err != nil {
		t.Fatal(err)
	}
	for i, r := range mark(t, m, class, answers) {
		if handed := i == 1 || i == 2; r.Handed != handed || handed && r.Points != r.Of {
			t.Errorf("%s: %v points of %v, %+v", r.ID, r.Points, r.Of, r.Items)
		}
	}
}

// What belongs to no sheet is an error that says where; with another secret nothing
// belongs, and that is said.
func TestStrangeAnswers(t *testing.T) {
	m := example(t, "first-thread.yaml")
	class := roster(3)
	code := m.Code(class[0].ID)
	for want, answers := range map[string][]Given{
		`a, row 2: no sheet of this set has the code "ABC-DEFG"`:            {{Code: code, Item: 1, Text: "1", Where: "a, row 1"}, {Code: "ABC-DEFG", Item: 1, Text: "1", Where: "a, row 2"}},
		"another blueprint, roster or secret made the sheets":               {{Code: "ABC-DEFG", Item: 1, Text: "1", Where: "a, row 2"}},
		"a, row 3: question 40: the set has 12":                             {{Code: code, Item: 40, Text: "1", Where: "a, row 3"}},
		"a, row 2: question 1 of " + code + " is answered in a, row 1":      {{Code: code, Item: 1, Text: "1", Where: "a, row 1"}, {Code: code, Item: 1, Text: "2", Where: "a, row 2"}},
		`a, row 9: the problem "compound-travel@1-7f3a" is not in this set`: {{Code: code, Item: 1, Text: "1", Where: "a"}, {Code: "compound-travel@1-7f3a", Text: "1", Where: "a, row 9"}},
	} {
		if _, err := NewMarker(m, class, answers); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want %q", err, want)
		}
	}
	m.secret = Secret("another secret, as long as it must be")
	if _, err := NewMarker(m, class, []Given{{Code: code, Item: 1, Text: "1", Where: "a"}}); err == nil || !strings.Contains(err.Error(), "secret made the sheets") {
		t.Error(err)
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
		"set: a\ntitle: x\nunits: in\nslots: [{tasks: [single-depth], points: 1.3}]":                                                 "points 1.3: give whole or half points",
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
	if codes, err := m.Codes(roster(20_000)); err == nil && len(codes) != 20_000 {
		t.Error(len(codes), err)
	}
}

// What a class of simulated apprentices gets wrong is what the report says.
func TestReport(t *testing.T) {
	m := example(t, "first-thread.yaml")
	class := roster(40)
	r := rand.New(rand.NewPCG(1, 2))
	var answers []Given
	slips, odd := 0, 0
	for i, who := range class {
		if i%10 == 9 {
			continue // was not there
		}
		for _, it := range items(t, m, who.ID) {
			text, sure := typed(it.Problem, it.Problem.Answer.Key), ""
			switch {
			case it.Problem.Task.Name == "compound-travel" && i%2 == 0:
				it.Problem.SlipReplies(func(s *quiz.Slip, r quiz.Reply) {
					if s.Name == "no-angle" {
						text, sure = typed(it.Problem, r), "bet"
					}
				})
				slips++
			case it.Problem.Task.Name == "dial-past-a-turn" && r.IntN(4) == 0:
				text = "0.7"
				odd++
			}
			answers = append(answers, Given{Code: m.Code(who.ID), Item: it.Number, Text: text, Certainty: sure, Where: "x"})
		}
	}
	s := NewSummary(m, content.Shipped())
	for _, res := range mark(t, m, class, answers) {
		s.Add(res)
	}
	rep := s.Report()
	if rep.Class != 40 || rep.Handed != 36 || len(rep.Missing) != 4 || len(rep.Sure) != slips || len(rep.Strange) != odd || rep.Alpha == nil {
		t.Errorf("%d of %d, %d missing, %d sure of %d, %d strange of %d, alpha %v", rep.Handed, rep.Class, len(rep.Missing), len(rep.Sure), slips, len(rep.Strange), odd, rep.Alpha)
	}
	for _, task := range rep.Tasks {
		switch task.Task {
		case "compound-travel":
			if task.Slip != slips || len(task.Slips) != 1 || task.Slips[0].Times != slips || task.Lesson != "how-deep-to-go" || task.Part == "" {
				t.Errorf("%+v", task)
			}
		case "single-depth":
			if task.Right != 36 || task.Share != 1 || task.Low < 0.9 || task.High != 1 {
				t.Errorf("%+v", task)
			}
		}
	}
	p, err := NewPrinter(m, content.Shipped())
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range handout.Formats() {
		var out bytes.Buffer
		w, err := f.New(&out, p.Options("x"))
		if err == nil {
			err = w.Report(p.Page(rep))
		}
		if err == nil {
			err = w.Close()
		}
		if err != nil || out.Len() == 0 {
			t.Errorf("%s: %v", f.Name, err)
		}
		if f.Name != "pdf" && strings.Contains(out.String(), "${") {
			t.Errorf("%s: a figure is missing", f.Name)
		}
	}
}

// Below thirty sheets no figure is given on a single question.
func TestFewSheetsGiveNoStatistics(t *testing.T) {
	m := example(t, "exit-ticket.yaml")
	class := roster(29)
	var answers []Given
	for i, who := range class {
		for _, it := range items(t, m, who.ID) {
			text := typed(it.Problem, it.Problem.Answer.Key)
			if i%3 == 0 {
				text = "0.9"
			}
			answers = append(answers, Given{Code: m.Code(who.ID), Item: it.Number, Text: text, Where: "x"})
		}
	}
	s := NewSummary(m, content.Shipped())
	for _, r := range mark(t, m, class, answers) {
		s.Add(r)
	}
	rep := s.Report()
	if rep.Alpha != nil {
		t.Error(*rep.Alpha)
	}
	for _, it := range rep.Items {
		if it.Discrimination != nil {
			t.Error(*it.Discrimination)
		}
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
