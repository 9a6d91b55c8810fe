package lookup

import (
	"context"
	"strings"

	"scratchpass/calc"
	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/page"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/thread"
)

// acme shows an Acme thread. It has a page of its own: what is said of a 60-degree
// thread, its depths by tool flat, its limits and its wires, would be wrong for it.
func acme(ctx context.Context, r *cli.Run, text string) error {
	d, err := calc.ParseAcme(text)
	if err != nil {
		return cli.UsageError(err)
	}
	doc, err := thread.OfAcme(d)
	if err != nil {
		return cli.UsageError(err)
	}
	if r.JSON {
		return r.PrintJSON(doc)
	}
	lib, err := r.Library()
	if err != nil {
		return err
	}
	labels, err := lib.Screens()
	if err != nil {
		return err
	}
	return r.ShowPage(ctx, acmePage(doc, labels))
}

func acmePage(doc thread.AcmeDocument, labels map[string]string) page.Page {
	t := threadLines{labels: labels, unit: machine.InchUnit, text: page.Page{
		page.Heading{Text: doc.Designation}, page.Paragraph{Text: labels["thread-acme"]}}}
	t.size("major", doc.Major)
	t.fine("pitch", doc.Pitch)
	t.line("tpi", calc.Shortest(doc.TPI, 3))
	if doc.Starts > 1 {
		t.line("starts", calc.Shortest(float64(doc.Starts), 0))
		t.fine("lead", doc.Lead)
	}
	t.line("hand", doc.Hand)
	if doc.Class != nil {
		t.line("acme-class", *doc.Class)
	}
	t.line("no-limits", labels["thread-acme-no-limits"])
	t.size("acme-pitch-diameter", doc.PitchDiameter)
	t.fine("acme-depth", doc.Depth)
	t.fine("acme-tool-flat", doc.ToolFlat)
	t.line("acme-compound", calc.Shortest(doc.CompoundAngle, 1)+" degrees")
	t.line("lead-angle", calc.Fixed(doc.LeadAngle, 2)+" degrees")
	t.line("sources", strings.Join(doc.Sources, ", "))
	return append(t.text, page.Caution{Text: labels["thread-caution"]})
}
