package drawing

import "slices"

// readOut is a slide moved by a screw with play in its nut, and a slide with a scale of
// its own.
func readOut(s *sheet) {
	s.paper(sheetWide, 64)
	const axis, pitch, tooth = 47.0, 8.0, 3.0
	// The nut pushes with one side of its thread; the play lies on the other.
	for i, up := range []float64{1, -1} {
		shift := 22 + float64(i)*pitch/2
		nut, line := []Point{}, []Point{}
		for k := -1.0; k < 9; k++ {
			x := shift + k*pitch
			line = append(line, Point{x, axis + 3*up}, Point{x, axis + 6.5*up}, Point{x + tooth, axis + 6.5*up}, Point{x + tooth, axis + 3*up})
			nut = append(nut, Point{x + tooth, axis + 7*up}, Point{x + tooth, axis + 3.5*up}, Point{x + 2*tooth, axis + 3.5*up}, Point{x + 2*tooth, axis + 7*up})
		}
		nut = clip(nut, 37.5, 68)
		s.section(Machine, append(nut, Point{68, axis + 12*up}, Point{37.5, axis + 12*up})...)
		line = clip(line, 20, 84)
		back := []Point{{84, axis}, {20, axis}}
		s.area(NoEdge, Clear, Machine, append(slices.Clone(line), back...)...)
		s.draw(Outline, Machine, line...)
	}
	s.draw(Outline, Machine, Point{84, axis - 3}, Point{84, axis + 3})
	s.area(Outline, Clear, Machine, box(7, axis-10, 16, axis+10)...)
	for y := axis - 8; y < axis+9; y += 2 {
		s.draw(Thin, Machine, Point{13, y}, Point{16, y})
	}
	s.area(Outline, Clear, Machine, box(16, axis-3, 20, axis+3)...)
	s.axis(Point{4, axis}, Point{86, axis})
	s.labelFrom(6, 60.5, s.word("dial"))
	s.leader(Point{76, 59}, Point{22 + 4*pitch + 2*tooth + 1, axis + 5.5})
	s.labelFrom(74, 60.5, s.word("backlash"))
	s.labelFrom(34, 62, s.word("nut"))
	// The scale stands on the bed, its head goes with the slide.
	s.section(Machine, box(6, 1, 90, 5)...)
	s.area(Outline, Clear, Machine, box(34, 5, 64, 14)...)
	s.name(49, 9, "slide")
	for _, x := range []float64{10, 84} {
		s.area(Outline, Clear, Machine, box(x, 5, x+3, 18)...)
	}
	s.area(Outline, Clear, Measure, box(8, 18, 89, 25)...)
	for i, x := 0, 11.0; x < 88; i, x = i+1, x+3 {
		high := 2.0
		if i%5 == 0 {
			high = 4
		}
		s.draw(Thin, Measure, Point{x, 25}, Point{x, 25 - high})
	}
	s.area(Outline, Tint, Tool, box(43, 14, 55, 22)...)
	s.labelFrom(8, 29, s.word("scale"))
	s.leader(Point{64, 29}, Point{53, 20})
	s.labelFrom(65, 29.5, s.word("head"))
}
