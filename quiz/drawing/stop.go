package drawing

// crossSlideStop is the stop of the cross slide from above: its block is fixed to the
// slideway, its screw to the slide. Outside, the head of the screw meets the block as the
// slide goes away from you; in a bore a nut on the screw meets it as the slide comes.
func crossSlideStop(s *sheet) {
	s.paper(112, 64)
	const axis = 54.0
	for i, left := range []float64{0, 58} {
		x := left + 34 // the middle of the slide
		post := Point{x, 35}
		if i == 0 {
			s.chuck(Point{left + 9, axis}, 7, 9, 4)
			s.bar(box(left+9, axis-4, left+52, axis+4)...)
			s.axis(Point{left + 4, axis}, Point{left + 50, axis})
			s.bit(pointed(Point{x, axis - 4}, 5, 18, up)...)
		} else {
			s.chuck(Point{left + 9, axis}, 7, 9, 7.5)
			for _, side := range []float64{1, -1} {
				s.section(Work, box(left+9, axis+side*5, left+24, axis+side*8)...)
			}
			s.axis(Point{left + 4, axis}, Point{left + 26, axis})
			s.bit(Point{x, axis - 2}, Point{left + 20, axis - 2}, Point{left + 18, axis - 5}, Point{left + 16, axis - 2}, Point{left + 16, axis + 2}, Point{x, axis + 2})
			post.Y = 47
		}
		// Slideway, block, screw, slide and tool post.
		s.metal(box(x-6, 3, x+6, 30)...)
		s.draw(Thin, Machine, Point{x - 4, 3}, Point{x - 4, 22})
		s.draw(Thin, Machine, Point{x + 4, 3}, Point{x + 4, 22})
		s.metal(box(x-8, 11, x+8, 16)...)
		s.metal(box(x-1.2, 5, x+1.2, 24)...)
		s.area(Outline, Clear, Machine, box(x-8, 11, x-1.2, 16)...)
		s.area(Outline, Clear, Machine, box(x+1.2, 11, x+8, 16)...)
		s.metal(box(x-9, 24, x+9, post.Y+5)...)
		s.metal(box(post.X-5, post.Y-5, post.X+5, post.Y+9)...)
		stop := box(x-3, 7, x+3, 11)
		a, b := Point{x + 15, 24}, Point{x + 15, 38}
		if i == 1 {
			stop = box(x-3, 16, x+3, 20)
			a, b = b, a
		}
		s.area(Outline, Tint, Marked, stop...)
		s.arrow(Marked, a, b)
		s.name(left+12, 38, []string{"outside", "inside"}[i])
		s.leader(Point{left + 20, 14}, Point{x - 8, 13.5})
		s.labelTo(left+19, 14, s.word("block"))
		s.leader(Point{x + 9, stop[0].Y + 2}, Point{x + 3, stop[0].Y + 2})
		s.labelFrom(x+10, stop[0].Y+2, s.word([]string{"head", "nut"}[i]))
		if i == 0 {
			s.leader(Point{left + 20, 27}, Point{x - 9, 27})
			s.labelTo(left+19, 27, s.word("slide"))
		}
	}
}
