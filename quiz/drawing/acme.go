package drawing

import (
	"math"

	"scratchpass/calc"
)

// acmeForm is the profile of an Acme thread with its tool. Below half a pitch lies the
// clearance at the root.
func acmeForm(s *sheet) {
	s.paper(sheetWide, 58)
	pitch := s.length("pitch", "P", must(calc.ThreadsPerInch(5).Pitch()))
	h := must(calc.AcmeDepth(examplePitch))
	f := must(calc.AcmeToolFlat(examplePitch))
	if g, err := calc.AcmeDepth(pitch); err == nil {
		h, f = g, must(calc.AcmeToolFlat(pitch))
	}
	h, f = s.lengthOr("card-depth", h), s.lengthOr("card-flat", f) // of a job, cut by its own tool
	s.derived("h", h)
	s.derived("f", f)
	const wide, surface, foot, left, right = 34.0, 39.0, 8.0, 2.0, 70.0
	const scale = 0.2 / wide // drawn as five threads per inch
	depth, half := wide/2+0.010/scale, wide*(1-0.3707)/2
	root := wide*0.3707/2 - 0.0052/2/scale
	var line []Point
	for _, x := range []float64{-12, 22, 56, 90} {
		line = append(line, Point{x - half, surface}, Point{x - root, surface - depth}, Point{x + root, surface - depth}, Point{x + half, surface})
	}
	line = clip(line, left, right)
	s.section(Work, append(line, Point{right, foot}, Point{left, foot})...)
	slope := (calc.AcmeAngle / 2).Tan()
	high := depth + 7
	s.area(Outline, Tint, Tool, Point{56 - root - high*slope, surface + 7}, Point{56 - root, surface - depth}, Point{56 + root, surface - depth},
		Point{56 + root + high*slope, surface + 7})
	s.name(56, surface-4, "tool")
	halfway := half - wide/2*slope
	s.draw(Hidden, Marked, Point{56 - halfway, surface - wide/2}, Point{56 + halfway, surface - wide/2})
	vertex := Point{22, surface - depth - root/slope}
	radius := surface - 10 - vertex.Y
	turn := float64(calc.AcmeAngle) / 2 * math.Pi / 180
	s.angle(vertex, radius, up+turn, up-turn)
	s.label(22, surface-6, calc.Shortest(calc.AcmeAngle.Degrees(), 0)+"°")
	s.extension(Point{22 - half, surface}, Point{22 - half, 54})
	s.extension(Point{56 - half, surface}, Point{56 - half, 54})
	s.between(Point{22 - half, 54}, Point{56 - half, 54})
	s.label(22-half+wide/2, 54, "${P}")
	s.leader(Point{33, 47}, Point{22 + half + 5, surface + 0.6})
	s.label(31, 48, s.word("crest"))
	s.dimension(Point{right, surface}, Point{right, surface - depth}, 12)
	s.label(right+12.5, surface-depth/2, "${h}")
	s.draw(Thin, Measure, Point{22 - root, surface - depth - extGap}, Point{22 - root, 11})
	s.draw(Thin, Measure, Point{22 + root, surface - depth - extGap}, Point{22 + root, 11})
	s.between(Point{22 - root, 13}, Point{22 + root, 13})
	s.labelFrom(39, 13, "${f}")
	s.leader(Point{76, 10}, Point{58, surface - wide/2 - 1})
	s.labelFrom(74, 9, s.word("clearance"))
}

// taperPipe is the end of a pipe with a taper thread, below its axis in a ring gauge. The
// taper is drawn steeper than it is.
func taperPipe(s *sheet) {
	s.paper(sheetWide, 64)
	half := calc.PipeSizes[3]
	pipe := must(calc.PipeThread(half.Outside, half.TPI, half.L1))
	s.derived("E0", pipe.E0)
	s.derived("E1", pipe.E1)
	s.derived("L1", half.L1)
	const axis, end, plane, runout, back, slope, pitch, depth = 33.0, 76.0, 44.0, 20.0, 3.0, 1.0 / 9, 4.0, 3.0
	radius := func(x float64) float64 { return 13 + (end-x)*slope }
	crests := func(from, to, up float64) []Point {
		var line []Point
		for x := to; x > from+0.1; x -= pitch {
			line = append(line, Point{x, axis + up*(radius(x)+depth/2)}, Point{x - pitch/2, axis + up*(radius(x-pitch/2)-depth/2)})
		}
		return append(line, Point{from, axis + up*(radius(from)+depth/2)})
	}
	bore := 7.0
	for _, up := range []float64{1, -1} {
		edge := crests(runout, end, up)
		outside := axis + up*(radius(runout)+depth/2)
		metal := append(edge, Point{back, outside}, Point{back, axis + up*bore}, Point{end, axis + up*bore})
		s.section(Work, metal...)
	}
	s.draw(Outline, Work, Point{end, axis + bore}, Point{end, axis - bore})
	ring := append(crests(plane, end, -1), Point{plane, 7}, Point{end, 7})
	s.section(Machine, ring...)
	s.axis(Point{back, axis}, Point{end + 2, axis})
	for _, up := range []float64{1, -1} {
		s.draw(Centre, Marked, Point{runout, axis + up*radius(runout)}, Point{end, axis + up*radius(end)})
		s.extension(Point{end, axis + up*radius(end)}, Point{end + 9, axis + up*radius(end)})
	}
	s.between(Point{plane, axis + radius(plane)}, Point{plane, axis - radius(plane)})
	s.label(plane, axis+3, "${E1}")
	s.between(Point{end + 9, axis + radius(end)}, Point{end + 9, axis - radius(end)})
	s.label(end+9, axis, "${E0}")
	s.extension(Point{plane, axis + radius(plane) + 2}, Point{plane, 56})
	s.extension(Point{end, axis + radius(end) + 2}, Point{end, 56})
	s.between(Point{plane, 56}, Point{end, 56})
	s.label((plane+end)/2, 56, "${L1}")
	s.labelTo(plane+6, 61.5, s.word("plane"))
	s.labelFrom(1, 57, s.word("taper"))
	s.leader(Point{18, 56}, Point{30, axis + radius(30) + 2})
	for _, x := range []float64{end - pitch, end + pitch} {
		s.draw(Hidden, Marked, Point{x, 17}, Point{x, 2})
	}
	s.labelTo(plane-2, 9.5, s.word("ring"))
	s.labelTo(plane-2, 3.5, s.word("turn"))
	s.leader(Point{plane - 1, 3.5}, Point{end - pitch, 3.5})
}
