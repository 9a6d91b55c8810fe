package bench

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/machine"
)

// ownLathe is a light bench lathe of someone's own: another lead screw, small dials that
// read the travel, a locked nose, few gears.
var ownLathe = machine.Lathe{
	Name: "own", LeadScrew: 16, DialTeeth: 32, DialMarks: 8,
	Cross: machine.Dial{Turn: .050, Division: .001}, Compound: machine.Dial{Turn: .050, Division: .001},
	CrossReads: calc.ReadsRadius, CompoundZero: calc.ZeroAlong,
	Gears:  []int{20, 30, 35, 40, 40, 45, 50, 52, 55, 57, 60, 63, 65, 80},
	Speeds: []int{60, 110, 150, 240, 320, 600},
}

// sweepSizes are the coarse and fine unified sizes from 1/4 to 2 in and the metric coarse
// ones from M6 to M48, without classes.
func sweepSizes(t *testing.T) []calc.Designation {
	t.Helper()
	var sizes []calc.Designation
	for _, line := range []string{
		"1/4-20 5/16-18 3/8-16 7/16-14 1/2-13 9/16-12 5/8-11 3/4-10 7/8-9 1-8 1-1/8-7 1-1/4-7 1-3/8-6 1-1/2-6 1-3/4-5 2-4.5",
		"1/4-28 5/16-24 3/8-24 7/16-20 1/2-20 9/16-18 5/8-18 3/4-16 7/8-14 1-12 1-1/8-12 1-1/4-12 1-3/8-12 1-1/2-12",
		"M6x1 M7x1 M8x1.25 M9x1.25 M10x1.5 M11x1.5 M12x1.75 M14x2 M16x2 M18x2.5 M20x2.5 M22x2.5 M24x3 M27x3 M30x3.5 M33x3.5 M36x4 M39x4 M42x4.5 M45x4.5 M48x5",
	} {
		for _, name := range strings.Fields(line) {
			d, err := calc.ParseDesignation(name)
			if err != nil {
				t.Fatal(err)
			}
			sizes = append(sizes, d)
		}
	}
	return sizes
}

// sweptCard is one row of the sweep.
type sweptCard struct {
	thread, side, lathe, bar, passes, minutes, verdict, metal, way string
}

func sweep(t *testing.T, w content.Job, l machine.Lathe, light bool) sweptCard {
	t.Helper()
	side, _ := calc.ParseSide(w.Side)
	row := sweptCard{thread: w.Thread, side: side.Word(), lathe: l.Name, bar: "-", passes: "-", minutes: "-", metal: w.Material}
	w = Usual(w, l)
	row.metal = w.Material
	j, err := ParseJob(w, l)
	if err != nil {
		row.verdict = "refused: " + err.Error()
		if strings.Contains(err.Error(), "stock bar") {
			row.verdict = "refused: no stock bar goes in; a thinner bar, or a tap"
		}
		return row
	}
	row.thread = j.Thread.String()
	if side == calc.Inside {
		row.bar = w.Bar
	}
	p, err := newPlan(j, AsUsual, light)
	if err != nil {
		row.verdict = "refused: " + err.Error()
		if strings.Contains(err.Error(), "steel bears") {
			row.verdict = "refused: bar out over 4 diameters; shorter, or a tap"
		}
		return row
	}
	if !p.Passes() {
		row.verdict = "refused: " + refusal(t, p)
		return row
	}
	b, passes := p.played()
	row.passes, row.minutes = fmt.Sprint(passes), calc.Fixed(b.Clock/60, 0)
	row.verdict = string(b.Outcome.Verdict)
	least, most := PrintedPasses(j.Thread.Pitch)
	for _, m := range b.Mistakes {
		if m.Name != mistakeLostCount { // the card books nothing
			t.Errorf("%s %s on %s: made %v", row.thread, row.side, l.Name, m)
		}
	}
	if b.Outcome.Verdict != Fits {
		t.Errorf("%s %s on %s: %+v", row.thread, row.side, l.Name, b.Outcome)
	}
	most *= timesPrinted
	row.way = p.IndexBy
	if p.StraightIn() {
		most *= straightTimes
	}
	if x := float64(passes) / float64(p.starts()); x < least-0.5 || x > most+6 {
		t.Errorf("%s %s on %s: %d passes; printed are %.0f to %.0f", row.thread, row.side, l.Name, passes, least, most)
	}
	return row
}

