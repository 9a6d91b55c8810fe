package lookup

import (
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/content"
	"scratchpass/quiz/files"
	"scratchpass/quiz/own"
	"scratchpass/quiz/tasks"
)

func contentNew(r *cli.Run) *cobra.Command {
	var kind string
	cmd := &cobra.Command{
		Use:   "new question NAME",
		Short: "Write a question of your own to change, with what each line means",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) != 2 || args[0] != "question" {
				return cli.Usagef("content new wants question and a name for it, such as content new question stems-from-a-bar --kind number")
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error { return newQuestion(r, args[1], kind) },
	}
	cmd.Flags().StringVar(&kind, "kind", own.Kinds[0], strings.Join(own.Kinds, ", "))
	return cmd
}

// questionsFolder is where questions stand in an instructor's folder.
const questionsFolder = "questions"

// newQuestion writes an example of a kind into the folder of --content, else into the one
// that is being worked in.
func newQuestion(r *cli.Run, name, kind string) error {
	if !slices.Contains(own.Kinds, kind) {
		return cli.Usagef("--kind %q: give one of %s%s", kind, strings.Join(own.Kinds, ", "), content.DidYouMean(kind, own.Kinds))
	}
	if err := tasks.CheckOwnName(name); err != nil {
		return cli.UsageError(err)
	}
	says, err := content.Shipped().Screens()
	if err != nil {
		return err
	}
	text, err := content.ExampleQuestion(kind)
	if err != nil {
		return err
	}
	dir := r.ContentDir
	if dir == "" {
		dir = "."
	}
	out := files.Stage(filepath.Join(dir, questionsFolder))
	out.Sign = says["set-unfinished"]
	defer out.Rollback()
	if err := out.Write(name+".yaml", func(w io.Writer) error { _, err := w.Write(text); return err }); err != nil {
		return err
	}
	if err := out.Commit(false, func(where string) error {
		return cli.Usagef("%s is there already: give another name, or change that one", where)
	}); err != nil {
		return err
	}
	where := filepath.Join(dir, questionsFolder, name+".yaml")
	if r.JSON {
		return r.PrintJSON(writtenDocument{where})
	}
	_, err = fmt.Fprintln(r.Out, content.FillPairs(says["content-new-made"], "where", where, "name", name, "dir", dir))
	return err
}

// writtenDocument is the JSON of what was written.
type writtenDocument struct {
	File string `json:"file"`
}
