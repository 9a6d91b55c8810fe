package main

import (
	"maps"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/lessons"
	"scratchpass/quiz/drawing"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/thread"
)

func (a *app) thread() *cobra.Command {
	return &cobra.Command{
		Use:   "thread DESIGNATION",
		Short: "Everything about one thread",
		Long:  `Everything about one thread, such as "1/2-13 UNC-2A", 10-32, "M12x1.75-6g" or M20.`,
		Args:  exactly(1, `one thread, such as "1/2-13 UNC-2A"`),
		RunE: func(_ *cobra.Command, args []string) error {
			d, err := calc.ParseDesignation(args[0])
			if err != nil {
				return usageError{err}
			}
			doc, err := thread.Of(d)
			if err != nil {
				return usageError{err}
			}
			if a.json {
				return a.print(doc)
			}
			lib, err := a.library()
			if err != nil {
				return err
			}
			return a.threadPage(lib, d, doc)
		},
	}
}

// threadPage prints a thread as a page: one number a line, and a drawing where
// pictures are of use.
func (a *app) threadPage(lib *content.Library, d calc.Designation, doc thread.Document) error {
	labels, err := lib.Screens()
	if err != nil {
		return err
	}
	words, err := lib.Drawings()
	if err != nil {
		return err
	}
	u := machine.InchUnit
	if d.Metric {
		u = machine.MMUnit
	}
	text := lessons.Text{{Style: lessons.Heading, Text: doc.Designation}}
	line := func(label, value string) {
		text = append(text, lessons.Block{Text: labels["thread-"+label] + ": " + value})
	}
	size := func(label string, x float64) { line(label, calc.Fixed(x, u.Places)+" "+u.Name) }
	fine := func(label string, x float64) { line(label, calc.Fixed(x, u.Places+2)+" "+u.Name) }
	picture, err := drawing.Thread(d, words)
	if err != nil {
		return err
	}
	text = append(text, lessons.Block{Style: lessons.Picture, Text: strings.Join(picture.Terminal(a.width()-2), "\n")}, lessons.Block{Text: picture.Twin})
	size("major", doc.Major)
	fine("pitch", doc.Pitch)
	if !d.Metric {
		line("tpi", calc.Shortest(d.TPI.Number(), 3))
	}
	if doc.Starts > 1 {
		line("starts", calc.Shortest(float64(doc.Starts), 0))
		fine("lead", doc.Lead)
	}
	line("hand", doc.Hand)
	if doc.Side != nil {
		line("side", *doc.Side)
	}
	if doc.Note != "" {
		line("no-limits", doc.Note)
	}
	if doc.Allowance != nil {
		size("allowance", *doc.Allowance)
	}
	for _, l := range []struct {
		label string
		pair  thread.LimitPair
	}{{"major-limits", doc.Limits.Major}, {"pitch-limits", doc.Limits.Pitch}, {"minor-limits", doc.Limits.Minor}} {
		switch {
		case l.pair.Max != nil:
			line(l.label, calc.Fixed(*l.pair.Min, u.Places)+" to "+calc.Fixed(*l.pair.Max, u.Places)+" "+u.Name)
		case l.pair.Min != nil:
			line(l.label, labels["thread-at-least"]+" "+calc.Fixed(*l.pair.Min, u.Places)+" "+u.Name)
		}
	}
	size("bore", doc.Bore)
	for _, name := range slices.Sorted(maps.Keys(doc.Depths)) {
		fine("depth-"+name, doc.Depths[name])
	}
	fine("wire-best", doc.Wires.Best)
	fine("wire-least", doc.Wires.Least)
	fine("wire-largest", doc.Wires.Largest)
	size("over-best", doc.Wires.OverBest)
	line("lead-angle", calc.Fixed(doc.LeadAngle, 2)+" degrees")
	line("sources", strings.Join(doc.Sources, ", "))
	text = append(text, lessons.Block{Style: lessons.Caution, Text: labels["thread-caution"]})
	return a.showPage(text)
}
