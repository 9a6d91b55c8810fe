package rehearsal

import (
	"fmt"
	"slices"

	"scratchpass/lessons/page"
	"scratchpass/quiz/bench"
)

// margins tells what was left at the end of the passes when the carriage stood: the closest
// first, then all of them, those in a row that left the same as one.
func (s Flow) margins(b bench.Bench) page.Page {
	closest, ok := b.Closest()
	if !ok {
		return nil
	}
	least, all := "", page.Page{}
	for first := 0; first < len(b.Margins); {
		line := s.marginLine(b, "bench-margin-pass", b.Margins[first], "")
		last := first
		for last+1 < len(b.Margins) && s.marginLine(b, "bench-margin-pass", b.Margins[last+1], "") == line {
			last++
		}
		which := s.passes(b.Margins[first].Pass, b.Margins[last].Pass)
		if slices.Contains(b.Margins[first:last+1], closest) {
			least = which
		}
		all = append(all, page.Item{Text: s.marginLine(b, "bench-margin-pass", b.Margins[first], which)})
		first = last + 1
	}
	how := "bench-margin-step"
	if b.Live {
		how = "bench-margin-live"
	}
	text := page.Page{page.Paragraph{Text: s.marginLine(b, "bench-margin-closest", closest, least) + " " +
		s.Say(how, "hand", fmt.Sprintf("%.2f", bench.HandSeconds))}}
	if len(all) == 1 { // the line says all of it
		return text
	}
	return append(text, all...)
}

func (s Flow) marginLine(b bench.Bench, phrase string, m bench.Margin, which string) string {
	return s.Say(phrase, "what", s.Say("bench-behind-"+b.Job.Meets()), "which", which, "left", b.Job.System().Length().Text(m.Left.Inches()), "seconds", fmt.Sprintf("%.1f", m.Seconds), "rpm", fmt.Sprintf("%g", m.RPM))
}

// passes names one pass, or those from one to another.
func (s Flow) passes(first, last int) string {
	switch {
	case last == 0:
		return s.Say("bench-margin-in-air")
	case first == last:
		return s.Say("bench-margin-one", "n", first)
	}
	return s.Say("bench-margin-more", "first", max(first, 1), "last", last)
}
