package set

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"testing"

	"scratchpass/quiz/answer"
)

func parsed(t *testing.T, file, text string) []Given {
	t.Helper()
	answers, err := ParseAnswers(file, []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return answers
}

// line is a line of an answer file.
func kept(it Item, text string) string {
	return fmt.Sprintf("{\"code\":%q,\"given\":%q}\n", it.Problem.Code, text)
}

// A file that also has another's codes marks nobody: neither whoever's it is nor the other.
// The error names the file, the row and both.
func TestAFileIsOnePersons(t *testing.T) {
	m := example(t, "first-thread.yaml")
	class := roster(3)
	ada, ben, cy := items(t, m, class[0].ID), items(t, m, class[1].ID), items(t, m, class[2].ID)
	mine := parsed(t, "ada.jsonl", kept(ada[0], "0.05")+kept(ada[1], "1"))
	for name, c := range map[string]struct {
		text string
		want []string
	}{
		"another's after one's own": {kept(ben[0], "1") + kept(ben[1], "1") + kept(ada[0], "9") + kept(ada[1], "9"),
			[]string{"ben.jsonl, row 3: ", "Apprentice 0 (" + m.Code(class[0].ID) + ")", "ben.jsonl, row 1", "Apprentice 1 (" + m.Code(class[1].ID) + ")"}},
		"first of all": {kept(ada[0], "9") + kept(ben[0], "1"), []string{"ben.jsonl, row 2: ", "Apprentice 1 (" + m.Code(class[1].ID), "row 1 is Apprentice 0"}},
		"of three":     {kept(ben[0], "1") + kept(ada[0], "9") + kept(cy[0], "9") + kept(cy[1], "9"), []string{"row 2: ", "row 3: ", "Apprentice 2"}},
	} {
		for _, answers := range [][]Given{append(parsed(t, "ben.jsonl", c.text), mine...), append(mine[:2:2], parsed(t, "ben.jsonl", c.text)...)} {
			_, err := NewMarker(t.Context(), m, class, answers)
			for _, want := range c.want {
				if err == nil || !strings.Contains(err.Error(), want) {
					t.Errorf("%s: %v, want %q", name, err, want)
				}
			}
			if err != nil && strings.Contains(err.Error(), "row 4") { // of each one more line is enough
				t.Errorf("%s: %v", name, err)
			}
		}
	}
	// Of forms too: several have one, but nobody has two.
	forms, err := Forms(2)
	if err != nil {
		t.Fatal(err)
	}
	a, b := items(t, m, forms[0].ID), items(t, m, forms[1].ID)
	if _, err := NewMarker(t.Context(), m, forms, parsed(t, "ada.jsonl", kept(a[0], "1")+kept(b[0], "1"))); err == nil || !strings.Contains(err.Error(), "ada.jsonl, row 2: ") ||
		!strings.Contains(err.Error(), "form A (") || !strings.Contains(err.Error(), "form B (") {
		t.Errorf("two forms in one file: %v", err)
	}
	if _, err := NewMarker(t.Context(), m, forms, append(parsed(t, "ada.jsonl", kept(a[0], "1")), parsed(t, "ben.jsonl", kept(a[0], "2"))...)); err != nil {
		t.Errorf("two who have one form: %v", err)
	}
}

// Two answers to a question that differ are left to the instructor, with where each stands;
// those that say the same are one, and of two in one file the first counts.
func TestAnswersThatCameTwice(t *testing.T) {
	m := example(t, "first-thread.yaml")
	class := roster(2)
	who := class[0]
	sheet := m.Code(who.ID)
	all := items(t, m, who.ID)
	n := 0
	for all[n].Problem.Task.Kind.Numeric() == false || len(all[n].From) > 0 {
		n++
	}
	it := all[n]
	key := it.Problem.Expected.Text() // with its unit
	bare := strings.Fields(key)[0]
	paper := func(text string) []Given {
		return parsed(t, "class.csv", fmt.Sprintf("code,%d\n%s,%s\n", it.Number, sheet, text))
	}
	typed := func(file string, texts ...string) (all []Given) {
		lines := ""
		for _, text := range texts {
			lines += kept(it, text)
		}
		return parsed(t, file, lines)
	}
	join := func(some ...[]Given) (all []Given) {
		for _, s := range some {
			all = append(all, s...)
		}
		return all
	}
	for name, c := range map[string]struct {
		answers []Given
		verdict answer.Verdict
		given   string
		repeats int
		in      string // files of the first and the second
	}{
		"once":                        {typed("a", key), answer.Right, key, 0, ""},
		"the same in two files":       {join(typed("a", key), typed("b", key)), answer.Right, key, 1, "a b"},
		"the same, one with its unit": {join(typed("a", bare), typed("b", key)), answer.Right, bare, 1, "a b"},
		"the same on paper":           {join(paper(key), typed("b", key)), answer.Right, key, 1, "b class.csv"},
		"twice in one file":           {typed("a", key, "9.9"), answer.Right, key, 1, "a a"},
		"differing files":             {join(typed("a", key), typed("b", "9.9")), Twice, key + " | 9.9", 0, ""},
		"in the other order":          {join(typed("b", "9.9"), typed("a", key)), Twice, "9.9 | " + key, 0, ""},
		"pass in the one":             {join(typed("b", "pass"), typed("a", key)), Twice, "pass | " + key, 0, ""},
		"differing on paper":          {join(paper("9.9"), typed("a", key)), Twice, key + " | 9.9", 0, ""},
		"three":                       {join(typed("a", key), typed("b", key), typed("c", "9.9")), Twice, key + " | " + key + " | 9.9", 0, ""},
		"both can't be read":          {join(typed("a", "?"), typed("b", "??")), Twice, "? | ??", 0, ""},
		"blank on paper":              {join(paper(""), typed("a", key)), answer.Right, key, 0, ""},
		"blank on the screen":         {join(paper(key), typed("a", "")), answer.Right, key, 0, ""},
	} {
		k, err := NewMarker(t.Context(), m, class, c.answers)
		if err != nil {
			t.Fatal(err)
		}
		var r Result
		if err := k.Each(func(one Result) error {
			if one.ID == who.ID {
				r = one
			}
			return nil
		}); err != nil {
			t.Fatal(err)
		}
		res := r.Items[it.Number-1]
		if res.Verdict != c.verdict || res.Given != c.given || k.Repeats != c.repeats || !r.Handed {
			t.Errorf("%s: %s, %q, %d repeats", name, res.Verdict, res.Given, k.Repeats)
		}
		in := ""
		for _, pair := range k.RepeatedIn {
			in += pair[0] + " " + pair[1]
		}
		if in != c.in {
			t.Errorf("%s: repeated in %q, want %q", name, in, c.in)
		}
		if differs := c.verdict == Twice; differs != (k.Differ == 1 && len(k.Differing) == 1 && r.Open == 1 && res.Points == 0 && len(res.Twice) > 1) {
			t.Errorf("%s: %+v, %d open, %v points", name, k.Differing, r.Open, res.Points)
		}
		if c.verdict != Twice {
			continue
		}
		var table strings.Builder
		csv := NewMarksCSV(&table)
		if err := csv.Add(r); err != nil || csv.Close() != nil {
			t.Fatal(err)
		}
		for _, source := range res.Twice {
			if !strings.Contains(source.Where, ", row ") || !strings.Contains(table.String(), source.String()) {
				t.Errorf("%s: %s does not stand in %s", name, source, table.String())
			}
		}
	}
}

// What starts from an answer that differs is left to the instructor too.
func TestALinkAfterAnswersThatDiffer(t *testing.T) {
	m := maker(t, linked)
	who := roster(1)
	all := items(t, m, who[0].ID)
	code := m.Code(who[0].ID)
	answers := []Given{{Code: code, Item: 1, Text: all[0].Problem.Expected.Text(), File: "c"}, {Code: code, Item: 2, Text: "0.0123", File: "c"},
		{Code: all[0].Problem.Code.String(), Text: "0.9", File: "a"}}
	r := mark(t, m, who, answers)[0]
	if r.Items[0].Verdict != Twice || r.Items[1].Verdict != ByHand || r.Open != 2 {
		t.Errorf("%s, %s, %d open", r.Items[0].Verdict, r.Items[1].Verdict, r.Open)
	}
	// On the screen a linked question has other numbers than on paper: none can be the same.
	answers = []Given{{Code: code, Item: 2, Text: "0.05", File: "c"}, {Code: all[1].Problem.Code.String(), Text: "0.05", File: "a"}}
	if r := mark(t, m, who, answers)[0]; r.Items[1].Verdict != Twice {
		t.Errorf("%+v", r.Items[1])
	}
}

// A longest file of unknown rows is told of in a few lines, and at once when someone stops.
func TestAFullFileOfStrangers(t *testing.T) {
	m := example(t, "first-thread.yaml")
	class := roster(2000)
	answers := make([]Given, MostAnswers)
	for i := range answers {
		answers[i] = Given{Code: fmt.Sprint("ABC-", i), Item: 1, Text: "1", File: "a", Line: i + 2}
	}
	answers[0].Code = m.Code(class[0].ID)
	if _, err := NewMarker(t.Context(), m, class, answers); err == nil || !strings.Contains(err.Error(), "and 249979 more") || len(err.Error()) > 4000 {
		t.Errorf("%.300v", err)
	}
	stopped, stop := context.WithCancel(t.Context())
	stop()
	if _, err := NewMarker(stopped, m, class, answers); !errors.Is(err, context.Canceled) {
		t.Errorf("stopped: %.100v", err)
	}
	typed := []Given{{Code: "compound-travel@1-7f3a", Text: "1", File: "a"}}
	if _, err := NewMarker(stopped, m, class, typed); !errors.Is(err, context.Canceled) {
		t.Errorf("stopped while the problems are made: %.100v", err)
	}
}
