// Package drawing holds the pictures of lessons and problems: shapes in one model, drawn
// from numbers of calc, and what turns them into dots on a terminal and into SVG. They
// keep to the habits of shop drawings (ISO 128, ISO 129-1, ASME Y14.2): outlines twice as
// heavy as dimension lines, work in section hatched at 45 degrees, axes long and short.
// Every drawing has a twin in words.
package drawing

// Point is a place on a drawing; x goes right and y up, in the drawing's own unit.
type Point struct{ X, Y float64 }

// Shape is a run of straight pieces, drawn over the shapes before it.
type Shape struct {
	Points []Point
	Pen    Pen
	Fill   Fill
	Part   Part
	Moves  bool // in a picture that moves
}

// Pen is what a line stands for; that gives its weight and its dashes.
type Pen int

// The pens.
const (
	NoEdge   Pen = iota // filled only
	Outline             // an edge one can see: heavy
	Thin                // dimensions, extension lines
	Hatching            // lines at 45 degrees in metal that is cut through
	Hidden              // an edge behind something, or where something was: short dashes
	Centre              // an axis: long and short dashes
)

// Fill is what lies inside a shape.
type Fill int

// The fills.
const (
	Open  Fill = iota // nothing
	Clear             // hides what lies under it
	Tint              // hides it, and is lightly tinted: a tool
	Solid             // arrowheads
)

// Part is what a shape or label belongs to; that gives its colour where there is any.
type Part int

// The parts.
const (
	Work Part = iota
	Tool
	Machine // all other metal
	Measure // dimensions and names
	Marked  // what is being talked about
)

// Align is where a label lies from its place.
type Align int

// The alignments.
const (
	Middle Align = iota // centred on it
	Left                // begins there
	Right               // ends there
)

// Label is a word on a drawing.
type Label struct {
	At    Point
	Text  string
	Align Align
	Part  Part
	Moves bool // in a picture that moves
}

// Drawing is a picture and its twin in words.
type Drawing struct {
	Title  string
	Twin   string
	Width  float64
	Height float64
	Most   int // columns on a terminal at which it is big enough; 0 is 64
	Shapes []Shape
	Labels []Label
}

// Columns is how many letters stand side by side across the drawing. The labels
// were placed for letters of that width.
func (d Drawing) Columns() int {
	if d.Most > 0 {
		return d.Most
	}
	return 64
}

// letter is how wide a letter is, in units of the drawing. Lines of text are two letters
// apart.
func (d Drawing) letter() float64 { return d.Width / float64(d.Columns()) }

func (d *Drawing) draw(pen Pen, part Part, points ...Point) {
	d.Shapes = append(d.Shapes, Shape{Points: points, Pen: pen, Part: part})
}

// area draws a closed shape: the last point is joined with the first.
func (d *Drawing) area(pen Pen, fill Fill, part Part, points ...Point) {
	d.Shapes = append(d.Shapes, Shape{Points: append(points[:len(points):len(points)], points[0]), Pen: pen, Fill: fill, Part: part})
}

func (d *Drawing) label(x, y float64, text string) {
	d.Labels = append(d.Labels, Label{At: Point{x, y}, Text: text, Align: Middle, Part: Measure})
}

func (d *Drawing) labelFrom(x, y float64, text string) {
	d.Labels = append(d.Labels, Label{At: Point{x, y}, Text: text, Align: Left, Part: Measure})
}

func (d *Drawing) labelTo(x, y float64, text string) {
	d.Labels = append(d.Labels, Label{At: Point{x, y}, Text: text, Align: Right, Part: Measure})
}
