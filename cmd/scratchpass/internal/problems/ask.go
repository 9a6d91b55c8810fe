package problems

import (
	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/page"
)

func askCommand(r *cli.Run) *cobra.Command {
	var level cli.Level
	var key bool
	cmd := &cobra.Command{
		Use:   "ask CODE|TASK",
		Short: "Print one problem; a code remakes the same one anywhere",
		Args:  cli.OneArgument("a problem code or a task"),
		RunE: func(cmd *cobra.Command, args []string) error {
			l, err := level.Read()
			if err != nil {
				return err
			}
			p, w, err := remakeOrDraw(r, args[0], l)
			if err != nil {
				return err
			}
			if r.JSON {
				return r.PrintJSON(w.Document(p, key))
			}
			prompt, _ := w.Ask(p)
			text := page.Page{page.Paragraph{Text: p.Code.String() + "\n" + prompt + "\n" + w.Expects(p)}}
			if key {
				text = append(text, workedPage(p, w)...)
			}
			return r.ShowText(cmd.Context(), text)
		},
	}
	level.AddTo(cmd)
	cmd.Flags().BoolVar(&key, "key", false, "with the working, the answer and what common errors give")
	return cmd
}
