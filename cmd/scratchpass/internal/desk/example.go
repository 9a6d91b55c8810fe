package desk

import (
	"fmt"
	"io"
	"maps"
	"slices"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/content"
	"scratchpass/quiz/files"
)

func exampleCommand(r *cli.Run) *cobra.Command {
	return &cobra.Command{
		Use:   "example [DIR]",
		Short: "Write two example blueprints and a roster, to change into your own",
		Args:  cobra.MaximumNArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			dir := "scratchpass-sets"
			if len(args) == 1 {
				dir = args[0]
			}
			return writeExamples(r, dir)
		},
	}
}

func writeExamples(r *cli.Run, dir string) error {
	lib, err := r.Library()
	if err != nil {
		return err
	}
	says, err := lib.Screens()
	if err != nil {
		return err
	}
	out := files.Stage(dir)
	out.Sign = says["set-unfinished"]
	defer out.Rollback()
	examples := content.Examples()
	for _, name := range slices.Sorted(maps.Keys(examples)) {
		if err := out.Write(name, func(w io.Writer) error { _, err := w.Write(examples[name]); return err }); err != nil {
			return err
		}
	}
	if err := out.Commit(false, func(where string) error { return cli.Usagef("%s is there already: give another folder", where) }); err != nil {
		return err
	}
	if r.JSON {
		return r.PrintJSON(writtenDocument{dir, len(examples)})
	}
	fmt.Fprintln(r.Out, content.FillPairs(says["set-example-made"], "where", dir))
	return nil
}
