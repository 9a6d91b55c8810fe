package problems

import (
	"strings"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/page"
)

func markCommand(r *cli.Run) *cobra.Command {
	return &cobra.Command{
		Use:   "mark CODE ANSWER",
		Short: "Mark an answer to a problem code",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) < 2 {
				return cli.Usagef("quiz mark wants a problem code and an answer, such as compound-travel@1-7f3a 0.0701")
			}
			return nil
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			if !isCode(args[0]) {
				return cli.Usagef("problem code %q: give the whole code, such as compound-travel@1-7f3a", args[0])
			}
			lib, err := r.Library()
			if err != nil {
				return err
			}
			p, w, err := remake(lib, args[0])
			if err != nil {
				return err
			}
			given := strings.Join(args[1:], " ")
			m := p.Mark(given)
			if r.JSON {
				return r.PrintJSON(w.MarkDocument(p, given, m))
			}
			return r.ShowText(cmd.Context(), page.Page{page.Paragraph{Text: w.Feedback(p, m).Text()}})
		},
	}
}
