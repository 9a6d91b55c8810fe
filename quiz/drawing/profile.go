package drawing

import (
	"math"

	"scratchpass/calc"
	"scratchpass/content"
)

// tan30 is the slope of a flank.
var tan30 = math.Tan(math.Pi / 6)

// Example numbers of the figures of a thread: 10 threads per inch, a tool with a flat of a
// sixth of the pitch, from the nominal blank.
const (
	exampleTPI   = calc.ThreadsPerInch(10)
	exampleAngle = 29.5
)

var examplePitch = must(exampleTPI.Pitch())

// groove is one thread groove in units of a drawing, so many to a pitch.
type groove struct {
	pitch, depth, flat float64
	nose               float64 // radius of a round nose; its flanks meet the root as a flat's would
	side               calc.Side
}

// groove reads the groove of a tool with a flat, cut from a nominal blank or a basic bore.
// Its letters are P, f and h.
func (s *sheet) groove(wide float64) groove {
	g := groove{pitch: wide, side: calc.Outside}
	if s.choice("side", "outside") == "inside" {
		g.side = calc.Inside
	}
	n := exampleTPI.Number()
	if p, ok := s.facts.Lengths["pitch"]; ok {
		n = 1 / p.Inches()
	}
	pitch := s.length("pitch", "P", examplePitch)
	s.values["n"] = calc.Shortest(n, 2)
	part, depth := 1.0/6, calc.RadialDepthFromNominal
	if g.side == calc.Inside {
		part, depth = 1.0/8, calc.RadialDepthFromBasicBore
	}
	flat := s.length("tool-flat", "f", pitch.Times(part))
	if nose, given := s.facts.Lengths["nose-radius"]; given {
		s.length("nose-radius", "r", nose)
		share := 0.06 // of the pitch, where that is asked for
		if _, known := s.facts.Lengths["pitch"]; known {
			share = min(max(nose.Over(pitch), 0.03), 0.1)
		}
		g.nose, flat = share*wide, pitch.Times(2*share*tan30)
	}
	if widest, err := calc.WidestFlat(g.side, pitch); err != nil || flat > widest {
		flat = pitch.Times(part) // a question about a tool that does not fit shows one that does
	}
	h := s.derived("h", must(depth(pitch, flat)))
	if _, given := s.facts.Lengths["depth"]; given {
		s.length("depth", "h", h)
	}
	g.depth, g.flat = h.Over(pitch)*wide, flat.Over(pitch)*wide
	return g
}

// half is how wide half the groove is at the surface.
func (g groove) half() float64 { return g.flat/2 + g.depth*tan30 }

// profile is the outline of so many grooves, the middle of the first at a place. A surface
// lies above an external thread, and below an internal one.
func (g groove) profile(first, surface float64, n int) []Point {
	root := surface - g.depth
	if g.side == calc.Inside {
		root = surface + g.depth
	}
	var points []Point
	for i := range n {
		x := first + float64(i)*g.pitch
		points = append(append(points, Point{x - g.half(), surface}), g.tip(x, root)...)
		points = append(points, Point{x + g.half(), surface})
	}
	return points
}

// tip is the root of a groove from left to right: a flat, or the arc of a round nose.
func (g groove) tip(x, root float64) []Point {
	if g.nose == 0 {
		return []Point{{x - g.flat/2, root}, {x + g.flat/2, root}}
	}
	out := 1.0
	if g.side == calc.Inside {
		out = -1
	}
	return round(Point{x, root + out*g.nose}, g.nose, -out*5*math.Pi/6, -out*math.Pi/6)
}

// threadProfile is the section of the work with the tool in the middle groove.
func threadProfile(s *sheet) {
	s.paper(sheetWide, sheetHigh)
	g := s.groove(36)
	up := 1.0 // where the axis of the tool comes from
	surface, edge := 32.0, 5.0
	if g.side == calc.Inside {
		up, surface, edge = -1, 26, 53
	}
	if g.nose > 0 { // it goes deeper than a flat
		edge -= up * 3
	}
	const middle = 42.0
	work := clip(g.profile(middle-g.pitch, surface, 3), 0, 88)
	root := surface - up*g.depth
	s.section(Work, append(work, Point{work[len(work)-1].X, edge}, Point{work[0].X, edge})...)
	high := 14 + g.depth
	wide := g.flat/2 + high*tan30
	tool := append([]Point{{middle - wide, root + up*high}}, g.tip(middle, root)...)
	s.area(Outline, Tint, Tool, append(tool, Point{middle + wide, root + up*high})...)
	s.name(middle, surface+up*8, "tool")
	s.name(22, (root+edge)/2, "work")
	s.extension(Point{middle - g.pitch, root}, Point{middle - g.pitch, surface + up*18})
	s.draw(Centre, Measure, Point{middle, root}, Point{middle, surface + up*20})
	s.between(Point{middle - g.pitch, surface + up*18}, Point{middle, surface + up*18})
	s.name(middle-g.pitch/2, surface+up*21.5, "pitch")
	s.extension(Point{middle + g.pitch + g.flat/2, root}, Point{92, root})
	s.extension(Point{86, surface}, Point{92, surface})
	s.between(Point{91, surface}, Point{91, root})
	s.labelTo(96, surface+up*4, s.word("depth"))
	s.leader(Point{middle + 12, (root + edge) / 2}, Point{middle + g.flat/4, root - up*1})
	tip := "flat"
	if g.nose > 0 {
		s.variant("nose")
		tip = "nose"
	}
	s.labelFrom(middle+12, (root+edge)/2, s.word(tip))
}

