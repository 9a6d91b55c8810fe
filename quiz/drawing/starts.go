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

// nextStart is a thread whose first start is cut. The compound along the bed takes the tool
// on by one pitch: an example alone shows to where.
func nextStart(s *sheet) {
	s.paper(sheetWide, 58)
	starts := min(max(s.number("starts", "z", 2, 0), 2), 4)
	s.values["P"] = "P"
	lead := 36.0
	s.values["l"] = "l"
	if s.facts.Example {
		s.length("pitch", "P", examplePitch)
		s.derived("l", examplePitch.Times(starts))
	} else {
		s.variant("asked")
	}
	const surface, foot, first, left, right = 32.0, 8.0, 24.0, 2.0, 94.0
	g := groove{pitch: lead, flat: lead / 2 / 6, depth: veeDepth * lead / 2}
	work := clip(g.profile(first-lead, surface, 4), left, right)
	s.section(Work, append(work, Point{right, foot}, Point{left, foot})...)
	tip := Point{first, surface - g.depth}
	high := g.depth + 7
	if s.facts.Example {
		wide := g.flat/2 + high*tan30
		s.draw(Hidden, Tool, tip.plus(-wide, high), tip.plus(-g.flat/2, 0), tip.plus(g.flat/2, 0), tip.plus(wide, high))
		step := lead / starts
		over := Point{first + step, surface + 2}
		s.tool(over, g.flat/2, 9)
		s.draw(Centre, Measure, over, Point{over.X, 51})
		s.draw(Centre, Measure, tip, Point{tip.X, 51})
		s.between(Point{first, 48}, Point{over.X, 48})
		s.labelTo(first+step/2+5, 51.5, s.word("move"))
		for n := 1.0; n < starts; n++ {
			for k := -1.0; k < 3; k++ {
				next := clip(g.profile(first+k*lead+n*step, surface, 1), left, right)
				if len(next) > 1 {
					s.draw(Hidden, Marked, next...)
				}
			}
		}
	} else {
		s.tool(tip, g.flat/2, high)
		s.name(tip.X, surface+3, "tool")
	}
	s.draw(Thin, Measure, Point{first, surface - g.depth - extGap}, Point{first, 2})
	s.draw(Thin, Measure, Point{first + lead, surface - g.depth - extGap}, Point{first + lead, 2})
	s.between(Point{first, 4}, Point{first + lead, 4})
	s.labelFrom(first+lead+3, 4, s.word("lead"))
	s.labelFrom(66, 48, s.word("along"))
	s.arrow(Marked, Point{66, 42}, Point{84, 42})
}
