package drawing

import "scratchpass/calc"

// blankAndGroove is a blank before its thread is cut: chamfer at the start, relief groove
// at the end, the root to come drawn dashed.
func blankAndGroove(s *sheet) {
	s.paper(sheetWide, 62)
	nominal := s.length("nominal", "D", calc.Inches(0.75))
	pitch := s.length("pitch", "P", examplePitch)
	below := s.length("below", "u", calc.Inches(0.010))
	h := must(calc.RadialDepthOfForm(examplePitch, calc.UnifiedExternal))
	if g, err := calc.RadialDepthOfForm(pitch, calc.UnifiedExternal); err == nil {
		h = g
	}
	if depth, given := s.facts.Lengths["depth"]; given { // of a tool that is known
		h = depth
	}
	s.derived("d1", nominal-h.Times(2))
	s.derived("d2", nominal-h.Times(2)-below.Times(2))
	s.derived("w", s.lengthOr("groove", pitch.Times(3)))
	s.derived("B", s.lengthOr("bore", nominal-pitch.Times(2*5.0/8*calc.HeightOfSharpV)))
	if s.inside() {
		if s.facts.Words["groove"] == "none" {
			s.variant("through")
			boreThrough(s)
			return
		}
		s.variant("inside")
		boreAndGroove(s)
		return
	}
	const axis = 30.0
	outline := []Point{{18, axis + 21}, {18, axis + 9}, {29, axis + 9}, {29, axis + 15}, {67, axis + 15}, {70, axis + 12},
		{70, axis - 12}, {67, axis - 15}, {29, axis - 15}, {29, axis - 9}, {18, axis - 9}, {18, axis - 21}}
	s.area(Outline, Open, Work, append(outline, wave(4, axis-21, axis+21)...)...)
	for _, e := range [][3]float64{{18, -9, 9}, {29, -9, 9}, {67, -15, 15}} {
		s.draw(Outline, Work, Point{e[0], axis + e[1]}, Point{e[0], axis + e[2]})
	}
	for _, y := range []float64{-12, 12} {
		s.draw(Hidden, Marked, Point{29, axis + y}, Point{70, axis + y})
	}
	s.axis(Point{6, axis}, Point{72, axis})
	s.dimension(Point{70, axis + 12}, Point{70, axis - 12}, 14)
	s.label(84, axis, "${d1}")
	s.between(Point{48, axis + 15}, Point{48, axis - 15})
	s.label(48, axis+6, "${D}")
	s.draw(Thin, Measure, Point{21.5, axis - 9}, Point{21.5, 6})
	s.between(Point{21.5, axis + 9}, Point{21.5, axis - 9})
	s.label(19, 3.5, "${d2}")
	s.extension(Point{18, axis + 21}, Point{18, 55})
	s.extension(Point{29, axis + 15}, Point{29, 55})
	s.between(Point{18, 55}, Point{29, 55})
	s.label(23.5, 60, "${w}")
	s.draw(Thin, Measure, Point{29, axis + 12}, Point{24, axis + 12})
	s.between(Point{26, axis + 12}, Point{26, axis + 9})
	s.draw(Thin, Measure, Point{26, axis + 20}, Point{33, axis + 20})
	s.labelFrom(33, axis+20, "${u}")
	s.dimension(Point{29, axis - 15}, Point{70, axis - 15}, -8)
	s.name(49.5, 3.5, "length")
	s.leader(Point{61, axis + 20}, Point{58, axis + 12.3})
	s.labelFrom(59, axis+21.5, s.word("root"))
	s.leader(Point{76, axis + 20}, Point{68.5, axis + 13.5})
	s.labelFrom(74, axis+21.5, s.word("chamfer"))
}

// boreAndGroove is the same inside: a bore with its mouth chamfered out to the root.
func boreAndGroove(s *sheet) {
	const axis = 31.0
	for _, up := range []float64{1, -1} {
		half := []Point{{14, axis}, {14, axis + 17*up}, {25, axis + 17*up}, {25, axis + 11*up}, {59, axis + 11*up}, {62, axis + 14*up},
			{62, axis + 22*up}, {4, axis + 22*up}, {4, axis}}
		s.area(NoEdge, Clear, Work, half...)
		s.hatch(Work, half)
		s.draw(Outline, Work, half...)
		s.draw(Outline, Work, Point{25, axis + 11*up}, Point{25, axis})
		s.draw(Outline, Work, Point{59, axis + 11*up}, Point{59, axis})
		s.draw(Outline, Work, Point{62, axis + 14*up}, Point{62, axis})
		s.draw(Hidden, Marked, Point{25, axis + 14*up}, Point{62, axis + 14*up})
	}
	s.axis(Point{8, axis}, Point{66, axis})
	s.dimension(Point{62, axis + 14}, Point{62, axis - 14}, 19)
	s.label(81, axis, "${D}")
	s.between(Point{42, axis + 11}, Point{42, axis - 11})
	s.label(42, axis+5, "${B}")
	s.draw(Thin, Measure, Point{14, axis - 18.5}, Point{14, 3})
	s.draw(Thin, Measure, Point{25, axis - 18.5}, Point{25, 3})
	s.between(Point{14, 5}, Point{25, 5})
	s.labelFrom(35, 4.5, "${w}")
	s.draw(Thin, Measure, Point{25, axis + 18.5}, Point{25, 59})
	s.extension(Point{62, axis + 22}, Point{62, 57})
	s.between(Point{25, 57}, Point{62, 57})
	s.name(43.5, 57, "length")
	s.leader(Point{76, axis + 21}, Point{60.5, axis + 12.7})
	s.labelFrom(74, axis+22, s.word("chamfer"))
	s.leader(Point{76, axis - 20}, Point{55, axis - 14.3})
	s.labelFrom(74, axis-21, s.word("root"))
}

// boreThrough is a bore without a groove, which the tool runs out of.
func boreThrough(s *sheet) {
	const axis = 31.0
	for _, up := range []float64{1, -1} {
		half := []Point{{14, axis + 11*up}, {59, axis + 11*up}, {62, axis + 14*up}, {62, axis + 22*up}, {14, axis + 22*up}}
		s.area(Outline, Clear, Work, append(half, half[0])...)
		s.hatch(Work, half)
		s.draw(Outline, Work, Point{14, axis + 11*up}, Point{14, axis})
		s.draw(Outline, Work, Point{59, axis + 11*up}, Point{59, axis})
		s.draw(Outline, Work, Point{62, axis + 14*up}, Point{62, axis})
		s.draw(Hidden, Marked, Point{14, axis + 14*up}, Point{62, axis + 14*up})
	}
	s.axis(Point{8, axis}, Point{66, axis})
	s.dimension(Point{62, axis + 14}, Point{62, axis - 14}, 19)
	s.label(81, axis, "${D}")
	s.between(Point{38, axis + 11}, Point{38, axis - 11})
	s.label(38, axis+5, "${B}")
	s.extension(Point{14, axis + 22}, Point{14, 57})
	s.extension(Point{62, axis + 22}, Point{62, 57})
	s.between(Point{14, 57}, Point{62, 57})
	s.name(38, 57, "length")
	s.leader(Point{76, axis + 21}, Point{60.5, axis + 12.7})
	s.labelFrom(74, axis+22, s.word("chamfer"))
	s.leader(Point{76, axis - 20}, Point{55, axis - 14.3})
	s.labelFrom(74, axis-21, s.word("root"))
}
