// Package drawing holds the pictures of lessons and problems: shapes in one
// model, drawn from numbers of calc, and what turns them into dots on a terminal.
// Every drawing has a twin in words.
package drawing

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"scratchpass/calc"
	"scratchpass/content"
)

// Point is a place on a drawing; x goes right and y up, in the drawing's own unit.
type Point struct{ X, Y float64 }

// Line is a run of straight pieces.
type Line struct {
	Points []Point
	Dashed bool
}

// Label is a word on a drawing, centred on its place.
type Label struct {
	At   Point
	Text string
}

// Drawing is a picture and its twin in words.
type Drawing struct {
	Title  string
	Twin   string
	Width  float64
	Height float64
	Most   int // columns on a terminal at which it is big enough; 0 is 64
	Lines  []Line
	Labels []Label
}

// sketch draws with the labels of content and returns values for the twin.
type sketch func(label func(key string) string) (Drawing, map[string]string)

// all are the drawings by name.
var all = map[string]sketch{
	"thread-profile":    threadProfile,
	"compound-triangle": compoundTriangle,
	"both-flanks":       bothFlanks,
	"dial-face":         func(l func(string) string) (Drawing, map[string]string) { return dialFace(0.036, 0.1) },
	"dial-face-turned":  func(l func(string) string) (Drawing, map[string]string) { return dialFace(0.013, 0.1) },
}

// Names lists the drawings.
func Names() []string { return slices.Sorted(maps.Keys(all)) }

// Named returns a drawing with its words.
func Named(name string, words map[string]content.DrawingWords) (Drawing, error) {
	draw, ok := all[name]
	if !ok {
		return Drawing{}, &calc.InputError{What: "drawing", Got: calc.Quoted(name), Want: strings.Join(Names(), ", ")}
	}
	return named(name, words, draw)
}

// named puts the words to a sketch.
func named(name string, words map[string]content.DrawingWords, draw sketch) (Drawing, error) {
	w := words[name]
	d, values := draw(func(key string) string { return w.Labels[key] })
	twin, unknown := content.Fill(w.Twin, func(name string) (string, bool) { v, ok := values[name]; return v, ok })
	if len(unknown) > 0 {
		return d, fmt.Errorf("the drawing %s has no value for %s; it has %s", name, strings.Join(unknown, ", "),
			strings.Join(slices.Sorted(maps.Keys(values)), ", "))
	}
	title, _ := content.Fill(w.Title, func(name string) (string, bool) { v, ok := values[name]; return v, ok })
	d.Title, d.Twin = title, strings.TrimSpace(twin)
	return d, nil
}

func (d *Drawing) line(dashed bool, points ...Point) {
	d.Lines = append(d.Lines, Line{points, dashed})
}

func (d *Drawing) label(x, y float64, text string) {
	d.Labels = append(d.Labels, Label{Point{x, y}, text})
}

// arrow draws a line with a head at both ends.
func (d *Drawing) arrow(a, b Point) {
	d.line(false, a, b)
	length := math.Hypot(b.X-a.X, b.Y-a.Y)
	if length == 0 {
		return
	}
	ux, uy := (b.X-a.X)/length, (b.Y-a.Y)/length
	const head = 1.6
	for _, end := range []struct {
		at   Point
		sign float64
	}{{a, 1}, {b, -1}} {
		for _, side := range []float64{-0.5, 0.5} {
			d.line(false, end.at, Point{end.at.X + head*end.sign*ux + head*side*uy, end.at.Y + head*end.sign*uy - head*side*ux})
		}
	}
}

// Example numbers of the drawings of a thread: 10 threads per inch, a tool with a
// flat of a sixth of the pitch, an outside thread from the nominal blank.
const exampleTPI calc.ThreadsPerInch = 10

// groove is one thread groove scaled so that the pitch is 40 units wide.
type groove struct {
	pitch, depth, flat float64 // in drawing units
	values             map[string]string
}

func exampleGroove() groove {
	pitch, err := exampleTPI.Pitch()
	if err != nil {
		panic("drawing: the example numbers are part of the program") // a test draws every drawing
	}
	g, err := grooveOf(calc.Outside, pitch, pitch.Times(1.0/6), calc.LengthText)
	if err != nil {
		panic("drawing: the example numbers are part of the program")
	}
	g.values["n"] = calc.Shortest(exampleTPI.Number(), 0)
	return g
}

// grooveOf is the groove of a tool with a flat, from a nominal blank or a basic bore.
func grooveOf(side calc.Side, pitch, flat calc.Length, text func(calc.Length) string) (groove, error) {
	depth := calc.RadialDepthFromNominal
	if side == calc.Inside {
		depth = calc.RadialDepthFromBasicBore
	}
	h, err := depth(pitch, flat)
	if err != nil {
		return groove{}, err
	}
	c, err := calc.CompoundTravel(h, 29.5)
	if err != nil {
		return groove{}, err
	}
	scale := 40 / pitch.Inches()
	return groove{40, h.Inches() * scale, flat.Inches() * scale, map[string]string{
		"P": text(pitch), "f": text(flat), "h": text(h), "c": text(c), "a": "29.5 degrees",
	}}, nil
}

