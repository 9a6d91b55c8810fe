package drawing

import "scratchpass/calc"

// boringBar shows a bar in its bore from above, the tool in the near wall.
func boringBar(s *sheet) {
	s.paper(sheetWide, 64)
	const axis, wide = 37.0, 32.0 // of the bore
	bore := s.length("bore", "B", calc.Inches(1.25))
	bar := s.length("bar", "b", calc.Inches(0.625))
	tool := s.length("tool", "q", calc.Inches(0.25))
	s.length("overhang", "L", calc.Inches(3))
	s.length("withdraw", "w", calc.Inches(0.1))
	near := axis - wide/2
	foot := near + min(max(tool.Over(bore), 0.2), 0.3)*wide
	top := foot + min(max(bar.Over(bore), 0.3), 0.62)*wide
	for _, y := range []float64{near - 6, near + wide} {
		s.section(Work, box(24, y, 64, y+6)...)
	}
	s.axis(Point{24, axis}, Point{76, axis})
	s.bit(Point{78, foot}, Point{43, foot}, Point{39.5, near}, Point{38.5, near}, Point{34, foot}, Point{34, top}, Point{78, top})
	s.metal(box(78, foot-7, 92, top+5)...)
	for _, y := range []float64{near, near + wide} {
		s.extension(Point{24, y}, Point{12, y})
	}
	s.between(Point{12, near}, Point{12, near + wide})
	s.name(12, axis, "bore")
	s.between(Point{57, foot}, Point{57, top})
	s.labelFrom(58, axis+4, s.word("bar"))
	s.between(Point{43, top}, Point{43, near + wide})
	s.labelFrom(45, (top+near+wide)/2, s.word("room"))
	s.arrow(Marked, Point{51, near + 1}, Point{51, near + 13})
	s.labelFrom(53, near+3, s.word("withdraw"))
	s.extension(Point{39, near}, Point{39, 6})
	s.extension(Point{78, foot - 7}, Point{78, 6})
	s.between(Point{39, 7}, Point{78, 7})
	s.name(58, 2.5, "overhang")
	s.name(85, top+8.5, "post")
}
