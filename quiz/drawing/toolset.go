package drawing

import "math"

// The centre gauge at the work: along a bar, or at the faced end of a bore.
func centreGauge(s *sheet)       { s.gaugeAtWork("outside") }
func centreGaugeInside(s *sheet) { s.gaugeAtWork("inside") }

func (s *sheet) gaugeAtWork(side string) {
	s.paper(sheetWide, 60)
	if s.choice("side", side) == "inside" {
		s.words = s.all["centre-gauge-inside"]
		s.gaugeInside()
		return
	}
	s.words = s.all["centre-gauge"]
	const axis, edge = 48.0, 41.0
	s.chuck(Point{14, axis}, 10, 11, 7)
	s.bar(box(14, edge, 90, axis+7)...)
	s.axis(Point{6, axis}, Point{90, axis})
	// The gauge lies along the bar: a point at one end, a notch at the other and one in its
	// near edge, where the tool stands.
	tip := Point{54, edge - 4.5}
	notch := 5.5 * tan30
	s.area(Outline, Clear, Measure, Point{32, edge}, Point{80, edge}, Point{80, edge - 1}, Point{80 - 4*1.7, edge - 5}, Point{80, edge - 9},
		Point{80, edge - 10}, Point{tip.X + notch, edge - 10}, tip, Point{tip.X - notch, edge - 10}, Point{32, edge - 10}, Point{32 - 5*1.7, edge - 5})
	s.bit(pointed(tip, 9, 27, up)...)
	s.metal(box(tip.X-11, 3, tip.X+11, 19)...)
	s.draw(Centre, Measure, tip, Point{tip.X, axis + 10})
	// Square to the axis.
	s.draw(Thin, Measure, Point{tip.X + 4, axis}, Point{tip.X + 4, axis + 4}, Point{tip.X, axis + 4})
	s.name(80, axis+3, "work")
	s.leader(Point{22, 29}, Point{35, edge - 8})
	s.labelTo(22, 27, s.word("gauge"))
	s.leader(Point{69, 24.5}, Point{tip.X + 4.5, 25})
	s.labelFrom(70, 24.5, s.word("tool"))
	s.name(tip.X, 11, "post")
}

func (s *sheet) gaugeInside() {
	const axis = 38.0
	s.chuck(Point{14, axis}, 10, 20, 16)
	for _, side := range []float64{1, -1} {
		s.section(Work, box(14, axis+side*10, 42, axis+side*16)...)
	}
	s.axis(Point{6, axis}, Point{42, axis})
	// The gauge stands along the faced end, its notch towards the axis.
	tip := Point{48.5, axis - 10}
	half := 8 * tan30
	s.area(Outline, Clear, Measure, Point{42, axis - 31}, Point{42, axis - 2}, tip.plus(-half, 8), tip, tip.plus(half, 8), Point{55, axis - 2},
		Point{55, axis - 31}, Point{48.5, axis - 36})
	s.bit(tip, tip.plus(half, 8), tip.plus(half, 10), Point{76, axis}, Point{76, axis + 6}, tip.plus(-half, 16), tip.plus(-half, 8))
	s.metal(box(76, axis-10, 92, axis+12)...)
	s.draw(Centre, Measure, tip, Point{tip.X, axis + 12})
	s.name(34, 57.5, "work")
	s.leader(Point{64, 14}, Point{55, 14})
	s.labelFrom(65, 14, s.word("gauge"))
	s.leader(Point{58, 53}, Point{60, axis + 6})
	s.labelFrom(48, 55, s.word("tool"))
	s.name(84, axis+16, "post")
}

// toolHeight shows what a thin rule between tool point and bar tells, seen from the
// tailstock, and the centre that the point is set by.
func toolHeight(s *sheet) {
	s.paper(112, 56)
	const radius, axis = 9.0, 30.0
	for i, key := range []string{"high", "right", "low"} {
		middle := Point{18 + float64(i)*28, axis}
		rise := []float64{0.5, 0, -0.5}[i]
		touch := middle.away(radius, math.Pi-rise)
		s.circle(Outline, Clear, Work, middle, radius)
		s.axis(middle.plus(-radius, 0), middle.plus(radius, 0))
		s.axis(middle.plus(0, -radius), middle.plus(0, radius))
		// The rule lies on the bar where the point presses it.
		lean := up - rise
		s.area(Outline, Clear, Measure, turned(touch.away(0.7, math.Pi-rise), 11, 17, 1.4, lean)...)
		tip := touch.away(1.4, math.Pi-rise)
		s.bit(tip, Point{middle.X - 17, tip.Y}, Point{middle.X - 17, tip.Y - 5}, tip.plus(-1.2, -5))
		s.name(middle.X-2, 8, key)
		s.name(middle.X-2, 3, key+"-lean")
	}
	// The tailstock centre from the front.
	s.metal(Point{93, axis}, Point{102, axis + 5.2}, Point{111, axis + 5.2}, Point{111, axis - 5.2}, Point{102, axis - 5.2})
	s.axis(Point{91, axis}, Point{108, axis})
	s.bit(Point{84, axis}, Point{92.3, axis}, Point{91, axis - 5}, Point{84, axis - 5})
	s.name(98, 8, "centre")
	s.name(98, 3, "level")
}

// stopTheSpindle shows a chuck from its face with the zone where no hand goes.
func stopTheSpindle(s *sheet) {
	s.paper(sheetWide, 60)
	middle := Point{32, 29}
	ring := round(middle, 26, 0, 2*math.Pi)
	s.hatch(Marked, ring)
	s.circle(Hidden, Open, Marked, middle, 26)
	s.circle(Outline, Clear, Machine, middle, 17)
	for i := range 3 {
		to := up + float64(i)*2*math.Pi/3
		s.metal(turned(middle, -5, 14, 6, to)...)
		s.draw(Thin, Machine, middle.away(9, to).away(3, to+up), middle.away(9, to).away(-3, to+up))
		key := middle.away(14, to+math.Pi/3)
		s.area(Hidden, Open, Machine, turned(key, 0, 3, 3, to+math.Pi/3)...)
	}
	s.circle(Outline, Clear, Work, middle, 5)
	s.arc(Outline, Marked, middle, 21, 0.4*up, 1.3*up)
	s.head(middle.away(21, 1.3*up), 2.3*up-0.1, Marked)
	// The guard over it.
	s.arc(Outline, Machine, middle, 28.5, 0.35*up, 1.9*up)
	s.leader(Point{65, 54}, middle.away(28.5, 0.45*up))
	s.labelFrom(66, 54, s.word("guard"))
	s.leader(Point{65, 40}, middle.away(24, 0.22*up))
	s.labelFrom(66, 40, s.word("zone"))
	s.labelFrom(66, 35, s.word("hands"))
	// The key lies away from it: a T with a square end.
	s.metal(box(78, 16, 82, 30)...)
	s.metal(box(70, 26, 90, 29)...)
	s.metal(box(78.8, 13, 81.2, 16)...)
	s.name(80, 8, "key")
}
