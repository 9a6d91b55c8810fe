package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"scratchpass/lessons"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
	"scratchpass/quiz/wording"
)

// work has a command for every task; only those that were named are made, so that
// other commands start no slower for a long catalogue. Completion needs them all.
func (a *app) work(args []string) *cobra.Command {
	var all bool
	cmd := &cobra.Command{
		Use:   "work TASK --name value ...",
		Short: "The working of a task with your own numbers",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				return nil
			}
			if _, err := tasks.Find(args[0]); err != nil {
				return usageError{err}
			}
			return nil
		},
		RunE: func(*cobra.Command, []string) error {
			if !all {
				return usage("work wants a task: work --list shows them, such as work compound-travel --tpi 12 --angle 29.5")
			}
			return a.listTasks()
		},
	}
	cmd.Flags().BoolVar(&all, "list", false, "list the tasks and what each wants to know")
	for _, t := range tasks.All() {
		if slices.Contains(args, t.Name) || slices.Contains(args, cobra.ShellCompRequestCmd) {
			cmd.AddCommand(a.workTask(t))
		}
	}
	return cmd
}

// workTask is the command of one task; its inputs are the flags.
func (a *app) workTask(t *problem.Task) *cobra.Command {
	cmd := &cobra.Command{
		Use:    t.Name,
		Short:  "The working of this task with your own numbers",
		Hidden: true, // work --list is the list
		Args:   cobra.NoArgs,
	}
	for _, in := range t.Inputs {
		cmd.Flags().String(in.Name, "", in.Symbol+": "+in.Wants(machine.Imperial))
	}
	cmd.RunE = func(cmd *cobra.Command, _ []string) error {
		lathe, system, err := a.lathe()
		if err != nil {
			return err
		}
		if !t.Allows(system) {
			system = t.Systems[0]
		}
		v := problem.NewValues(t.Inputs, system)
		for _, in := range t.Inputs {
			if f := cmd.Flags().Lookup(in.Name); f.Changed {
				if err := v.Read(in.Name, f.Value.String()); err != nil {
					return usageError{err}
				}
			}
		}
		p, err := problem.FromValues(t, v, lathe)
		if err != nil {
			return usage("work %s: %w", t.Name, err)
		}
		lib, err := a.library()
		if err != nil {
			return err
		}
		w, err := wording.Load(lib, t.Name)
		if err != nil {
			return err
		}
		if a.json {
			return a.print(w.Document(p, true))
		}
		return a.showText(append(lessons.Text{{Text: w.Task.Title}}, workedText(p, w)...))
	}
	return cmd
}

// workedText is a problem's working with its key, what wrong roads give, and the
// cautions.
func workedText(p *problem.Problem, w *wording.Words) lessons.Text {
	doc := w.Document(p, true)
	var text lessons.Text
	say := func(format string, args ...any) {
		text = append(text, lessons.Block{Text: fmt.Sprintf(format, args...)})
	}
	for _, g := range doc.Given {
		say("given %s: %s = %s %s", g.Name, g.Symbol, g.Value, g.Unit)
	}
	for i, s := range doc.Steps {
		say("  %s", p.Working.Line(i))
		if s.Means != "" {
			say("    %s: %s", s.Symbol, s.Means)
		}
	}
	say("answer: %s", w.KeyText(p))
	if a := doc.Answer; a.Low != nil && a.High != nil {
		say("accepted: %v to %v %s", *a.Low, *a.High, a.Unit)
	}
	for _, s := range p.Expected.Errors {
		say("wrong road %s, %s: %s", s.Name, w.Shown(p, s.Response), strings.TrimSpace(w.Task.Slips[s.Name]))
	}
	say("at the lathe: %s", w.Task.AtTheLathe)
	for _, c := range doc.Safety {
		say("CAUTION: %s", c)
	}
	say("sources: %s", strings.Join(doc.Sources, ", "))
	return text
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

func (a *app) listTasks() error {
	lib, err := a.library()
	if err != nil {
		return err
	}
	_, system, err := a.lathe()
	if err != nil {
		return err
	}
	docs := []taskDocument{}
	for _, t := range tasks.All() {
		w, err := lib.Task(t.Name)
		if err != nil {
			return err
		}
		d := taskDocument{Name: t.Name, Title: w.Title, Stage: t.Stage, Gate: t.SafetyCritical, Inputs: []inputDocument{}}
		for _, in := range t.Inputs {
			d.Inputs = append(d.Inputs, inputDocument{in.Name, in.Wants(system), in.Group})
		}
		docs = append(docs, d)
	}
	if a.json {
		return a.print(map[string]any{"tasks": docs})
	}
	for _, d := range docs {
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
		if _, err := fmt.Fprintf(a.out, "%s: %s\n    %s\n", d.Name, d.Title, strings.Join(flags, "  ")); err != nil {
			return err
		}
	}
	return nil
}
