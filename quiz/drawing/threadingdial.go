package drawing

import (
	"math"
	"strconv"

	"scratchpass/calc"
)

// threadChasingDial shows the dial with the worm gear behind it on the lead screw.
func threadChasingDial(s *sheet) { s.chasingDial(nil) }

// safeMarks is the same dial with the marks at which the half-nut may close again.
func safeMarks(s *sheet) {
	// 9 threads per inch on a lead screw of 4: every second of 8 marks, half an inch apart.
	s.chasingDial(must(calc.ThreadDial{LeadScrew: 4, Teeth: 16, Marks: 8}.SafeMarks(1.0 / 9)))
}

// chasingDial marks lines counted from the one under the index.
func (s *sheet) chasingDial(safe []int) {
	s.paper(sheetWide, 64)
	marks := int(s.number("marks", "M", 8, 0))
	teeth := int(s.number("gear", "T", 16, 0))
	first := s.number("first", "k", 1, 0) - 1 // the mark under the index
	if !s.facts.Example {
		safe = nil // a problem asks for them
	}
	middle := Point{29, 38}
	const pitchRadius, tooth, radius = 21.0, 4.0, 16.5
	// The lead screw: its threads are as far apart as the teeth.
	pitch := 2 * math.Pi * pitchRadius / float64(teeth)
	s.leadScrew(middle.X, middle.Y-pitchRadius, pitch, tooth)
	s.wheel(Machine, middle, pitchRadius, tooth, teeth, -up)
	s.circle(Outline, Clear, Machine, middle, radius)
	every := 1
	for marks/every > 9 {
		every *= 2
	}
	for k := range marks {
		to := up - 2*math.Pi*(float64(k)-first)/float64(marks)
		inner := radius - 2.5
		named := (k-int(first))%every == 0 // the one under the index among them
		if named {
			inner = radius - 4
		}
		s.draw(Thin, Machine, middle.away(inner, to), middle.away(radius, to))
		for _, m := range safe {
			if m == k {
				s.area(Outline, Solid, Marked, turned(middle.away(radius-2, to), 2, 2, 1, to)...)
			}
		}
		if at := middle.away(radius-7, to); named {
			s.label(at.X, at.Y, strconv.Itoa(k+1))
		}
	}
	index := middle.plus(0, radius+0.5)
	s.area(Thin, Solid, Marked, index, index.plus(-2, 5), index.plus(2, 5))
	for _, l := range []struct {
		key  string
		y, x float64
		to   Point
	}{
		{"index", 60, 59, index.plus(2, 4)}, {"dial", 48, 59, middle.away(radius, 0.35)},
		{"gear", 36, 59, middle.away(pitchRadius+1, -0.2)}, {"screw", 27, 66, Point{63, middle.Y - pitchRadius + tooth/2}},
	} {
		from := Point{l.x, l.y}
		if l.x > 60 {
			from.Y -= 2
		}
		s.leader(from, l.to)
		s.labelFrom(60, l.y, s.word(l.key))
	}
}

// leadScrew is a screw from the side, one of its grooves under a place, its pitch line
// at a height.
func (s *sheet) leadScrew(x, line, pitch, tooth float64) {
	const left, right = 4.0, 92.0
	foot := 2.0
	var top []Point
	for i := math.Ceil((left - x) / pitch); x+i*pitch < right+pitch; i++ {
		for _, p := range [4]struct{ share, out float64 }{{-0.36, 1}, {-0.14, -1}, {0.14, -1}, {0.36, 1}} {
			top = append(top, Point{x + (i+p.share)*pitch, line + p.out*tooth/2})
		}
	}
	top = clip(top, left, right)
	s.metal(append(top, Point{right, foot}, Point{left, foot})...)
	for _, p := range top {
		if p.Y > line && p.X > left+1 && p.X-2 > left && p.X < right-1 {
			s.draw(Thin, Machine, p, Point{max(left, p.X-pitch*0.3), foot})
		}
	}
	s.axis(Point{left + 1, (line + foot) / 2}, Point{right - 1, (line + foot) / 2})
}
