package drawing

import (
	"maps"
	"math"
	"slices"

	"scratchpass/calc"
)

// Shares of a pitch of a 60-degree groove as a tool with a flat of a sixth cuts it.
const (
	veeDepth = 0.6134 // 17/24 of the height of a sharp thread
	veeHalf  = 7.0 / 16
	veeRoot  = 1.0 / 12
)

// variant takes the title and the twin of another form of the figure, where it has its own.
func (s *sheet) variant(name string) {
	if t := s.word("title-" + name); t != "" {
		s.words.Title = t
	}
	if t := s.word("twin-" + name); t != "" {
		s.words.Twin = t
	}
}

// as draws another figure with a word of the facts set, in that figure's words.
func (s *sheet) as(name, fact, word string, draw figure) {
	s.words = s.all[name]
	s.facts.Words = maps.Clone(s.facts.Words)
	if s.facts.Words == nil {
		s.facts.Words = map[string]string{}
	}
	s.facts.Words[fact] = word
	draw(s)
}

// The internal forms of figures that are drawn for both.
func gaugesInside(s *sheet)   { s.as("gauges", "side", calc.Inside.String(), gauges) }
func boreWithGroove(s *sheet) { s.as("blank-and-groove", "side", calc.Inside.String(), blankAndGroove) }

// inside says whether the problem is about an internal thread.
func (s *sheet) inside() bool { return s.choice("side", calc.Outside.String()) == calc.Inside.String() }

// vees is the outline of a 60-degree thread from left to right between two places, the
// middle of one groove at a third. A depth below 0 goes up.
func vees(from, to, groove, surface, pitch, depth float64) []Point {
	groove -= pitch * math.Ceil((groove-from)/pitch+1)
	var line []Point
	for x := groove; x < to+2*pitch; x += pitch {
		line = append(line, Point{x - veeHalf*pitch, surface}, Point{x - veeRoot*pitch, surface - depth},
			Point{x + veeRoot*pitch, surface - depth}, Point{x + veeHalf*pitch, surface})
	}
	return clip(line, from, to)
}

// screw is a threaded bar seen from the side, its axis along the sheet, with the slope of
// a hand: seen so, a right-hand thread leans to the left.
func (d *Drawing) screw(part Part, from, to, axis, radius, pitch float64, hand calc.Hand) {
	depth, lean := veeDepth*pitch, pitch/2
	if hand == calc.LeftHand {
		lean = -lean
	}
	top := vees(from, to, from+pitch/2, axis+radius, pitch, depth)
	foot := vees(from, to, from+pitch/2+lean, axis-radius, pitch, -depth)
	slices.Reverse(foot)
	d.area(Outline, Clear, part, append(top, foot...)...)
	for x := from - pitch; x < to+pitch; x += pitch {
		crest := clip([]Point{{x, axis + radius}, {x + lean, axis - radius}}, from, to)
		root := clip([]Point{{x + pitch/2, axis + radius - depth}, {x + pitch/2 + lean, axis - radius + depth}}, from, to)
		if hand == calc.LeftHand {
			crest = leftward([]Point{{x, axis + radius}, {x + lean, axis - radius}}, from, to)
			root = leftward([]Point{{x + pitch/2, axis + radius - depth}, {x + pitch/2 + lean, axis - radius + depth}}, from, to)
		}
		if len(crest) == 2 {
			d.draw(Thin, part, crest...)
		}
		if len(root) == 2 && pitch > 5 {
			d.draw(Thin, part, root...)
		}
	}
}

// leftward clips a line that goes from right to left.
func leftward(line []Point, low, high float64) []Point {
	return clip(reversed(line), low, high)
}

// wave is the edge of something that goes on beyond the sheet, from one height to another.
func wave(x, from, to float64) []Point {
	const n = 12
	points := make([]Point, n+1)
	for i := range points {
		t := float64(i) / n
		points[i] = Point{x + math.Sin(2*math.Pi*t), from + (to-from)*t}
	}
	return points
}

// box are the corners of a rectangle.
func box(left, foot, right, top float64) []Point {
	return []Point{{left, foot}, {right, foot}, {right, top}, {left, top}}
}

// reversed is a line the other way round.
func reversed(line []Point) []Point {
	line = slices.Clone(line)
	slices.Reverse(line)
	return line
}
