package drawing

import "math"

// turned is a rectangle along a direction in radians, so wide, from so far before a place
// to so far behind it.
func turned(middle Point, before, behind, wide, to float64) []Point {
	a, b := middle.away(-before, to), middle.away(behind, to)
	side := to + math.Pi/2
	return []Point{a.away(-wide/2, side), b.away(-wide/2, side), b.away(wide/2, side), a.away(wide/2, side)}
}

// metal draws a part of a machine from outside.
func (d *Drawing) metal(points ...Point) { d.area(Outline, Clear, Machine, points...) }

// bar draws work from outside.
func (d *Drawing) bar(points ...Point) { d.area(Outline, Clear, Work, points...) }

// bit draws a tool or what goes with it.
func (d *Drawing) bit(points ...Point) { d.area(Outline, Tint, Tool, points...) }

// pointed is a tool of 60 degrees seen from above, its shank so wide and so long in all,
// the point towards a direction.
func pointed(tip Point, wide, long, to float64) []Point {
	side := to + math.Pi/2
	nose := tip.away(-wide/2/tan30, to)
	foot := tip.away(-long, to)
	return []Point{tip, nose.away(wide/2, side), foot.away(wide/2, side), foot.away(-wide/2, side), nose.away(-wide/2, side)}
}

// chuck draws one from the side, its face at a place, with two jaws that hold work of a
// radius. It reaches to the left.
func (d *Drawing) chuck(face Point, thick, radius, work float64) {
	d.metal(box(face.X-thick, face.Y-radius, face.X, face.Y+radius)...)
	for _, up := range []float64{1, -1} {
		near, far := face.Y+up*work, face.Y+up*radius*0.9
		step := near + up*(radius*0.9-work)/2
		d.metal(Point{face.X - 3, near}, Point{face.X + 6, near}, Point{face.X + 6, step}, Point{face.X + 3, step}, Point{face.X + 3, far},
			Point{face.X - 3, far})
	}
}

// wheel draws a gear with its pitch circle, its teeth like those of a rack, with play: what
// meshes shall not run into one line.
func (d *Drawing) wheel(part Part, middle Point, radius, tooth float64, teeth int, turn float64) {
	var points []Point
	for i := range teeth {
		for _, p := range [4]struct{ share, out float64 }{{-0.3, -1.2}, {-0.11, 0.8}, {0.11, 0.8}, {0.3, -1.2}} {
			points = append(points, middle.away(radius+p.out*tooth/2, turn+2*math.Pi*(float64(i)+p.share)/float64(teeth)))
		}
	}
	d.area(Outline, Clear, part, points...)
	d.circle(Centre, Open, Measure, middle, radius)
}
