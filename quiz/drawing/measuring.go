package drawing

import (
	"slices"

	"scratchpass/calc"
)

// measured is a threaded bar between the anvils of a micrometer, in section: the middle
// of a groove at the top stands over a crest at the foot.
type measured struct{ axis, pitch, radius, left, right, groove float64 }

func (m measured) depth() float64 { return veeDepth * m.pitch }

// line is how far the pitch line lies from the axis.
func (m measured) line() float64 { return m.radius - 3.0/8*calc.HeightOfSharpV*m.pitch }

func (m measured) draw(s *sheet) {
	top := vees(m.left, m.right, m.groove, m.axis+m.radius, m.pitch, m.depth())
	foot := vees(m.left, m.right, m.groove+m.pitch/2, m.axis-m.radius, m.pitch, -m.depth())
	slices.Reverse(foot)
	s.section(Work, append(top, foot...)...)
	s.axis(Point{m.left, m.axis}, Point{m.right, m.axis})
}

// pitchLines are both, with the diameter between them at a place.
func (m measured) pitchLines(s *sheet, from, to, at float64) {
	for _, y := range []float64{m.line(), -m.line()} {
		s.draw(Centre, Marked, Point{from, m.axis + y}, Point{to, m.axis + y})
	}
	s.between(Point{at, m.axis + m.line()}, Point{at, m.axis - m.line()})
}

// wires is the measurement over three wires.
func wires(s *sheet) {
	s.paper(sheetWide, 60)
	pitch := s.length("pitch", "P", examplePitch)
	best := must(calc.WiresFor(examplePitch)).Best
	if w, err := calc.WiresFor(pitch); err == nil {
		best = w.Best
	}
	wire := s.length("wire", "W", best)
	e := s.length("pitch-diameter", "E", must(calc.BasicPitchDiameter(calc.Inches(1), examplePitch)))
	reading, err := calc.OverWires(e, wire, pitch)
	if err != nil {
		reading = e // a wire that does not fit: shown by its letter alone
	}
	s.length("reading", "M", reading)
	share := min(max(wire.Over(pitch), 0.56), 0.72) // larger ones have no room on the sheet
	m := measured{axis: 30, pitch: 17, radius: 17.5, left: 22, right: 68, groove: 36.5}
	m.draw(s)
	r := share * m.pitch / 2
	// The middle of a wire lies so far from the axis that it touches both flanks.
	off := m.line() + 2*r - calc.HeightOfSharpV*m.pitch/2
	for _, w := range []Point{{m.groove, off}, {m.groove + m.pitch, off}, {m.groove + m.pitch/2, -off}} {
		s.circle(Outline, Tint, Tool, Point{w.X, m.axis + w.Y}, r)
	}
	face := off + r
	s.area(Outline, Clear, Machine, box(m.groove-7, m.axis+face, m.groove+24, min(m.axis+face+6, 60))...)
	s.area(Outline, Clear, Machine, box(m.groove-7, max(m.axis-face-6, 0), m.groove+24, m.axis-face)...)
	m.pitchLines(s, 8, 72, 11)
	s.label(11, m.axis, "${E}")
	s.extension(Point{m.groove + 24, m.axis + face}, Point{84, m.axis + face})
	s.extension(Point{m.groove + 24, m.axis - face}, Point{84, m.axis - face})
	s.between(Point{84, m.axis + face}, Point{84, m.axis - face})
	s.label(84, m.axis, "${M}")
	s.leader(Point{70, 56}, Point{m.groove + m.pitch, m.axis + off}.away(r, 0.3))
	s.labelFrom(68, 57.5, "${W}")
}

