package drawing

import "scratchpass/calc"

// pipeThreadHeight is the section of a taper pipe thread with the tool in a groove. Its form
// stands square to the axis. The taper is drawn steeper than it is.
func pipeThreadHeight(s *sheet) {
	s.paper(sheetWide, 58)
	size := calc.PipeSizes[3]
	s.derived("P", s.lengthOr("card-pitch", must(size.TPI.Pitch())))
	const wide, slope, first, left, right, foot = 23.0, 1.0 / 12, 14.0, 4.0, 76.0, 6.0
	const height, flat = 0.8 * wide, 0.0381 * wide / 2
	crest := func(x float64) float64 { return 40 + (first-x)*slope + 3 }
	var line []Point
	for k := -1.0; k < 5; k++ {
		x := first + k*wide // a root
		y := crest(x) - height
		next := x + wide/2
		line = append(line, Point{x - flat, y}, Point{x + flat, y}, Point{next - flat, crest(next)}, Point{next + flat, crest(next)})
	}
	line = clip(line, left, right)
	s.section(Work, append(line, Point{right, foot}, Point{left, foot})...)
	for _, down := range []float64{0, height} {
		s.draw(Centre, Marked, Point{left, crest(left) - down}, Point{right + 3, crest(right+3) - down})
	}
	// The tool in the second groove, its axis square to that of the work.
	tip := Point{first + wide, crest(first+wide) - height}
	s.tool(tip, flat, height+7)
	s.name(tip.X, tip.Y+height, "tool")
	s.draw(Thin, Measure, Point{right + 3, crest(right + 3)}, Point{right + 8, crest(right + 3)})
	s.draw(Thin, Measure, Point{right + 3, crest(right+3) - height}, Point{right + 8, crest(right+3) - height})
	s.between(Point{right + 6, crest(right + 3)}, Point{right + 6, crest(right+3) - height})
	s.labelFrom(right+8, crest(right+3)-height/2, "h")
	for _, k := range []float64{2.5, 1.5} {
		x := first + k*wide
		s.extension(Point{x, crest(x)}, Point{x, 51})
	}
	s.between(Point{first + 1.5*wide, 51}, Point{first + 2.5*wide, 51})
	s.label(first+2*wide, 54.5, "${P}")
	s.labelFrom(1, 54, s.word("taper"))
	s.leader(Point{11, 51.5}, Point{9, crest(9) + 0.4})
	s.axis(Point{left, 2}, Point{right, 2})
	s.labelFrom(right+5, 3, s.word("axis"))
	s.draw(Thin, Measure, Point{tip.X, tip.Y - 1.5}, Point{tip.X, 2})
	s.draw(Thin, Measure, Point{tip.X + 3, 2}, Point{tip.X + 3, 5}, Point{tip.X, 5})
}
