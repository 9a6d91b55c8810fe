package screen

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"

	"scratchpass/lessons"
)

// The words are the same however wide the window is; only pictures are extra.
func TestLayKeepsTheWords(t *testing.T) {
	text := lessons.Text{
		{Style: lessons.Heading, Text: "Part 1. How deep"},
		{Style: lessons.Plain, Text: "The drawing calls for 1-1/2-6 UNC-3A.\n1) one, two; three\n2) " + strings.Repeat("word ", 40)},
		{Style: lessons.Figures, Text: "  h = 0.649519 x P - 0.866025 x f = 0.649519 x 0.1667 - 0.866025 x 0.0290 = 0.083160 in"},
		{Style: lessons.Picture, Text: "⠉⠉ flat f"},
		{Style: lessons.Caution, Text: "CAUTION: stop."},
	}
	for _, width := range []int{lessons.NarrowestWidth, 39, 78} {
		var words []string
		for _, line := range Lay(text, width) {
			plain := ansi.Strip(line)
			if utf8.RuneCountInString(plain) > width {
				t.Errorf("width %d: a line of %d: %q", width, utf8.RuneCountInString(plain), plain)
			}
			if !strings.Contains(plain, "⠉") {
				words = append(words, strings.Fields(plain)...)
			}
		}
		if got := strings.Join(words, " "); got != text.Words() {
			t.Errorf("width %d: words changed:\n%s", width, got)
		}
	}
}

func TestShorten(t *testing.T) {
	for label, want := range map[string]string{"short": "short", "a label of twenty-one": "a label of twent...", "\x1b[2Jabc": " [2Jabc"} {
		if got := shorten(label, 19); got != want {
			t.Errorf("shorten(%q) = %q, want %q", label, got, want)
		}
	}
}
