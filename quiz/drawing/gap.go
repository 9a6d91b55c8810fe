package drawing

import "scratchpass/calc"

// gapToShoulder is a tool at the end of a thread before a shoulder, from above.
func gapToShoulder(s *sheet) {
	s.paper(sheetWide, 56)
	s.length("gap", "g", calc.Inches(0.25))
	const axis, shoulder, thread, edge = 36.0, 20.0, 46.0, 10.0
	s.shouldered(axis, shoulder, thread, edge)
	tip := Point{thread, axis - edge + 2}
	s.bit(pointed(tip, 8, 22, up)...)
	front := tip.X - 4
	s.draw(Thin, Measure, Point{shoulder, axis - 17 - extGap}, Point{shoulder, 6})
	s.draw(Thin, Measure, Point{front, 12 - extGap}, Point{front, 6})
	s.between(Point{shoulder, 8}, Point{front, 8})
	s.name((shoulder+front)/2, 3.5, "gap")
	s.arrow(Marked, Point{74, 16}, Point{58, 16})
	s.name(72, 11, "carriage")
	s.labelFrom(26, 51, s.word("shoulder"))
	s.leader(Point{25, 50}, Point{shoulder, 46})
	s.name(66, 53, "thread")
	s.leader(Point{66, 51}, Point{66, axis + edge - 2})
}

// shouldered is a bar with a shoulder towards the chuck and a thread that ends before it.
func (s *sheet) shouldered(axis, shoulder, thread, radius float64) {
	s.area(Outline, Clear, Work, append([]Point{{shoulder, axis + 17}, {shoulder, axis - 17}}, wave(3, axis-17, axis+17)...)...)
	s.bar(box(shoulder, axis-radius+3, thread, axis+radius-3)...)
	s.screw(Work, thread-3, 90, axis, radius, 6, calc.RightHand)
	s.axis(Point{4, axis}, Point{90, axis})
}

// roomToStart is a tool that stands in front of the work, from above.
func roomToStart(s *sheet) {
	s.paper(sheetWide, 54)
	const axis, end, edge = 34.0, 50.0, 9.0
	s.chuck(Point{14, axis}, 10, 17, edge)
	s.bar(box(14, axis-edge, end, axis+edge)...)
	for x := 26.0; x < end; x += 6 { // the lines of the scratch pass
		s.draw(Thin, Work, Point{x, axis + edge}, Point{min(x+3, end), axis - edge})
	}
	s.axis(Point{6, axis}, Point{90, axis})
	tip := Point{82, axis - edge + 2}
	s.bit(pointed(tip, 8, 20, up)...)
	s.draw(Thin, Measure, Point{tip.X, tip.Y + extGap}, Point{tip.X, axis + 13})
	s.draw(Thin, Measure, Point{end, axis + edge + extGap}, Point{end, axis + 13})
	s.between(Point{end, axis + 11}, Point{tip.X, axis + 11})
	s.label((end+tip.X)/2, axis+14.5, "x")
	s.arrow(Marked, Point{74, 15}, Point{58, 15})
	s.name(65, 10, "carriage")
	s.name(32, 14, "work")
	s.name(tip.X, 4, "tool")
}

// stickOut is work that stands out of a chuck.
func stickOut(s *sheet) {
	s.paper(sheetWide, 50)
	long := s.length("stickout", "L", calc.Inches(2.5))
	across := s.length("diameter", "d", calc.Inches(0.75))
	const axis, face, high = 30.0, 20.0, 14.0
	far := face + min(max(long.Over(across), 1.8), 5)*high
	s.chuck(Point{face - 6, axis}, 10, 18, high/2)
	s.bar(box(face-6, axis-high/2, far, axis+high/2)...)
	s.axis(Point{6, axis}, Point{far, axis})
	s.draw(Thin, Measure, Point{face, axis - 16.2 - extGap}, Point{face, 5})
	s.draw(Thin, Measure, Point{far, axis - high/2 - extGap}, Point{far, 5})
	s.between(Point{face, 7}, Point{far, 7})
	s.label((face+far)/2, 7, "${L}")
	at := face + 8
	s.between(Point{at, axis + high/2}, Point{at, axis - high/2})
	s.labelFrom(at+5, axis+high/2+5, "${d}")
	s.draw(Thin, Measure, Point{at, axis + high/2}, Point{at, axis + high/2 + 5}, Point{at + 4, axis + high/2 + 5})
}
