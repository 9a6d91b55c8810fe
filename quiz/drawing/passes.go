package drawing

// wrongLine shows a thread cut on the right line beside one on which the half-nut was
// closed on a wrong one.
func wrongLine(s *sheet) {
	s.paper(sheetWide, 50)
	const surface, foot, pitch = 34.0, 12.0, 18.0
	g := groove{pitch: pitch, depth: 7.5, flat: pitch / 6} // some passes deep
	second := groove{pitch: pitch, depth: 2.5, flat: pitch / 6}
	for i, left := range []float64{1, 52} {
		right, first := left+43, left+3.5
		tip := Point{first + pitch, surface - g.depth}
		var line []Point
		for k := range 4 {
			x := first + float64(k-1)*pitch
			line = append(line, g.profile(x, surface, 1)...)
			if i == 1 {
				line = append(line, second.profile(x+pitch/2, surface, 1)...)
			}
		}
		line = clip(line, left, right)
		s.section(Work, append(line[:len(line):len(line)], Point{right, foot}, Point{left, foot})...)
		if i == 1 {
			tip = Point{first + pitch*1.5, surface - second.depth}
			for k := range 2 {
				s.draw(Outline, Marked, second.profile(first+(float64(k)+0.5)*pitch, surface, 1)...)
			}
		}
		s.tool(tip, g.flat/2, surface+12-tip.Y)
		s.name((left+right)/2, 2.5, []string{"right", "wrong"}[i])
		s.name((left+right)/2, 7.5, []string{"one", "two"}[i])
	}
}

// onePass shows the four steps of a pass from above: the tool on the work, and the half-nut
// on the lead screw.
func onePass(s *sheet) {
	s.paper(112, 64)
	for i, key := range []string{"cut", "withdraw", "open", "back"} {
		x, y := float64(i%2)*57, 32-float64(i/2)*32
		s.metal(box(x+1, y+15, x+6, y+28)...)
		s.bar(Point{x + 6, y + 18}, Point{x + 43, y + 18}, Point{x + 43, y + 25}, Point{x + 6, y + 25})
		s.axis(Point{x + 4, y + 21.5}, Point{x + 44, y + 21.5})
		// The thread that is cut so far, from the right.
		var cut []Point
		from := x + 16
		if i == 0 {
			from = x + 28
		}
		for p := x + 43; p > from; p -= 2 {
			cut = append(cut, Point{p, y + 18}, Point{p - 1, y + 19.5})
		}
		s.draw(Outline, Work, append(cut, Point{from, y + 18})...)
		tip := Point{from, y + 18.5}
		switch i {
		case 1, 2:
			tip.Y -= 2.5
		case 3:
			tip = Point{x + 48, y + 16}
		}
		s.bit(pointed(tip, 5, 5.5, up)...)
		at := tip.plus(0, -5)
		switch i {
		case 0:
			s.arrow(Marked, at.plus(16, 1), at.plus(5, 1))
		case 1:
			s.arrow(Marked, at.plus(6, 4), at.plus(6, -4))
		case 3:
			s.arrow(Marked, at.plus(-19, 1), at.plus(-7, 1))
		}
		s.halfNut(Point{tip.X, y + 4.8}, x+6, x+52, i >= 2, i == 2)
		s.labelFrom(x+22, y+29.5, s.word(key))
	}
}

// halfNut draws the lead screw with both halves of the nut on it, closed or open.
func (s *sheet) halfNut(at Point, left, right float64, open, moves bool) {
	s.area(Thin, Clear, Machine, box(left, at.Y-1.5, right, at.Y+1.5)...)
	for x := left + 1; x < right-1; x += 2 {
		s.draw(Thin, Machine, Point{x, at.Y - 1.5}, Point{x + 1, at.Y + 1.5})
	}
	gap := 1.0
	if open {
		gap = 2.6
	}
	for _, side := range []float64{1, -1} {
		part := Machine
		if moves {
			part = Marked
		}
		s.area(Outline, Clear, part, box(at.X-4, at.Y+side*gap, at.X+4, at.Y+side*(gap+2))...)
	}
}

// runOut shows three ends of a thread.
func runOut(s *sheet) {
	s.paper(112, 54)
	const crest, depth, pitch, axis = 34.0, 4.6, 7.0, 14.0
	g := groove{pitch: pitch, depth: depth, flat: 1}
	for i, key := range []string{"groove", "none", "blind"} {
		x := float64(i)*38 + 1
		end := x + 33.0
		switch i {
		case 0: // shoulder, relief groove, thread
			line := []Point{{x, axis}, {x, crest + 8}, {x + 6, crest + 8}, {x + 6, crest - depth - 1}, {x + 16, crest - depth - 1}}
			thread := clip(g.profile(x+16+g.half()+0.3, crest, 4), x+16, end)
			line = append(append(line, thread...), Point{end, axis})
			s.section(Work, line...)
			s.bit(pointed(Point{x + 11, crest - depth}, 8, 20, -up)...)
		case 1: // the groove grows shallow where the tool is withdrawn
			line := []Point{{x, axis}, {x, crest + 8}, {x + 5, crest + 8}, {x + 5, crest}}
			for k, share := range []float64{0.3, 0.75, 1, 1, 1} {
				one := groove{pitch: pitch, depth: depth * share, flat: 1}
				line = append(line, clip(one.profile(x+11+float64(k)*pitch, crest, 1), x, end)...)
			}
			line = append(line, Point{end, line[len(line)-1].Y}, Point{end, axis})
			s.section(Work, line...)
			s.bit(pointed(Point{x + 11, crest + 3}, 8, 14, -up)...)
			s.arrow(Marked, Point{x + 20, crest + 3}, Point{x + 20, crest + 14})
		case 2: // a blind bore with a groove at its bottom
			g.side = 1
			low := axis + 9
			line := []Point{{x, axis}, {x, crest + 12}, {end, crest + 12}}
			thread := clip(g.profile(x+16, low, 4), x+16, end)
			for k := len(thread) - 1; k >= 0; k-- {
				line = append(line, thread[k])
			}
			line = append(line, Point{x + 16, low + depth + 1}, Point{x + 8, low + depth + 1}, Point{x + 8, axis})
			s.section(Work, line...)
			s.bit(Point{end, axis}, Point{end, axis + 4}, Point{x + 15, axis + 4}, Point{x + 12.6, low + depth}, Point{x + 11.4, low + depth}, Point{x + 9.5, axis + 4},
				Point{x + 9.5, axis})
		}
		s.axis(Point{x + 2, axis}, Point{end - 1, axis})
		s.name((x+end)/2, 7.5, key)
		s.name((x+end)/2, 2.5, key+"-tool")
	}
}
