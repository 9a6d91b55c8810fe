package rehearsal

import (
	"errors"

	"scratchpass/calc"
	"scratchpass/lessons/page"
	"scratchpass/quiz/bench"
	"scratchpass/quiz/drawing"
)

// look shows both dials, the thread dial, the groove with the tool, and the depth so
// far.
func (s Flow) look(r *Rehearsal) error {
	b := r.Bench
	l := b.Job.Lathe
	var err error
	var sight page.Sight
	picture := func(of *[]page.Figure, d drawing.Drawing, e error) {
		*of, err = append(*of, s.Figure(d)), errors.Join(err, e)
	}
	d, e := drawing.SlideDial(s.Say("bench-word-cross"), b.CrossReading(), l.Cross.Turn, l.Metric, s.Drawings())
	picture(&sight.Dials, d, e)
	d, e = drawing.SlideDial(s.Say("bench-word-compound"), b.CompoundReading(), l.Compound.Turn, l.Metric, s.Drawings())
	picture(&sight.Dials, d, e)
	if at, ok := b.Mark(); ok {
		d, e = drawing.ThreadDial(at, l.DialMarks, s.Drawings())
		picture(&sight.Dials, d, e)
	}
	d, e = s.section(b)
	picture(&sight.Work, d, e)
	if err != nil {
		return err
	}
	text := page.Page{page.Heading{Text: s.Say("bench-look")}, sight}
	if len(b.Passes) > 1 {
		chart := s.depthChart(b)
		text = append(text, page.Heading{Text: chart.Caption})
		chart.Caption = ""
		text = append(text, chart)
	}
	return s.Show(text)
}

// section is the groove near the start of the thread, with the tool.
func (s Flow) section(b bench.Bench) (drawing.Drawing, error) {
	g, pitch, err := b.Seen(min(b.Job.Thread.Pitch, b.Job.Length.Times(0.25)))
	if err != nil {
		return drawing.Drawing{}, err
	}
	u := b.Job.System().Length()
	across := calc.Length(0)
	if n := len(b.Passes); n > 0 {
		across = b.Passes[n-1].Across
	}
	return drawing.Section{Groove: g, Pitch: pitch, Touches: b.Touches(), Tip: b.Job.Tool(), Across: across, Depth: b.Depth(), Inside: b.Job.Side == calc.Inside,
		Text: func(l calc.Length) string { return u.Text(l.Inches()) }}.Draw(s.Drawings())
}

// showDrawing shows a picture with its twin in words.
func (s Flow) showDrawing(d drawing.Drawing, err error) error {
	if err != nil {
		return err
	}
	return s.Show(page.Page{s.Figure(d)})
}

// depthChart shows the depth over the passes, and the width of the chips.
func (s Flow) depthChart(b bench.Bench) page.Figure {
	u := b.Job.System().Length()
	var depths, widths []float64
	for _, p := range b.Passes {
		depths = append(depths, p.Depth.Inches()*u.Factor)
		width := p.Width
		if !p.Cuts() {
			width = 0
		}
		widths = append(widths, width.Inches()*u.Factor)
	}
	first, last := b.Passes[0], b.Passes[len(b.Passes)-1]
	figure := page.Figure{Caption: s.Say("bench-chart")}
	if len(depths) > 1 {
		figure.Pictures = []drawing.Drawing{
			drawing.Curve(s.Say("bench-chart-depth", "unit", u.Name), depths, 0, u.Places-1),
			drawing.Curve(s.Say("bench-chart-chip", "unit", u.Name), widths, 0, u.Places-1),
		}
	}
	widest, at := calc.Length(0), 0
	for _, p := range b.Passes {
		if p.Cuts() && p.Width > widest {
			widest, at = p.Width, p.N
		}
	}
	twin := "bench-chart-twin"
	if at > 0 && b.Passes[at-1].Both {
		twin = "bench-chart-twin-both"
	}
	figure.Twin = s.Say(twin, "n", len(b.Passes), "first", u.Text(first.Depth.Inches()), "last", u.Text(last.Depth.Inches()),
		"widest", u.Text(widest.Inches()), "at", at)
	return figure
}
