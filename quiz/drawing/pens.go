package drawing

import (
	"math"
	"slices"
)

// Measures of what goes with a drawing, in its units: at full width a unit is about a dot
// of a terminal.
const (
	headLong = 4.5 // an arrowhead is three long to one wide (ISO 129-1)
	headHalf = 0.75
	hatch    = 6.0 // between lines of hatching, across
	extGap   = 1.5 // between an edge and the extension line that starts at it
	extPast  = 2.0 // how far that goes past the dimension line
)

// away is the point at a distance from p in a direction in radians, from east to the left.
func (p Point) away(distance, direction float64) Point {
	return Point{p.X + distance*math.Cos(direction), p.Y + distance*math.Sin(direction)}
}

func (p Point) plus(x, y float64) Point { return Point{p.X + x, p.Y + y} }

// direction is where b lies from a, in radians.
func direction(a, b Point) float64 { return math.Atan2(b.Y-a.Y, b.X-a.X) }

func distance(a, b Point) float64 { return math.Hypot(b.X-a.X, b.Y-a.Y) }

// head draws an arrowhead with its tip at a place, pointing in a direction.
func (d *Drawing) head(tip Point, to float64, part Part) {
	back := tip.away(-headLong, to)
	d.area(Thin, Solid, part, tip, back.away(headHalf, to+math.Pi/2), back.away(headHalf, to-math.Pi/2))
}

// arrow draws a movement from a to b.
func (d *Drawing) arrow(part Part, a, b Point) {
	d.draw(Outline, part, a, b)
	d.head(b, direction(a, b), part)
}

// between draws a dimension line between two places, with a head at each end; where they
// are too near for that the heads point at them from outside.
func (d *Drawing) between(a, b Point) {
	to := direction(a, b)
	if distance(a, b) < 3*headLong {
		d.draw(Thin, Measure, a.away(-2*headLong, to), a)
		d.draw(Thin, Measure, b, b.away(2*headLong, to))
		d.head(a, to, Measure)
		d.head(b, to+math.Pi, Measure)
		return
	}
	d.draw(Thin, Measure, a, b)
	d.head(a, to+math.Pi, Measure)
	d.head(b, to, Measure)
}

// extension draws an extension line from near an edge to a little past a dimension line.
func (d *Drawing) extension(edge, line Point) {
	to := direction(edge, line)
	d.draw(Thin, Measure, edge.away(extGap, to), line.away(extPast, to))
}

// dimension draws the distance between two places, with extension lines to where its line
// lies: so far away from them, to the left of the way from a to b.
func (d *Drawing) dimension(a, b Point, off float64) {
	side := direction(a, b) + math.Pi/2
	if off < 0 {
		side, off = side+math.Pi, -off
	}
	p, q := a.away(off, side), b.away(off, side)
	d.extension(a, p)
	d.extension(b, q)
	d.between(p, q)
}

// arc draws part of a circle, from one direction to another in radians.
func (d *Drawing) arc(pen Pen, part Part, middle Point, radius, from, to float64) {
	d.draw(pen, part, round(middle, radius, from, to)...)
}

// round are the points of part of a circle.
func round(middle Point, radius, from, to float64) []Point {
	n := max(6, int(math.Ceil(math.Abs(to-from)/(2*math.Pi)*72)))
	points := make([]Point, n+1)
	for i := range points {
		points[i] = middle.away(radius, from+(to-from)*float64(i)/float64(n))
	}
	return points
}

// circle draws a whole one.
func (d *Drawing) circle(pen Pen, fill Fill, part Part, middle Point, radius float64) {
	points := round(middle, radius, 0, 2*math.Pi)
	d.area(pen, fill, part, points[:len(points)-1]...)
}

// angle draws the arc of an angle with a head at each end, or one if it is small.
func (d *Drawing) angle(middle Point, radius, from, to float64) {
	d.arc(Thin, Measure, middle, radius, from, to)
	sign := math.Copysign(math.Pi/2, to-from)
	// A head lies along the chord, not the tangent, so that it stays on the arc.
	lean := math.Copysign(headLong/radius/2, to-from)
	d.head(middle.away(radius, to), to+sign-lean, Measure)
	if radius*math.Abs(to-from) > 2.5*headLong {
		d.head(middle.away(radius, from), from-sign+lean, Measure)
	}
}

// leader draws a thin line from a name to a place, with a head there.
func (d *Drawing) leader(from, to Point) {
	d.draw(Thin, Measure, from, to)
	d.head(to, direction(from, to), Measure)
}

// axis draws a centre line that goes a little past both places.
func (d *Drawing) axis(a, b Point) {
	to := direction(a, b)
	d.draw(Centre, Measure, a.away(-3, to), b.away(3, to))
}

// section draws metal that is cut through: its edge, hatched inside.
func (d *Drawing) section(part Part, points ...Point) {
	d.area(NoEdge, Clear, part, points...)
	d.hatch(part, points)
	d.area(Outline, Open, part, points...)
}

// hatch draws lines at 45 degrees inside a closed shape.
func (d *Drawing) hatch(part Part, points []Point) {
	low, high := math.Inf(1), math.Inf(-1)
	for _, p := range points {
		low, high = min(low, p.Y-p.X), max(high, p.Y-p.X)
	}
	for c := math.Ceil(low/hatch) * hatch; c < high; c += hatch {
		// Where the line y = x + c crosses the edges, from left to right.
		var at []float64
		for i, p := range points {
			q := points[(i+1)%len(points)]
			u, v := p.Y-p.X-c, q.Y-q.X-c
			if (u < 0) != (v < 0) {
				at = append(at, p.X+(q.X-p.X)*u/(u-v))
			}
		}
		slices.Sort(at)
		for i := 0; i+1 < len(at); i += 2 {
			d.draw(Hatching, part, Point{at[i], at[i] + c}, Point{at[i+1], at[i+1] + c})
		}
	}
}
