package rehearsal

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"scratchpass/calc"
	"scratchpass/content"
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
	g, err := b.Groove(min(b.Job.Thread.Pitch, b.Job.Length.Times(0.25)))
	if err != nil {
		return drawing.Drawing{}, err
	}
	u := b.Job.System().Length()
	across := calc.Length(0)
	if n := len(b.Passes); n > 0 {
		across = b.Passes[n-1].Across
	}
	return drawing.Section{Groove: g, Pitch: b.Job.Thread.Pitch, Tip: b.Job.Tip, Across: across, Depth: b.Depth(),
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

// Debrief tells what came of a rehearsal: the part against its limits, the passes, each
// mistake with what it would have done, those that were taken back too, and what to
// practise.
func (s Flow) Debrief(b bench.Bench, words content.BenchWords, takenBack []bench.Mistake) page.Page {
	u := b.Job.System().Length()
	size := func(l calc.Length) string { return u.Text(l.Inches()) }
	verdict := bench.Scrap
	var reasons []string
	if b.Outcome != nil {
		verdict, reasons = b.Outcome.Verdict, b.Outcome.Reasons
	}
	text := page.Page{page.Heading{Text: s.Say("bench-debrief")}, page.Verdict{Right: verdict == bench.Fits, Text: words.Says["verdict-"+string(verdict)]}}
	for _, r := range reasons {
		text = append(text, page.Paragraph{Text: words.Says["reason-"+r]})
	}
	limits := b.Job.Limits.Pitch
	if e, ok := b.PitchDiameter(); ok {
		text = append(text, page.Paragraph{Text: s.Say("bench-pitch", "pitch", size(e), "max", size(limits.Max), "min", size(limits.Min))})
	}
	text = append(text, page.Paragraph{Text: s.Say("bench-sum", "passes", len(b.Passes), "minutes", calc.Fixed(b.Clock/60, 0), "mistakes", s.counted(b.Mistakes, takenBack))})
	if len(b.Passes) > 1 {
		text = append(text, s.depthChart(b))
	}
	text = append(text, s.mistakes(b, words, takenBack)...)
	return append(text, s.Rehearsal())
}

func (s Flow) would(text page.Page, whom, what string) page.Page {
	if what == "" {
		return text
	}
	return append(text, page.Paragraph{Text: s.Say("bench-would-"+whom) + " " + what})
}

// counted says how many mistakes were made.
func (s Flow) counted(stand, takenBack []bench.Mistake) string {
	text := fmt.Sprint(len(stand))
	if kinds := len(byKind(stand)); kinds < len(stand) {
		text = s.Say("bench-kinds", "n", len(stand), "kinds", kinds)
	}
	if n := len(takenBack); n > 0 {
		text += s.Say("bench-and-back", "n", n)
	}
	return text
}

// byKind are mistakes of one kind together, in the order of their first.
func byKind(all []bench.Mistake) (kinds [][]bench.Mistake) {
	for _, m := range all {
		i := slices.IndexFunc(kinds, func(k []bench.Mistake) bool { return k[0].Name == m.Name })
		if i < 0 {
			kinds = append(kinds, nil)
			i = len(kinds) - 1
		}
		kinds[i] = append(kinds[i], m)
	}
	return kinds
}

// mistakes tells each kind of mistake once, with what it would have done, and what to
// practise.
func (s Flow) mistakes(b bench.Bench, words content.BenchWords, takenBack []bench.Mistake) page.Page {
	var text page.Page
	tell := func(title string, kinds [][]bench.Mistake) {
		for _, kind := range kinds {
			m, w := kind[0], kind[0].Words(words)
			var moves []string
			for _, one := range kind {
				moves = append(moves, strconv.Itoa(one.Event))
			}
			what := m.Happening().Text(words)
			text = append(text, page.Gap{}, page.Mistake{Text: s.Say(title, "title", w.Title, "event", strings.Join(moves, ", "))}, page.Paragraph{Text: what})
			text = s.would(s.would(s.would(text, "part", w.Part), "tool", w.Tool), "you", w.You)
			for _, key := range b.Job.Cautions(m.Name, words) {
				text = append(text, s.Caution(key))
			}
		}
	}
	tell("bench-mistake", byKind(b.Mistakes))
	tell("bench-mistake-back", byKind(takenBack))
	all := slices.Concat(b.Mistakes, takenBack)
	if tasks := b.Job.Practise(all, words); len(tasks) > 0 {
		text = append(text, page.Gap{}, page.Paragraph{Text: s.Say("bench-practise")})
		for _, name := range tasks {
			title := name
			if w, err := s.Words(name); err == nil {
				title = w.Task.Title
			}
			text = append(text, page.Item{Text: fmt.Sprintf("%s: scratchpass quiz %s", title, name)})
		}
	}
	return text
}
