package drawing

import (
	"math"

	"scratchpass/calc"
	"scratchpass/content"
)

// dialBefore is the face of a slide's dial at the reading that a problem starts from.
func dialBefore(s *sheet) { s.slideDial(calc.Inches(0.036)) }

// dialAfter is the same dial, one turn later.
func dialAfter(s *sheet) { s.slideDial(calc.Inches(0.013)) }

func (s *sheet) slideDial(example calc.Length) {
	shows := "start"
	if _, given := s.facts.Lengths["dial"]; given { // what it reads now
		shows = "dial"
	}
	reading := s.needed(shows, "reading", example)
	turn := s.needed("turn", "turn", calc.Inches(0.1))
	s.values["reading"], s.values["turn"] = s.measured(reading), s.measured(turn)
	unit, label := s.dialUnit()
	s.values["lines"] = calc.Shortest(turn.Over(unit), 0)
	s.dial(slidePlaces(turn, unit, label), reading.Over(turn))
}

// dialUnit is what a dial counts in, and how its numbers are written.
func (s *sheet) dialUnit() (unit calc.Length, label func(calc.Length) string) {
	if s.facts.Metric {
		return calc.Millimetres(0.01), func(l calc.Length) string { return calc.Shortest(l.Millimetres(), 2) }
	}
	return calc.Thou, func(l calc.Length) string { return calc.Fixed(l.Over(calc.Thou), 0) }
}

// measured is a length with its unit.
func (s *sheet) measured(l calc.Length) string {
	if s.facts.Metric {
		return calc.Fixed(l.Millimetres(), 3) + " mm"
	}
	return calc.LengthText(l)
}

// SlideDial returns the face of a slide's dial at a reading. of is the slide's name.
func SlideDial(of string, reading, turn calc.Length, metric bool, words map[string]content.DrawingWords) (Drawing, error) {
	facts := Facts{Lengths: map[string]calc.Length{"start": reading, "turn": turn}, Metric: metric}
	return drawn("slide-dial", facts, words, func(s *sheet) {
		s.slideDial(reading)
		s.values["slide"] = of
	})
}

// ThreadDial returns the face of a thread dial; at is the mark under its index, from 0.
func ThreadDial(at float64, marks int, words map[string]content.DrawingWords) (Drawing, error) {
	return drawn("thread-dial", Facts{}, words, func(s *sheet) {
		places := make([]place, marks)
		for i := range places {
			places[i] = place{float64(i) / float64(marks), calc.Shortest(float64(i+1), 0)}
		}
		s.dial(places, at/float64(marks))
		near := int(math.Round(at))
		where := "at"
		if off := at - float64(near); math.Abs(off) > 0.1 {
			where = "between marks, nearest"
		}
		s.values = map[string]string{"marks": calc.Shortest(float64(marks), 0), "where": where, "mark": calc.Shortest(float64(near%marks+1), 0)}
	})
}

// place is a line of a round face: where it stands, as a share of a turn, and the number
// at it, if it has one.
type place struct {
	share float64
	label string
}

// mostNumbers is how many numbers a face has room for.
const mostNumbers = 13

// slidePlaces are the lines of a slide's dial: a number at every 10 units, or where there
// would be too many at every 20 or 50 or more, a line half-way between, and one at each
// unit where there is room.
func slidePlaces(turn, unit calc.Length, label func(calc.Length) string) []place {
	step := unit.Times(10)
	for _, k := range []float64{10, 20, 25, 50, 100, 200, 500} {
		if step = unit.Times(k); turn.Over(step) <= mostNumbers {
			break
		}
	}
	return placesEvery(step, step.Times(0.5), turn, label)
}

// placesEvery has a number at each step, of which a line is a part. The last has none where
// it would run into the zero.
func placesEvery(step, line, turn calc.Length, label func(calc.Length) string) []place {
	var places []place
	each := int(math.Round(step.Over(line)))
	for i := 0; ; i++ {
		at := line.Times(float64(i))
		if at >= turn.Times(1-1e-9) {
			break
		}
		p := place{share: at.Over(turn)}
		if i%each == 0 && (i == 0 || turn-at > step.Times(0.6)) {
			p.label = label(at)
		}
		places = append(places, p)
	}
	return places
}

