package screen

import (
	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"

	"scratchpass/lessons/face/text"
	"scratchpass/quiz/drawing"
)

// Look is what a terminal can show, and on what.
type Look struct {
	Profile termenv.Profile
	Ground  Ground
}

// Ground is the background of a terminal.
type Ground int

// The grounds. On one that is not known only the terminal's own colours are used, which
// follow it.
const (
	UnknownGround Ground = iota
	Light
	Dark
)

// colour is one role's colour: of a palette, and of the terminal's own sixteen.
type colour struct{ hex, own string }

// palette are the colours of the roles on one ground. Text keeps the terminal's own colour.
// No meaning is in a colour alone: a word or a mark stands beside it.
type palette struct {
	steel         colour // titles, keys, the tool, the thing asked
	right, wrong  colour
	faint         colour // remarks, dimensions, hatching
	caution       colour // its letters
	cautionGround colour
}

// paper is the ground that a palette is made for, and panel a shade of it; the test of
// contrast takes both.
var papers = map[Ground][2]string{Light: {"#FBFAF7", "#EEF1F4"}, Dark: {"#12161C", "#1C232C"}}

var palettes = map[Ground]palette{
	Light: {
		steel: colour{"#1F5A8C", "4"}, right: colour{"#0B6650", "6"}, wrong: colour{"#9E3519", "5"}, faint: colour{"#55606E", "8"},
		caution: colour{"#6B4300", "0"}, cautionGround: colour{"#FFF1CC", "3"},
	},
	Dark: {
		steel: colour{"#7DB8E8", "12"}, right: colour{"#4FD1C5", "14"}, wrong: colour{"#FF8F70", "13"}, faint: colour{"#A3AFBD", "7"},
		caution: colour{"#FFD98A", "0"}, cautionGround: colour{"#3A2E0B", "11"},
	},
	UnknownGround: {right: colour{own: "6"}, wrong: colour{own: "5"}},
}

// theme are the styles of a look: the only place that names a colour.
type theme struct {
	roles map[text.Role]lipgloss.Style
	parts map[drawing.Part]lipgloss.Style
	thin  lipgloss.Style // hatching and other thin lines of the work

	title, key, faint, value, mark lipgloss.Style
}

func newTheme(look Look) *theme {
	r := lipgloss.NewRenderer(nil)
	r.SetColorProfile(look.Profile)
	r.SetHasDarkBackground(look.Ground != Light)
	p := palettes[look.Ground]
	of := func(c colour) lipgloss.TerminalColor {
		switch {
		case look.Ground == UnknownGround || look.Profile == termenv.ANSI:
			if c.own == "" {
				return lipgloss.NoColor{}
			}
			return lipgloss.Color(c.own)
		case c.hex == "":
			return lipgloss.NoColor{}
		}
		return lipgloss.Color(c.hex)
	}
	plain := r.NewStyle()
	faint, steel := plain.Foreground(of(p.faint)), plain.Foreground(of(p.steel))
	caution := plain.Bold(true).Foreground(of(p.caution)).Background(of(p.cautionGround))
	if look.Ground == UnknownGround {
		caution = plain.Bold(true)
	}
	return &theme{
		roles: map[text.Role]lipgloss.Style{
			text.Heading: steel.Bold(true),
			text.Caution: caution,
			text.Good:    plain.Bold(true).Foreground(of(p.right)),
			text.Bad:     plain.Bold(true).Foreground(of(p.wrong)),
			text.Faint:   faint,
		},
		parts: map[drawing.Part]lipgloss.Style{
			drawing.Work: plain, drawing.Tool: steel, drawing.Machine: plain, drawing.Measure: faint, drawing.Marked: steel.Bold(true),
		},
		thin: faint, title: steel.Bold(true), key: plain.Bold(true), faint: faint, value: plain.Bold(true), mark: steel,
	}
}

// cells colours a picture.
func (t *theme) cells(rows [][]drawing.Cell) []string {
	lines := make([]string, len(rows))
	for i, row := range rows {
		for len(row) > 0 && row[len(row)-1].Rune == 0 {
			row = row[:len(row)-1]
		}
		for len(row) > 0 {
			n, run := 0, []rune{}
			for n < len(row) && t.of(row[n]) == t.of(row[0]) {
				r := row[n].Rune
				if r == 0 {
					r = ' '
				}
				run = append(run, r)
				n++
			}
			lines[i] += t.styled(t.of(row[0]), string(run))
			row = row[n:]
		}
	}
	return lines
}

// ink is what a cell of a picture is drawn with.
type ink struct {
	part   drawing.Part
	thin   bool
	nought bool // nothing is there
}

func (t *theme) of(c drawing.Cell) ink {
	if c.Rune == 0 {
		return ink{nought: true}
	}
	return ink{part: c.Part, thin: c.Thin && c.Part != drawing.Tool}
}

func (t *theme) styled(i ink, text string) string {
	switch {
	case i.nought:
		return text
	case i.thin:
		return t.thin.Render(text)
	}
	return t.parts[i.part].Render(text)
}
