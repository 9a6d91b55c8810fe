package drawing

import "math"

// infeedWays shows four ways into a groove with the chips of their passes.
func infeedWays(s *sheet) {
	s.paper(112, 48)
	const surface, foot, deep, flat, passes = 42.0, 16.0, 18.0, 2.5, 4
	for i, key := range []string{"plunge", "flank", "modified", "alternate"} {
		x := 14 + float64(i)*28
		lean := []float64{0, tan30, math.Tan(22 * math.Pi / 180), 0}[i] // 29.5 would not be seen
		var cuts []cut
		for k := 1; k <= passes; k++ {
			depth := deep * math.Sqrt(float64(k)/passes)
			shift := (deep - depth) * lean
			if key == "alternate" {
				shift = (deep - depth) * tan30 * float64(1-2*(k%2))
			}
			cuts = append(cuts, cut{shift, depth})
		}
		s.layers(x, 13, surface, foot, flat, cuts)
		s.name(x, 8.5, key)
		s.name(x, 3.5, key+"-chip")
	}
}

// cut is a pass: where the tip of the tool went.
type cut struct{ across, depth float64 }

// layers draws a groove in work with what each cut took, by turns tinted and clear.
func (s *sheet) layers(x, wide, surface, foot, flat float64, cuts []cut) {
	at := func(c cut) []Point {
		g := groove{depth: c.depth, flat: flat}
		return g.profile(x+c.across, surface, 1)
	}
	last := at(cuts[len(cuts)-1])
	work := append([]Point{{x - wide, surface}}, last...)
	s.section(Work, append(work, Point{x + wide, surface}, Point{x + wide, foot}, Point{x - wide, foot})...)
	for k := len(cuts) - 1; k >= 0; k-- {
		fill := Tint
		if k%2 == 1 {
			fill = Clear
		}
		s.area(Thin, fill, Tool, at(cuts[k])...)
	}
	s.draw(Outline, Work, last...)
}

// passChart shows the depth after each pass for equal feeds, and for an equal load on the
// tool.
func passChart(s *sheet) {
	s.paper(112, 56)
	const surface, foot, deep = 46.0, 18.0, 22.0
	passes := min(max(int(s.number("passes", "Q", 6, 0)), 2), 24)
	for i, key := range []string{"feeds", "load"} {
		left := float64(i) * 58
		var cuts []cut
		for k := 1; k <= passes; k++ {
			share := float64(k) / float64(passes)
			if i == 1 {
				share = math.Sqrt(share)
			}
			cuts = append(cuts, cut{0, deep * share})
		}
		s.layers(left+15, 14, surface, foot, 1.5, cuts)
		s.draw(Thin, Measure, Point{left + 30, surface}, Point{left + 54, surface})
		wide := 23 / float64(passes)
		for k, c := range cuts {
			x := left + 30.5 + float64(k)*wide
			before := 0.0
			if k > 0 {
				before = cuts[k-1].depth
			}
			s.area(Outline, Clear, Measure, box(x, surface-c.depth, x+wide, surface)...)
			s.area(Thin, Tint, Tool, box(x, surface-c.depth, x+wide, surface-before)...)
		}
		s.name(left+27, 52, key)
		s.name(left+15, 12, "groove")
		s.name(left+42, 12, "bars")
		s.name(left+27, 4, key+"-chip")
	}
}

// alternateFlank shows two cuts in turn, deeper each time by a depth, with a step along the
// bed that keeps the flank at one side.
func alternateFlank(s *sheet) {
	s.paper(sheetWide, 60)
	const surface, foot, flat, fed, wide = 38.0, 7.0, 4.0, 10.0, 20.0
	before := cut{0, 8}
	for i, x := range []float64{24, 70} {
		way := float64(2*i - 1) // the first step goes left
		after := cut{before.across + way*fed*tan30, before.depth + fed}
		at := func(c cut) []Point {
			return groove{depth: c.depth, flat: flat}.profile(x+c.across, surface, 1)
		}
		work := append([]Point{{x - wide, surface}}, at(after)...)
		s.section(Work, append(work, Point{x + wide, surface}, Point{x + wide, foot}, Point{x - wide, foot})...)
		s.area(Thin, Tint, Tool, at(after)...)
		s.area(Thin, Clear, Tool, at(before)...)
		s.draw(Outline, Work, at(after)...)
		was, is := Point{x + before.across, surface - before.depth}, Point{x + after.across, surface - after.depth}
		// The tool where it was, dashed, and where it is.
		for k, tip := range []Point{was, is} {
			high := surface + 6 - tip.Y
			out := flat/2 + high*tan30
			s.draw([]Pen{Hidden, Outline}[k], Tool, tip.plus(-out, high), tip.plus(-flat/2, 0), tip.plus(flat/2, 0), tip.plus(out, high))
			s.draw(Centre, Measure, tip, Point{tip.X, 51})
		}
		s.between(Point{was.X, 50}, Point{is.X, 50})
		s.label(max(was.X, is.X)+11, 50, "b")
		s.arrow(Marked, Point{x - way*6, 56}, Point{x + way*6, 56})
		s.name(x, 3, []string{"left", "right"}[i])
		if i == 0 {
			s.draw(Thin, Measure, was.plus(flat/2+extGap, 0), Point{48, was.Y})
			s.draw(Thin, Measure, is.plus(flat/2+extGap, 0), Point{48, is.Y})
			s.between(Point{47, was.Y}, Point{47, is.Y})
			s.label(47, was.Y-fed/2, "h")
		}
		before = after
	}
}
