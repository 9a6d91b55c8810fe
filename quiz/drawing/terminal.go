package drawing

import (
	"math"
	"slices"
	"strings"
	"unicode/utf8"
)

// braille is the first of the 256 characters with two by four dots.
const braille = 0x2800

// dotBit is the bit of a dot by column (0, 1) and row (0 to 3) in its character.
var dotBit = [2][4]rune{{0x01, 0x02, 0x04, 0x40}, {0x08, 0x10, 0x20, 0x80}}

// Cell is a character of a picture on a terminal; 0 is an empty one.
type Cell struct {
	Rune rune
	Part Part
	Thin bool // only thin lines go through it
}

// Terminal draws with dots, at most so many columns wide. Labels stand on top.
func (d Drawing) Terminal(columns int) []string {
	cells := d.Cells(columns)
	lines := make([]string, len(cells))
	for i, row := range cells {
		var b strings.Builder
		for _, c := range row {
			if c.Rune == 0 {
				c.Rune = ' '
			}
			b.WriteRune(c.Rune)
		}
		lines[i] = strings.TrimRight(b.String(), " ")
	}
	return lines
}

// Cells draws the same for a terminal with colours. Empty rows at the top and the foot are
// left out.
func (d Drawing) Cells(columns int) [][]Cell {
	columns = max(20, min(columns, d.Columns()))
	c := newCanvas(columns, d)
	for _, s := range d.Shapes {
		c.shape(s)
	}
	for _, l := range d.Labels {
		c.word(l)
	}
	return c.rows()
}

// canvas is a grid of dots, two by four to a character, so that dots are square.
type canvas struct {
	columns, high int
	scale, height float64
	dots          [][]rune
	cells         [][]Cell
}

func newCanvas(columns int, d Drawing) *canvas {
	c := canvas{columns: columns, scale: float64(columns*2-1) / d.Width, height: d.Height}
	c.high = int(math.Ceil(d.Height*c.scale/4)) + 1
	c.dots, c.cells = make([][]rune, c.high), make([][]Cell, c.high)
	for i := range c.high {
		c.dots[i], c.cells[i] = make([]rune, columns), make([]Cell, columns)
	}
	return &c
}

func (c *canvas) spot(p Point) Point { return Point{p.X * c.scale, (c.height - p.Y) * c.scale} }

func (c *canvas) shape(s Shape) {
	points := make([]Point, len(s.Points))
	for i, p := range s.Points {
		points[i] = c.spot(p)
	}
	if s.Fill != Open {
		c.fill(points, s)
	}
	if s.Pen == NoEdge {
		return
	}
	walked := 0.0
	for i := 1; i < len(points); i++ {
		walked = c.stroke(points[i-1], points[i], walked, s)
	}
}

// dash tells where along a line of a pen a dot is left out.
func (p Pen) dash(at float64) bool {
	switch p {
	case Hidden:
		return math.Mod(at, 4) >= 2
	case Hatching: // a hint of it: dots are coarse
		return math.Mod(at, 3) >= 1
	case Centre:
		m := math.Mod(at, 12)
		return m >= 7 && m < 9 || m >= 10
	}
	return false
}

// stroke draws a straight piece and returns how far the line has come, for its dashes.
func (c *canvas) stroke(a, b Point, walked float64, s Shape) float64 {
	long := distance(a, b)
	n := int(math.Ceil(max(math.Abs(b.X-a.X), math.Abs(b.Y-a.Y)))) + 1
	for k := range n + 1 {
		t := float64(k) / float64(n)
		if s.Pen.dash(walked + t*long) {
			continue
		}
		c.set(int(math.Round(a.X+(b.X-a.X)*t)), int(math.Round(a.Y+(b.Y-a.Y)*t)), s.Part, s.Pen != Outline)
	}
	return walked + long
}

// fill goes along each row of dots and asks which lie inside.
func (c *canvas) fill(points []Point, s Shape) {
	for y := range c.high * 4 {
		var at []float64
		for i, p := range points {
			q := points[(i+1)%len(points)]
			if fy := float64(y); (p.Y <= fy) != (q.Y <= fy) {
				at = append(at, p.X+(q.X-p.X)*(fy-p.Y)/(q.Y-p.Y))
			}
		}
		slices.Sort(at)
		for i := 0; i+1 < len(at); i += 2 {
			for x := int(math.Ceil(at[i])); x <= int(math.Floor(at[i+1])); x++ {
				c.inside(x, y, s)
			}
		}
	}
}

// inside fills a dot. A tint is one dot in four.
func (c *canvas) inside(x, y int, s Shape) {
	if s.Fill != Solid {
		c.wipe(x, y)
	}
	if s.Fill == Solid || s.Fill == Tint && y%2 == 0 && x%4 == y%4 {
		c.set(x, y, s.Part, s.Fill == Tint)
	}
}

func (c *canvas) wipe(x, y int) {
	if x >= 0 && y >= 0 && y/4 < c.high && x/2 < c.columns {
		c.dots[y/4][x/2] &^= dotBit[x%2][y%4]
	}
}

// set puts a dot, unless it lies outside. A cell has the colour of its heaviest line.
func (c *canvas) set(x, y int, part Part, thin bool) {
	if x < 0 || y < 0 || y/4 >= c.high || x/2 >= c.columns {
		return
	}
	cell := &c.cells[y/4][x/2]
	if c.dots[y/4][x/2] == 0 || cell.Thin || !thin {
		cell.Part, cell.Thin = part, thin
	}
	c.dots[y/4][x/2] |= dotBit[x%2][y%4]
}

// word writes a label.
func (c *canvas) word(l Label) {
	at := c.spot(l.At)
	text := []rune(l.Text)
	row := min(max(int(math.Round(at.Y))/4, 0), c.high-1)
	left := int(math.Round(at.X / 2))
	switch l.Align {
	case Middle:
		left -= len(text) / 2
	case Right:
		left -= len(text)
	}
	left = min(max(left, 0), max(c.columns-len(text), 0))
	for i, r := range text {
		if left+i < c.columns {
			c.cells[row][left+i] = Cell{Rune: r, Part: l.Part}
		}
	}
}

// rows puts dots and letters together.
func (c *canvas) rows() [][]Cell {
	first, last := c.high, 0
	for i, row := range c.dots {
		for j, dots := range row {
			cell := &c.cells[i][j]
			if cell.Rune == 0 && dots != 0 {
				cell.Rune = braille + dots
			}
			if cell.Rune != 0 {
				first, last = min(first, i), i+1
			}
		}
	}
	return c.cells[min(first, last):last]
}

// letters is how many columns a text takes.
func letters(text string) int { return utf8.RuneCountInString(text) }
