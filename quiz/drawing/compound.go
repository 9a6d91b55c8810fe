package drawing

import (
	"math"
	"strings"
)

// The compound as it is swung for the kinds of thread; a problem may name the kind.
func compoundSwung(s *sheet)           { s.swung("outside-right") }
func compoundSwungLeft(s *sheet)       { s.swung("outside-left") }
func compoundSwungInside(s *sheet)     { s.swung("inside-right") }
func compoundSwungInsideLeft(s *sheet) { s.swung("inside-left") }

// The same before it is swung: for a problem that asks to which side.
func compoundUnswung(s *sheet)       { s.unswung("outside-right") }
func compoundUnswungInside(s *sheet) { s.unswung("inside-right") }

// swungFor are the figures by the kind of thread.
var swungFor = map[string]string{
	"outside-right": "compound-swung", "outside-left": "compound-swung-left",
	"inside-right": "compound-swung-inside", "inside-left": "compound-swung-inside-left",
}

// swung is a plan of the compound on the cross slide, the work beyond it. It is swung so
// that each feed also moves the tool the way the carriage goes.
func (s *sheet) swung(kind string) {
	kind = s.choice("kind", kind)
	s.words = s.all[swungFor[kind]]
	inside, left := strings.HasPrefix(kind, "inside"), strings.HasSuffix(kind, "left")
	a := float64(s.degrees("angle", "a", exampleAngle)) * math.Pi / 180
	side := 1.0 // the handle points to the tailstock
	if inside != left {
		side = -1
	}
	pivot, post, lean := s.compoundPlan(inside, side, a)
	s.swingAngle(pivot, lean, side)
	s.swungArrows(pivot, lean, side, inside, left)
	s.swungNames(pivot, post, lean, side, inside)
}

// unswung is the plan with the compound on the cross-slide line. It does not tell the hand.
func (s *sheet) unswung(kind string) {
	inside := strings.HasPrefix(s.choice("kind", kind), "inside")
	s.words = s.all["compound-unswung"]
	if inside {
		s.words = s.all["compound-unswung-inside"]
	}
	pivot, post, lean := s.compoundPlan(inside, 1, 0)
	s.draw(Centre, Measure, pivot.plus(0, 12), Point{pivot.X, 1})
	s.swungNames(pivot, post, lean, 1, inside)
}

// compoundPlan draws work, tool and compound from above, the compound swung by an angle. It
// returns where it turns, where the tool post is, and its direction.
func (s *sheet) compoundPlan(inside bool, side, a float64) (pivot, post Point, lean float64) {
	s.paper(sheetWide, 64)
	const axis = 50.0
	lean = up + side*a
	pivot = Point{48, 28}
	if inside {
		out := 67.0
		if side > 0 {
			out = 56
		}
		pivot.X = out - 22*math.Cos(lean)
		pivot.Y = axis - 22*math.Sin(lean)
	}
	s.metal(box(pivot.X-9, 9, pivot.X+9, pivot.Y+11)...)
	s.circle(Thin, Clear, Machine, pivot, 8.5)
	s.metal(turned(pivot, 13, 21, 11, lean)...)
	s.metal(turned(pivot.away(-17, lean), 0, 4, 2, lean)...)
	s.metal(turned(pivot.away(-19, lean), 0, 2, 9, lean)...)
	post = pivot.away(22, lean)
	if inside {
		s.boredWork(Point{14, axis}, 28)
		s.bit(Point{post.X, axis - 2}, Point{36.5, axis - 2}, Point{34, axis - 5}, Point{31.5, axis - 2}, Point{31.5, axis + 2}, Point{post.X, axis + 2})
		s.metal(box(post.X-6, axis-6, post.X+6, axis+6)...)
	} else {
		s.chuck(Point{14, axis}, 10, 12, 5)
		s.bar(box(14, axis-5, 92, axis+5)...)
		s.axis(Point{6, axis}, Point{90, axis})
		post.Y = axis - 17
		s.bit(pointed(Point{post.X, axis - 5}, 5, 20, up)...)
		s.metal(box(post.X-6, post.Y-6, post.X+6, post.Y+5.5)...)
		s.name(82, axis, "work")
	}
	return pivot, post, lean
}

// swingAngle draws the line of the cross slide, that of the compound and the angle between
// them, on the side of the handle.
func (s *sheet) swingAngle(pivot Point, lean, side float64) {
	s.draw(Centre, Measure, pivot.plus(0, 12), Point{pivot.X, 1})
	s.draw(Centre, Measure, pivot.away(12, lean), pivot.away(-(pivot.Y-3)/math.Sin(lean), lean))
	s.angle(pivot, pivot.Y-4, up+math.Pi, lean+math.Pi)
	s.beside(Point{pivot.X - side*3, 3.5}, -side, "angle")
}

