package drawing

import (
	"math"

	"scratchpass/calc"
	"scratchpass/content"
)

// Section is a groove with the tool that stands over it or in it.
type Section struct {
	Groove  calc.Groove
	Pitch   calc.Length
	Tip     calc.ToolTip
	Across  calc.Length // of the tool
	Depth   calc.Length // of its tip below the surface; below 0 it stands clear
	Touches bool        // the tip is just at the surface
	Inside  bool        // of a bore: the work lies round the tool
	Text    func(calc.Length) string
}

// Draw returns the section over a pitch and a half, with the tool.
func (s Section) Draw(words map[string]content.DrawingWords) (Drawing, error) {
	return drawn("groove", Facts{}, words, func(d *sheet) {
		const wide, high, surface, top = 120.0, 74.0, 52.0, 70.0
		d.paper(wide, high)
		d.Most = 44
		scale := wide / (s.Pitch.Inches() * 1.5)
		var line []Point
		for _, period := range []float64{-1, 0, 1} {
			for _, p := range s.Groove.Points() {
				x := wide/2 + (p.Across.Inches()+period*s.Pitch.Inches())*scale
				line = append(line, Point{x, surface - max(p.Radial.Inches(), 0)*scale})
			}
		}
		line = clip(line, 0, wide)
		foot := min(0, surface-max(s.Groove.Depth().Inches(), 0)*scale-3) // the same for all usual depths, so that nothing jumps from cut to cut
		d.section(Work, append(line, Point{wide, foot}, Point{0, foot})...)
		// The tool, as far as the picture goes.
		slope := tan30
		if s.Tip.Flank != 0 {
			slope = s.Tip.Flank.Tan()
		}
		half := s.Tip.Flat.Inches() / 2
		if s.Tip.Nose > 0 {
			half = s.Tip.Nose.Inches() * tan30
		}
		shift := s.Across.Inches()
		shift -= s.Pitch.Inches() * math.Round(shift/s.Pitch.Inches())
		x, y := wide/2+shift*scale, surface-max(s.Depth.Inches(), -10/scale)*scale
		d.leaning(Point{x, y}, half*scale, top-y, slope)
		d.name(x, top-4, "tool")
		d.name(20, 8, "work")
		if s.Inside {
			d.upsideDown(high)
		}
		where := s.Text(s.Depth) + " " + d.word("deep")
		switch {
		case s.Touches:
			where = d.word("touches")
		case s.Depth <= 0:
			where = d.word("clear")
		}
		d.values = map[string]string{"depth": s.Text(s.Groove.Depth()), "width": s.Text(s.Groove.WidthAt(0)), "P": s.Text(s.Pitch), "tool": where}
	})
}

// upsideDown turns a drawing over within a height.
func (d *Drawing) upsideDown(height float64) {
	for i, s := range d.Shapes {
		points := make([]Point, len(s.Points))
		for j, p := range s.Points {
			points[j] = Point{p.X, height - p.Y}
		}
		d.Shapes[i].Points = points
	}
	for i, l := range d.Labels {
		d.Labels[i].At = Point{l.At.X, height - l.At.Y}
	}
}

// tool draws a 60-degree tool from above, its tip down, so high as given.
func (d *Drawing) tool(tip Point, halfFlat, high float64) { d.leaning(tip, halfFlat, high, tan30) }

// leaning draws a tool whose flanks lean by a slope.
func (d *Drawing) leaning(tip Point, halfFlat, high, slope float64) {
	wide := halfFlat + high*slope
	d.area(Outline, Tint, Tool, tip.plus(-wide, high), tip.plus(-halfFlat, 0), tip.plus(halfFlat, 0), tip.plus(wide, high))
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
