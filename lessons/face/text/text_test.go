package text

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"

	"scratchpass/lessons/page"
	"scratchpass/quiz/drawing"
)

func TestWrap(t *testing.T) {
	test := func(text string, width int, want string) {
		t.Helper()
		if got := Wrap(text, width); got != want {
			t.Errorf("Wrap(%q, %d) =\n%s\nwant\n%s", text, width, got, want)
		}
	}
	test("The drawing calls for 1-1/2-6 UNC-3A and nothing else.", 34, "The drawing calls for 1-1/2-6\nUNC-3A and nothing else.") // no break in the name
	test("1) one two three four five six seven", 30, "1) one two three four five six\n   seven")
	test("  - one two three four five six seven", 30, "  - one two three four five\n    six seven")
	test("a\n\nb", 40, "a\n\nb")
	test("short", 5, "short") // never narrower than the narrowest
	for _, width := range []int{30, 38, 78, 200} {
		for _, line := range strings.Split(Wrap(strings.Repeat("0.0556, 55.6 thou; 29.5 ", 40), width), "\n") {
			if utf8.RuneCountInString(line) > width {
				t.Errorf("a line of %d at width %d", utf8.RuneCountInString(line), width)
			}
		}
	}
}

// Whatever the text: every word comes out whole and in its order, a line is too wide
// only if it is one word, and no line ends before it is full. All letters here are one
// column wide: a word of wider ones that fills a line to the last column may stand out.
func TestWrapKeepsWords(t *testing.T) {
	pieces := []string{"1/2-13", "UNC-2A-LH", "M16xL3-P1.5", "-0.0032", "+/-0.002", "1,500", "29.5\u00a0deg", "60°", "⌀0.500", "½", "a", "feed", "(0.0556", "in)",
		"1)", "-", "–", "Zoë", "A\u030angstro\u0308m", "ο\u0301", "⠉⠒", "≤", "a-word-that-no-line-of-thirty-columns-could-hold"}
	words := func(text string) []string {
		return strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == '\n' })
	}
	rng := rand.New(rand.NewPCG(7, 26))
	for range 20000 {
		var text strings.Builder
		text.WriteString([]string{"", "", "  ", "      ", "- ", "  12) "}[rng.IntN(6)])
		for range rng.IntN(40) {
			text.WriteString(pieces[rng.IntN(len(pieces))])
			if rng.IntN(4) > 0 {
				text.WriteString(" ")
			}
		}
		width := rng.IntN(120)
		limit := max(width, NarrowestWidth)
		got := Wrap(text.String(), width)
		if !slices.Equal(words(got), words(text.String())) {
			t.Fatalf("other words: width %d\n%q\n%q", width, text.String(), got)
		}
		lines := strings.Split(got, "\n")
		for i, line := range lines {
			in := words(line)
			if lead := words(text.String()); i == 0 && listItem(strings.TrimLeft(text.String(), " ")) > 0 && len(lead) > 1 && len(in) == 2 {
				in = in[1:] // the mark of a list item stands before its word
			}
			if ansi.StringWidth(line) > limit && len(in) > 1 {
				t.Fatalf("a line of %d at width %d: %q", ansi.StringWidth(line), width, line)
			}
			if i+1 < len(lines) && ansi.StringWidth(line+" "+words(lines[i+1])[0]) <= limit {
				t.Fatalf("width %d: %q ends too early before %q", width, line, lines[i+1])
			}
		}
	}
}

func TestBig(t *testing.T) {
	if got := Big("1.0x"); got != "  #        #####\n ##        #   #\n  #        #   #\n  #        #   #\n ###   ##  #####" {
		t.Errorf("\n%s", got)
	}
}

