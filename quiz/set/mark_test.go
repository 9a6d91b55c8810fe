package set

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
)

// typed is a response as it is written on paper.
func typed(p *problem.Problem, r answer.Response) string {
	return p.Expected.Join(p.Expected.Kind.Print(&p.Expected, r), " ")
}

func mark(t testing.TB, m *Maker, class []Apprentice, answers []Given) []Result {
	t.Helper()
	k, err := NewMarker(t.Context(), m, class, answers)
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
	for _, system := range []machine.System{machine.Imperial, machine.Metric} {
		for _, blueprint := range everyTask(system) {
			m := maker(t, blueprint)
			class := roster(4)
			var answers []Given
			for _, who := range class {
				for _, it := range items(t, m, who.ID) {
					answers = append(answers, Given{Code: m.Code(who.ID), Item: it.Number, Text: typed(it.Problem, it.Problem.Expected.Key), File: "test"})
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

// Answers that were typed on a screen come back by their problems' codes, in any order;
// the first one counts.
func TestAnswersFromAScreen(t *testing.T) {
	m := example(t, "first-thread.yaml")
	class := roster(5)
	var answers []Given
	for _, who := range class[1:3] {
		var file strings.Builder
		all := items(t, m, who.ID)
		slices.Reverse(all)
		for _, it := range all {
			own, err := (tasks.Set{}).FromCode(it.Problem.Code.String())
			if err != nil {
				t.Fatal(err)
			}
			fmt.Fprintf(&file, "{\"code\":%q,\"given\":%q,\"certainty\":\"bet\"}\n", it.Problem.Code, typed(own, own.Expected.Key))
			fmt.Fprintf(&file, "{\"code\":%q,\"given\":\"pass\"}\n", it.Problem.Code)
		}
		answers = append(answers, parsed(t, who.ID+".jsonl", file.String())...)
	}
	for i, r := range mark(t, m, class, answers) {
		if handed := i == 1 || i == 2; r.Handed != handed || handed && r.Points != r.Of {
			t.Errorf("%s: %v points of %v, %+v", r.ID, r.Points, r.Of, r.Items)
		}
		if !r.Handed {
			continue
		}
		for k, it := range r.Items { // what they are told is of the question they had
			if told := r.items[k].Problem.Expected.Text(); told != it.Key {
				t.Errorf("%s, question %d: the key is %s, what they are told is of %s", r.ID, it.Number, it.Key, told)
			}
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
		`a, row 2: no sheet of this set has the code "ABC-DEFG"`:            {{Code: code, Item: 1, Text: "1", File: "a", Line: 1}, {Code: "ABC-DEFG", Item: 1, Text: "1", File: "a", Line: 2}},
		"another blueprint, roster or secret made the sheets":               {{Code: "ABC-DEFG", Item: 1, Text: "1", File: "a", Line: 2}},
		"a, row 3: question 40: the set has 12":                             {{Code: code, Item: 40, Text: "1", File: "a", Line: 3}},
		"a, row 2: question 1 of " + code + " is answered in a, row 1":      {{Code: code, Item: 1, Text: "1", File: "a", Line: 1}, {Code: code, Item: 1, Text: "2", File: "a", Line: 2}},
		`a, row 9: the problem "compound-travel@1-7f3a" is not in this set`: {{Code: code, Item: 1, Text: "1", File: "a"}, {Code: "compound-travel@1-7f3a", Text: "1", File: "a", Line: 9}},
	} {
		if _, err := NewMarker(t.Context(), m, class, answers); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want %q", err, want)
		}
	}
	m.secret = Secret("another secret, as long as it must be")
	if _, err := NewMarker(t.Context(), m, class, []Given{{Code: code, Item: 1, Text: "1", File: "a"}}); err == nil || !strings.Contains(err.Error(), "secret made the sheets") {
		t.Error(err)
	}
}

// Several apprentices may have one form: by a name in the file, or by the file each
// handed in.
func TestSeveralHaveOneForm(t *testing.T) {
	m := example(t, "first-thread.yaml")
	class, err := Forms(2)
	if err != nil {
		t.Fatal(err)
	}
	a := items(t, m, class[0].ID)
	key := a[0].Problem.Expected.Text()
	code := m.Code(class[0].ID)
	answers, err := ParseAnswers("a.csv", []byte(fmt.Sprintf("code,name,1\n%s,Ada,%s\n%s,Ben,0.777\n", code, key, code)))
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"cato", "dilys"} {
		more, err := ParseAnswers("/somewhere/"+name+".jsonl", []byte(fmt.Sprintf("{\"code\":%q,\"given\":%q}\n", a[0].Problem.Code, key)))
		if err != nil {
			t.Fatal(err)
		}
		answers = append(answers, more...)
	}
	var got []string
	for _, r := range mark(t, m, class, answers) {
		got = append(got, fmt.Sprint(r.Form, " ", r.Name, " ", r.Points))
	}
	if s := strings.Join(got, ", "); s != "A Ada 1, A Ben 0, A cato 1, A dilys 1, B  0" {
		t.Error(s)
	}
	// Without names two rows of one form can't be told apart, and that is said.
	answers, err = ParseAnswers("a.csv", []byte(fmt.Sprintf("code,1\n%s,1\n%s,2\n", code, code)))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := NewMarker(t.Context(), m, class, answers); err == nil || !strings.Contains(err.Error(), "give a column name to tell them apart") {
		t.Error(err)
	}
}

// Where a comma stands before decimals, 1,380 is no thousand: a file with semicolons
// says so, or the blueprint.
func TestDecimalComma(t *testing.T) {
	const blueprint = "set: comma\ntitle: x\nunits: mm\nslots: [{tasks: [compound-travel]}, {tasks: [thread-dial-line], level: 2}]\n"
	for text, comma := range map[string]bool{blueprint: false, blueprint + "decimal_comma: true\n": true} {
		m := maker(t, text)
		class := roster(1)
		all := items(t, m, class[0].ID)
		key := strings.ReplaceAll(strings.TrimSuffix(all[0].Problem.Expected.Text(), " mm"), ".", ",")
		marks := all[1].Problem.Expected.Text()
		for _, sep := range []string{";", "\t"} {
			answers, err := ParseAnswers("a.csv", []byte(strings.Join([]string{"code", "1", "2"}, sep)+"\n"+strings.Join([]string{m.Code(class[0].ID), key, marks}, sep)+"\n"))
			if err != nil {
				t.Fatal(err)
			}
			r := mark(t, m, class, answers)[0]
			want := answer.Unread
			if comma || sep == ";" {
				want = answer.Right
			}
			if r.Items[0].Verdict != want || r.Items[1].Verdict != answer.Right {
				t.Errorf("%q with %q, comma %v: %s %s", key, sep, comma, r.Items[0].Verdict, r.Items[1].Verdict)
			}
		}
	}
}

// In a row of readings a comma between the numbers is none before decimals, and what was
// typed on a screen is read as the screen read it.
func TestCommasBetweenReadings(t *testing.T) {
	m := maker(t, "set: c\ntitle: x\nunits: mm\ndecimal_comma: true\nslots: [{tasks: [cross-slide-return], level: 2}]\n")
	for _, who := range roster(10) {
		it := items(t, m, who.ID)[0]
		var numbers []string
		for _, x := range it.Problem.Expected.Key.Xs {
			numbers = append(numbers, it.Problem.Expected.Unit.Fixed(x))
		}
		points := strings.Join(numbers, ", ")
		commas := strings.ReplaceAll(strings.Join(numbers, " "), ".", ",")
		for _, g := range []Given{{Code: m.Code(who.ID), Item: 1, Text: points}, {Code: m.Code(who.ID), Item: 1, Text: commas},
			{Code: m.Code(who.ID), Item: 1, Text: strings.ReplaceAll(points, ".", ",")}, {Code: it.Problem.Code.String(), Text: points}} {
			if r := mark(t, m, []Apprentice{who}, []Given{g})[0]; r.Items[0].Verdict != answer.Right {
				t.Errorf("%q: %s", g.Text, r.Items[0].Verdict)
			}
		}
	}
}

// A row whose name is not that of the code is told of: sheets may have been mixed up.
func TestNamesInRows(t *testing.T) {
	m := maker(t, twenty(5))
	class := []Apprentice{{ID: "a1", Name: "Ada Brink"}, {ID: "b2", Name: "Ben O'Corrie"}}
	for who, want := range map[string]int{"": 0, "Ada Brink": 0, "brink, ada": 0, "A1": 0, "Ada B.": 0, "Ben O'Corrie": 1, "b2": 1, "Ada Corrie": 1, "Ben Brink": 1} {
		k, err := NewMarker(t.Context(), m, class, []Given{{Code: m.Code("a1"), Item: 1, Text: "1", Who: who, Row: true, File: "row 2"}, {Code: m.Code("a1"), Item: 2, Text: "1", Who: who, Row: true, File: "row 2"}})
		if err != nil || len(k.Names) != want {
			t.Errorf("%q: %q, %v", who, k.Names, err)
		}
	}
	k, err := NewMarker(t.Context(), m, class, []Given{{Code: m.Code("a1"), Item: 1, Text: "1", Who: "answers"}})
	if err != nil || len(k.Names) != 0 {
		t.Errorf("the name of a file: %q, %v", k.Names, err)
	}
}

// An id beside a name that fits is another's all the same; a file that is called like another
// apprentice, and answers that come from two files, are told of.
func TestWhoseFile(t *testing.T) {
	m := maker(t, twenty(5))
	class := []Apprentice{{ID: "a1", Name: "Ada Brink"}, {ID: "b2", Name: "Ben Brink"}}
	items, err := m.Items("a1")
	if err != nil {
		t.Fatal(err)
	}
	typed := func(i int, file string) Given {
		return Given{Code: items[i].Problem.Code.String(), Text: "1", Who: strings.TrimSuffix(file, ".jsonl"), File: file, Line: i + 1}
	}
	for name, row := range map[string]struct {
		answers []Given
		want    string
	}{
		"an id":                 {[]Given{{Code: m.Code("a1"), Item: 1, Text: "1", Who: "Ada Brink", ID: "b2", Row: true, File: "x.csv", Line: 2}}, `x.csv, row 2: "b2" has the code of "Ada Brink"`},
		"her own id":            {[]Given{{Code: m.Code("a1"), Item: 1, Text: "1", Who: "Ada Brink", ID: "A1", Row: true}}, ""},
		"her own file":          {[]Given{typed(0, "ada.jsonl"), typed(1, "ada.jsonl")}, ""},
		"any name":              {[]Given{typed(0, "answers.jsonl")}, ""},
		"a name that both have": {[]Given{typed(0, "brink.jsonl")}, ""},
		"his file":              {[]Given{typed(0, "ben.jsonl"), typed(1, "ben.jsonl")}, `ben.jsonl, row 1: the file "ben" has the code of "Ada Brink"`},
		"his file by its id":    {[]Given{typed(0, "b2.jsonl")}, `b2.jsonl, row 1: the file "b2" has the code of "Ada Brink"`},
		"two files":             {[]Given{typed(0, "one.jsonl"), typed(1, "two.jsonl"), typed(2, "three.jsonl")}, `two.jsonl, row 2: the answers of "Ada Brink" come from "one.jsonl" too`},
	} {
		k, err := NewMarker(t.Context(), m, class, row.answers)
		if err != nil {
			t.Fatal(err)
		}
		if got := strings.Join(k.Names, "\n"); got != row.want {
			t.Errorf("%s: %s, want %s", name, got, row.want)
		}
	}
}

// Answers that a table has in a way that would lose them are an error.
func TestAnswersThatWouldBeLost(t *testing.T) {
	for text, want := range map[string]string{
		"code,1,2,\u0663\nK7F-2QXM,1,2,3\n":     `the column "٣" is not known, and what stands in it would be lost`,
		"code,item,answer,1\nK7F-2QXM,1,2,3\n":  `stands a column "1", and what stands in it would be lost`,
		"code,1,2,3\nK7F-2QXM,0,0714\n":         "row 2: 0 and 0714 stand in two cells: is it one number with a decimal comma?",
		"code,1,2,3\nK7F-2QXM,5,0,0714,0,05\n":  "cells where there are",
		"code,item,answer\nK7F-2QXM,1,0,0714\n": "cells where there are",
	} {
		if _, err := ParseAnswers("x.csv", []byte(text)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v", text, err)
		}
	}
	for _, text := range []string{"code;1;2\nK7F-2QXM;0,0714;5\n", "code,1,2\nK7F-2QXM,\"0,0714\",5\n", "code,1,2\nK7F-2QXM,5,0\n", "code,1,2\nK7F-2QXM,5,05 mm\n"} {
		if _, err := ParseAnswers("x.csv", []byte(text)); err != nil {
			t.Errorf("%q: %v", text, err)
		}
	}
}

// What another published convention is worth is for the blueprint to say.
func TestConventions(t *testing.T) {
	for rule, want := range map[string]float64{"": 2, "conventions: full": 2, "conventions: half": 1, "conventions: none": 0} {
		m := maker(t, "set: c\ntitle: x\nunits: in\nrules: {"+rule+"}\nslots: [{tasks: [single-depth], points: 2}]\n")
		for _, who := range roster(5) {
			it := items(t, m, who.ID)[0]
			for _, s := range it.Problem.Expected.Errors {
				if !s.Convention {
					return
				}
				res := mark(t, m, []Apprentice{who}, []Given{{Code: m.Code(who.ID), Item: 1, Text: typed(it.Problem, s.Response)}})[0]
				if res.Points != want || res.Items[0].Verdict != answer.Convention {
					t.Errorf("%q, %s: %v of 2, %s", rule, s.Name, res.Points, res.Items[0].Verdict)
				}
			}
		}
	}
}

// A slot that is mixed asks each of its tasks before it asks one again.
func TestMixedSlotsDoNotRepeat(t *testing.T) {
	m := maker(t, "set: c\ntitle: x\nunits: in\nslots: [{stage: fitting, mix: true, count: 6}, {stage: passes, mix: true, count: 3}]\n")
	first := map[string]bool{}
	for _, who := range roster(60) {
		asked := map[string]bool{}
		for i, it := range items(t, m, who.ID) {
			if asked[it.Problem.Task.Name] {
				t.Errorf("%s has %s twice", who.ID, it.Problem.Task.Name)
			}
			asked[it.Problem.Task.Name] = true
			if i == 0 {
				first[it.Problem.Task.Name] = true
			}
		}
	}
	if len(first) < 5 {
		t.Errorf("the first question is one of only %d tasks", len(first))
	}
}

// A shuffled set keeps questions that start from each other's answers together.
func TestShuffleKeepsLinksTogether(t *testing.T) {
	m := maker(t, strings.Replace(linked, "slots:\n", "rules: {shuffle: true}\nslots:\n  - {tasks: [best-wire]}\n  - {tasks: [stop-before-gauging]}\n", 1))
	orders := map[string]bool{}
	for _, who := range roster(40) {
		order := ""
		at := map[int]int{}
		for _, it := range items(t, m, who.ID) {
			order += strconv.Itoa(it.Place)
			at[it.Place] = it.Number
		}
		orders[order] = true
		if at[3] != at[2]+1 || at[4] != at[3]+1 {
			t.Fatalf("order %s parts the links", order)
		}
		for _, it := range items(t, m, who.ID) {
			if it.Place == 3 && !strings.Contains(it.Words.Question(it.Problem), fmt.Sprint("your answer to question ", at[2])) {
				t.Fatalf("%d: %s", at[2], it.Words.Question(it.Problem))
			}
		}
	}
	if len(orders) < 5 {
		t.Errorf("%d orders", len(orders))
	}
}

// A blank paper that was handed in is handed in, with all its questions blank; pass, dashes
// and question marks are no tries either. A row that says no paper came back is no sheet.
func TestBlankPaper(t *testing.T) {
	m := maker(t, "set: b\ntitle: x\nunits: in\nslots: [{tasks: [single-depth]}, {tasks: [stop-before-gauging]}]\n")
	class := roster(5)
	text := "code,handed_in,1,2\n"
	for i, row := range []string{",,", ",pass,-", "yes,?, Pass", "no,,"} {
		text += m.Code(class[i].ID) + "," + row + "\n"
	}
	k, err := NewMarker(t.Context(), m, class, parsed(t, "a.csv", text))
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	if err := k.Each(func(r Result) error {
		for _, it := range r.Items {
			if it.Verdict != Blank || it.Points != 0 {
				t.Errorf("%s: %+v", r.ID, it)
			}
		}
		got = append(got, fmt.Sprint(r.Handed, r.Open))
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	if s := strings.Join(got, ", "); s != "true 0, true 0, true 0, false 0, false 0" {
		t.Errorf("%s\n%s", s, text)
	}
	if len(k.Empty) != 1 || !strings.Contains(k.Empty[0], "Apprentice 0") {
		t.Errorf("empty: %q", k.Empty)
	}
	for text, want := range map[string]string{
		"code,handed_in,1\nK7F-2QXM,no,0.5\n":             `row 2: handed_in is no, and yet there is an answer: "0.5"`,
		"code,handed_in,1\nK7F-2QXM,perhaps,\n":           `row 2: handed_in "perhaps": give yes, no or nothing`,
		"code,item,answer,handed_in\nK7F-2QXM,1,0.5,no\n": `yet there is an answer: "0.5"`,
	} {
		if _, err := ParseAnswers("x.csv", []byte(text)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v", text, err)
		}
	}
}
