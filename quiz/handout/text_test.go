package handout

import (
	"strings"
	"testing"
	"unicode/utf8"
)

func TestTextLinesAreShort(t *testing.T) {
	all, allKeys := class(t, 8, 20)
	out := string(document(t, Text, testOptions(A4), func(w Writer) {
		sheets(all...)(w)
		keys(allKeys...)(w)
		_ = w.Tally("Bench 3", classTally(allKeys[0]))
		_ = w.Tally(strings.Repeat("long", 50), []string{strings.Repeat("x", 200)})
	}))
	for n, line := range strings.Split(out, "\n") {
		if utf8.RuneCountInString(line) > textWidth || line != strings.TrimRight(line, " ") {
			t.Errorf("line %d: %q", n+1, line)
		}
	}
	// No number is torn: each line of a question stands in the text, spaces aside.
	flat := strings.Join(strings.Fields(out), " ")
	for _, s := range all {
		for _, it := range s.Items {
			for _, line := range append(append(it.Text, it.Options...), it.Expects) {
				if !strings.Contains(flat, strings.Join(strings.Fields(line), " ")) {
					t.Errorf("%s item %d: %q is torn or lost", s.Code, it.Number, line)
				}
			}
		}
	}
	if strings.ContainsFunc(out, func(r rune) bool { return r >= 0x2500 && r <= 0x28FF }) {
		t.Error("the text draws boxes")
	}
}
