package drawing

import (
	"math"

	"scratchpass/calc"
	"scratchpass/content"
)

// SlideDial returns the face of a slide's dial at a reading. of is the slide's name.
func SlideDial(of string, reading, turn calc.Length, metric bool, words map[string]content.DrawingWords) (Drawing, error) {
	return named("slide-dial", words, func(func(string) string) (Drawing, map[string]string) {
		text, unit := calc.LengthText, calc.Thou
		label := func(l calc.Length) string { return calc.Fixed(l.Over(calc.Thou), 0) }
		if metric {
			text = func(l calc.Length) string { return calc.Fixed(l.Millimetres(), 3) + " mm" }
			unit = calc.Millimetres(0.01)
			label = func(l calc.Length) string { return calc.Shortest(l.Millimetres(), 2) }
		}
		d := slideFace(reading, turn, unit, label)
		return d, map[string]string{"slide": of, "reading": text(reading), "turn": text(turn)}
	})
}

// ThreadDial returns the face of a thread dial; at is the mark under its index, from 0.
func ThreadDial(at float64, marks int, words map[string]content.DrawingWords) (Drawing, error) {
	return named("thread-dial", words, func(func(string) string) (Drawing, map[string]string) {
		places := make([]place, marks)
		for i := range places {
			places[i] = place{float64(i) / float64(marks), calc.Shortest(float64(i+1), 0)}
		}
		d := face(at/float64(marks), places)
		near := int(math.Round(at))
		where := "at"
		if off := at - float64(near); math.Abs(off) > 0.1 {
			where = "between marks, nearest"
		}
		return d, map[string]string{"marks": calc.Shortest(float64(marks), 0), "where": where, "mark": calc.Shortest(float64(near%marks+1), 0)}
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

// slideFace is the face of a slide's dial: a number at every 10 units, or where there
// would be too many at every 20 or 50 or more, and a line half-way between.
func slideFace(reading, turn, unit calc.Length, label func(calc.Length) string) Drawing {
	step := unit.Times(10)
	for _, k := range []float64{10, 20, 25, 50, 100, 200, 500} {
		if step = unit.Times(k); turn.Over(step) <= mostNumbers {
			break
		}
	}
	var places []place
	for i := 0; ; i++ {
		at := step.Times(float64(i) / 2)
		if at >= turn.Times(1-1e-9) {
			break
		}
		p := place{share: at.Over(turn)}
		if i%2 == 0 {
			p.label = label(at)
		}
		places = append(places, p)
	}
	return face(reading.Over(turn), places)
}

// face is a round face with lines, those with a number longer, turned so that a share of
// a turn stands under the index at the top. Numbers grow clockwise.
func face(share float64, places []place) Drawing {
	d := Drawing{Width: 80, Height: 80, Most: 38}
	const cx, cy, r = 40.0, 36.0, 30.0
	at := func(part, radius float64) Point {
		a := 2 * math.Pi * (part - share)
		return Point{cx + radius*math.Sin(a), cy + radius*math.Cos(a)}
	}
	var rim []Point
	for i := range 73 {
		rim = append(rim, at(float64(i)/72, r))
	}
	d.line(false, rim...)
	for _, p := range places {
		inner := r - 2.5
		if p.label != "" {
			inner = r - 5
		}
		d.line(false, at(p.share, inner), at(p.share, r))
	}
	for _, p := range places {
		if p.label != "" {
			q := at(p.share, r-10)
			d.label(q.X, q.Y, p.label)
		}
	}
	d.line(false, Point{cx, cy + r + 1}, Point{cx - 2, cy + r + 6}, Point{cx + 2, cy + r + 6}, Point{cx, cy + r + 1})
	return d
}

// Section is a groove with the tool that stands over it or in it.
type Section struct {
	Groove calc.Groove
	Pitch  calc.Length
	Tip    calc.ToolTip
	Across calc.Length // of the tool
	Depth  calc.Length // of its tip below the surface; below 0 it stands clear
	Text   func(calc.Length) string
}

// Draw returns the section over a pitch and a half, with the tool.
func (s Section) Draw(words map[string]content.DrawingWords) (Drawing, error) {
	return named("groove", words, func(label func(string) string) (Drawing, map[string]string) {
		const wide, surface = 120.0, 52.0
		scale := wide / (s.Pitch.Inches() * 1.5)
		d := Drawing{Width: wide, Height: 74, Most: 44}
		points := s.Groove.Points()
		var line []Point
		for _, period := range []float64{-1, 0, 1} {
			for _, p := range points {
				x := wide/2 + (p.Across.Inches()+period*s.Pitch.Inches())*scale
				line = append(line, Point{x, surface - max(p.Radial.Inches(), 0)*scale})
			}
		}
		d.line(false, clip(line, 0, wide)...)
		// The tool, as far as the picture goes.
		half := s.Tip.Flat.Inches() / 2
		if s.Tip.Nose > 0 {
			half = s.Tip.Nose.Inches() * tan30
		}
		shift := s.Across.Inches()
		shift -= s.Pitch.Inches() * math.Round(shift/s.Pitch.Inches())
		x, y := wide/2+shift*scale, surface-max(s.Depth.Inches(), -10/scale)*scale
		top := 70.0
		d.line(false, Point{x - half*scale - (top-y)*tan30, top}, Point{x - half*scale, y}, Point{x + half*scale, y}, Point{x + half*scale + (top-y)*tan30, top})
		d.label(x, top-3, label("tool"))
		d.label(20, surface-8, label("work"))
		where := s.Text(s.Depth) + " " + label("deep")
		if s.Depth <= 0 {
			where = label("clear")
		}
		return d, map[string]string{"depth": s.Text(s.Groove.Depth()), "width": s.Text(s.Groove.WidthAt(0)), "P": s.Text(s.Pitch), "tool": where}
	})
}

// clip keeps the part of a line from left to right between two places.
func clip(line []Point, low, high float64) []Point {
	var out []Point
	for i, p := range line {
		if i > 0 {
			a := line[i-1]
			for _, x := range []float64{low, high} {
				if (a.X-x)*(p.X-x) < 0 {
					out = append(out, Point{x, a.Y + (p.Y-a.Y)*(x-a.X)/(p.X-a.X)})
				}
			}
		}
		if p.X >= low && p.X <= high {
			out = append(out, p)
		}
	}
	return out
}
