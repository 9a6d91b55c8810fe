package drawing_test

import (
	"strings"
	"testing"
	"unicode/utf8"

	"scratchpass/content"
	"scratchpass/quiz/drawing"
)

func TestEveryDrawingFitsAndHasItsTwin(t *testing.T) {
	words, err := content.Shipped().Drawings()
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range drawing.Names() {
		d, err := drawing.Named(name, words)
		if err != nil {
			t.Fatal(err)
		}
		if d.Title == "" || len(strings.Fields(d.Twin)) < 10 {
			t.Errorf("%s: title %q, twin %q", name, d.Title, d.Twin)
		}
		for _, columns := range []int{36, 64, 200, -1} {
			lines := d.Terminal(columns)
			if len(lines) < 3 || len(lines) > 34 {
				t.Errorf("%s at %d columns: %d lines", name, columns, len(lines))
			}
			for _, line := range lines {
				if n := utf8.RuneCountInString(line); n > max(20, min(columns, 64)) {
					t.Errorf("%s at %d columns: a line of %d", name, columns, n)
				}
			}
			text := strings.Join(lines, "\n")
			for _, l := range d.Labels {
				if columns > 40 && !strings.Contains(text, l.Text) {
					t.Errorf("%s at %d columns: label %q is covered", name, columns, l.Text)
				}
			}
			t.Logf("%s at %d\n%s", name, columns, text)
		}
	}
	for _, name := range []string{"thread-page", "slide-dial", "thread-dial", "groove"} { // drawn for one thread or one state of a bench
		delete(words, name)
	}
	for name := range words {
		if _, err := drawing.Named(name, words); err != nil {
			t.Errorf("words for a drawing: %v", err)
		}
	}
}
