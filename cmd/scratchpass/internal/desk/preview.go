package desk

import (
	"context"
	"fmt"
	"math"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/page"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/drawing"
	"scratchpass/quiz/handout"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/set"
)

func previewCommand(r *cli.Run) *cobra.Command {
	return &cobra.Command{
		Use:   "preview BLUEPRINT",
		Short: "Show one sheet of a set on the screen, and how much it asks",
		Args:  cli.OneArgument("a blueprint"),
		RunE: func(cmd *cobra.Command, args []string) error {
			d, err := openPreview(r, args[0])
			if err != nil {
				return err
			}
			return d.preview(r.UntilStopped(cmd.Context()))
		},
	}
}

// previewSecret makes numbers that are nobody's: a look at a set needs no class secret, and
// tells nothing of a sheet that someone gets.
var previewSecret = set.Secret("the numbers of a preview are nobody's")

// nobody is whose sheet a preview shows.
var nobody = set.Apprentice{ID: "preview"}

// openPreview reads a blueprint that is only looked at.
func openPreview(r *cli.Run, blueprint string) (*desk, error) {
	d, b, err := deskFor(r, blueprint)
	if err != nil {
		return nil, err
	}
	if d.maker, err = set.NewMaker(b, previewSecret, d.lib); err != nil {
		return nil, fmt.Errorf("%s: %w", blueprint, err)
	}
	d.printer, err = set.NewPrinter(d.maker, d.lib)
	return d, err
}

// previewDocument is the JSON of a preview.
type previewDocument struct {
	Set       string             `json:"set"`
	Title     string             `json:"title"`
	Facts     []string           `json:"facts"`
	Questions []previewQuestion  `json:"questions"`
	Effort    map[string]float64 `json:"effort"`
}

type previewQuestion struct {
	Number  int      `json:"number"`
	Task    string   `json:"task"`
	Points  float64  `json:"points"`
	Text    []string `json:"text"`
	Options []string `json:"options"`
}

// preview shows the sheet of nobody.
func (d *desk) preview(ctx context.Context) error {
	items, err := d.maker.Items(nobody.ID)
	if err != nil {
		return err
	}
	sheet, err := d.printer.Sheet(nobody, items)
	if err != nil {
		return err
	}
	effort := effortOf(items)
	if d.run.JSON {
		doc := previewDocument{Set: d.maker.Blueprint.Set, Title: sheet.Title, Facts: sheet.Facts, Effort: map[string]float64{
			"questions": float64(effort.Questions), "decisions": float64(effort.Decisions), "worked": float64(effort.Worked),
			"steps": float64(effort.Steps), "safety_critical": float64(effort.Critical), "minutes": math.Ceil(effort.Minutes)}}
		for i, it := range sheet.Items {
			doc.Questions = append(doc.Questions, previewQuestion{it.Number, items[i].Problem.Task.Name, items[i].Points, it.Text, append([]string{}, it.Options...)})
		}
		return d.run.PrintJSON(doc)
	}
	p := d.sheetPage(sheet)
	p = append(p, page.Gap{}, page.Heading{Text: d.say("set-effort")})
	for _, line := range d.effortLines(effort) {
		p = append(p, page.Item{Text: line})
	}
	return d.run.ShowPage(ctx, p)
}

// sheetPage is a sheet as a page.
func (d *desk) sheetPage(s handout.Sheet) page.Page {
	p := page.Page{page.Heading{Text: s.Title}, page.Aside{Text: d.say("set-preview-nobody")}}
	for _, fact := range s.Facts {
		p = append(p, page.Paragraph{Text: fact})
	}
	starred := false
	for _, it := range s.Items {
		heading := d.say("set-preview-question", "n", it.Number, "points", it.Points)
		if it.Caution {
			heading, starred = heading+" *", true
		}
		p = append(p, page.Gap{}, page.Heading{Text: heading})
		for _, line := range it.Text {
			p = append(p, page.Paragraph{Text: line})
		}
		for i, line := range append(append([]string{}, it.Options...), it.Readings...) {
			p = append(p, page.Item{Text: fmt.Sprintf("%d. %s", i+1, line)})
		}
		if it.Drawing != nil {
			p = append(p, page.Figure{Pictures: []drawing.Drawing{*it.Drawing}, Twin: it.Drawing.Twin})
		}
		p = append(p, page.Aside{Text: it.Expects})
	}
	if starred {
		p = append(p, page.Gap{}, page.Aside{Text: "* " + d.say("set-star")})
	}
	return p
}

// effortOf adds up a sheet by what an answer usually takes.
func effortOf(items []set.Item) set.Effort {
	return set.EffortOf(items, func(t *problem.Task) float64 { return schedule.ItemOf(t, 0).Minutes })
}

// effortLines say how much a sheet asks. What it is for learners nobody knows before they
// have answered, so the lines count and do not rate.
func (d *desk) effortLines(e set.Effort) []string {
	lines := []string{
		d.say("set-effort-minutes", "n", math.Ceil(e.Minutes)),
		d.say("set-effort-counts", "n", e.Questions, "decisions", e.Decisions, "worked", e.Worked, "steps", e.Steps),
	}
	if e.Critical > 0 {
		lines = append(lines, d.say("set-effort-critical", "n", e.Critical))
	}
	return lines
}
