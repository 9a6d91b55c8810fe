package drawing

import "math"

// betweenCentres shows work turned by a dog on a drive plate.
func betweenCentres(s *sheet) {
	s.paper(112, 56)
	const axis = 28.0
	s.metal(box(1, axis-14, 8, axis+14)...)
	s.metal(box(8, axis-6, 13, axis+6)...)
	s.metal(Point{19, axis - 4}, Point{23, axis - 4}, Point{30, axis}, Point{23, axis + 4}, Point{19, axis + 4})
	s.metal(Point{84, axis}, Point{91, axis + 4}, Point{97, axis + 4}, Point{97, axis - 4}, Point{91, axis - 4})
	// The work hides the points that stand in its centre holes.
	s.bar(Point{28, axis - 6}, Point{86, axis - 6}, Point{86, axis + 6}, Point{28, axis + 6})
	var thread []Point
	for x := 60.0; x < 86; x += 3 {
		thread = append(thread, Point{x, axis - 6}, Point{x + 1.5, axis - 4})
	}
	s.draw(Outline, Work, append(thread, Point{86, axis - 6})...)
	// The dog with its tail in the slot of the plate.
	s.metal(box(36, axis-10, 44, axis+9)...)
	s.metal(Point{44, axis + 9}, Point{44, axis + 15}, Point{15, axis + 15}, Point{15, axis + 11}, Point{36, axis + 11}, Point{36, axis + 9})
	s.metal(box(38, axis-16, 42, axis-10)...)
	s.metal(box(13, axis-18, 19, axis+18)...)
	for _, y := range []float64{axis + 11, axis + 15} {
		s.draw(Hidden, Machine, Point{13, y}, Point{19, y})
	}
	// It is tied, so that it does not knock.
	s.draw(Outline, Marked, Point{23, axis + 10}, Point{25, axis + 16})
	s.draw(Outline, Marked, Point{25, axis + 10}, Point{27, axis + 16})
	s.metal(box(97, axis-8, 111, axis+8)...)
	s.axis(Point{4, axis}, Point{108, axis})
	s.leader(Point{14, 51.5}, Point{16, axis + 18})
	s.name(12, 54, "plate")
	s.leader(Point{36, 51.5}, Point{33, axis + 15})
	s.name(38, 54, "tail")
	s.leader(Point{52, 44}, Point{44, axis + 8})
	s.name(56, 46, "dog")
	s.leader(Point{22, 5}, Point{24, axis - 3.5})
	s.name(22, 3, "head")
	s.leader(Point{90, 7}, Point{91, axis - 4})
	s.name(88, 5, "tail-centre")
	s.name(66, axis+2.5, "work")
}

// centreHole shows a centre hole as it should be, too shallow and too deep.
func centreHole(s *sheet) {
	s.paper(112, 50)
	const axis = 30.0
	for i, key := range []string{"right", "shallow", "deep"} {
		x := 1 + float64(i)*38
		end := x + 22
		cone := []float64{6, 3, 5}[i] // how wide the 60-degree part gets, half
		const pilot = 1.6
		mouth := end // where the cone begins
		if key == "deep" {
			mouth = end - 5
		}
		inner := mouth - (cone-pilot)/tan30
		body := []Point{{x, axis - 13}, {end, axis - 13}, {end, axis - cone}, {mouth, axis - cone}, {inner, axis - pilot}, {inner - 5, axis - pilot},
			{inner - 6, axis}}
		for k := len(body) - 1; k >= 0; k-- {
			body = append(body, Point{body[k].X, 2*axis - body[k].Y})
		}
		s.section(Work, body...)
		// The centre goes in until it touches: the cone, or the edge of the hole.
		tip := end - cone/tan30
		s.metal(Point{tip, axis}, Point{tip + 6.5/tan30, axis + 6.5}, Point{x + 34, axis + 6.5}, Point{x + 34, axis - 6.5}, Point{tip + 6.5/tan30, axis - 6.5})
		s.axis(Point{x + 3, axis}, Point{x + 31, axis})
		s.name(x+17, 9, key)
		s.name(x+17, 4, key+"-why")
	}
}

// rests shows a steady rest and a follow rest from the tailstock.
func rests(s *sheet) {
	s.paper(sheetWide, 64)
	for i, x := range []float64{25, 71} {
		middle := Point{x, 38}
		s.metal(box(x-21, 9, x+21, 13)...) // the bed, or the saddle
		if i == 0 {
			s.metal(Point{x - 14, 13}, Point{x - 11, 24}, Point{x + 11, 24}, Point{x + 14, 13})
			s.circle(Outline, Clear, Machine, middle, 20)
			s.circle(Outline, Clear, Machine, middle, 14.5)
			for k := range 3 {
				s.metal(turned(middle, -6, 22, 5, up+float64(k)*2*math.Pi/3)...)
			}
		} else {
			s.metal(Point{x + 2, 13}, Point{x + 20, 13}, Point{x + 20, 58}, Point{x - 5, 58}, Point{x - 5, 52}, Point{x + 14, 52}, Point{x + 14, 22}, Point{x + 2, 19})
			s.metal(turned(middle, -6, 22, 5, up)...)
			s.metal(turned(middle, -6, 22, 5, 0)...)
			s.bit(Point{x - 6, 38}, Point{x - 20, 38}, Point{x - 20, 32}, Point{x - 7.5, 32})
			s.metal(box(x-21, 13, x-11, 32)...)
			s.name(x-15, 42, "tool")
		}
		s.circle(Outline, Clear, Work, middle, 6)
		s.axis(middle.plus(-5, 0), middle.plus(5, 0))
		s.axis(middle.plus(0, -5), middle.plus(0, 5))
		s.name(x, 3, []string{"steady", "follow"}[i])
	}
}
