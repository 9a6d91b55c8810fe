package progress

import (
	"context"
	"fmt"
	"os"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/progress"
	"scratchpass/lessons/report"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/files"
	"scratchpass/quiz/handout"
)

// readyFlags are where the page is to go.
type readyFlags struct {
	all   bool   // every list in full
	pdf   string // a file, or empty
	paper string
}

func readyCommand(r *cli.Run) *cobra.Command {
	var f readyFlags
	cmd := &cobra.Command{
		Use:   "ready",
		Short: "What stands between you and asking your instructor for the lathe",
		Args:  cli.NoArguments,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if err := f.check(); err != nil {
				return err
			}
			if f.pdf != "" { // a sheet to sign
				if err := notOnTrial(r); err != nil {
					return err
				}
			}
			v, err := open(cmd.Context(), r, false)
			if err != nil {
				return err
			}
			return v.showReady(cmd.Context(), r, f)
		},
	}
	cmd.Flags().BoolVar(&f.all, "all", false, "every list in full")
	cmd.Flags().StringVar(&f.pdf, "pdf", "", "write it as a PDF to `FILE`")
	cmd.Flags().StringVar(&f.paper, "paper", "A4", "A4 or Letter")
	return cmd
}

func (f readyFlags) check() error {
	if f.pdf == "-" {
		return cli.Usagef("--pdf -: give the name of a file")
	}
	if f.paper != "A4" && f.paper != "Letter" {
		return cli.Usagef("--paper %q: give A4 or Letter", f.paper)
	}
	return nil
}

// showReady shows how far the learner is from the lathe, as JSON, a PDF or a page.
func (v view) showReady(ctx context.Context, r *cli.Run, f readyFlags) error {
	shown, err := v.Ready(r.Now())
	if err != nil {
		return err
	}
	switch {
	case r.JSON:
		return r.PrintJSON(readyDocumentOf(v.Record.Learner, shown.Readiness, shown.Jobs))
	case f.pdf == "" && f.all:
		return r.ShowPage(ctx, shown.Whole(v.Speaker()))
	case f.pdf == "":
		return r.ShowPage(ctx, shown.Page(v.Speaker()))
	}
	if missing := handout.Missing(v.Record.Learner); len(missing) > 0 {
		fmt.Fprintln(r.Err, v.Session.Say("ready-letters", "letters", string(missing), "name", v.Record.Learner))
	}
	say := v.Session.Say
	o := handout.Options{Paper: handout.Paper(f.paper), Title: say("ready-title", "learner", v.Record.Learner), Date: r.Now(), Words: handout.Words{Lang: "en", Page: say("set-page")}}
	printed := report.Printed(shown.Whole(v.Speaker()), v.Record.Learner, say("rehearsal"))
	if err := files.WriteWhole(f.pdf, func(file *os.File) error { return handout.ReportPDF(file, printed, o) }); err != nil {
		return err
	}
	fmt.Fprintln(r.Out, v.Session.Say("ready-written", "where", f.pdf))
	return nil
}

// readyDocument is the JSON of it.
type readyDocument struct {
	CoreOpen   []string `json:"core_open"`
	CoreShown  []string `json:"core_shown"`
	GateOpen   []string `json:"gate_open"`
	GateShown  []string `json:"gate_shown"`
	Learner    string   `json:"learner"`
	TestPassed bool     `json:"mixed_test_passed"`
	Ask        bool     `json:"ready_to_ask"`
	NotHeld    []string `json:"not_held"`
	SureWrong  []string `json:"sure_but_wrong"`
	Jobs       []string `json:"jobs_without_mistake"`
}

func readyDocumentOf(learner string, r schedule.Readiness, jobs []progress.Rehearsed) readyDocument {
	names := []string{}
	for _, j := range jobs {
		names = append(names, j.Job)
	}
	return readyDocument{
		CoreOpen: list(r.CoreOpen), CoreShown: list(r.CoreShown), GateOpen: list(r.SafetyCriticalOpen), GateShown: list(r.SafetyCriticalShown),
		Learner: learner, TestPassed: r.Passed, Ask: r.Ask, NotHeld: list(r.NotHeld), SureWrong: list(r.SureWrong), Jobs: names,
	}
}

// list makes an empty list of none, for JSON.
func list(names []string) []string { return append([]string{}, names...) }
