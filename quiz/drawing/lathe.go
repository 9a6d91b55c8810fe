package drawing

import (
	"math"
	"strings"

	"scratchpass/content"
)

// lathePart is one part of the lathe: what it looks like, and where its name stands.
type lathePart struct {
	key  string // empty: what is there but has no name
	of   string // what it is a part of
	draw func(b brush)
	name Point
	lead []Point // from its name to it; none where the name stands on it
}

// brush draws a part of the lathe, heavy where it is the one that is talked about.
type brush struct {
	d      *Drawing
	edge   Pen
	fill   Fill
	part   Part
	marked bool
}

func (b brush) area(points ...Point)       { b.d.area(b.edge, b.fill, b.part, points...) }
func (b brush) box(x0, y0, x1, y1 float64) { b.area(box(x0, y0, x1, y1)...) }
func (b brush) line(points ...Point)       { b.d.draw(Thin, b.part, points...) }
func (b brush) round(x, y, radius float64) { b.d.circle(b.edge, b.fill, b.part, Point{x, y}, radius) }
func (b brush) thin(x, y, radius float64)  { b.d.circle(Thin, b.fill, b.part, Point{x, y}, radius) }
func (b brush) lever(from, to Point, wide float64) {
	b.area(turned(from, 0, distance(from, to), wide, direction(from, to))...)
	b.d.circle(b.edge, Clear, b.part, to, wide)
}

// latheParts are drawn in this order: what stands nearer comes later.
var latheParts = []lathePart{
	{key: "bed", name: Point{104, 25.5}, draw: func(b brush) {
		b.box(8, 12, 126, 29)
		b.line(Point{36, 22.5}, Point{126, 22.5})
	}},
	{key: "headstock", name: Point{23, 49}, draw: func(b brush) {
		b.area(Point{8, 29}, Point{8, 52}, Point{10, 54}, Point{36, 54}, Point{38, 52}, Point{38, 29})
		b.box(1, 23, 8, 55)
		b.thin(18, 43, 2)
		b.thin(28, 43, 2)
		b.line(Point{18, 43}, Point{16, 37})
		b.line(Point{28, 43}, Point{30, 37})
	}},
	{key: "feed-reverse-lever", name: Point{18, 66}, lead: []Point{{4, 63}, {12.2, 35.5}}, draw: func(b brush) {
		b.round(18, 33, 1.8)
		b.lever(Point{16.2, 33}, Point{12, 33}, 1.3)
	}},
	{key: "spindle", name: Point{46, 66}, lead: []Point{{44, 63.5}, {40, 46}}, draw: func(b brush) {
		if b.marked {
			for _, y := range []float64{39, 45} {
				b.d.draw(Hidden, b.part, Point{1, y}, Point{38, y})
			}
		}
		b.box(38, 38, 42, 46)
	}},
	{draw: func(b brush) { // the work
		b.d.area(b.edge, Clear, Work, box(53, 39, 92, 45)...)
		b.d.axis(Point{40, 42}, Point{124, 42})
	}},
	{key: "chuck", name: Point{61, 66}, lead: []Point{{59, 63.5}, {49.5, 52.5}}, draw: func(b brush) {
		b.box(42, 31, 51, 53)
		b.area(Point{51, 45}, Point{57, 45}, Point{57, 48}, Point{54, 48}, Point{54, 51}, Point{51, 51})
		b.area(Point{51, 39}, Point{57, 39}, Point{57, 36}, Point{54, 36}, Point{54, 33}, Point{51, 33})
		b.line(Point{46, 31}, Point{46, 53})
		b.line(box(47.5, 40, 49.5, 44)...)
	}},
	{key: "tailstock", name: Point{111, 48}, draw: func(b brush) {
		b.area(Point{90.5, 42}, Point{95, 45}, Point{95, 39})
		b.box(94, 38.5, 101, 45.5)
		b.area(Point{100, 29}, Point{100, 32}, Point{103, 34}, Point{101, 37}, Point{101, 52}, Point{121, 52}, Point{121, 37}, Point{118, 34}, Point{121, 32},
			Point{121, 29})
		b.box(121, 40, 123.5, 44)
		b.box(123.5, 34, 126, 50)
	}},
	{key: "lead-screw", name: Point{46, 7.5}, lead: []Point{{43, 10}, {43, 18.5}}, draw: func(b brush) {
		b.box(36, 18.5, 120, 21.5)
		for x := 37.0; x < 119; x += 3 {
			b.line(Point{x, 18.5}, Point{x + 1, 21.5})
		}
	}},
	{key: "feed-rod", name: Point{48, 2.5}, lead: []Point{{57.5, 4}, {57.5, 13}}, draw: func(b brush) { b.box(36, 13, 120, 15) }},
	{draw: func(b brush) { b.box(118, 11.5, 123, 23) }},
	{key: "quick-change-gearbox", name: Point{20, 3}, lead: []Point{{20, 5.5}, {20, 11}}, draw: func(b brush) {
		b.box(8, 11, 36, 27)
		b.line(Point{12, 19.5}, Point{32, 17.5})
		for i := range 6 {
			b.thin(13+float64(i)*3.7, 23.2-float64(i)*0.4, 0.8)
		}
		b.line(Point{24, 18.3}, Point{24, 13.5})
		b.thin(24, 13.5, 1)
	}},
	{key: "saddle", of: "carriage", name: Point{67, 30.5}, draw: func(b brush) {
		b.area(Point{58, 27}, Point{58, 33}, Point{90, 33}, Point{90, 27})
	}},
	{key: "apron", of: "carriage", name: Point{73, 24.5}, draw: func(b brush) {
		b.area(Point{60, 27}, Point{60, 12}, Point{62, 10}, Point{86, 10}, Point{88, 12}, Point{88, 27})
		b.thin(66.5, 17.5, 4.5)
		b.thin(66.5, 17.5, 1.2)
		b.line(Point{66.5, 17.5}, Point{69.5, 14.5})
	}},
	{key: "carriage", name: Point{73, 7}, draw: func(brush) {}},
	{key: "half-nut-lever", name: Point{108, 2.5}, lead: []Point{{94, 3}, {82.5, 15}}, draw: func(b brush) {
		b.round(79, 20, 1.8)
		b.lever(Point{79, 20}, Point{82.5, 16}, 1.5)
	}},
	{key: "thread-chasing-dial", name: Point{109, 7.5}, lead: []Point{{93, 9.5}, {91.5, 16.5}}, draw: func(b brush) {
		b.box(88, 18, 89.5, 24)
		b.round(92, 20, 3.6)
		for i := range 4 {
			to := math.Pi/4 + float64(i)*math.Pi/2
			b.line(Point{92, 20}.away(1.7, to), Point{92, 20}.away(3.6, to))
		}
	}},
	{key: "cross-slide", name: Point{101, 56}, lead: []Point{{89.5, 55}, {79, 36}}, draw: func(b brush) {
		b.box(67, 33, 79, 37)
		b.thin(84, 29.8, 2.3)
		b.line(Point{84, 29.8}, Point{86.5, 27.5})
	}},
	{key: "compound-rest", name: Point{97, 61}, lead: []Point{{83.5, 60}, {78, 40.5}}, draw: func(b brush) {
		b.box(64, 37, 79, 41)
		b.box(79, 38.3, 82, 39.7)
		b.box(82, 36.5, 83.5, 41.5)
	}},
	{key: "tool-post", name: Point{80, 66}, lead: []Point{{76, 63.5}, {71.5, 51}}, draw: func(b brush) {
		b.d.area(b.edge, Tint, Tool, box(65, 42, 76, 45.5)...)
		b.area(Point{67.5, 41}, Point{67.5, 48}, Point{74.5, 48}, Point{74.5, 41})
		b.box(70, 48, 72, 51)
	}},
}

