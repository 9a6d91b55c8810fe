package lookup

import (
	"fmt"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/content"
)

func contentShow(r *cli.Run) *cobra.Command {
	return &cobra.Command{
		Use:   "show TASK",
		Short: "Print the words of a task, as a file to change",
		Args:  cli.OneArgument("a task"),
		RunE: func(_ *cobra.Command, args []string) error {
			of, err := r.Tasks()
			if err != nil {
				return err
			}
			if _, err := of.Find(args[0]); err != nil {
				return cli.UsageError(err)
			}
			return showWords(r, args[0])
		},
	}
}

// showWords prints what is in force: the words of the program with the instructor's own put
// in their place.
func showWords(r *cli.Run, task string) error {
	lib, err := r.Library()
	if err != nil {
		return err
	}
	says, err := lib.Screens()
	if err != nil {
		return err
	}
	text, where, err := lib.WordsText(task)
	if err != nil {
		return err
	}
	if r.JSON {
		return r.PrintJSON(wordsDocument{task, where, string(text)})
	}
	_, err = fmt.Fprintf(r.Out, "# %s\n\n%s", content.FillPairs(says["content-show"], "where", where), text)
	return err
}

// wordsDocument is the JSON of the words of a task.
type wordsDocument struct {
	Task string `json:"task"`
	File string `json:"file"` // where they stand in a folder of one's own
	YAML string `json:"yaml"`
}
