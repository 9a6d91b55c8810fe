package lookup

import (
	"fmt"
	"io"
	"os"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/content"
	"scratchpass/quiz/bench"
	"scratchpass/quiz/tasks"
)

func contentCommand(r *cli.Run) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "content",
		Short: "Look after lessons and wording",
		Args:  cli.NoArguments,
		RunE:  func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
	}
	cmd.AddCommand(&cobra.Command{
		Use:   "check [DIR]",
		Short: "Read all lessons and wording and report everything that is wrong",
		Args:  cobra.MaximumNArgs(1),
		RunE:  func(_ *cobra.Command, args []string) error { return checkContent(r, args) },
	}, contentNew(r), contentShow(r))
	return cmd
}

// checkContent checks the folder that was named, else that of --content.
func checkContent(r *cli.Run, args []string) error {
	dir := r.ContentDir
	if len(args) == 1 {
		dir = args[0]
	}
	lib, err := cli.LibraryIn(dir)
	if err != nil {
		return err
	}
	found := append(append(lib.Check(tasks.Known()), tasks.CheckPrompts(lib)...), bench.CheckJobs(lib)...)
	found = append(found, tasks.CheckOwn(lib)...)
	if r.JSON {
		err = r.PrintJSON(findingsDocumentOf(found))
	} else {
		err = listFindings(r.Out, lib, dir, found)
	}
	if err == nil && len(found) > 0 {
		err = fmt.Errorf("content check: %d found", len(found))
	}
	return err
}

func listFindings(w io.Writer, lib *content.Library, dir string, found content.Findings) error {
	for _, f := range found {
		if _, err := fmt.Fprintln(w, content.Printable(f.String())); err != nil {
			return err
		}
	}
	if len(found) > 0 {
		return nil
	}
	_, err := fmt.Fprintf(w, "%d lessons, %d tasks and %d jobs read, nothing wrong\n", len(lib.LessonNames()), len(lib.TaskNames()), len(lib.JobNames()))
	here := os.DirFS(".")
	switch n := len(lib.QuestionNames()); {
	case err != nil:
	case n == 1:
		_, err = fmt.Fprintln(w, "1 question of your own read, nothing wrong")
	case n > 0 || dir != "":
		_, err = fmt.Fprintf(w, "%d questions of your own read%s\n", n, map[bool]string{true: ", nothing wrong"}[n > 0])
	case content.LooksLikeQuestions(here):
		_, err = fmt.Fprintln(w, "0 questions of your own read. Here stand questions: give the folder above, as in content check ..")
	case content.LooksOwn(here):
		_, err = fmt.Fprintln(w, "0 questions of your own read. This folder looks like your own content: give it, as in content check .")
	}
	return err
}

// findingsDocument is what was found, as JSON shows it.
type findingsDocument struct {
	Findings []findingDocument `json:"findings"`
}

// findingDocument is one finding as JSON shows it.
type findingDocument struct {
	File string `json:"file"`
	Line int    `json:"line"`
	Text string `json:"text"`
}

func findingsDocumentOf(found content.Findings) findingsDocument {
	docs := []findingDocument{}
	for _, f := range found {
		docs = append(docs, findingDocument(f))
	}
	return findingsDocument{docs}
}
