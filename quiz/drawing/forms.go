package drawing

import (
	"math"
	"slices"
)

// form is one pitch of a thread form, as a share of the pitch, from a crest to the next.
type form struct {
	name  string
	shape []Point
}

// forms are those that a learner should know again. Whitworth's is rounded.
var forms = []form{
	{"vee", []Point{{0, 0}, {0.125, 0}, {0.4375, -0.5413}, {0.6875, -0.5413}, {1, 0}}},
	{"whitworth", whitworth()},
	{"acme", []Point{{0, 0}, {0.3707, 0}, {0.5, -0.5}, {0.8707, -0.5}, {1, 0}}},
	{"trapezoidal", []Point{{0, 0}, {0.366, 0}, {0.5, -0.5}, {0.866, -0.5}, {1, 0}}},
	{"square", []Point{{0, 0}, {0.5, 0}, {0.5, -0.5}, {1, -0.5}, {1, 0}}},
	{"buttress", []Point{{0, 0}, {0.163, 0}, {0.2444, -0.6627}, {0.3373, -0.6627}, {1, 0}}},
}

func whitworth() []Point {
	const r, depth, flank = 0.1373, 0.6403, 27.5 * math.Pi / 180
	line := round(Point{0, -r}, r, up, flank)
	line = append(line, round(Point{0.5, r - depth}, r, math.Pi+flank, 2*math.Pi-flank)...)
	return append(line, round(Point{1, -r}, r, math.Pi-flank, up)...)
}

// fiveForms are thread forms beside each other, with their angles.
func fiveForms(s *sheet) {
	s.paper(sheetWide, 64)
	const wide, cell = 13.0, 32.0
	for i, f := range forms {
		left, surface := float64(i%3)*cell+2, 61-float64(i/3)*32
		var line []Point
		for n := range 3 {
			for _, p := range f.shape {
				line = append(line, Point{left + (float64(n)+p.X)*wide - 4, surface + p.Y*wide})
			}
		}
		line = clip(line, left, left+cell-4)
		s.section(Work, append(line, Point{left + cell - 4, surface - 18}, Point{left, surface - 18})...)
		s.name(left+cell/2-2, surface-22.5, f.name)
	}
}

// calloutMetric is a metric one.
func calloutMetric(s *sheet) {
	s.words, s.facts.Metric = s.all["callout"], true
	callout(s)
}

// callout is a thread callout taken apart.
func callout(s *sheet) {
	s.paper(sheetWide, 48)
	keys := []string{"size", "tpi", "series", "class", "side", "hand"}
	at := []float64{10, 27, 44, 60, 72, 87}
	if s.facts.Metric {
		s.variant("metric")
		keys = []string{"m", "m-size", "m-pitch", "m-class", "m-hand"}
		at = []float64{8, 24, 44, 64, 84}
	}
	for i, key := range keys {
		text := s.word(key)
		half := float64(letters(text)) + 2
		s.area(Outline, Clear, Marked, box(at[i]-half, 21, at[i]+half, 29)...)
		s.label(at[i], 25, text)
		from, to, y := 38.0, 29.5, 41.0
		if i%2 == 1 {
			from, to, y = 12, 20.5, 8.5
		}
		s.leader(Point{at[i], from}, Point{at[i], to})
		lines := []string{key + "-is"}
		if s.word(key+"-is2") != "" {
			lines = append(lines, key+"-is2")
		}
		if i%2 == 0 {
			slices.Reverse(lines)
			for k, l := range lines {
				s.name(at[i], y+float64(k)*4.5, l)
			}
			continue
		}
		for k, l := range lines {
			s.name(at[i], y-float64(k)*4.5, l)
		}
	}
}

// screwPitchGauge is a leaf on the lines of a scratch pass: one that fits, one that does
// not.
func screwPitchGauge(s *sheet) {
	s.paper(sheetWide, 56)
	const pitch, surface, mark = 7.0, 23.0, 2.2
	for i, x := range []float64{2, 51} {
		const wide = 43.0
		var line []Point
		for k := range 6 {
			g := x + 4 + float64(k)*pitch
			line = append(line, Point{g - mark*tan30, surface}, Point{g, surface - mark}, Point{g + mark*tan30, surface})
		}
		line = append(append([]Point{{x, surface}}, line...), Point{x + wide, surface})
		s.section(Work, append(line, Point{x + wide, 9}, Point{x, 9})...)
		step, tip := pitch, surface-mark+0.6
		if i == 1 {
			step, tip = pitch*5/4, surface+0.5
		}
		depth := pitch * veeDepth
		leaf := []Point{{x + 1, tip + depth}}
		for k := 0; 4+float64(k)*step < wide-2; k++ {
			g := x + 4 + float64(k)*step
			leaf = append(leaf, Point{g - depth*tan30, tip + depth}, Point{g - 0.4, tip}, Point{g + 0.4, tip}, Point{g + depth*tan30, tip + depth})
		}
		leaf = append(leaf, Point{x + wide - 1, tip + depth}, Point{x + wide - 1, 43}, Point{x + 1, 43})
		s.area(Outline, Tint, Tool, leaf...)
		s.name(x+wide/2, 37, "leaf")
	}
	s.name(23.5, 3, "fits")
	s.name(72.5, 3, "not")
	s.label(23.5, 51, s.word("each"))
	s.label(72.5, 51, s.word("drift"))
}
