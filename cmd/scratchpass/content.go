package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"scratchpass/content"
	"scratchpass/quiz/bench"
	"scratchpass/quiz/figures"
	"scratchpass/quiz/tasks"
)

func (a *app) content() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "content",
		Short: "Look after lessons and wording",
		Args:  noArguments,
		RunE:  func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
	}
	cmd.AddCommand(&cobra.Command{
		Use:   "check [DIR]",
		Short: "Read all lessons and wording and report everything that is wrong",
		Args:  cobra.MaximumNArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) == 1 {
				a.contentDir = args[0]
			}
			lib, err := a.library()
			if err != nil {
				return err
			}
			known := tasks.Known()
			known.Figure = figures.Figure
			found := append(append(lib.Check(known), tasks.CheckPrompts(lib)...), bench.CheckJobs(lib)...)
			if a.json {
				if err := a.print(checkDocument(found)); err != nil {
					return err
				}
			} else if err := a.listFindings(lib, found); err != nil {
				return err
			}
			if len(found) > 0 {
				return fmt.Errorf("content check: %d found", len(found))
			}
			return nil
		},
	})
	return cmd
}

func (a *app) listFindings(lib *content.Library, found content.Findings) error {
	for _, f := range found {
		if _, err := fmt.Fprintln(a.out, content.Printable(f.String())); err != nil {
			return err
		}
	}
	if len(found) > 0 {
		return nil
	}
	_, err := fmt.Fprintf(a.out, "%d lessons, %d tasks and %d jobs read, nothing wrong\n", len(lib.LessonNames()), len(lib.TaskNames()), len(lib.JobNames()))
	return err
}

// findingDocument is one finding as JSON shows it.
type findingDocument struct {
	File string `json:"file"`
	Line int    `json:"line"`
	Text string `json:"text"`
}

func checkDocument(found content.Findings) map[string][]findingDocument {
	docs := []findingDocument{}
	for _, f := range found {
		docs = append(docs, findingDocument(f))
	}
	return map[string][]findingDocument{"findings": docs}
}
