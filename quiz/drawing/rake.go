package drawing

import "math"

// rakeAndForm is a tool with a level top and one with back rake, at the work from its end,
// and the groove each cuts. The rake and what it does are drawn larger than they are.
func rakeAndForm(s *sheet) {
	s.paper(sheetWide, 64)
	const axis, radius, surface, foot, deep = 49.0, 10.0, 25.0, 8.0, 13.0
	for i, x := range []float64{24, 72} {
		rake := float64(i) * 16 * math.Pi / 180
		tip := Point{x, axis}
		middle := tip.plus(radius, 0)
		s.circle(Outline, Clear, Work, middle, radius)
		s.axis(middle.plus(-radius, 0), middle.plus(radius, 0))
		s.axis(middle.plus(0, -radius), middle.plus(0, radius))
		fall := 20 * math.Tan(rake)
		s.bit(tip, tip.plus(-20, -fall), tip.plus(-20, -13), tip.plus(-2, -13))
		if i == 1 {
			s.draw(Thin, Measure, tip.plus(-extGap, 0), tip.plus(-22, 0))
			s.angle(tip, 17, math.Pi, math.Pi+rake)
			s.labelTo(x-12, axis+3.5, s.word("rake"))
		}
		slope := tan30
		if i == 1 {
			slope = math.Tan(36 * math.Pi / 180)
		}
		const flat = 2.0
		half := flat + deep*slope
		line := []Point{{x - 20, surface}, {x - half, surface}, {x - flat, surface - deep}, {x + flat, surface - deep}, {x + half, surface}, {x + 20, surface}}
		s.section(Work, append(line, Point{x + 20, foot}, Point{x - 20, foot})...)
		if i == 1 {
			vee := flat + deep*tan30
			s.draw(Hidden, Marked, Point{x - vee, surface}, Point{x - flat, surface - deep})
			s.draw(Hidden, Marked, Point{x + vee, surface}, Point{x + flat, surface - deep})
		}
		vertex := Point{x, surface - deep - flat/slope}
		turn := math.Atan(slope)
		s.angle(vertex, 12, up+turn, up-turn)
		s.name(x, surface-1.5, []string{"angle", "more"}[i])
		s.name(x, 4, []string{"level", "raked"}[i])
	}
}