// lathe shows a lathe from the front with the names of its parts, or one of them alone.
func lathe(s *sheet) {
	s.paper(128, 68)
	alone := s.choice("part", "")
	for _, p := range latheParts {
		b := brush{d: &s.Drawing, edge: Outline, fill: Clear, part: Machine}
		switch {
		case alone == "":
		case p.key != "" && (p.key == alone || p.of == alone):
			b.fill, b.part, b.marked = Tint, Marked, true
		default:
			b.edge = Thin
		}
		p.draw(b)
	}
	if alone == "" || alone == "carriage" {
		for _, x := range []float64{60.5, 88} {
			s.draw(Thin, Measure, Point{x, 9}, Point{x, 7}, Point{73 + math.Copysign(9, x-73), 7})
		}
	}
	for _, p := range latheParts {
		if p.key == "" || alone != "" && p.key != alone {
			continue
		}
		if len(p.lead) > 0 {
			s.leader(p.lead[0], p.lead[1])
		}
		s.name(p.name.X, p.name.Y, p.key)
		if alone != "" {
			s.Labels[len(s.Labels)-1].Part = Marked
			s.values["part"] = s.word(p.key)
			s.words.Title, s.words.Twin = s.word("one"), s.word("one-twin")+"\n"+s.word("at-"+p.key)
		}
	}
}

// LathePart returns the lathe with one part marked and named alone, and whether it is a
// part of a lathe. The name may be a term of the glossary or the part's key.
func LathePart(name string, words map[string]content.DrawingWords) (Drawing, bool) {
	key := strings.ReplaceAll(name, " ", "-")
	for _, p := range latheParts {
		if p.key == key && key != "" {
			d, err := Of("lathe", Facts{Words: map[string]string{"part": key}}, words)
			return d, err == nil
		}
	}
	return Drawing{}, false
}