// Thread returns the profile of one thread with a tool in it whose flat is that of
// the book: a sixth of the pitch of an external one, an eighth of an internal one.
func Thread(d calc.Designation, words map[string]content.DrawingWords) (Drawing, error) {
	side, ok := d.Side()
	facts := Facts{Lengths: map[string]calc.Length{"pitch": d.Pitch}, Words: map[string]string{"side": "outside"}, Metric: d.Metric, Example: true}
	if ok && side == calc.Inside {
		facts.Words["side"] = "inside"
	}
	return drawn("thread-page", facts, words, func(s *sheet) {
		threadProfile(s)
		s.values["thread"] = d.String()
	})
}

// depthAndTravel makes the letters of the triangle known: a, h and c.
func (s *sheet) depthAndTravel() calc.Angle {
	a := s.degrees("angle", "a", exampleAngle)
	h := must(calc.RadialDepthFromNominal(examplePitch, examplePitch.Times(1.0/6)))
	s.derived("h", h)
	s.derived("c", must(calc.CompoundTravel(h, a)))
	return a
}

// compoundTriangle shows the compound's travel as the long side of a triangle whose short
// side is the depth.
func compoundTriangle(s *sheet) {
	s.paper(sheetWide, sheetHigh)
	a := s.depthAndTravel()
	const deep, surface, x = 40.0, 48.0, 40.0
	shift := deep * a.Tan()
	top, foot, start := Point{x, surface}, Point{x, surface - deep}, Point{x + shift, surface}
	s.section(Work, Point{6, surface}, Point{90, surface}, Point{90, surface - deep - 6}, Point{6, surface - deep - 6})
	s.area(NoEdge, Clear, Work, top, start, foot)
	s.draw(Outline, Work, Point{6, surface}, Point{90, surface})
	s.name(74, surface+3, "surface")
	s.draw(Thin, Measure, top.plus(0, 3), top)
	s.between(top, foot)
	s.labelTo(x-2, surface-deep/2, s.word("depth"))
	s.arrow(Tool, start, foot)
	s.labelFrom(x+shift*0.45+4, surface-deep/2-4, s.word("travel"))
	s.angle(foot, 26, math.Pi/2, math.Pi/2-float64(a)*math.Pi/180)
	s.label(x+26*0.30, surface-deep+26+3, s.word("angle"))
}

// bothFlanks shows a cut along one flank by the compound beside a cut straight in.
func bothFlanks(s *sheet) {
	s.paper(sheetWide, 44)
	g := s.groove(38)
	const surface, cut, foot = 38.0, 6.0, 8.0
	for i, x := range []float64{24, 72} {
		old := g
		old.depth -= cut
		shift := 0.0
		if i == 0 { // along the right flank: that flank stays where it is
			shift = -cut * tan30
		}
		work := g.profile(x+shift, surface, 1)
		outline := append([]Point{{x - 23, surface}}, work...)
		s.section(Work, append(outline, Point{x + 23, surface}, Point{x + 23, foot}, Point{x - 23, foot})...)
		was := old.profile(x, surface, 1)
		chip := append(append([]Point{}, work...), was[3], was[2], was[1], was[0])
		s.area(NoEdge, Tint, Tool, chip...)
		s.draw(Outline, Work, work...)
		s.draw(Hidden, Work, was...)
	}
	s.name(24, 3, "one")
	s.name(72, 3, "both")
}

// threeDepths shows that a wider tip makes the same thread with less depth: the width at
// the pitch line is what counts.
func threeDepths(s *sheet) {
	s.paper(sheetWide, 50)
	const surface, foot, pitch = 38.0, 6.0, 30.0
	s.values["P"] = "P = " + s.text(examplePitch)
	line := surface - 3.0/8*calc.HeightOfSharpV*pitch
	for i, part := range []float64{0, 1.0 / 6, 1.0 / 4} {
		flat := examplePitch.Times(part)
		h := must(calc.RadialDepthFromNominal(examplePitch, flat))
		g := groove{pitch: pitch, depth: h.Over(examplePitch) * pitch, flat: part * pitch}
		x := 17 + float64(i)*31
		work := append([]Point{{x - 15, surface}}, g.profile(x, surface, 1)...)
		s.section(Work, append(work, Point{x + 15, surface}, Point{x + 15, foot}, Point{x - 15, foot})...)
		s.tool(Point{x, surface - g.depth}, g.flat/2, g.depth+4)
		letter := string(rune('1' + i))
		s.values["f"+letter], s.values["h"+letter] = s.text(flat), s.text(h)
		s.name(x, surface+8, "flat"+letter)
		s.name(x, 2, "depth"+letter)
	}
	s.draw(Centre, Measure, Point{0, line}, Point{sheetWide - 2, line})
}
