package screen

import (
	"strings"
	"testing"
	"unicode/utf8"

	"scratchpass/lessons/page"
	"scratchpass/quiz/drawing"
)

// panelOf is a bench after some moves; its parts have other lengths after each.
func panelOf(moves int) page.Bench {
	dial := drawing.Curve("", []float64{1, float64(moves)}, 0, 0)
	work := drawing.Curve("", make([]float64, moves+2), 1, 0)
	b := page.Bench{Title: "The job", Told: "It stands.", Work: &work, Moves: page.Moves{"start", "stop", "cross in ...", "done"},
		Signs: []page.Sign{{Name: "Spindle", Reads: strings.Repeat("turning ", moves+1)}, {Name: "Half-nut", Reads: "open"}, {Name: "Tool", Reads: "in"},
			{Name: "Passes", Reads: "0"}, {Name: "Your book", Reads: "nothing yet"}},
		Dials: []page.Dial{{Sign: page.Sign{Name: "Cross slide", Reads: "0.0000 in"}, Face: dial}, {Sign: page.Sign{Name: "Compound", Reads: "0.0010 in"}, Face: dial}}}
	if moves == 0 {
		b.Head = "Moves:"
	}
	return b
}

var move = page.Prompt{Text: "What do you do?", Takes: page.Words{Moves: true}}

// The panel stands still: its names, the line under it and the question are in the same rows
// after every move, whatever is said; and the last that was said is seen.
func TestThePanelStandsStill(t *testing.T) {
	for _, size := range [][2]int{{110, 34}, {120, 40}, {80, 24}, {60, 24}, {40, 24}, {40, 20}} {
		m := at(size[0], size[1])
		var first []int
		for n := range 12 {
			p := []page.Block{}
			if n > 0 {
				p = append(p, page.Paragraph{Text: strings.TrimSpace(strings.Repeat("It was done. ", n%4+1))}, page.Mistake{Text: "Said last."})
			}
			answer := m.asks(move, append(p, panelOf(n))...)
			rows := strings.Split(m.seen(), "\n")
			if len(rows) > size[1] {
				t.Errorf("%v: %d rows", size, len(rows))
			}
			var at []int
			for i, row := range rows {
				if utf8.RuneCountInString(row) > size[0] {
					t.Errorf("%v: a row of %d", size, utf8.RuneCountInString(row))
				}
				if strings.Contains(row, "Spindle") || strings.Contains(row, "Compound") || strings.Contains(row, "───") || strings.Contains(row, "What do you do?") || strings.Contains(row, "> ") && i > len(rows)-5 {
					at = append(at, i)
				}
			}
			if n > 0 && !strings.Contains(m.seen(), "Said last.") {
				t.Errorf("%v: what was said is not seen:\n%s", size, m.seen())
			}
			if first == nil {
				first = at
			}
			if len(at) != len(first) || at[1] != first[1] || at[len(at)-1] != first[len(first)-1] {
				t.Errorf("%v, move %d: the panel moved, rows %v and not %v\n%s", size, n, at, first, m.seen())
			}
			m.types("go", "enter")
			if got, err := given(t, answer); got != "go" || err != nil {
				t.Errorf("%q, %v", got, err)
			}
		}
	}
}

// A page with a title takes the place of the panel until it is read; Esc leads back from it
// too, and from a question inside a move. The log is there again.
func TestEscLeadsBackToThePanel(t *testing.T) {
	m := at(80, 24)
	m.asks(move, panelOf(0))
	m.types("help", "enter")
	answer := m.asks(move, page.Heading{Text: "Moves"}, page.Paragraph{Text: "All of them."}, page.Heading{Text: "More moves"}, page.Paragraph{Text: strings.Repeat("more\n", 30)}, panelOf(1))
	if seen := m.seen(); strings.Contains(seen, "Spindle") || !strings.Contains(seen, "All of them.") {
		t.Error(seen)
	}
	m.types("esc")
	none(t, answer)
	if seen := m.seen(); !strings.Contains(seen, "Spindle") || !strings.Contains(seen, "> help") || strings.Contains(seen, "All of them.") || !strings.Contains(seen, "The job") {
		t.Error(seen)
	}
	m.types("1", "enter")
	given(t, answer)
	inner := m.asks(page.Prompt{Text: "How much?", Takes: page.Words{Back: "back", Moves: true}})
	m.types("esc")
	if got, err := given(t, inner); got != "back" || err != nil {
		t.Errorf("%q, %v", got, err)
	}
}

// What is seen closely stands in one screen, each dial beside the other, with its words.
func TestSightInOneScreen(t *testing.T) {
	dial := func(name string) page.Figure {
		return page.Figure{Caption: name, Twin: name + " reads 0.", Pictures: []drawing.Drawing{drawing.Curve(name, []float64{1, 2}, 0, 0)}}
	}
	sight := page.Sight{Dials: []page.Figure{dial("One"), dial("Two"), dial("Three")}, Work: []page.Figure{dial("Work")}}
	for _, size := range [][2]int{{110, 34}, {80, 24}} {
		m := at(size[0], size[1])
		m.asks(page.Prompt{Takes: page.GoOn{}}, page.Heading{Text: "Seen"}, sight)
		seen := strings.Join(strings.Fields(m.seen()), " ")
		for _, name := range []string{"One", "Two", "Three", "Work"} {
			if !strings.Contains(seen, name+" reads 0.") {
				t.Errorf("%v: %s is not there\n%s", size, name, m.seen())
			}
		}
		if m.more() {
			t.Errorf("%v: more than one screen\n%s", size, m.seen())
		}
	}
}

func BenchmarkPanel(b *testing.B) {
	m := at(120, 40)
	m.asks(move, page.Paragraph{Text: "Done."}, panelOf(3))
	for b.Loop() {
		m.lay(true)
		_ = m.View()
	}
}