// Thread returns the profile of one thread with a tool in it whose flat is that of
// the book: a sixth of the pitch outside, an eighth inside.
func Thread(d calc.Designation, words map[string]content.DrawingWords) (Drawing, error) {
	side, _ := d.Side()
	flat := d.Pitch.Times(1.0 / 6)
	if side == calc.Inside {
		flat = d.Pitch.Times(1.0 / 8)
	}
	text := calc.LengthText
	if d.Metric {
		text = func(l calc.Length) string { return calc.Fixed(l.Millimetres(), 3) + " mm" }
	}
	g, err := grooveOf(side, d.Pitch, flat, text)
	if err != nil {
		return Drawing{}, err
	}
	g.values["thread"] = d.String()
	return named("thread-page", words, func(label func(string) string) (Drawing, map[string]string) { return profile(g, label), g.values })
}

// half is how wide half the groove is at its top.
func (g groove) half() float64 { return g.flat/2 + g.depth*math.Tan(math.Pi/6) }

// tan30 is the slope of a flank.
var tan30 = math.Tan(math.Pi / 6)

// threadProfile is the section of the work with the tool in the middle groove.
func threadProfile(label func(string) string) (Drawing, map[string]string) {
	g := exampleGroove()
	return profile(g, label), g.values
}

func profile(g groove, label func(string) string) Drawing {
	d := Drawing{Width: 132, Height: 62}
	const surface, left = 32.0, 6.0
	center := func(i int) float64 { return left + 20 + float64(i)*g.pitch }
	work := []Point{{left - 6, surface}}
	for i := range 3 {
		x := center(i)
		work = append(work, Point{x - g.half(), surface}, Point{x - g.flat/2, surface - g.depth},
			Point{x + g.flat/2, surface - g.depth}, Point{x + g.half(), surface})
	}
	d.line(false, append(work, Point{left + 126, surface})...)
	// The tool stands in the middle groove and reaches above the surface.
	x, top := center(1), surface+15
	d.line(false, Point{x - g.half() - 15*tan30, top}, Point{x - g.flat/2, surface - g.depth + 0.8},
		Point{x + g.flat/2, surface - g.depth + 0.8}, Point{x + g.half() + 15*tan30, top})
	d.label(x, surface+9, label("tool"))
	d.label(center(0)+g.pitch/2, 1, label("work"))
	// Pitch above, depth at the right, flat below.
	d.arrow(Point{center(0), surface + 21}, Point{center(1), surface + 21})
	d.line(true, Point{center(0), surface + 20}, Point{center(0), surface - g.depth})
	d.label((center(0)+center(1))/2, surface+26, label("pitch"))
	d.arrow(Point{center(2) + 18, surface}, Point{center(2) + 18, surface - g.depth})
	d.line(true, Point{center(2) + g.flat/2, surface - g.depth}, Point{center(2) + 20, surface - g.depth})
	d.label(center(2)+14, surface-g.depth-6, label("depth"))
	d.label(x, surface-g.depth-5, label("flat"))
	return d
}

// compoundTriangle shows the compound's travel as the long side of a triangle
// whose short side is the depth.
func compoundTriangle(label func(string) string) (Drawing, map[string]string) {
	g := exampleGroove()
	d := Drawing{Width: 120, Height: 60}
	const depth = 44.0
	shift := depth * calc.Degrees(29.5).Tan()
	top, foot := Point{44, 54}, Point{44, 54 - depth}
	d.line(true, Point{10, 54}, Point{110, 54})
	d.label(22, 57, label("surface"))
	d.arrow(top, foot)
	start := Point{44 + shift, 54}
	d.arrow(start, foot)
	d.label(31, 30, label("depth"))
	d.label(78, 26, label("travel"))
	d.label(52, 26, label("angle"))
	return d, g.values
}

// bothFlanks shows a cut along one flank by the compound beside a cut straight in.
func bothFlanks(label func(string) string) (Drawing, map[string]string) {
	g := exampleGroove()
	d := Drawing{Width: 132, Height: 50}
	const surface, cut = 38.0, 5.0
	vee := func(x, depth float64) []Point {
		half := g.flat/2 + depth*tan30
		return []Point{{x - half, surface}, {x - g.flat/2, surface - depth}, {x + g.flat/2, surface - depth}, {x + half, surface}}
	}
	for i, x := range []float64{36, 98} {
		old := vee(x, g.depth-cut)
		d.line(true, old...)
		d.line(false, Point{x - 32, surface}, Point{x - g.half() - 2, surface})
		d.line(false, Point{x + g.half() + 2, surface}, Point{x + 30, surface})
		shift := 0.0
		if i == 0 { // along the right flank: that flank's line stays where it is
			shift = -cut * tan30
		}
		d.line(false, vee(x+shift, g.depth)...)
	}
	d.label(36, 6, label("one"))
	d.label(98, 6, label("both"))
	return d, g.values
}

// dialFace is the face of an inch dial, turned so that the reading stands under the
// mark at the top.
func dialFace(reading, turn calc.Length) (Drawing, map[string]string) {
	d := slideFace(reading, turn, calc.Thou, func(l calc.Length) string { return calc.Fixed(l.Over(calc.Thou), 0) })
	return d, map[string]string{"reading": calc.LengthText(reading), "turn": calc.LengthText(turn),
		"lines": calc.Shortest(turn.Over(calc.Thou), 0)}
}
