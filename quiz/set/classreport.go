package set

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"scratchpass/calc"
	"scratchpass/quiz/drawing"
	"scratchpass/quiz/handout"
)

// barsAtOnce is how many bars one chart has.
const barsAtOnce = 12

// Charts are the shares of right answers by task, the lowest first, in pieces of a
// dozen.
func (p *Printer) Charts(r Report) []drawing.Drawing {
	var charts []drawing.Drawing
	for piece := range slices.Chunk(r.Tasks, barsAtOnce) {
		var bars []drawing.Bar
		for _, t := range piece {
			bars = append(bars, drawing.Bar{Label: t.Title, Value: t.Share * 100, Low: t.Low * 100, High: t.High * 100})
		}
		charts = append(charts, drawing.Bars(p.Say("set-chart"), p.Say("set-chart-twin"), bars, 100, "%"))
	}
	return charts
}

// severalNumbers finds the numbers of an order.
var severalNumbers = regexp.MustCompile(`\b[0-9]( [0-9]\b)+`)

// onOneLine keeps an order on one line where it is printed: 6 4 8 3 2 5 7 1.
func onOneLine(text string) string {
	return severalNumbers.ReplaceAllStringFunc(text, func(s string) string { return strings.ReplaceAll(s, " ", "\u00a0") })
}

// Page is the report as it is printed.
func (p *Printer) Page(r Report) handout.Report {
	page := handout.Report{Title: p.Say("set-report", "title", r.Title), Owner: r.Set, Note: p.Say("set-report-note"),
		Facts: []string{p.Say("set-report-class", "handed", r.Handed, "class", r.Class, "mean", points(r.Mean), "of", points(r.MeanOf))}}
	if r.Waiting > 0 {
		page.Facts = append(page.Facts, p.Say("set-report-waiting", "n", r.Waiting))
	}
	if r.Decided > 0 {
		page.Facts = append(page.Facts, p.Say("set-report-decided", "n", r.Decided))
	}
	if r.Handed < r.Statistics {
		page.Facts = append(page.Facts, p.Say("set-report-few", "least", r.Statistics))
	} else if r.Alpha != nil {
		page.Facts = append(page.Facts, p.Say("set-report-alpha", "alpha", calc.Fixed(*r.Alpha, 2)))
	}
	part := func(heading string, lines []string, table *handout.Table) {
		if len(lines) > 0 || table != nil {
			page.Parts = append(page.Parts, handout.Part{Heading: p.Say(heading), Lines: lines, Table: table})
		}
	}
	part("set-report-sure", p.sureLines(r), nil)
	for _, chart := range p.Charts(r) {
		page.Parts = append(page.Parts, handout.Part{Heading: p.Say("set-chart"), Drawing: &chart})
	}
	part("set-report-tasks", nil, p.taskTable(r))
	part("set-report-slips", p.errorLines(r), nil)
	part("set-report-items", nil, p.itemTable(r))
	part("set-report-open", p.oddLines(r.Open), nil)
	part("set-report-strange", p.oddLines(r.Strange), nil)
	part("set-report-missing", p.some(r.Missing), nil)
	return page
}

func (p *Printer) sureLines(r Report) []string {
	var lines []string
	for _, s := range r.Sure {
		line := p.Say("set-report-sure-line", "name", s.Name, "n", s.Number, "task", s.Title, "given", onOneLine(s.Given), "key", onOneLine(s.Key))
		if s.Slip != "" {
			line += " (" + errorName(s.Slip) + ")"
		}
		if s.Gate {
			line = "* " + line
		}
		lines = append(lines, line)
	}
	return p.some(lines)
}

// mostLines is how many single answers one part of the printed report lists. The marks
// have them all.
const mostLines = 40

// some are the first lines of many, and how many more there are.
func (p *Printer) some(lines []string) []string {
	if more := len(lines) - mostLines; more > 1 {
		return append(slices.Clone(lines[:mostLines]), p.Say("set-report-more", "n", more))
	}
	return lines
}

func (p *Printer) taskTable(r Report) *handout.Table {
	t := &handout.Table{Columns: split(p.Say("set-report-columns"))}
	for _, x := range r.Tasks {
		title := x.Title
		if x.Gate {
			title = "* " + title
		}
		share := calc.Fixed(x.Share*100, 0) + " % (" + calc.Fixed(x.Low*100, 0) + " to " + calc.Fixed(x.High*100, 0) + ")"
		if x.N == 0 {
			share = "-"
		}
		t.Rows = append(t.Rows, []string{title, strconv.Itoa(x.N), strconv.Itoa(x.Right + x.Carried + x.Convention), strconv.Itoa(x.Unit + x.Partly), strconv.Itoa(x.Slip),
			strconv.Itoa(x.Wrong), share, strconv.Itoa(x.Open), strconv.Itoa(x.Blank)})
	}
	if t.Rows == nil {
		return nil
	}
	return t
}

// errorLines name the commonest errors over all tasks, with where to look back.
func (p *Printer) errorLines(r Report) []string {
	type one struct {
		task TaskReport
		slip SlipCount
	}
	var all []one
	for _, t := range r.Tasks {
		for _, s := range t.Slips {
			all = append(all, one{t, s})
		}
	}
	slices.SortStableFunc(all, func(a, b one) int { return b.slip.Times - a.slip.Times })
	const most = 12
	var lines []string
	for _, x := range all[:min(len(all), most)] {
		line := p.Say("set-report-slip", "times", x.slip.Times, "n", x.task.N, "task", x.task.Title, "says", x.slip.Says)
		if x.task.Lesson != "" {
			line += " " + p.Say("set-report-reteach", "lesson", x.task.Lesson, "part", x.task.Part)
		}
		lines = append(lines, line)
	}
	return lines
}

func (p *Printer) itemTable(r Report) *handout.Table {
	if r.Handed == 0 {
		return nil
	}
	t := &handout.Table{Columns: split(p.Say("set-report-item-columns"))}
	few := r.Handed < r.Statistics
	if few {
		t.Columns = t.Columns[:5]
	}
	for _, it := range r.Items {
		share := "-"
		if it.N > 0 {
			share = calc.Fixed(it.Share*100, 0) + " %"
		}
		row := []string{strconv.Itoa(it.Number), strings.Join(it.Titles, ", or "), strconv.Itoa(it.N), strconv.Itoa(it.Open), share}
		if !few {
			d := "-"
			if it.Discrimination != nil {
				d = calc.Fixed(*it.Discrimination, 2)
			}
			row = append(row, d)
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

func (p *Printer) oddLines(odd []OddAnswer) []string {
	var lines []string
	for _, o := range odd {
		text := p.Say("set-report-odd", "name", o.Name, "n", o.Number, "task", o.Title, "given", onOneLine(o.Given), "key", onOneLine(o.Key), "code", o.Code)
		if o.Probably != "" {
			text += " " + p.Say("set-report-date", "probably", o.Probably)
		}
		lines = append(lines, text)
	}
	return p.some(lines)
}
