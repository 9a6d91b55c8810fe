// Package text turns the blocks of a page into lines of text, for the faces that write
// lines. Every one of them says the same words.
package text

import (
	"fmt"
	"strconv"
	"strings"

	"scratchpass/lessons/page"
	"scratchpass/quiz/drawing"
)

// Role is what a line is, for the look of it.
type Role int

// The roles.
const (
	Plain   Role = iota
	Heading      // the title of a page or a part
	Caution      // a safety note
	Good         // right
	Bad          // wrong
	Figures      // a line of a working, a row of figures
	Faint        // what to type, where you are
	Picture      // no words: left out where pictures are of no use
)

// Line is one piece of text. It may have line breaks, and be wrapped. A picture is drawn
// in so many columns as there are.
type Line struct {
	Role Role
	Text string
	Draw func(columns int) []string // of a picture; nil for all others

	Drawing *drawing.Drawing // the picture, where it is a drawing: a face with colours has its cells
}

// ColumnsFrom is the width from which rows of figures have room to stand in columns.
const ColumnsFrom = 72

// Lines are the lines of a page. Narrow tells rows of figures as sentences.
func Lines(p page.Page, narrow bool) []Line {
	var all []Line
	for _, b := range p {
		all = append(all, lines(b, narrow)...)
	}
	return all
}

func lines(b page.Block, narrow bool) []Line {
	switch b := b.(type) {
	case page.Heading:
		return []Line{{Role: Heading, Text: b.Text}}
	case page.Where:
		return []Line{{Role: Faint, Text: b.Text}}
	case page.Now:
		return []Line{{Role: Faint, Text: b.Text}}
	case page.Aside:
		return []Line{{Role: Faint, Text: b.Text}}
	case page.Paragraph:
		return []Line{{Text: b.Text}}
	case page.Typeable:
		return []Line{{Text: b.Text}}
	case page.Log:
		return []Line{{Role: Figures, Text: b.Text}}
	case page.Item:
		if b.Inner {
			return []Line{{Text: "  - " + b.Text}}
		}
		return []Line{{Text: "- " + b.Text}}
	case page.Gap:
		return []Line{{Text: "\n"}}
	case page.Question:
		return []Line{{Text: numbered(b.Text, b.Lines)}}
	case page.Verdict:
		if b.Right {
			return []Line{{Role: Good, Text: b.Text}}
		}
		return []Line{{Role: Bad, Text: strings.Join(strings.Fields(b.Text+" "+b.Given+" "+b.Answer), " ")}}
	case page.Mistake:
		return []Line{{Role: Bad, Text: b.Text}}
	case page.Caution:
		return []Line{{Role: Caution, Text: b.Text}}
	case page.Score:
		return []Line{{Role: Picture, Draw: func(int) []string { return strings.Split(Big(b.Text), "\n") }}}
	}
	return compound(b, narrow)
}

// compound are the lines of blocks that have parts.
func compound(b page.Block, narrow bool) []Line {
	var all []Line
	switch b := b.(type) {
	case page.Givens:
		for _, g := range b {
			all = append(all, Line{Text: g.Label + " " + g.Symbol + " = " + strings.TrimSpace(g.Value+" "+g.Unit)})
		}
	case page.Working:
		for _, s := range b {
			all = append(all, working(s)...)
		}
	case page.Sequence:
		for _, s := range b {
			all = append(all, Line{Role: Figures, Text: "  " + s})
		}
	case page.Figure:
		all = append(all, figure(b)...)
	case page.Meter:
		all = append(all, Line{Role: Picture, Draw: func(int) []string { return []string{Bar(b)} }}, Line{Text: b.Text})
	case page.Meters:
		for _, m := range b {
			all = append(all, Line{Text: m.Name + ": " + m.Text})
		}
	case page.Bench:
		all = append(all, bench(b)...)
	case page.Sight:
		for _, f := range append(append([]page.Figure{}, b.Dials...), b.Work...) {
			all = append(all, figure(f)...)
		}
	case page.Moves:
		all = append(all, Line{Role: Figures, Text: sideBySide(b)})
	case page.Table:
		for _, row := range b.Rows {
			all = append(all, Line{Text: told(b.Columns, row)})
		}
	case page.Columns:
		if !narrow {
			all = append(all, Line{Role: Figures, Text: b.Head})
		}
		for _, row := range b.Rows {
			text := row.Row
			if narrow {
				text = row.Sentence
			}
			all = append(all, Line{Role: Figures, Text: text})
		}
	}
	return all
}

func numbered(text string, lines []string) string {
	for i, line := range lines {
		text += "\n" + strconv.Itoa(i+1) + ") " + line
	}
	return text
}

func working(s page.Step) []Line {
	all := []Line{{Role: Figures, Text: "  " + s.Line}}
	if s.Blank {
		all[0].Text = "  " + s.Symbol + " = ..."
	}
	if s.Means != "" {
		all = append(all, Line{Role: Faint, Text: s.Means})
	}
	return all
}

func figure(f page.Figure) []Line {
	var all []Line
	if f.Caption != "" {
		all = append(all, Line{Role: Faint, Text: f.Caption})
	}
	for _, d := range f.Pictures {
		all = append(all, Line{Role: Picture, Drawing: &d, Draw: func(columns int) []string { return draw(d, columns) }})
	}
	if f.Twin != "" {
		all = append(all, Line{Text: f.Twin})
	}
	return all
}

// bench tells where a machine stands, and the moves that were not told yet.
func bench(b page.Bench) []Line {
	if b.Told == "" {
		return nil
	}
	all := []Line{{Text: b.Told}}
	if b.Head != "" {
		all = append(all, Line{Role: Faint, Text: b.Head}, Line{Role: Figures, Text: sideBySide(b.Moves)})
	}
	return all
}

// WidestPicture is how wide a picture is at the most: a wider one is no clearer.
const WidestPicture = 64

func draw(d drawing.Drawing, columns int) []string { return d.Terminal(min(columns, WidestPicture)) }

// barWidth is how wide the bar of a meter is.
const barWidth = 20

// Bar draws a meter: # for what is done, + for what is begun.
func Bar(m page.Meter) string {
	of := max(m.Of, 1)
	done, begun := m.Done*barWidth/of, (m.Done+m.Begun)*barWidth/of
	bar := strings.Repeat("#", done) + strings.Repeat("+", begun-done)
	return fmt.Sprintf("  [%-*s]", barWidth, bar)
}

// told is a row of a table as a line of labels and values, as a screen reader wants it. Of
// counts only those that are any are told, after the first two.
func told(columns, row []string) string {
	line := "- " + columns[0] + " " + row[0]
	for i := 1; i < len(row); i++ {
		if i > 2 && row[i] == "0" {
			continue
		}
		line += ", " + columns[i] + " " + row[i]
	}
	return line
}

// sideBySide numbers moves and puts them two in a row, as narrow as any window is laid
// out for. One too long for the left has a row to itself.
func sideBySide(moves []string) string {
	const left = 20
	lines := make([]string, len(moves))
	for i, m := range moves {
		lines[i] = strconv.Itoa(i+1) + ") " + m
	}
	var out []string
	for i := 0; i < len(lines); i++ {
		row := lines[i]
		if i+1 < len(lines) && len(row) <= left-2 {
			i++
			row = fmt.Sprintf("%-*s%s", left, row, lines[i])
		}
		out = append(out, row)
	}
	return strings.Join(out, "\n")
}
