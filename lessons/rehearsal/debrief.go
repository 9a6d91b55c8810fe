package rehearsal

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/lessons/page"
	"scratchpass/quiz/bench"
)

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
		text = append(text, page.Paragraph{Text: strings.TrimSpace(words.Says["reason-"+r] + " " + s.spoiltBy(b, r, words))})
	}
	limits := b.Job.Limits.Pitch
	if e, ok := b.PitchDiameter(); ok {
		text = append(text, page.Paragraph{Text: s.Say("bench-pitch", "pitch", size(e), "max", size(limits.Max), "min", size(limits.Min))})
	}
	text = append(text, page.Paragraph{Text: s.Say("bench-sum", "passes", len(b.Passes), "minutes", calc.Fixed(b.Clock/60, 0), "mistakes", s.counted(b.Mistakes, takenBack))})
	if len(b.Passes) > 1 {
		text = append(text, s.depthChart(b))
	}
	text = append(text, s.margins(b)...)
	text = append(text, s.mistakes(b, words, takenBack)...)
	return append(text, s.Rehearsal())
}

func (s Flow) would(text page.Page, whom, what string) page.Page {
	if what == "" {
		return text
	}
	return append(text, page.Paragraph{Text: s.Say("bench-would-"+whom) + " " + what})
}

// counted says how many mistakes were made, those whose moves were taken back too.
func (s Flow) counted(stand, takenBack []bench.Mistake) string {
	all := slices.Concat(stand, takenBack) // as the record counts them
	text := fmt.Sprint(len(all))
	if kinds := len(byKind(all)); kinds < len(all) {
		text = s.Say("bench-kinds", "n", len(all), "kinds", kinds)
	}
	if n := len(takenBack); n > 0 {
		text += s.Say("bench-and-back", "n", n)
	}
	return text
}

// byKind are mistakes of one kind together: the worst first, and else in the order of their
// first.
func byKind(all []bench.Mistake) (kinds [][]bench.Mistake) {
	for _, m := range all {
		i := slices.IndexFunc(kinds, func(k []bench.Mistake) bool { return k[0].Name == m.Name })
		if i < 0 {
			kinds = append(kinds, nil)
			i = len(kinds) - 1
		}
		kinds[i] = append(kinds[i], m)
	}
	slices.SortStableFunc(kinds, func(a, b []bench.Mistake) int { return cmp.Compare(a[0].Name.Consequence(), b[0].Name.Consequence()) })
	return kinds
}

// mistakes tells each kind of mistake once, with what it would have done, and what to
// practise.
func (s Flow) mistakes(b bench.Bench, words content.BenchWords, takenBack []bench.Mistake) page.Page {
	text := append(s.kindsOf(b.Job, words, "bench-mistake", byKind(b.Mistakes)), s.kindsOf(b.Job, words, "bench-mistake-back", byKind(takenBack))...)
	all := slices.Concat(b.Mistakes, takenBack)
	if tasks := b.Job.Practise(all, words); len(tasks) > 0 {
		text = append(text, page.Gap{}, page.Paragraph{Text: s.Say("bench-practise")})
		for _, name := range tasks {
			title := name
			if w, err := s.Words(name); err == nil {
				title = w.Task.Title
			}
			if !s.OnPages { // nobody can type a command there
				title = fmt.Sprintf("%s: scratchpass quiz %s", title, name)
			}
			text = append(text, page.Item{Text: title})
		}
	}
	return text
}

// kindsOf tells each kind of mistake once, with the moves it was made at and what it would have
// done.
func (s Flow) kindsOf(j bench.Job, words content.BenchWords, title string, kinds [][]bench.Mistake) (text page.Page) {
	for _, kind := range kinds {
		m, w := kind[0], j.WordsOf(kind[0], words)
		var moves []string
		for _, one := range kind {
			moves = append(moves, strconv.Itoa(one.Event))
		}
		what := m.Happening().Text(words)
		text = append(text, page.Gap{}, page.Mistake{Text: s.Say(title, "title", w.Title, "event", strings.Join(moves, ", "))}, page.Paragraph{Text: what})
		text = s.would(s.would(s.would(text, "part", w.Part), "tool", w.Tool), "you", w.You)
		if figures := m.Name.Figures(); figures != "" {
			text = append(text, page.Paragraph{Text: words.Says[figures]})
		}
		for _, key := range j.Cautions(m.Name, words) {
			text = append(text, s.Caution(key))
		}
	}
	return text
}

// spoiltBy names the move that made the part scrap for a reason; empty where none did.
func (s Flow) spoiltBy(b bench.Bench, reason string, words content.BenchWords) string {
	at, ok := b.Spoilt(reason)
	if !ok || at.Event > len(b.Log) {
		return ""
	}
	move := b.Log[at.Event-1].Event.Write(b.Job.System())
	if at.Cause == "" {
		return s.Say("bench-spoilt", "event", at.Event, "move", move)
	}
	return s.Say("bench-spoilt-by", "event", at.Event, "move", move, "title", strings.ToLower(words.Mistakes[string(at.Cause)].Title))
}
