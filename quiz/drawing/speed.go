package drawing

import (
	"math"

	"scratchpass/calc"
)

// surfaceSpeed rolls one turn of a bar out, and one of a bar half as thick: at one speed of
// the surface the thin bar turns twice as often.
func surfaceSpeed(s *sheet) {
	s.paper(sheetWide, 62)
	s.length("diameter", "D", calc.Inches(1))
	const left, foot = 13.0, 36.0
	for i, r := range []float64{11, 5.5} {
		y := foot - float64(i)*29
		middle, long := Point{left, y + r}, 2*math.Pi*r
		s.draw(Outline, Measure, Point{left - 11, y}, Point{left + long + 12, y})
		for k, x := range []float64{left, left + long} {
			at := Point{x, middle.Y}
			pen := Outline
			if k == 1 {
				pen = Hidden
			}
			s.circle(pen, Open, Work, at, r)
			s.extension(Point{x, y}, Point{x, y - 4})
			s.draw(Thin, Measure, at.plus(-1.5, 0), at.plus(1.5, 0))
			s.draw(Thin, Measure, at.plus(0, -1.5), at.plus(0, 1.5))
		}
		s.between(Point{left, y - 4}, Point{left + long, y - 4})
		s.arc(Outline, Marked, middle, r+2, up+0.6, up-0.6)
		s.head(middle.away(r+2, up-0.6), -0.6+headLong/(r+2)/2, Marked)
		s.name(left+long/2, y-4, []string{"turn", "half-turn"}[i])
		s.labelFrom(left+r+5, y+r+4, s.word([]string{"bar", "half-bar"}[i]))
		s.labelFrom(left+r+5, y+r-2, s.word([]string{"speed", "half-speed"}[i]))
	}
}
