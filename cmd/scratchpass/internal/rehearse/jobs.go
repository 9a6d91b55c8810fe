package rehearse

import (
	"fmt"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/content"
	"scratchpass/lessons/face/text"
)

// jobsDocument is the JSON list of jobs.
type jobsDocument struct {
	Jobs []jobDocument `json:"jobs"`
}

// jobDocument is a job in the JSON list of jobs.
type jobDocument struct {
	Name   string `json:"name"`
	Thread string `json:"thread"`
	Title  string `json:"title"`
}

func jobsCommand(r *cli.Run) *cobra.Command {
	return &cobra.Command{
		Use: "jobs", Short: "List the jobs to rehearse", Args: cli.NoArguments,
		RunE: func(*cobra.Command, []string) error {
			lib, err := r.Library()
			if err != nil {
				return err
			}
			docs := []jobDocument{}
			for _, name := range lib.JobNames() {
				w, err := lib.Job(name)
				if err != nil {
					return err
				}
				docs = append(docs, jobDocument{name, w.Thread, w.Title})
				if !r.JSON {
					fmt.Fprintln(r.Out, text.Wrap(content.OneLine(fmt.Sprintf("%-18s %s", name, w.Title)), r.Width()))
				}
			}
			if r.JSON {
				return r.PrintJSON(jobsDocument{docs})
			}
			return nil
		},
	}
}