// refusal is why a card has no passes, with what would help.
func refusal(t *testing.T, p Plan) string {
	t.Helper()
	switch {
	case p.NoGroove:
		return "no groove to start in"
	case p.Unscrews:
		return "screwed nose in reverse; a locked nose"
	case p.TooFast:
		return "too fast; at most " + calc.Fixed(p.Fastest, 0) + " rpm, or a wider gap"
	case p.NoGears:
		if p.Gear127Would() {
			return "no gears come near; a gear of 127 teeth"
		}
		return "no gears come near; other change gears"
	}
	what := ""
	switch {
	case p.Chatters:
		what = "chatters"
	case p.TooMany > 0:
		what = fmt.Sprintf("%d passes", p.TooMany)
	}
	var would []string
	if p.BarWould > 0 {
		would = append(would, "a bar of "+p.Job.BarText(p.BarWould))
	}
	if p.HeldWould {
		would = append(would, "a centre")
	}
	if p.SpeedWould > 0 {
		would = append(would, fmt.Sprint(p.SpeedWould, " rpm"))
	}
	if !p.Helps() {
		would = append(would, "a heavier lathe")
	}
	if what != "" {
		return what + "; " + strings.Join(would, " and ")
	}
	t.Errorf("%s on %s: refused without a remedy: chatters %v, faults %v", p.Job.Thread, p.Job.Lathe.Name, p.Chatters, p.Faults)
	return "?"
}

