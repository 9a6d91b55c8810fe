package drawing

import (
	"math"
	"strings"
)

// braille is the first of the 256 characters with two by four dots.
const braille = 0x2800

// dotBit is the bit of a dot by column (0, 1) and row (0 to 3) in its character.
var dotBit = [2][4]rune{{0x01, 0x02, 0x04, 0x40}, {0x08, 0x10, 0x20, 0x80}}

// Terminal draws with dots, at most so many columns wide. Labels stand on top.
func (d Drawing) Terminal(columns int) []string {
	columns = max(20, min(columns, d.Columns()))
	// A character cell is twice as high as wide and holds 2 by 4 dots, so dots are
	// square.
	scale := float64(columns*2-1) / d.Width
	rows := int(math.Ceil(d.Height*scale/4)) + 1
	dots, words := grid(rows, columns), grid(rows, columns)
	spot := func(p Point) (x, y float64) { return p.X * scale, (d.Height - p.Y) * scale }
	for _, l := range d.Lines {
		for i := 1; i < len(l.Points); i++ {
			x0, y0 := spot(l.Points[i-1])
			x1, y1 := spot(l.Points[i])
			n := int(math.Ceil(max(math.Abs(x1-x0), math.Abs(y1-y0)))) + 1
			for k := range n + 1 {
				if l.Dashed && k%4 > 1 {
					continue
				}
				t := float64(k) / float64(n)
				set(dots, int(math.Round(x0+(x1-x0)*t)), int(math.Round(y0+(y1-y0)*t)))
			}
		}
	}
	for _, l := range d.Labels {
		x, y := spot(l.At)
		text := []rune(l.Text)
		row := min(max(int(math.Round(y))/4, 0), rows-1)
		left := min(max(int(math.Round(x/2))-len(text)/2, 0), max(columns-len(text), 0))
		for i, r := range text {
			if left+i < columns {
				words[row][left+i] = r
			}
		}
	}
	lines := make([]string, rows)
	for i, row := range dots {
		var b strings.Builder
		for j, r := range row {
			switch {
			case words[i][j] != 0:
				b.WriteRune(words[i][j])
			case r == 0:
				b.WriteByte(' ')
			default:
				b.WriteRune(braille + r)
			}
		}
		lines[i] = strings.TrimRight(b.String(), " ")
	}
	return trim(lines)
}

func grid(rows, columns int) [][]rune {
	cells := make([][]rune, rows)
	for i := range cells {
		cells[i] = make([]rune, columns)
	}
	return cells
}

// set puts a dot, unless it lies outside.
func set(dots [][]rune, x, y int) {
	if x < 0 || y < 0 || y/4 >= len(dots) || x/2 >= len(dots[0]) {
		return
	}
	dots[y/4][x/2] |= dotBit[x%2][y%4]
}

func trim(lines []string) []string {
	for len(lines) > 0 && lines[0] == "" {
		lines = lines[1:]
	}
	for len(lines) > 0 && lines[len(lines)-1] == "" {
		lines = lines[:len(lines)-1]
	}
	return lines
}
