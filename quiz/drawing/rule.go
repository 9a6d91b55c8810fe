package drawing

import (
	"strconv"

	"scratchpass/calc"
)

// ruleOnThread is a rule along a thread, its crests counted. Where a problem asks for their
// number, the middle is left out.
func ruleOnThread(s *sheet) {
	s.paper(sheetWide, 50)
	crests := int(s.number("crests", "c", 9, 0))
	s.length("first", "r1", 0)
	s.length("last", "r2", calc.Inches(1))
	_, counted := s.facts.Numbers["crests"]
	if over, given := s.facts.Lengths["over"]; given {
		s.length("over", "r2", over)
		s.values["r1"] = "0"
		s.values["r2"] = s.values["r2"][len("r2 = "):]
	}
	asked := !counted && !s.facts.Example
	if asked {
		s.variant("asked")
		crests = 9
	}
	crests = max(crests, 2)
	const surface, foot, first, last, edge = 22.0, 6.0, 10.0, 86.0, 28.0
	pitch := (last - first) / float64(crests-1)
	deep := min(veeDepth*pitch, 9)
	dense := pitch < 6.5 // not each crest has room for its number
	piece := func(from, to float64) {
		line := vees(from, to, first+pitch/2, surface, pitch, deep)
		s.section(Work, append(line, Point{to, foot}, Point{from, foot})...)
		s.area(Outline, Clear, Measure, box(from, edge, to, edge+10)...)
	}
	if asked { // three crests, and then the last two
		piece(2, first+2.5*pitch)
		piece(last-1.5*pitch, 94)
	} else {
		piece(2, 94)
	}
	for i := range crests {
		x := first + float64(i)*pitch
		if asked && i > 2 && i < crests-2 {
			continue
		}
		text := strconv.Itoa(i + 1)
		switch {
		case asked && i == crests-1:
			text = "?"
		case asked && i == crests-2, dense && i < crests-1 && (i%2 == 1 || i == crests-2):
			continue
		}
		s.label(x, surface+3, text)
	}
	for i := 0.0; i <= 32; i++ {
		x := first + (last-first)*i/32
		if asked && x > first+2.5*pitch && x < last-1.5*pitch {
			continue
		}
		high := 2.0
		if int(i)%8 == 0 {
			high = 4
		}
		s.draw(Thin, Measure, Point{x, edge}, Point{x, edge + high})
	}
	for k, x := range []float64{first, last} {
		s.draw(Thin, Measure, Point{x, edge + 4}, Point{x, edge + 14})
		at := []float64{12, 84}[k]
		s.label(at, edge+16, []string{"${r1}", "${r2}"}[k])
	}
	if asked {
		s.label(48, edge+5, "...")
	} else {
		s.label(48, edge+7, s.word("rule"))
	}
}