// Every card of the usual sizes, inside and outside, on three lathes, is cut at the bench
// by its own moves and gives a part that fits in a sensible number of passes, or is refused
// with the reason and the remedy. -update writes the table.
func TestEveryCardCutsOrSaysWhy(t *testing.T) {
	t.Parallel()
	var rows []sweptCard
	inch, metric, own := machine.InchLathe, machine.MetricLathe, ownLathe
	inch.Name, metric.Name = "inch", "metric"
	lathes := []machine.Lathe{inch, metric, own}
	add := func(into *[]sweptCard, thread, metal string) {
		for _, side := range []calc.Side{calc.Outside, calc.Inside} {
			for _, l := range lathes {
				*into = append(*into, sweep(t, content.Job{Thread: thread, Side: side.String(), Material: metal}, l, false))
			}
		}
	}
	for _, d := range sweepSizes(t) {
		add(&rows, d.String(), "")
	}
	var text strings.Builder
	text.WriteString(sweepHead(rows))
	table(&text, rows)
	var forms []sweptCard
	for _, thread := range otherSizes {
		add(&forms, thread, "")
	}
	text.WriteString(formsHead(forms))
	table(&text, forms)
	var metals []sweptCard
	for _, metal := range []string{"stainless", "aluminium", "cast-iron"} {
		for _, thread := range []string{"1/2-13 UNC", "3/4-10 UNC", "1-1/2-6 UNC", "M20x2.5", "1/2-14 NPT"} {
			add(&metals, thread, metal)
		}
	}
	text.WriteString(metalsHead(metals))
	for _, r := range metals {
		fmt.Fprintf(&text, "| %s | %s | %s | %s | %s | %s | %s | %s |\n", r.thread, r.metal, r.side, r.lathe, r.bar, r.passes, r.minutes, r.verdict)
	}
	text.WriteString(sweptOtherWays(t, inch, metric, own))
	if *update {
		if err := os.WriteFile("CARDS.md", []byte(text.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile("CARDS.md")
	if err != nil || string(want) != text.String() {
		t.Errorf("CARDS.md differs (%v); run go test ./quiz/bench -update and read the change", err)
	}
}

// otherSizes are Acme and taper pipe sizes.
var otherSizes = []string{
	"3/8-12 ACME-2G", "1/2-10 ACME-2G", "5/8-8 ACME-3G", "3/4-6 ACME-2G", "7/8-6 ACME-3G", "1-5 ACME-2G", "1-5 ACME-3G", "1-1/4-5 ACME-2G", "1-1/2-4 ACME-2G", "2-4 ACME-2G", "2-4 ACME-3G",
	"1/8 NPT", "1/4 NPT", "3/8 NPT", "1/2 NPT", "3/4 NPT", "1 NPT", "1-1/4 NPT", "1-1/2 NPT", "2 NPT",
}

func table(text *strings.Builder, rows []sweptCard) {
	for _, r := range rows {
		fmt.Fprintf(text, "| %s | %s | %s | %s | %s | %s | %s |\n", r.thread, r.side, r.lathe, r.bar, r.passes, r.minutes, r.verdict)
	}
}

func cutOf(rows []sweptCard) (cut int) {
	for _, r := range rows {
		if r.verdict == string(Fits) {
			cut++
		}
	}
	return cut
}

func formsHead(rows []sweptCard) string {
	return fmt.Sprintf(`
## Acme and taper pipe threads

Of %d cards %d cut a part that fits. An Acme screw from a bare thread stands between centres, its nut is of bronze:
both are common practice. The table of an insert maker (2017) prints for Acme 5 to 6 passes at 20 to 16 TPI, 10 to 11
at 11.5 to 9, 12 to 13 at 8 to 6, 13 to 15 at 5 and 4. A small nut is refused: it takes a tap. No taper
thread is cut without its attachment.

| thread | side | lathe | bar | passes | minutes | verdict |
|---|---|---|---|---|---|---|
`, len(rows), cutOf(rows))
}

func metalsHead(rows []sweptCard) string {
	return fmt.Sprintf(`
## Other metals

Of %d cards %d cut a part that fits. The first tables are of mild steel.

| thread | metal | side | lathe | bar | passes | minutes | verdict |
|---|---|---|---|---|---|---|---|
`, len(rows), cutOf(rows))
}

// sweepHead is what stands over the table.
func sweepHead(rows []sweptCard) string {
	cut, worst := 0, 0.0
	for _, r := range rows {
		if r.verdict == string(Fits) {
			cut++
			d, _ := ParseThread(r.thread)
			_, most := PrintedPasses(d.Pitch)
			var n float64
			fmt.Sscan(r.passes, &n)
			worst = max(worst, n/most)
		}
	}
	return fmt.Sprintf(`# Every card, cut at the bench

Written by a test (%s). Each card from a bare thread is played by its own moves, until
the gauge goes. Of %d cards %d cut a part that fits; the others are refused, with what would do.

Passes count the scratch, the cuts and the feeds straight in, no spring passes. A table of an insert maker
(2011) prints 4 to 6 at 0.5 mm, 5 to 9 at 1, 5 to 12 at 1.5, 6 to 14 at 2, 7 to 15 at 2.5, 8 to 17 at 3, 10 to 20
at 4 and 11 to 22 at 6 mm, for carbide on a stiff machine. On the compound no card takes more than twice the
most of that, which is chosen. With what is fed straight in the worst takes %s times as many. Minutes are the
bench's clock, with every test. The inch and the metric lathe are those that ship. The own one is light: 16 TPI,
dials of 0.050 in, a locked nose.

| thread | side | lathe | bar | passes | minutes | verdict |
|---|---|---|---|---|---|---|
`, "`TestEveryCardCutsOrSaysWhy`", len(rows), cut, calc.Fixed(worst, 1))
}
