package bench

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"scratchpass/content"
)

// Every mistake has its place in the order, once.
func TestEveryMistakeHasAConsequence(t *testing.T) {
	ranked := map[MistakeName]int{}
	for _, names := range consequences {
		for _, name := range names {
			ranked[name]++
		}
	}
	for _, name := range mistakesInSource(t) {
		if ranked[MistakeName(name)] != 1 {
			t.Errorf("%q stands %d times in the order of consequences", name, ranked[MistakeName(name)])
		}
	}
	if len(consequences) != int(Costs)+1 || MistakeName("no such").Consequence() != Costs {
		t.Error("the order has holes")
	}
}

// What a mistake leads to at the bench is what its place in the order says: what breaks ends
// the job; what scraps the part is in its verdict; what only spoils or costs scraps nothing.
func TestTheBenchKeepsTheOrder(t *testing.T) {
	words, err := content.Shipped().Bench()
	if err != nil {
		t.Fatal(err)
	}
	files, _ := filepath.Glob("testdata/runs/*.run")
	for _, file := range files {
		_, r := playRun(t, file)
		b := r.Bench
		for _, m := range b.Mistakes {
			ends := b.Outcome.Why == string(m.Name)
			if breaks := m.Name.Consequence() == Breaks; breaks != ends && m.Name != mistakeChuckUnscrewed {
				t.Errorf("%s: %s breaks something: %v; it ended the job: %v", file, m.Name, breaks, ends)
			}
		}
		for _, s := range b.Spoiled {
			if s.Cause != "" && s.Cause.Consequence() > Scraps {
				t.Errorf("%s: %q is laid to %s, which scraps nothing", file, s.Reason, s.Cause)
			}
		}
		named := MistakeName(strings.TrimSuffix(filepath.Base(file), ".run"))
		if !b.made(named) {
			continue
		}
		alone := !slices.ContainsFunc(b.Mistakes, func(m Mistake) bool {
			return m.Name != named && m.Name.Consequence() <= Scraps && m.Name.Consequence() >= Breaks
		})
		if kind := named.Consequence(); alone && kind >= Spoils && b.Outcome.Verdict == Scrap {
			t.Errorf("%s: %s alone scrapped the part: %v", file, named, b.Outcome.Reasons)
		}
	}
	for name, w := range words.Mistakes {
		if MistakeName(name).Consequence() == Hurts && w.You == "" {
			t.Errorf("%q can hurt someone, and its words do not say how", name)
		}
		if MistakeName(name).Consequence() >= Scraps && w.You != "" {
			t.Errorf("%q hurts by its words, and not by its place in the order", name)
		}
		if kind := MistakeName(name).Consequence(); kind <= Hurts && len(w.Safety) == 0 {
			t.Errorf("%q can hurt someone, and has no caution", name)
		}
	}
}

// A groove that was parted by a wrong mark is laid to that mark, though the same move made the
// lathe groan after it.
func TestTheCauseIsTheWorst(t *testing.T) {
	_, r := playRun(t, "testdata/runs/line-past.run")
	at, ok := r.Bench.Spoilt("second-groove")
	if !ok || at.Cause != mistakeWrongLine {
		t.Errorf("%+v", at)
	}
}
