package rehearse

import (
	"fmt"
	"os"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/rehearsal"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/bench"
	"scratchpass/quiz/files"
	"scratchpass/quiz/handout"
)

// sheetFlags are where a card on paper is to go.
type sheetFlags struct{ pdf, html, paper string }

func (f *sheetFlags) addTo(cmd *cobra.Command) {
	cmd.Flags().StringVar(&f.pdf, "pdf", "", "write the card as a page to print, a PDF, to `FILE`")
	cmd.Flags().StringVar(&f.html, "html", "", "the same as HTML, to `FILE`")
	cmd.Flags().StringVar(&f.paper, "paper", "A4", "A4 or Letter")
}

func (f *sheetFlags) wanted() bool { return f.pdf != "" || f.html != "" }

func (f *sheetFlags) check(asJSON bool) error {
	switch {
	case f.pdf == "-" || f.html == "-":
		return cli.Usagef("--pdf or --html -: give the name of a file")
	case f.paper != string(handout.A4) && f.paper != string(handout.Letter):
		return cli.Usagef("--paper %q: give A4 or Letter", f.paper)
	case f.wanted() && asJSON:
		return cli.Usagef("--json prints the card; leave it out, or --pdf and --html")
	}
	return nil
}

// write writes the card on paper.
func (f *sheetFlags) write(r *cli.Run, s *sitting.Session, p bench.Plan) error {
	flow := rehearsal.Flow{Session: s}
	if !p.Passes() {
		return cli.Usagef("%s has no passes to print: ask for the card without --pdf and --html, it says why", p.Job.Title)
	}
	card, err := flow.PlanSheet(p)
	if err != nil {
		return err
	}
	o := handout.Options{Paper: handout.Paper(f.paper), Title: card.Title, Compact: card.Compact, Words: handout.Words{Lang: "en", Page: s.Say("set-page")}}
	for _, to := range []struct {
		path string
		make handout.New
	}{{f.pdf, handout.PDF}, {f.html, handout.HTML}} {
		if to.path == "" {
			continue
		}
		err := files.WriteWhole(to.path, func(file *os.File) error {
			doc, err := to.make(file, o)
			if err != nil {
				return err
			}
			if err := doc.Report(card); err != nil {
				return err
			}
			return doc.Close()
		})
		if err != nil {
			return err
		}
		fmt.Fprintln(r.Out, s.Say("plan-written", "where", to.path))
	}
	return nil
}
