package screen

import (
	"scratchpass/lessons/page"
	"scratchpass/quiz/drawing"
)

// leastBeside is the fewest columns of a picture that stands beside others: a dial can
// still be read in it.
const leastBeside = 20

// leastWords is how much room words need to stand beside a picture.
const leastWords = 26

// sight is a machine looked at: the dials in a row, and below them the work with its words
// beside it, all in one screen where that can be.
func (l layout) sight(b page.Sight) []string {
	var faces []drawing.Drawing
	var told, lines []string
	for _, f := range b.Dials {
		faces = append(faces, f.Pictures...)
	}
	row := l.row(faces, l.room*9/20, true)
	if row == nil { // too narrow: a picture after the other
		for _, f := range append(append([]page.Figure{}, b.Dials...), b.Work...) {
			lines = append(lines, l.words(f, l.width)...)
		}
		return lines
	}
	lines = append(lines, row...)
	for _, f := range b.Dials {
		told = append(told, f.Twin)
	}
	for _, f := range b.Work {
		told = append(told, f.Twin)
		lines = append(lines, l.withWords(f.Pictures[0], told, l.room-len(lines))...)
		told = nil
	}
	for _, twin := range told {
		lines = append(lines, l.words(page.Paragraph{Text: twin}, l.width)...)
	}
	return lines
}

// pictures are those of one figure, side by side where there is room.
func (l layout) pictures(f page.Figure) []string {
	row := l.row(f.Pictures, l.room, false)
	if len(row) == 0 {
		return l.words(f, l.width)
	}
	words := f
	words.Pictures, words.Twin = nil, ""
	lines := append(l.words(words, l.width), row...)
	return append(lines, l.words(page.Paragraph{Text: f.Twin}, l.width)...)
}

// row puts pictures side by side, no more than so many lines high, with their names or
// without; nil where they would be too small to be read.
func (l layout) row(all []drawing.Drawing, high int, named bool) []string {
	if len(all) == 0 {
		return nil
	}
	each := (l.width - gutter*(len(all)-1)) / len(all)
	if each < leastBeside {
		return nil
	}
	for {
		var lines []string
		for i, d := range all {
			picture := l.theme.cells(d.Cells(each))
			if named {
				picture = append([]string{l.theme.faint.Render(shorten(d.Title, each))}, picture...)
			}
			lines = beside(lines, picture, i*(each+gutter))
		}
		if len(lines) <= high || each <= leastBeside {
			return lines
		}
		each--
	}
}

// withWords is a picture with its words at its right, as large as leaves both in so many
// lines, or below it.
func (l layout) withWords(d drawing.Drawing, told []string, high int) []string {
	said := func(room int) (words []string) {
		for _, twin := range told {
			words = append(words, l.words(page.Paragraph{Text: twin}, room)...)
		}
		return words
	}
	for wide := min(d.Columns(), l.width); wide >= leastBeside; wide -= 2 {
		room := l.width - wide - gutter
		picture := l.theme.cells(d.Cells(wide))
		if room < leastWords || len(picture) > high {
			continue
		}
		if words := said(room); len(words) <= high || wide < leastBeside+2 {
			return beside(picture, words, wide+gutter)
		}
	}
	return append(l.theme.cells(d.Cells(min(d.Columns(), l.width))), said(l.width)...)
}
