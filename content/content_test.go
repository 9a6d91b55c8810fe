package content_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"scratchpass/content"
)

func TestFill(t *testing.T) {
	values := func(name string) (string, bool) {
		v, ok := map[string]string{"n": "12", "P": "0.0833 in"}[name]
		return v, ok
	}
	got, unknown := content.Fill("${n} and ${P}, ${q} and ${q}, $n", values)
	if got != "12 and 0.0833 in, ${q} and ${q}, 12" || strings.Join(unknown, " ") != "q" {
		t.Error(got, unknown)
	}
}

// An instructor's folder stands in front of ours, entry by entry in the lists.
func TestReadingStandsInFront(t *testing.T) {
	lib := content.Reading("mine", fstest.MapFS{
		"safety.yaml":                 {Data: []byte("house-rule: {title: House, text: Ask first.}\nchips: {title: Chips, text: Ours.}\n")},
		"lessons/095-house-rule.yaml": {Data: []byte("title: House\n")},
	})
	safety, err := lib.Safety()
	if err != nil || safety["house-rule"].Text != "Ask first." || safety["chips"].Text != "Ours." || safety["chuck-key"].Text == "" {
		t.Error(safety, err)
	}
	names := strings.Join(lib.LessonNames(), " ")
	if !strings.Contains(names, "how-deep-to-go house-rule ways-to-feed-in") {
		t.Error(names)
	}
	if _, err := lib.Lesson("how-deep-to-go"); err != nil {
		t.Error(err)
	}
	if _, err := lib.Lesson("nothing"); !content.ErrNotThere(err) {
		t.Error(err)
	}
}

// Every kind of finding says where it is and what would be accepted.
func TestFindings(t *testing.T) {
	for text, want := range map[string]string{
		"titel: x":                   "tasks/a.yaml:1: unknown key \"titel\"; here the keys are title, skill, ask",
		"title: x\ntitle: y":         "tasks/a.yaml:2: the key \"title\" stands twice; keep one",
		"":                           "tasks/a.yaml: the file is empty; it wants title",
		"title: x\n---\ntitle: y":    "tasks/a.yaml:2: a second document starts here",
		"ask: []":                    "tasks/a.yaml:1: a list stands where a block of keys is wanted",
		"title: [a]":                 "tasks/a.yaml:1: a list stands where a text is wanted",
		"slips: {a: {b: c}}":         "tasks/a.yaml:1: a block of keys stands where a text is wanted",
		"readings: x":                "tasks/a.yaml:1: a text stands where a list (lines that begin with -) is wanted",
		"ask: {01: x}":               "tasks/a.yaml:1: 01 would be read as an octal number",
		"title: a\x1b[2J":            "tasks/a.yaml:1: the character U+001B is not allowed here",
		"title: a\n\nskill: \u202eb": "tasks/a.yaml:3: the character U+202E is not allowed here",
		"title: \"unclosed":          "tasks/a.yaml:",
		"\ttitle: x":                 "tasks/a.yaml:",
		"titel: x\nskil: y\nask: 7":  "tasks/a.yaml:2: unknown key \"skil\"",
	} {
		_, err := content.Reading("", fstest.MapFS{"tasks/a.yaml": {Data: []byte(text)}}).Task("a")
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
}

// All findings of a file come at once.
func TestAllFindingsAtOnce(t *testing.T) {
	_, err := content.Reading("", fstest.MapFS{"tasks/a.yaml": {Data: []byte("titel: x\nskil: y\nask: 7\nslips: []\n")}}).Task("a")
	if n := strings.Count(err.Error(), "\n") + 1; n != 4 {
		t.Errorf("%d findings:\n%v", n, err)
	}
}

func TestPrintable(t *testing.T) {
	for in, want := range map[string]string{"a\x1b[2Jb": "a [2Jb", "a\u202eb\u200bc": "abc", "a\nb\r": "a\nb ", "ü ⠉ 29°": "ü ⠉ 29°", "\u009b5m": " 5m"} {
		if got := content.Printable(in); got != want {
			t.Errorf("%q gives %q, want %q", in, got, want)
		}
	}
}

// What the bench leads to is there: a task or a caution.
func TestBenchLeadsSomewhere(t *testing.T) {
	text := "moves: {}\nsays: {}\nonly_for: {inside: [boring-bar-room, chips, no-such], kept_closed: [neither]}\nmistakes:\n  a: {title: A, what: x, practise: [no-task], safety: [no-caution]}\n"
	found := content.Reading("", fstest.MapFS{"bench.yaml": {Data: []byte(text)}}).Check(content.Known{Tasks: []string{"boring-bar-room"}}).Error()
	for _, want := range []string{`only_for has "no-such", which is no task and no caution`, `only_for has "neither"`, `the mistake a sends to "no-task"`, "no caution is called no-caution"} {
		if !strings.Contains(found, want) {
			t.Errorf("%q is not among the findings", want)
		}
	}
	for _, name := range []string{`has "boring-bar-room"`, `has "chips"`} {
		if strings.Contains(found, name) {
			t.Errorf("%s is found wrong", name)
		}
	}
}

func BenchmarkLoadAllContent(b *testing.B) {
	lib := content.Shipped()
	b.ReportAllocs()
	for b.Loop() {
		for _, name := range lib.TaskNames() {
			if _, err := lib.Task(name); err != nil {
				b.Fatal(err)
			}
		}
		for _, name := range lib.LessonNames() {
			if _, err := lib.Lesson(name); err != nil {
				b.Fatal(err)
			}
		}
		for _, load := range []func() error{
			func() error { _, err := lib.Safety(); return err }, func() error { _, err := lib.Terms(); return err },
			func() error { _, err := lib.Sources(); return err }, func() error { _, err := lib.Symbols(); return err },
			func() error { _, err := lib.Phrases(); return err }, func() error { _, err := lib.Screens(); return err },
			func() error { _, err := lib.Drawings(); return err },
		} {
			if err := load(); err != nil {
				b.Fatal(err)
			}
		}
	}
}
