package drawing

import (
	"math"
	"strconv"
)

// multiStart are the ends of a thread with two starts and of one with three.
func multiStart(s *sheet) {
	s.paper(sheetWide, 60)
	for i, starts := range []float64{2, 3} {
		middle := Point{24 + float64(i)*48, 33}
		const r, deep, wide = 20.0, 5.0, 0.16
		// The end face, with a notch where each groove begins.
		var line []Point
		for n := range int(starts) {
			groove := up - 2*math.Pi*float64(n)/starts
			next := groove - 2*math.Pi/starts
			line = append(line, middle.away(r-deep, groove+0.03), middle.away(r-deep, groove-0.03))
			line = append(line, round(middle, r, groove-wide, next+wide)...)
		}
		s.area(Outline, Clear, Work, line...)
		s.circle(Hidden, Open, Work, middle, r-deep)
		for n := range int(starts) {
			way := up - 2*math.Pi*float64(n)/starts
			s.draw(Centre, Measure, middle, middle.away(r+1, way))
			label := middle.away(r+4, way)
			s.label(label.X, label.Y, strconv.Itoa(n+1))
		}
		s.angle(middle, 9, up, up-2*math.Pi/starts)
		side := middle.away(9, up-math.Pi/starts)
		s.label(side.X, side.Y, strconv.Itoa(360/int(starts))+"°")
		s.name(middle.X, 3, []string{"two", "three"}[i])
	}
}
