package drawing

// spring is work, and a boring bar, that bends away under the cut. What it leaves is
// marked: a spring pass takes some of it. Bending is drawn far larger than it is.
func spring(s *sheet) {
	s.paper(sheetWide, 64)
	const chuck, end, axis, r, bend = 14.0, 84.0, 48.0, 6.0, 5.0
	give := func(x float64) float64 { t := (x - chuck) / (end - chuck); return bend * t * t * (3 - t) / 2 }
	curved := func(y, from, to float64) []Point {
		var line []Point
		for i := range 13 {
			x := from + (to-from)*float64(i)/12
			line = append(line, Point{x, y + give(x)})
		}
		return line
	}
	// The work, held at one end; the tool pushes it up.
	s.area(Outline, Clear, Machine, box(3, axis-12, chuck, axis+12)...)
	s.area(Outline, Clear, Work, append(curved(axis+r, chuck, end), curved(axis-r, end, chuck)...)...)
	left := append([]Point{{chuck, axis - r}}, curved(axis-r, chuck, 76)...)
	s.area(NoEdge, Tint, Marked, append(left, Point{76, axis - r})...)
	for _, y := range []float64{-r, r} {
		s.draw(Hidden, Work, Point{chuck, axis + y}, Point{end, axis + y})
	}
	s.axis(Point{5, axis}, Point{end, axis})
	tip := Point{76, axis - r + give(76)}
	s.area(Outline, Tint, Tool, tip, tip.plus(3, -5), tip.plus(3, -9), tip.plus(-3, -9), tip.plus(-3, -5))
	s.arrow(Marked, Point{92, axis - 2}, Point{92, axis + 8})
	s.name(34, 60.5, "work")
	s.leader(Point{60, axis - 9}, Point{66, axis - r + 1.3})
	s.labelTo(68, axis-11, s.word("left"))
	// The boring bar in its bore, held at the right; the wall pushes it up too.
	const low, long, lift = 13.0, 58.0, 3.0
	bar := func(y, from, to float64) []Point {
		var line []Point
		for i := range 13 {
			x := from + (to-from)*float64(i)/12
			t := (78 - x) / long
			line = append(line, Point{x, y + lift*t*t*(3-t)/2})
		}
		return line
	}
	edge := bar(low-3, 23, 78)[0]
	cut := edge.Y - 5
	s.section(Work, Point{10, 1}, Point{62, 1}, Point{62, cut}, Point{23, cut}, Point{23, cut + 1.5}, Point{10, cut + 1.5})
	s.section(Work, Point{10, 26}, Point{62, 26}, Point{62, 30 - cut}, Point{23, 30 - cut}, Point{23, 28.5 - cut}, Point{10, 28.5 - cut})
	s.draw(Outline, Work, Point{10, cut + 1.5}, Point{10, 28.5 - cut})
	s.area(NoEdge, Tint, Marked, box(23, low-8, 62, cut)...)
	s.draw(Hidden, Work, Point{23, low - 8}, Point{62, low - 8})
	s.draw(Outline, Work, Point{23, cut}, Point{62, cut})
	s.area(Outline, Tint, Tool, append(bar(low+3, 20, 78), bar(low-3, 78, 20)...)...)
	for _, y := range []float64{-3, 3} {
		s.draw(Hidden, Tool, Point{20, low + y}, Point{78, low + y})
	}
	s.area(Outline, Tint, Tool, edge.plus(-2.5, 0), edge.plus(0, -5), edge.plus(2.5, 0))
	s.area(Outline, Clear, Machine, box(78, low-9, 94, low+9)...)
	s.name(86, low, "holder")
	s.name(36, 31, "bar")
	s.arrow(Marked, Point{70, low + 8}, Point{70, low + 17})
}
