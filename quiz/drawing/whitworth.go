package drawing

import (
	"math"

	"scratchpass/calc"
)

// whitworthForm is the profile of a Whitworth thread, round at crest and root.
func whitworthForm(s *sheet) {
	s.paper(sheetWide, 56)
	s.length("pitch", "P", examplePitch)
	const wide, surface, foot, left, right = 33.0, 40.0, 8.0, 2.0, 76.0
	const depth, radius, flank = 0.6403 * wide, 0.1373 * wide, 27.5 * math.Pi / 180
	var line []Point
	for n := range 4 {
		for _, p := range whitworth() {
			line = append(line, Point{left - 11 + (float64(n)+p.X)*wide, surface + p.Y*wide})
		}
	}
	line = clip(line, left, right)
	s.section(Work, append(line, Point{right, foot}, Point{left, foot})...)
	crest := left - 11 + wide
	s.extension(Point{crest, surface}, Point{crest, 49})
	s.extension(Point{crest + wide, surface}, Point{crest + wide, 49})
	s.between(Point{crest, 49}, Point{crest + wide, 49})
	s.label(crest+wide/2, 52.5, "${P}")
	// The flanks of the groove meet below its root.
	vertex := Point{crest + wide/2, surface - depth + radius - radius/math.Sin(flank)}
	s.angle(vertex, surface-2-vertex.Y, up+flank, up-flank)
	s.label(vertex.X, surface-6, "55°")
	s.draw(Thin, Measure, Point{crest + wide + extGap, surface}, Point{86, surface})
	s.draw(Thin, Measure, Point{vertex.X + 2, surface - depth}, Point{86, surface - depth})
	s.between(Point{84, surface}, Point{84, surface - depth})
	s.labelFrom(87, surface-depth/2, "h")
	s.name(vertex.X, 12, "root")
	s.leader(Point{vertex.X, 14}, Point{vertex.X, surface - depth})
}

// setOver is work between centres with the tailstock set over for a taper.
func setOver(s *sheet) {
	s.paper(sheetWide, 56)
	s.length("between-centres", "L", calc.Inches(10))
	s.length("thread-length", "l", calc.Inches(0.75))
	const axis, left, right, over = 30.0, 18.0, 76.0, 8.0
	// The work lies on the line of its centres, its taper then along the bed.
	to := math.Atan2(-over, right-left)
	head, tail := Point{left, axis}, Point{right, axis - over}
	s.bar(turned(head.away(2, to), 0, distance(head, tail)-4, 16, to)...)
	for k, c := range []Point{head, tail} {
		way := []float64{math.Pi, 0}[k]
		s.metal(c.away(3, to+way+math.Pi), c.away(6, way+0.5), c.away(15, way+0.2), c.away(15, way-0.2), c.away(6, way-0.5))
	}
	s.axis(Point{4, axis}, Point{92, axis})
	s.draw(Centre, Marked, head, tail)
	s.between(Point{93, axis}, Point{93, axis - over})
	s.draw(Thin, Measure, tail.plus(16, 0), Point{95, tail.Y})
	s.label(93, axis-over/2, "s")
	s.draw(Thin, Measure, Point{left, axis + 8}, Point{left, 49})
	s.draw(Thin, Measure, Point{right, axis + 6}, Point{right, 49})
	s.between(Point{left, 47}, Point{right, 47})
	s.label((left+right)/2, 51, "${L}")
	s.name(12, 14, "head")
	s.name(80, 8, "tail")
}
