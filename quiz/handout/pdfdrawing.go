package handout

import (
	"math"

	"scratchpass/quiz/drawing"
)

// picture draws a drawing so large that its labels are as easy to read as small
// type, but never wider or higher than it may be. Where it is smaller, so are its labels:
// they were placed for letters of a width.
func (p *pdf) picture(d *drawing.Drawing, left, width, height int) row {
	scale, letters := scaled(d, width, height)
	const air = 8 * point
	high, low := extent(d, pt(letters.size)*0.6/scale)
	return row{hundredthsOf((high-low)*scale) + 2*air, func(top int) {
		at := func(q drawing.Point) (x, y int) {
			return left + hundredthsOf(q.X*scale), top + air + hundredthsOf((high-q.Y)*scale)
		}
		for _, shape := range d.Shapes {
			p.shape(shape, at)
		}
		p.doc.SetLineWidth(pt(heavier))
		p.doc.SetDrawColor(0, 0, 0)
		p.doc.SetFillColor(255, 255, 255)
		for _, l := range d.Labels {
			x, y := at(l.At)
			p.label(l, letters, x, y, left, width)
		}
	}}
}

// smallest is the size of type below which labels on paper are hard to read.
const smallest = 6 * point

// natural is how many points one unit of a drawing has where its labels are small type.
func natural(d *drawing.Drawing) float64 {
	const letter = 0.62 // of the size of the type, for an average letter
	return pt(small.size) * letter * float64(d.Columns()) / d.Width
}

// scaled is how many points one unit of a drawing has on paper, and the type of its labels.
func scaled(d *drawing.Drawing, width, height int) (scale float64, letters face) {
	full := natural(d)
	scale = min(full, pt(width)/d.Width, pt(height)/d.Height)
	letters = small
	letters.size = max(hundredthsOf(pt(small.size)*scale/full), smallest)
	return scale, letters
}

// shape draws a run of straight pieces; one point makes none.
func (p *pdf) shape(s drawing.Shape, at func(drawing.Point) (x, y int)) {
	if len(s.Points) < 2 {
		return
	}
	p.doc.SetLineWidth(pt(hairline) / 2)
	p.doc.SetDrawColor(0, 0, 0)
	switch s.Pen {
	case drawing.Outline:
		p.doc.SetLineWidth(pt(heavier))
	case drawing.Hidden:
		p.doc.SetDashPattern([]float64{pt(4 * point), pt(3 * point)}, 0)
	case drawing.Centre:
		p.doc.SetDashPattern([]float64{pt(10 * point), pt(2 * point), pt(2 * point), pt(2 * point)}, 0)
	}
	x, y := at(s.Points[0])
	p.doc.MoveTo(pt(x+p.shift), pt(y))
	for _, q := range s.Points[1:] {
		x, y := at(q)
		p.doc.LineTo(pt(x+p.shift), pt(y))
	}
	style := "D"
	switch s.Fill {
	case drawing.Clear:
		p.doc.SetFillColor(255, 255, 255)
	case drawing.Tint:
		p.doc.SetFillColor(228, 228, 228)
	case drawing.Solid:
		p.doc.SetFillColor(0, 0, 0)
	}
	switch {
	case s.Fill != drawing.Open && s.Pen == drawing.NoEdge:
		style = "F"
	case s.Fill != drawing.Open:
		style = "FD"
	}
	p.doc.DrawPath(style)
	p.doc.SetDashPattern(nil, 0)
}

// label writes a label at x, as it is aligned. It stands on white, so that no line runs
// through the letters, and stays on the page.
func (p *pdf) label(l drawing.Label, f face, x, y, left, width int) {
	w := p.measure(f)(l.Text)
	if w > width { // wider than the page
		f.size = f.size * width / w
		w = p.measure(f)(l.Text)
	}
	switch l.Align {
	case drawing.Middle:
		x -= w / 2
	case drawing.Right:
		x -= w
	}
	x = max(left, min(x, left+width-w))
	p.doc.Rect(pt(x+p.shift-point), pt(y-f.size*6/10), pt(w+2*point), pt(f.size*12/10), "F")
	p.text(x, y+f.size*36/100-f.baseline(), l.Text, f)
}

// extent is from where to where something is drawn; a label reaches so far up and
// down from its place.
func extent(d *drawing.Drawing, label float64) (high, low float64) {
	high, low = math.Inf(-1), math.Inf(1)
	for _, s := range d.Shapes {
		for _, q := range s.Points {
			high, low = max(high, q.Y), min(low, q.Y)
		}
	}
	for _, l := range d.Labels {
		high, low = max(high, l.At.Y+label), min(low, l.At.Y-label)
	}
	if high < low { // nothing in it
		return d.Height, 0
	}
	return high, low
}

// readableWidth is how wide one is then.
func readableWidth(d *drawing.Drawing) int {
	return hundredthsOf(d.Width * natural(d) * pt(smallest) / pt(small.size))
}

// readable is how high a drawing is whose labels are as small as they may be.
func readable(d *drawing.Drawing) int {
	return hundredthsOf(d.Height * natural(d) * pt(smallest) / pt(small.size))
}