// dial is a round face alone on its sheet.
func (s *sheet) dial(places []place, share float64) {
	s.paper(80, 80)
	s.Most = 38
	s.face(dialMiddle, 30, places, share)
}

// dialMiddle is the middle of a face that stands alone.
var dialMiddle = Point{40, 36}

// face is a round face with lines, those with a number longer, turned so that a share of
// a turn stands under the index at the top. Numbers grow clockwise.
func (d *Drawing) face(middle Point, r float64, places []place, share float64) {
	at := func(part, radius float64) Point { return middle.away(radius, up-2*math.Pi*(part-share)) }
	d.circle(Outline, Open, Machine, middle, r)
	for _, p := range places {
		inner := r - 2.5
		if p.label != "" {
			inner = r - 5
		}
		d.draw(Thin, Machine, at(p.share, inner), at(p.share, r))
	}
	for _, p := range places {
		if p.label != "" {
			q := at(p.share, r-10)
			d.label(q.X, q.Y, p.label)
		}
	}
	index := middle.plus(0, r+1)
	d.area(Thin, Solid, Marked, index, index.plus(-2, 5), index.plus(2, 5))
}

// twoDials shows one cut on a dial that reads the travel of its slide and on one that reads
// what comes off the diameter.
func twoDials(s *sheet) {
	s.paper(112, 60)
	depth := calc.Inches(0.020)
	s.derived("h", depth)
	s.derived("d", depth.Times(2))
	turn := calc.Inches(0.1)
	unit, label := s.dialUnit()
	for i, reading := range []calc.Length{depth, depth.Times(2)} {
		x := 28 + float64(i)*56
		s.face(Point{x, 30}, 20, slidePlaces(turn, unit, label), reading.Over(turn))
		s.name(x, 5, []string{"radius", "diameter"}[i])
	}
}

// dialAfterPass is a dial before and after an infeed. Where it stands after that is what
// problems ask for: an example alone shows it.
func dialAfterPass(s *sheet) {
	s.paper(112, 60)
	one, two, three := calc.Inches(0.036), calc.Inches(0.1), calc.Inches(0.077)
	if s.facts.Metric {
		one, two, three = calc.Millimetres(0.86), calc.Millimetres(2), calc.Millimetres(1.6)
	}
	start, turn := s.needed("start", "r0", one), s.needed("turn", "R", two)
	infeed := s.length("infeed", "i", three)
	s.derived("r", (start + infeed).Remainder(turn))
	unit, label := s.dialUnit()
	step := fewNumbers(turn, unit)
	places := placesEvery(step, unit.Times(5), turn, label)
	const y, r = 31.0, 22.0
	s.face(Point{25, y}, r, places, start.Over(turn))
	after := 0.0
	if s.facts.Example {
		after = (start + infeed).Over(turn)
	} else {
		s.variant("asked")
	}
	s.face(Point{87, y}, r, places, after)
	if !s.facts.Example {
		s.Shapes = s.Shapes[:len(s.Shapes)-1] // without its index
		s.label(87, y+r+4, "?")
	}
	s.arrow(Marked, Point{51, y}, Point{62, y})
	if _, given := s.facts.Lengths["infeed"]; given || s.facts.Example {
		s.label(56, y+8, "${i}")
	}
	// The way in which the numbers rise.
	s.arc(Thin, Measure, Point{25, y}, r+3, up-0.4, up-1)
	s.head(Point{25, y}.away(r+3, up-1), -1.1, Measure)
	s.labelFrom(47, y+r-2, s.word("rise"))
	s.name(25, 4, "before")
	s.name(87, 4, "after")
}

// fewNumbers is a step between the numbers of a small face, so that the last keeps clear
// of the zero where one of the usual steps does that.
func fewNumbers(turn, unit calc.Length) calc.Length {
	step := turn
	for _, k := range []float64{200, 100, 50, 25, 20, 10} {
		n := turn.Over(unit.Times(k))
		if rest := n - math.Floor(n+1e-6); n > 3 && n <= 10 && (rest < 1e-6 || rest > 0.6) {
			step = unit.Times(k)
		}
	}
	return step
}
