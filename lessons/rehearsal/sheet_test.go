package rehearsal

import (
	"bytes"
	"strings"
	"testing"

	"scratchpass/content"
	"scratchpass/lessons/internal/scripted"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/bench"
	"scratchpass/quiz/handout"
	"scratchpass/quiz/machine"
)

// A card of a usual size stands on one page of either paper, with its pictures, the checks,
// a tick for every pass, and no figure missing.
func TestACardStandsOnOnePage(t *testing.T) {
	flow := cardFlow(t)
	for _, w := range []content.Job{
		{Thread: "5/16-24 UNF-3A"}, {Thread: "13/16-16 UN-2A"}, {Thread: "1-3/16-8 UN-2A"}, {Thread: "15/16-16 UN-2B"},
		{Thread: "1-1/4-8 UN-2B"}, {Thread: "7/8-9 UNC-2A", Hold: "centres", End: "chuck"}, {Thread: "M26x1.5-6g"}, {Thread: "M33x2-6H", End: "bottom"},
		{Thread: "1/2-20 UNF-2A-LH"}, {Thread: "9/16-18 UNF-2A", Towards: bench.Tailstock, Nose: "locked"}, {Thread: "7/8-14 UNF-2A-LH 2 STARTS"}, {Thread: "1-10 UNS-2B 2 STARTS"},
	} {
		l := machine.InchLathe
		if strings.HasPrefix(w.Thread, "M") {
			l = machine.MetricLathe
		}
		j, err := bench.ParseJob(bench.Usual(w, l), l)
		if err != nil {
			t.Fatal(err)
		}
		p, err := bench.NewPlan(j, 29.5)
		if err != nil || !p.Passes() {
			t.Fatalf("%s: %v, passes %v", w.Thread, err, p.Passes())
		}
		card, err := flow.PlanSheet(p)
		if err != nil {
			t.Fatal(err)
		}
		for _, paper := range []handout.Paper{handout.A4, handout.Letter} {
			var out bytes.Buffer
			if err := handout.ReportPDF(&out, card, handout.Options{Paper: paper, Title: card.Title, Words: handout.Words{Lang: "en", Page: "Page ${page} of ${of}"}}); err != nil {
				t.Fatal(err)
			}
			if n := bytes.Count(out.Bytes(), []byte("/Type /Page\n")); n > max(j.Thread.Starts, 1) {
				t.Errorf("%s on %s: %d pages", w.Thread, paper, n)
			}
		}
		fed := 0
		for _, s := range p.Steps {
			if s.Kind != "spring" && s.Kind != "test" && s.Kind != "next" {
				fed++
			}
		}
		ticks := 0
		for _, row := range card.Parts[2].Table.Rows {
			for _, number := range []string{row[0], row[6]} {
				if number != "" {
					ticks++
				}
			}
		}
		if ticks != fed || card.Parts[0].Drawing == nil {
			t.Errorf("%s: %d rows for %d passes, drawing %v", w.Thread, ticks, fed, card.Parts[0].Drawing != nil)
		}
		for _, part := range card.Parts {
			for _, line := range part.Lines {
				if strings.Contains(line, "${") {
					t.Errorf("%s: %s", w.Thread, line)
				}
			}
		}
	}
}

func cardFlow(t *testing.T) Flow {
	t.Helper()
	session, err := sitting.NewSession(&scripted.Face{}, content.Shipped(), machine.Imperial, machine.InchLathe, nil)
	if err != nil {
		t.Fatal(err)
	}
	return Flow{session}
}