func TestBar(t *testing.T) {
	for want, m := range map[string]page.Meter{
		"  [                    ]": {},
		"  [##########+++++     ]": {Done: 2, Begun: 1, Of: 4},
		"  [####################]": {Done: 7, Of: 7},
		"  [++++++++++++++++++++]": {Begun: 3, Of: 3},
	} {
		if got := Bar(m); got != want {
			t.Errorf("%+v: %q, want %q", m, got, want)
		}
	}
}

// everyBlock has each kind of block once.
var everyBlock = page.Page{
	page.Heading{Text: "Part 1. How deep"}, page.Where{Text: "Problem 1 of 2"}, page.Paragraph{Text: "The drawing calls for 1-1/2-6 UNC-3A."},
	page.Item{Text: "one"}, page.Item{Text: "two", Inner: true}, page.Aside{Text: "type moves"}, page.Gap{},
	page.Question{Code: "a@1-0001", Text: "Which?", Lines: []string{"this", "that"}},
	page.Givens{{Label: "given thread:", Symbol: "thread", Value: "3/4-10", Unit: ""}, {Label: "given tool-flat:", Symbol: "f", Value: "0.0090", Unit: "in"}},
	page.Working{{Symbol: "P", Line: "P = 1 / n = 0.1 in", Means: "P: pitch"}, {Symbol: "h", Blank: true}},
	page.Sequence{"1) stop", "2) look"}, page.Verdict{Right: true, Text: "Right."}, page.Verdict{Text: "You gave 2."},
	page.Mistake{Text: "Wrong line."}, page.Caution{Text: "Stop first."},
	page.Figure{Caption: "Drawing: dial", Pictures: []drawing.Drawing{drawing.Curve("depth", []float64{1, 2, 3}, 0, 1)}, Twin: "It goes up."},
	page.Score{Text: "3/4"}, page.Meter{Done: 1, Of: 2, Text: "1 of 2 shown"}, page.Moves{"start", "speed ...", "a move that is too long for the left"},
	page.Log{Text: "in 0.005\nstop"}, page.Table{Columns: []string{"name", "right", "wrong", "blank"}, Rows: [][]string{{"Ada", "3", "0", "0"}}},
	page.Columns{Head: "n feed", Rows: []page.ColumnRow{{Row: "1 0.005", Sentence: "1. Feed 0.005 in."}}},
}

// Every block says its words, and each kind in its own way.
func TestLines(t *testing.T) {
	var said []string
	for _, l := range Lines(everyBlock, true) {
		if l.Role == Picture {
			if len(l.Draw(40)) == 0 {
				t.Error("an empty picture")
			}
			continue
		}
		said = append(said, l.Text)
	}
	want := []string{"Part 1. How deep", "Problem 1 of 2", "The drawing calls for 1-1/2-6 UNC-3A.", "- one", "  - two", "type moves", "\n",
		"Which?\n1) this\n2) that", "given thread: thread = 3/4-10", "given tool-flat: f = 0.0090 in", "  P = 1 / n = 0.1 in", "P: pitch", "  h = ...",
		"  1) stop", "  2) look", "Right.", "You gave 2.", "Wrong line.", "Stop first.", "Drawing: dial", "It goes up.", "1 of 2 shown",
		"1) start            2) speed ...\n3) a move that is too long for the left", "in 0.005\nstop", "- name Ada, right 3, wrong 0", "1. Feed 0.005 in."}
	if got := strings.Join(said, "|"); got != strings.Join(want, "|") {
		t.Errorf("got\n%s\nwant\n%s", got, strings.Join(want, "|"))
	}
}

// Pictures fit into any width, and a wide window makes them no wider than is of use.
func TestPicturesFit(t *testing.T) {
	for _, l := range Lines(everyBlock, false) {
		if l.Role != Picture {
			continue
		}
		for _, width := range []int{NarrowestWidth, 38, 200} {
			for _, row := range l.Draw(width) {
				if n := utf8.RuneCountInString(row); n > max(width, 30) || n > WidestPicture {
					t.Errorf("a row of %d in %d columns", n, width)
				}
			}
		}
	}
}
