package drawing

import (
	"math"

	"scratchpass/calc"
)

// platingOnFlank is a groove under plating: a layer square to a flank of 30 degrees is
// twice as thick straight out.
func platingOnFlank(s *sheet) {
	s.paper(sheetWide, 58)
	s.length("plating", "t", calc.Inches(0.0003))
	const pitch, layer, middle, left, right = 44.0, 4.5, 38.0, 4.0, 72.0
	twice := s.word("twice")
	if !s.facts.Example {
		s.variant("asked")
		twice = "?"
	}
	out, surface, edge := 1.0, 40.0, 4.0
	if s.inside() {
		s.variant("inside")
		if !s.facts.Example {
			s.variant("inside-asked")
		}
		out, surface, edge = -1, 18, 54
	}
	const depth = veeDepth * pitch
	const corner = layer * 0.5774 // so much narrower is each flat of the groove that is left
	var bare, plated []Point
	for _, x := range []float64{middle - pitch, middle, middle + pitch} {
		half, root := veeHalf*pitch, veeRoot*pitch
		bare = append(bare, Point{x - half, surface}, Point{x - root, surface - out*depth}, Point{x + root, surface - out*depth}, Point{x + half, surface})
		half, root = half-corner, root-corner
		high, low := surface+out*layer, surface-out*(depth-layer)
		plated = append(plated, Point{x - half, high}, Point{x - root, low}, Point{x + root, low}, Point{x + half, high})
	}
	bare, plated = clip(bare, left, right), clip(plated, left, right)
	s.area(Outline, Tint, Marked, append(plated, Point{right, edge}, Point{left, edge})...)
	s.section(Work, append(bare, Point{right, edge}, Point{left, edge})...)
	// The layer square to the flank, at the right of the groove.
	line := surface - out*3/8*calc.HeightOfSharpV*pitch
	from := Point{middle + veeRoot*pitch + (depth-math.Abs(surface-line))*tan30, line}
	flank := math.Atan2(out, tan30) // up the flank
	foot := from.away(9, flank)
	square := flank + out*up
	s.between(foot, foot.away(layer, square))
	end := foot.away(layer+2*headLong, square)
	s.labelTo(end.X-1, end.Y+out*2, "${t}")
	// The pitch line before and after.
	for _, y := range []float64{line, line + out*2*layer} {
		s.draw(Centre, Measure, Point{left, y}, Point{right + 8, y})
	}
	s.between(Point{right + 6, line}, Point{right + 6, line + out*2*layer})
	s.labelFrom(right+9, line+out*layer, twice)
	s.labelFrom(right+2, line+out*(2*layer+12), s.word("after"))
	s.labelFrom(right+2, line-out*13, s.word("before"))
	s.name(middle, surface+out*10, "plating")
	s.leader(Point{middle + 10, surface + out*9}, Point{middle + pitch/2 + 1, surface + out*layer/2})
}
