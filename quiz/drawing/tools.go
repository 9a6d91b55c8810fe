package drawing

import (
	"math"

	"scratchpass/calc"
)

// reliefAngles is a threading tool in three views: from above, from its tip below that,
// and from the side.
func reliefAngles(s *sheet) {
	s.paper(sheetWide, 64)
	running := s.degrees("clearance", "c", 4)
	lead := s.degrees("lead-angle", "A", 3)
	const middle = 34.0
	// From above, the tip down: the side that leads is at the right then.
	tip := Point{middle, 39}
	wide := 10.0
	high := wide / tan30
	s.area(Outline, Tint, Tool, tip, tip.plus(wide, high), Point{middle + wide, 63}, Point{middle - wide, 63}, tip.plus(-wide, high))
	s.angle(tip, 13, math.Pi/2+math.Pi/6, math.Pi/2-math.Pi/6)
	s.label(middle, 48, "60°")
	s.labelTo(21, 60, s.word("above"))
	// From the tip: the flanks lean in below the edges, that which leads more.
	top, foot := 27.0, 5.0
	leading, trailing := 2.2*(running+lead).Tan(), 2.2*(running-lead).Tan()
	leading, trailing = min(max(leading, 0.08), 0.42), min(max(trailing, 0.03), 0.42)
	right, left := Point{middle + wide, top}, Point{middle - wide, top}
	s.area(Outline, Tint, Tool, left, right, Point{right.X - leading*(top-foot), foot}, Point{left.X + trailing*(top-foot), foot})
	s.draw(Outline, Tool, Point{middle, top}, Point{middle + (trailing-leading)*(top-foot)/2, foot})
	for _, x := range []float64{left.X, right.X} {
		s.draw(Thin, Measure, Point{x, top - extGap}, Point{x, 3})
	}
	s.angle(right, 17, -math.Pi/2, -math.Pi/2-math.Atan(leading))
	s.angle(left, 17, -math.Pi/2, -math.Pi/2+math.Atan(trailing))
	s.labelFrom(47, 12, s.word("leading"))
	s.labelTo(19, 12, s.word("trailing"))
	s.labelFrom(0, 30, s.word("tip"))
	s.arrow(Marked, Point{47, 27}, Point{61, 27})
	s.labelFrom(63, 27, s.word("feed"))
	// From the side, the tip at the left.
	nose := Point{60, 56}
	back, under := 10.0*math.Pi/180, 16.0
	s.area(Outline, Tint, Tool, nose, Point{92, nose.Y}, Point{92, nose.Y - under}, Point{nose.X + under*math.Tan(back), nose.Y - under})
	s.draw(Thin, Measure, Point{nose.X, nose.Y - extGap}, Point{nose.X, nose.Y - under - 3})
	s.draw(Thin, Measure, Point{50, nose.Y}, Point{58.5, nose.Y})
	s.angle(nose, under, -math.Pi/2, -math.Pi/2+back)
	s.name(56, 60.5, "rake")
	s.name(79, 48, "side")
	s.labelFrom(64, 36, s.word("front"))
	s.leader(Point{68, 38}, nose.away(under, -math.Pi/2+back/2).plus(0.6, -0.5))
}

// inserts are two threading inserts in their grooves.
func inserts(s *sheet) {
	s.paper(sheetWide, 58)
	const pitch, root = 26.0, 13.0
	for i, x := range []float64{23, 73} {
		flat, depth := pitch/8, pitch*5/8*calc.HeightOfSharpV+1.5
		if i == 1 { // its nose fits a finer pitch, so it goes deeper
			flat = pitch / 20
			depth = (pitch*7/8 - flat) / 2 / tan30
		}
		high := root + depth
		half := flat/2 + depth*tan30
		line := []Point{{x - 23, high}, {x - half, high}, {x - flat/2, root}, {x + flat/2, root}, {x + half, high}, {x + 23, high}}
		s.section(Work, append(line, Point{x + 23, 5}, Point{x - 23, 5})...)
		if i == 0 {
			// The edge goes on over the crests and cuts them too.
			s.area(Outline, Tint, Tool, Point{x - flat/2, root}, Point{x + flat/2, root}, Point{x + half, high}, Point{x + half + 4, high},
				Point{x + half + 4, high + 13}, Point{x - half - 4, high + 13}, Point{x - half - 4, high}, Point{x - half, high})
			s.leader(Point{12, 50}, Point{x - half - 2, high + 0.6})
			s.leader(Point{34, 50}, Point{x + half + 2, high + 0.6})
		} else {
			wide := flat/2 + (depth+11)*tan30
			s.area(Outline, Tint, Tool, Point{x - flat/2, root}, Point{x + flat/2, root}, Point{x + wide, high + 11}, Point{x - wide, high + 11})
			s.leader(Point{62, 9}, Point{x - flat/2, root - 0.5})
		}
	}
	s.name(23, 53, "crest")
	s.name(58, 9, "nose")
	s.name(73, 53, "free")
	surface := root + (pitch*7/8-pitch/20)/2/tan30
	s.leader(Point{93, 50}, Point{93, surface + 0.6})
	s.leader(Point{53, 50}, Point{53, surface + 0.6})
	s.name(23, 2, "full")
	s.name(73, 2, "partial")
}
