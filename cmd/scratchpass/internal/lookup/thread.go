package lookup

import (
	"context"

	"github.com/spf13/cobra"

	"scratchpass/calc"
	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/content"
	"scratchpass/lessons/page"
	"scratchpass/quiz/thread"
)

func threadCommand(r *cli.Run) *cobra.Command {
	return &cobra.Command{
		Use:   "thread DESIGNATION",
		Short: "Everything about one thread",
		Long:  `Everything about one thread, such as "1/2-13 UNC-2A", 10-32, "M12x1.75-6g", M20 or "1-5 ACME-2G".`,
		Args:  cli.OneArgument(`one thread, such as "1/2-13 UNC-2A"`),
		RunE: func(cmd *cobra.Command, args []string) error {
			if calc.IsAcme(args[0]) {
				return acme(cmd.Context(), r, args[0])
			}
			d, err := calc.ParseDesignation(args[0])
			if err != nil {
				return cli.UsageError(err)
			}
			doc, err := thread.Of(d)
			if err != nil {
				return cli.UsageError(err)
			}
			if r.JSON {
				return r.PrintJSON(doc)
			}
			return showThread(cmd.Context(), r, d, doc)
		},
	}
}

func showThread(ctx context.Context, r *cli.Run, d calc.Designation, doc thread.Document) error {
	lib, err := r.Library()
	if err != nil {
		return err
	}
	shown, err := threadPageOf(lib, d, doc)
	if err != nil {
		return err
	}
	return r.ShowPage(ctx, shown)
}

// threadPageOf is the page in the words of a library.
func threadPageOf(lib *content.Library, d calc.Designation, doc thread.Document) (page.Page, error) {
	labels, err := lib.Screens()
	if err != nil {
		return nil, err
	}
	words, err := lib.Drawings()
	if err != nil {
		return nil, err
	}
	return threadPage(d, doc, labels, words)
}