// threadMicrometer reads the pitch diameter between a cone and a vee.
func threadMicrometer(s *sheet) {
	s.paper(sheetWide, 60)
	m := measured{axis: 29, pitch: 17, radius: 14.5, left: 18, right: 67, groove: 42.5}
	m.draw(s)
	tip := Point{m.groove, m.axis + m.radius - m.depth() + 1.5}
	high := m.radius + m.axis - tip.Y + 1
	flat := veeRoot*m.pitch + 1.5*tan30
	wide := flat + high*tan30
	s.area(Outline, Tint, Tool, tip.plus(-wide, high), tip.plus(-flat, 0), tip.plus(flat, 0), tip.plus(wide, high),
		Point{m.groove + wide, 60}, Point{m.groove - wide, 60})
	// The vee rides on the flanks of the crest opposite.
	foot := m.axis - m.radius
	crest := (0.5 - veeHalf) * m.pitch
	deep := 9.0
	s.area(Outline, Tint, Tool, Point{m.groove - crest - deep*tan30, foot + deep}, Point{m.groove - crest + 1*tan30, foot - 1},
		Point{m.groove + crest - 1*tan30, foot - 1}, Point{m.groove + crest + deep*tan30, foot + deep},
		Point{m.groove + 10, foot + deep}, Point{m.groove + 10, 0}, Point{m.groove - 10, 0}, Point{m.groove - 10, foot + deep})
	m.pitchLines(s, 10, 84, 82)
	s.length("pitch-diameter", "E", must(calc.BasicPitchDiameter(calc.Inches(1), examplePitch)))
	s.label(82, m.axis, "${E}")
	s.leader(Point{62, 55}, Point{m.groove + wide, 52})
	s.labelFrom(63, 55, s.word("cone"))
	s.leader(Point{62, 5}, Point{m.groove + 10, 7})
	s.labelFrom(63, 5, s.word("vee"))
	s.leader(Point{12, 52}, Point{20, m.axis + m.line()})
	s.labelFrom(2, 54, s.word("line"))
}

// gauges are a go gauge that runs on all the way, and a not-go gauge that stops.
func gauges(s *sheet) {
	s.paper(sheetWide, 64)
	if s.inside() {
		s.variant("inside")
	}
	for i, axis := range []float64{44.5, 13.5} {
		if s.inside() {
			plug(s, axis, i == 0)
		} else {
			ring(s, axis, i == 0)
		}
	}
	s.labelFrom(4, 61, s.word("go"))
	s.labelFrom(4, 29.2, s.word("not-go"))
}

const gaugePitch = 5.0

// ring is a ring gauge in section on a threaded bar with a shoulder.
func ring(s *sheet, axis float64, all bool) {
	s.area(Outline, Clear, Work, append([]Point{{16, axis + 11}, {16, axis - 11}}, wave(5, axis-11, axis+11)...)...)
	s.screw(Work, 16, 66, axis, 7, gaugePitch, calc.RightHand)
	left := 66 - 2*gaugePitch
	if all {
		left = 16
	}
	s.nut(Machine, left, left+20, axis, 16+gaugePitch/2)
	s.axis(Point{8, axis}, Point{max(left+22, 68), axis})
}

// plug is a plug gauge in a threaded hole.
func plug(s *sheet, axis float64, all bool) {
	const mouth = 46.0
	s.nut(Work, 14, mouth, axis, mouth-gaugePitch/2)
	s.draw(Outline, Work, Point{14, axis + 7}, Point{14, axis - 7})
	s.draw(Outline, Work, Point{mouth, axis + 7}, Point{mouth, axis - 7})
	tip := mouth - 2*gaugePitch
	if all {
		tip = mouth - 8*gaugePitch
	}
	s.screw(Machine, tip, tip+8*gaugePitch+2, axis, 7, gaugePitch, calc.RightHand)
	neck := tip + 8*gaugePitch + 2
	s.area(Outline, Clear, Machine, box(neck, axis-3, neck+3, axis+3)...)
	s.area(Outline, Tint, Machine, box(neck+3, axis-6, min(neck+24, 94), axis+6)...)
	s.axis(Point{6, axis}, Point{90, axis})
}

// nut is metal round a thread, in section.
func (s *sheet) nut(part Part, from, to, axis, groove float64) {
	for _, up := range []float64{1, -1} {
		edge := vees(from, to, groove, axis+7*up, gaugePitch, veeDepth*gaugePitch*up)
		s.section(part, append(edge, Point{to, axis + 13*up}, Point{from, axis + 13*up})...)
		groove += gaugePitch / 2
	}
}
