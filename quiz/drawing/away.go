package drawing

import "scratchpass/calc"

// threadAway is a right-hand thread cut from the shoulder outwards, from above: the
// spindle in reverse and the tool upside down.
func threadAway(s *sheet) {
	s.paper(sheetWide, 60)
	const axis = 32.0
	s.area(Outline, Clear, Machine, box(2, axis-21, 16, axis+21)...)
	at := Point{31, axis - 7}
	if s.inside() {
		s.variant("inside")
		at = awayInside(s, axis)
	} else {
		s.area(Outline, Clear, Work, box(16, axis-14, 27, axis+14)...)
		s.area(Outline, Clear, Work, box(27, axis-6, 35, axis+6)...)
		s.screw(Work, 35, 73, axis, 10, 6, calc.RightHand)
		s.area(Outline, Tint, Tool, at, at.plus(3, -5.2), at.plus(3, -14), at.plus(-3, -14), at.plus(-3, -5.2))
	}
	s.axis(Point{4, axis}, Point{80, axis})
	s.arrow(Marked, Point{9, axis - 15}, Point{9, axis + 15})
	s.labelFrom(2, 57, s.word("spindle"))
	y := at.Y - 9
	body := at.plus(1.5, -10)
	if s.inside() {
		y, body = 9, at.plus(1, 3)
	}
	s.arrow(Marked, Point{at.X + 9, y}, Point{at.X + 29, y})
	s.labelFrom(at.X+32, y, s.word("carriage"))
	s.labelFrom(at.X+6, 3.5, s.word("tool"))
	s.leader(Point{at.X + 5, 4.5}, body)
}

// awayInside draws the bore, in section, and returns where the tip of the tool stands.
func awayInside(s *sheet, axis float64) Point {
	for i, up := range []float64{1, -1} {
		edge := vees(32, 68, 32+3+3*float64(i), axis+9*up, 6, -veeDepth*6*up)
		half := append([]Point{{16, axis}, {16, axis + 19*up}, {68, axis + 19*up}}, reversed(edge)...)
		half = append(half, Point{32, axis + 9*up}, Point{32, axis + 14*up}, Point{24, axis + 14*up}, Point{24, axis})
		s.area(NoEdge, Clear, Work, half...)
		s.hatch(Work, half)
		s.draw(Outline, Work, half...)
	}
	at := Point{28, axis - 12}
	s.area(Outline, Tint, Tool, box(25, axis-4, 92, axis+3)...)
	s.area(Outline, Tint, Tool, at, at.plus(3, 5.2), Point{at.X + 3, axis - 4}, Point{at.X - 3, axis - 4}, at.plus(-3, 5.2))
	return at
}