// beside puts a label of content to the right of a place, or to the left.
func (s *sheet) beside(at Point, side float64, key string) {
	if side < 0 {
		s.labelTo(at.X, at.Y, s.word(key))
		return
	}
	s.labelFrom(at.X, at.Y, s.word(key))
}

// swungArrows show the feed along the compound, and the way of the carriage.
func (s *sheet) swungArrows(pivot Point, lean, side float64, inside, left bool) {
	off, from, to := 13.0, -5.0, 9.0
	if inside {
		off, from, to = 20, -10, -23
	}
	beside := pivot.away(off, lean-side*math.Pi/2)
	if inside && side > 0 { // there is no room on its right
		beside, from, to, side = Point{16, 30}, 0, -13, -1
	}
	s.arrow(Marked, beside.away(from, lean), beside.away(to, lean))
	s.beside(beside.away((from+to)/2, lean).plus(side*3, 0), side, "feed")
	a, b := Point{72, 60}, Point{56, 60}
	if left {
		a, b = b, a
	}
	s.arrow(Marked, a, b)
	s.labelFrom(74, 60, s.word("carriage"))
}

func (s *sheet) swungNames(pivot, post Point, lean, side float64, inside bool) {
	s.name(9, 34, "chuck")
	compound, slide, tool := Point{pivot.X + side*22, 17}, Point{pivot.X - side*18, 16}, Point{post.X - side*14, 23}
	across := -side
	if inside && side > 0 { // all names stand on the left, where there is room
		compound, slide, across = Point{pivot.X - 20, 27}, Point{pivot.X - 18, 16}, -1
	}
	if inside {
		s.leader(Point{post.X + 12, post.Y}, Point{post.X + 6, post.Y})
		s.labelFrom(post.X+13, post.Y, s.word("tool-post"))
	} else {
		s.leader(tool.plus(side, 2), Point{post.X - side*6, 30})
		s.beside(tool, -side, "tool-post")
	}
	s.leader(slide.plus(-across, 0), Point{pivot.X + across*9, 14})
	s.beside(slide, across, "cross-slide")
	s.leader(compound.plus(-towards(compound.X-pivot.X), 0), pivot.away(-6, lean).away(5.5, lean-math.Copysign(up, compound.X-pivot.X)))
	s.beside(compound, towards(compound.X-pivot.X), "compound")
}

// towards is 1 to the right and -1 to the left.
func towards(x float64) float64 { return math.Copysign(1, x) }

// boredWork is work with a bore, cut through, in a chuck.
func (s *sheet) boredWork(face Point, long float64) {
	s.chuck(face, 10, 13, 9)
	for _, side := range []float64{1, -1} {
		s.section(Work, box(face.X, face.Y+side*5, face.X+long, face.Y+side*9)...)
	}
	s.axis(Point{face.X - 8, face.Y}, Point{face.X + long, face.Y})
}

// compoundScale shows the same swing on two scales: one counts from the cross-slide line,
// one from the bed.
func compoundScale(s *sheet) {
	s.paper(sheetWide, 60)
	a := float64(s.degrees("angle", "a", exampleAngle))
	s.number("reading", "r", 90-a, 2)
	if v := s.values["r"]; v != "r" {
		s.values["r"] = v + "°"
	}
	lean := up + a*math.Pi/180
	const radius = 15.0
	for i, x := range []float64{24, 72} {
		middle := Point{x, 30}
		s.circle(Outline, Clear, Machine, middle, radius)
		s.area(Thin, Open, Machine, turned(middle, 17.5, 20, 13, lean)...)
		s.area(Thin, Open, Machine, turned(middle.away(-20.5, lean), 0, 3, 2, lean)...)
		s.area(Thin, Open, Machine, turned(middle.away(-22.5, lean), 0, 2, 8, lean)...)
		zero := up
		if i == 1 {
			zero = math.Pi
		}
		for ten := range 10 {
			for _, turn := range []float64{1, -1} {
				to := zero + turn*float64(ten)*math.Pi/18
				inner := radius - 2
				if ten%3 == 0 {
					inner = radius - 3.5
				}
				s.draw(Thin, Machine, middle.away(inner, to), middle.away(radius, to))
			}
		}
		for n, text := range []string{"0", "90"} {
			at := middle.away(radius-6, zero+up*float64(n*(1-2*i)))
			s.label(at.X, at.Y, text)
		}
		s.draw(Centre, Measure, middle, middle.plus(0, 22))
		s.draw(Centre, Measure, middle, middle.away(23, lean))
		tip := middle.away(radius, lean)
		s.area(Thin, Solid, Marked, tip, tip.away(5, lean-0.35), tip.away(5, lean+0.35))
		s.name(x, 57, []string{"cross", "bed"}[i])
		s.name(x, 2.5, []string{"left", "right"}[i])
	}
}
