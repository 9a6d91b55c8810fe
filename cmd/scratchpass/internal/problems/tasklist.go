package problems

import (
	"fmt"
	"io"
	"strings"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/content"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
)

// tasksDocument is the JSON list of tasks.
type tasksDocument struct {
	Tasks []taskDocument `json:"tasks"`
}

// taskDocument is a task in the JSON list of tasks.
type taskDocument struct {
	Name   string          `json:"name"`
	Title  string          `json:"title"`
	Stage  problem.Stage   `json:"stage"`
	Gate   bool            `json:"gate"`
	Inputs []inputDocument `json:"inputs"`
}

// inputDocument is one input of a task; inputs of one group are alternatives.
type inputDocument struct {
	Name  string `json:"name"`
	Wants string `json:"wants"`
	Group string `json:"group"`
}

func listTasks(r *cli.Run) error {
	lib, err := r.Library()
	if err != nil {
		return err
	}
	_, system, err := r.Lathe()
	if err != nil {
		return err
	}
	of, err := tasks.Of(lib)
	if err != nil {
		return err
	}
	docs, err := taskDocuments(of, lib, system)
	if err != nil {
		return err
	}
	if r.JSON {
		return r.PrintJSON(tasksDocument{docs})
	}
	return printTasks(r.Out, docs)
}

// taskDocuments are all tasks, their inputs as someone who works in these units gives
// them.
func taskDocuments(of tasks.Set, lib *content.Library, system machine.System) ([]taskDocument, error) {
	docs := []taskDocument{}
	for _, t := range of.All() {
		w, err := lib.Task(t.Name)
		if err != nil {
			return nil, err
		}
		d := taskDocument{Name: t.Name, Title: w.Title, Stage: t.Stage, Gate: t.SafetyCritical, Inputs: []inputDocument{}}
		for _, in := range t.Inputs {
			d.Inputs = append(d.Inputs, inputDocument{in.Name, in.Wants(system), in.Group})
		}
		docs = append(docs, d)
	}
	return docs, nil
}

func printTasks(w io.Writer, docs []taskDocument) error {
	for _, d := range docs {
		if _, err := fmt.Fprintf(w, "%s: %s\n    %s\n", d.Name, d.Title, strings.Join(d.flags(), "  ")); err != nil {
			return err
		}
	}
	return nil
}

// flags are the inputs as flags, alternatives in one: --tpi | --pitch.
func (d taskDocument) flags() []string {
	var flags []string
	group := ""
	for _, in := range d.Inputs {
		if in.Group != "" && in.Group == group {
			flags[len(flags)-1] += " | --" + in.Name
			continue
		}
		group = in.Group
		flags = append(flags, "--"+in.Name)
	}
	return flags
}
