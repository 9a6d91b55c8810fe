package screen

import (
	"strings"
	"testing"
	"unicode/utf8"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/muesli/termenv"

	"scratchpass/lessons/face/text"
	"scratchpass/lessons/internal/scripted"
	"scratchpass/lessons/page"
	"scratchpass/quiz/drawing"
)

// The words are the same however wide the window is; only pictures and marks are extra.
func TestLayKeepsTheWords(t *testing.T) {
	p := page.Page{
		page.Heading{Text: "Part 1. How deep"},
		page.Question{Text: "The drawing calls for 1-1/2-6 UNC-3A.", Lines: []string{"one, two; three", strings.Repeat("word ", 40)}},
		page.Verdict{Text: "Not right.", Given: "You gave 0.0511 in.", Answer: "The answer is 0.0587 in."},
		page.Givens{{Label: "Pitch", Symbol: "P", Value: "0.1", Unit: "in"}},
		page.Working{{Symbol: "h", Line: "h = 0.649519 x P - 0.866025 x f = 0.649519 x 0.1667 - 0.866025 x 0.0290 = 0.083160 in", Means: "h: depth straight in"}, {Symbol: "P", Line: "P = 1 in", Means: "P: pitch"}},
		page.Figure{Pictures: []drawing.Drawing{drawing.Curve("", []float64{1, 2}, 0, 0)}},
		page.Caution{Text: "CAUTION: stop."},
		page.Meter{Done: 1, Begun: 2, Of: 9, Text: "1 of 9 shown"},
		page.Meters{{Name: "Safety", Meter: page.Meter{Done: 1, Of: 9, Text: "1 of 9 shown"}}, {Name: "Passes", Meter: page.Meter{Text: "3 of 7 shown"}}},
	}
	for _, width := range []int{text.NarrowestWidth, 39, 70, 98} {
		var words []string
		for _, line := range Lay(p, width, Look{Profile: termenv.TrueColor, Ground: Dark}) {
			plain := ansi.Strip(line)
			if utf8.RuneCountInString(plain) > width {
				t.Errorf("width %d: a line of %d: %q", width, utf8.RuneCountInString(plain), plain)
			}
			if !strings.ContainsFunc(plain, func(r rune) bool { return r >= 0x2800 && r < 0x2900 }) {
				words = append(words, strings.Fields(strings.NewReplacer("✗", "", "▌", "", "█", "", "▒", "", "░", "").Replace(plain))...)
			}
		}
		got := strings.Join(words, " ")
		for _, label := range []string{" 2 ", " 0 "} { // the ends of the curve's scale
			got = strings.Replace(got, label, " ", 1)
		}
		if got != scripted.Words(p) {
			t.Errorf("width %d: words changed:\n%s\n%s", width, got, scripted.Words(p))
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

// A figure stands beside its question where there is room, above it as large as leaves the
// question whole, and not at all in a small window.
func TestFiguresOfQuestions(t *testing.T) {
	d := drawing.Curve("", []float64{1, 2, 3}, 0, 0)
	q := page.Question{Text: "How far?", Figure: &page.Figure{Pictures: []drawing.Drawing{d}, Twin: "It goes up."}}
	dots := func(line string) bool {
		return strings.ContainsFunc(line, func(r rune) bool { return r >= 0x2800 && r < 0x2900 })
	}
	for _, c := range []struct {
		columns, rows  int
		beside, figure bool
	}{{120, 40, true, true}, {80, 24, false, true}, {80, 8, false, false}, {34, 12, false, false}} {
		m := at(c.columns, c.rows)
		m.asks(number, q)
		seen := m.seen()
		line := ""
		for _, l := range strings.Split(seen, "\n") {
			if strings.Contains(l, "How far?") {
				line = l
			}
		}
		if line == "" || dots(seen) != c.figure || (dots(line) || strings.Contains(line, "3")) != c.beside {
			t.Errorf("%v:\n%s", c, seen)
		}
	}
}

func BenchmarkView(b *testing.B) {
	m := at(120, 40)
	m.theme = newTheme(Look{Profile: termenv.TrueColor, Ground: Dark})
	d := drawing.Curve("", []float64{1, 2, 3}, 0, 0)
	m.asks(number, page.Question{Text: strings.Repeat("word ", 60), Figure: &page.Figure{Pictures: []drawing.Drawing{d}}})
	for b.Loop() {
		m.Update(tea.WindowSizeMsg{Width: 120, Height: 40})
		_ = m.View()
	}
}
