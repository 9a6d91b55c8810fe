package drawing

import "scratchpass/calc"

// bluntStart is the end of a screw from the side, its first turn thin at the end face, and
// one whose first turn is cut back to the full form.
func bluntStart(s *sheet) {
	s.paper(sheetWide, 58)
	const axis, radius, pitch, long = 31.0, 19.0, 12.0, 38.0
	const deep = veeDepth * pitch
	const high, low = axis + radius - deep, axis - radius + deep // the root
	for i, left := range []float64{4, 52} {
		end := left + long
		s.screw(Work, left, end, axis, radius, pitch, calc.RightHand)
		if i == 0 {
			s.area(Outline, Tint, Marked, Point{left + 31, high}, Point{left + 35.25, axis + radius}, Point{left + 36.75, axis + radius},
				Point{end, axis + radius - 2.2}, Point{end, low}, Point{left + 37, low})
		} else {
			// The step at which the thread now begins.
			s.bar(Point{left + 32.5, axis + 9}, Point{end, axis + 9}, Point{end, low}, Point{left + 36.5, low})
			s.draw(Outline, Marked, Point{left + 32.5, axis + 9}, Point{end, axis + 9})
		}
		s.axis(Point{left, axis}, Point{end + 2, axis})
		s.name(left+long/2, 3, []string{"thin", "blunt"}[i])
	}
}
