package drawing

// limits are the zones of the pitch diameter, external below the basic size, internal
// above.
func limits(s *sheet) {
	s.paper(sheetWide, 60)
	const basic = 31.0
	s.draw(Centre, Measure, Point{2, basic}, Point{94, basic})
	s.labelFrom(0, basic+3.5, s.word("basic"))
	zone := func(left, low, high float64) {
		s.section(Work, box(left, low, left+16, high)...)
		s.draw(Centre, Marked, Point{left - 3, (low + high) / 2}, Point{left + 19, (low + high) / 2})
	}
	zone(28, 7, 24)
	zone(62, basic, basic+22)
	s.draw(Thin, Measure, Point{28 - extGap, 24}, Point{22, 24})
	s.between(Point{24, 24}, Point{24, basic})
	s.labelTo(20, 20, s.word("allowance"))
	s.labelFrom(46, 24, s.word("max"))
	s.labelFrom(49, 15.5, s.word("aim"))
	s.labelFrom(46, 7, s.word("min"))
	s.labelFrom(80, basic+22, s.word("max"))
	s.labelFrom(83, basic+11, s.word("aim"))
	s.labelFrom(80, basic+3.5, s.word("min"))
	s.name(36, 2.5, "external")
	s.name(70, 57.5, "internal")
}
