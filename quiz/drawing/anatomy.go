package drawing

import "scratchpass/calc"

// externalThread names the parts of an external thread on a bar with its axis.
func externalThread(s *sheet) {
	if s.inside() { // a problem about an internal thread
		s.words = s.all["internal-thread"]
		anatomy(s, calc.Inside)
		return
	}
	anatomy(s, calc.Outside)
}

// internalThread names the parts of an internal thread: the metal lies outside the bore.
func internalThread(s *sheet) { anatomy(s, calc.Inside) }

// anatomy is half a section, the axis at its foot. Its diameters are named, not measured:
// they stand at the right from the axis up.
func anatomy(s *sheet, side calc.Side) {
	s.paper(sheetWide, 60)
	s.facts.Words = map[string]string{"side": side.String()}
	g := s.groove(26)
	const axis, right = 4.0, 66.0
	crest := 42.0
	root := crest - g.depth
	if side == calc.Inside {
		crest = 26
		root = crest + g.depth
	}
	work := g.profile(16, crest, 2)
	work = append([]Point{{0, crest}}, work...)
	work = append(work, Point{right, crest})
	edge := 12.0
	if side == calc.Inside {
		edge = 52
	}
	s.section(Work, append(work, Point{right, edge}, Point{0, edge})...)
	s.axis(Point{3, axis}, Point{right + 6, axis})
	// The pitch line goes where groove and ridge are equally wide.
	line := crest - 3.0/8*calc.HeightOfSharpV*g.pitch
	if side == calc.Inside {
		line = crest + 1.0/4*calc.HeightOfSharpV*g.pitch
	}
	s.draw(Centre, Marked, Point{0, line}, Point{right + 2, line})
	above := crest + 8
	if side == calc.Inside {
		above = crest - 8
	}
	s.extension(Point{16, root}, Point{16, above})
	s.extension(Point{42, root}, Point{42, above})
	s.between(Point{16, above}, Point{42, above})
	s.name(29, above+sign(side)*3.5, "pitch")
	s.leader(Point{8, crest + sign(side)*6}, Point{4, crest})
	s.labelFrom(0, crest+sign(side)*9, s.word("crest"))
	s.labelFrom(right-6, above+sign(side)*3, s.word("flank"))
	s.leader(Point{right - 4, above}, Point{42 + g.half() - 2.5, crest - sign(side)*4})
	s.name(29, root-sign(side)*5, "root")
	s.leader(Point{25, root - sign(side)*4}, Point{17, root})
	// The three sizes, from the axis up.
	for i, d := range []struct {
		key string
		y   float64
	}{{"minor", min(root, crest)}, {"pitch-line", line}, {"major", max(root, crest)}} {
		x := right + 2 + float64(i)*3
		s.draw(Thin, Measure, Point{right - 1, d.y}, Point{x + 1, d.y})
		s.draw(Thin, Measure, Point{x, axis}, Point{x, d.y})
		s.head(Point{x, d.y}, up, Measure)
		s.labelFrom(x+2, min(max(d.y, 20+float64(i)*7), d.y+1), s.word(d.key))
	}
}

// up is the direction to the top of a sheet.
const up = 1.5707963267948966

// sign is 1 where the crest of a thread lies above its root.
func sign(side calc.Side) float64 {
	if side == calc.Inside {
		return -1
	}
	return 1
}
