package lessons

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/guptarohit/asciigraph"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/bench"
	"scratchpass/quiz/drawing"
)

// look shows both dials, the thread dial, the groove with the tool, and the depth so
// far.
func (s *Session) look(r *Rehearsal) error {
	b := r.Bench
	l := b.Job.Lathe
	var err error
	picture := func(d drawing.Drawing, e error) {
		if err == nil && e == nil {
			err = s.showDrawing(d, nil)
		} else if err == nil {
			err = e
		}
	}
	picture(drawing.SlideDial(s.say("bench-word-cross"), b.CrossReading(), l.Cross.Turn, l.Metric, s.drawings))
	picture(drawing.SlideDial(s.say("bench-word-compound"), b.CompoundReading(), l.Compound.Turn, l.Metric, s.drawings))
	if at, ok := b.Mark(); ok {
		picture(drawing.ThreadDial(at, l.DialMarks, s.drawings))
	}
	picture(s.section(b))
	if err != nil || len(b.Passes) < 2 {
		return err
	}
	return s.Terminal.Show(s.depthChart(b))
}

// section is the groove near the start of the thread, with the tool.
func (s *Session) section(b bench.Bench) (drawing.Drawing, error) {
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
		Text: func(l calc.Length) string { return u.Text(l.Inches()) }}.Draw(s.drawings)
}

// showDrawing shows a picture with its twin in words.
func (s *Session) showDrawing(d drawing.Drawing, err error) error {
	if err != nil {
		return err
	}
	return s.Terminal.Show(Text{{Faint, s.say("say-drawing", "title", d.Title)}, {Picture, strings.Join(d.Terminal(s.pictureWidth()), "\n")}, {Plain, d.Twin}})
}

// pictureWidth is how wide a picture may be drawn: the plain terminal leaves pictures
// out, and the screen says how wide it is.
func (s *Session) pictureWidth() int {
	if w, ok := s.Terminal.(interface{ Width() int }); ok {
		return w.Width()
	}
	return 64
}

// depthChart shows the depth over the passes, and the width of the chips.
func (s *Session) depthChart(b bench.Bench) Text {
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
	wide := min(50, max(s.pictureWidth()-14, 16))
	plot := func(xs []float64, caption string) Block {
		return Block{Picture, asciigraph.Plot(xs, asciigraph.Height(6), asciigraph.Width(min(wide, max(len(xs), 20))), asciigraph.LowerBound(0),
			asciigraph.Precision(uint(u.Places-1)), asciigraph.Caption(caption))}
	}
	text := Text{{Faint, s.say("bench-chart")}}
	if len(depths) > 1 {
		text = append(text, plot(depths, s.say("bench-chart-depth", "unit", u.Name)), plot(widths, s.say("bench-chart-chip", "unit", u.Name)))
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
	return append(text, Block{Plain, s.say(twin, "n", len(b.Passes), "first", u.Text(first.Depth.Inches()), "last", u.Text(last.Depth.Inches()),
		"widest", u.Text(widest.Inches()), "at", at)})
}

// Debrief tells what came of a rehearsal: the part against its limits, the passes, each
// mistake with what it would have done, those that were taken back too, and what to
// practise.
func (s *Session) Debrief(b bench.Bench, words content.BenchWords, takenBack []bench.Mistake) Text {
	u := b.Job.System().Length()
	size := func(l calc.Length) string { return u.Text(l.Inches()) }
	verdict := bench.Scrap
	var reasons []string
	if b.Outcome != nil {
		verdict, reasons = b.Outcome.Verdict, b.Outcome.Reasons
	}
	style := Bad
	if verdict == bench.Fits {
		style = Good
	}
	text := Text{{Heading, s.say("bench-debrief")}, {style, words.Says["verdict-"+verdict]}}
	for _, r := range reasons {
		text = append(text, Block{Plain, words.Says["reason-"+r]})
	}
	limits := b.Job.Limits.Pitch
	if e, ok := b.PitchDiameter(); ok {
		text = append(text, Block{Plain, s.say("bench-pitch", "pitch", size(e), "max", size(limits.Max), "min", size(limits.Min))})
	}
	text = append(text, Block{Plain, s.say("bench-sum", "passes", len(b.Passes), "minutes", calc.Fixed(b.Clock/60, 0), "mistakes", s.counted(b.Mistakes, takenBack))})
	if len(b.Passes) > 1 {
		text = append(text, s.depthChart(b)...)
	}
	text = append(text, s.mistakes(b, words, takenBack)...)
	return append(text, Block{Caution, s.say("rehearsal")})
}

func (s *Session) would(text Text, whom, what string) Text {
	if what == "" {
		return text
	}
	return append(text, Block{Plain, s.say("bench-would-"+whom) + " " + what})
}

// counted says how many mistakes were made.
func (s *Session) counted(stand, takenBack []bench.Mistake) string {
	text := fmt.Sprint(len(stand))
	if kinds := len(byKind(stand)); kinds < len(stand) {
		text = s.say("bench-kinds", "n", len(stand), "kinds", kinds)
	}
	if n := len(takenBack); n > 0 {
		text += s.say("bench-and-back", "n", n)
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
func (s *Session) mistakes(b bench.Bench, words content.BenchWords, takenBack []bench.Mistake) Text {
	var text Text
	tell := func(title string, kinds [][]bench.Mistake) {
		for _, kind := range kinds {
			m, w := kind[0], words.Mistakes[kind[0].Name]
			var moves []string
			for _, one := range kind {
				moves = append(moves, strconv.Itoa(one.Event))
			}
			what := bench.Happening{Name: "mistake-" + m.Name, Facts: m.Facts}.Text(words)
			text = append(text, Block{Bad, "\n" + s.say(title, "title", w.Title, "event", strings.Join(moves, ", "))}, Block{Plain, what})
			text = s.would(s.would(s.would(text, "part", w.Part), "tool", w.Tool), "you", w.You)
			for _, key := range b.Job.Cautions(m.Name, words) {
				text = append(text, Block{Caution, s.say("say-caution", "text", s.safety[key].Text)})
			}
		}
	}
	tell("bench-mistake", byKind(b.Mistakes))
	tell("bench-mistake-back", byKind(takenBack))
	all := slices.Concat(b.Mistakes, takenBack)
	if tasks := b.Job.Practise(all, words); len(tasks) > 0 {
		text = append(text, Block{Plain, "\n" + s.say("bench-practise")})
		for _, name := range tasks {
			title := name
			if w, err := s.wordsOf(name); err == nil {
				title = w.Task.Title
			}
			text = append(text, Block{Plain, fmt.Sprintf("- %s: scratchpass quiz %s", title, name)})
		}
	}
	return text
}
