package lookup

import (
	"maps"
	"slices"
	"strings"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/lessons/page"
	"scratchpass/quiz/drawing"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/thread"
)

// threadLines are the lines of a thread's page, one number a line.
type threadLines struct {
	labels map[string]string
	unit   machine.Unit
	text   page.Page
}

func (t *threadLines) line(label, value string) {
	t.text = append(t.text, page.Paragraph{Text: t.labels["thread-"+label] + ": " + value})
}

func (t *threadLines) size(label string, x float64) { t.line(label, t.figure(x)+" "+t.unit.Name) }

// fine is size for what is worked with and not measured: two more places.
func (t *threadLines) fine(label string, x float64) {
	t.line(label, calc.Fixed(x, t.unit.Places+2)+" "+t.unit.Name)
}

func (t *threadLines) figure(x float64) string { return calc.Fixed(x, t.unit.Places) }

// threadPage is a thread as a page: a drawing, and one number a line.
func threadPage(d calc.Designation, doc thread.Document, labels map[string]string, words map[string]content.DrawingWords) (page.Page, error) {
	picture, err := drawing.Thread(d, words)
	if err != nil {
		return nil, err
	}
	t := threadLines{labels: labels, unit: machine.InchUnit}
	if d.Metric {
		t.unit = machine.MMUnit
	}
	t.text = page.Page{
		page.Heading{Text: doc.Designation},
		page.Figure{Pictures: []drawing.Drawing{picture}, Twin: picture.Twin},
	}
	t.form(d, doc)
	t.limits(doc)
	t.cutting(doc)
	t.measuring(doc)
	t.line("lead-angle", calc.Fixed(doc.LeadAngle, 2)+" degrees")
	t.line("sources", strings.Join(doc.Sources, ", "))
	return append(t.text, page.Caution{Text: labels["thread-caution"]}), nil
}

// form is what the designation says.
func (t *threadLines) form(d calc.Designation, doc thread.Document) {
	t.size("major", doc.Major)
	t.fine("pitch", doc.Pitch)
	if !d.Metric {
		t.line("tpi", calc.Shortest(d.TPI.Number(), 3))
	}
	if doc.Starts > 1 {
		t.line("starts", calc.Shortest(float64(doc.Starts), 0))
		t.fine("lead", doc.Lead)
	}
	t.line("hand", doc.Hand)
	if side, known := d.Side(); known {
		t.line("side", side.Word())
	}
}

// limits are the limits of size, where the thread has a class.
func (t *threadLines) limits(doc thread.Document) {
	if doc.Limits == nil {
		t.line("no-limits", *doc.NoLimits)
		return
	}
	if doc.Allowance != nil {
		t.size("allowance", *doc.Allowance)
	}
	for _, l := range []struct {
		label string
		pair  thread.LimitPair
	}{{"major-limits", doc.Limits.Major}, {"pitch-limits", doc.Limits.Pitch}, {"minor-limits", doc.Limits.Minor}} {
		switch {
		case l.pair.Max != nil:
			t.line(l.label, t.figure(*l.pair.Min)+" to "+t.figure(*l.pair.Max)+" "+t.unit.Name)
		case l.pair.Min != nil:
			t.line(l.label, t.labels["thread-at-least"]+" "+t.figure(*l.pair.Min)+" "+t.unit.Name)
		}
	}
}

// cutting is how far to bore and how deep to go.
func (t *threadLines) cutting(doc thread.Document) {
	if doc.Bore != nil {
		t.size("bore", *doc.Bore)
	} else {
		t.size("basic-bore", doc.BasicBore)
	}
	for _, name := range slices.Sorted(maps.Keys(doc.Depths)) {
		t.fine("depth-"+name, doc.Depths[name])
	}
}

// measuring is the wires and what they read, or what measures a bore instead.
func (t *threadLines) measuring(doc thread.Document) {
	if doc.Wires.Best == nil {
		t.line("inside-measuring", t.labels["thread-inside-gauges"])
		return
	}
	t.fine("wire-best", *doc.Wires.Best)
	t.fine("wire-least", *doc.Wires.Least)
	t.fine("wire-largest", *doc.Wires.Largest)
	t.size("over-best", *doc.Wires.OverBest)
}
