package main

import (
	"fmt"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"scratchpass/content"
	"scratchpass/lessons"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/files"
)

func (a *app) progress() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "progress",
		Short: "What you can do, what is due, and what keeps going wrong",
		Args:  noArguments,
		RunE: func(*cobra.Command, []string) error {
			if _, err := a.openView(); err != nil {
				return err
			}
			return a.showProgress()
		},
	}
	cmd.AddCommand(a.ready(), a.exportRecord(), a.importRecord(), a.forget())
	return cmd
}

// view is a record with the words for its tasks.
type view struct {
	items   []schedule.Item
	special map[string]bool
	words   map[string]content.TaskWords
}

// showProgress shows what the open record comes to.
func (a *app) showProgress() error {
	v, err := a.viewOf(a.session)
	if err != nil {
		return err
	}
	p, err := lessons.ProgressOf(a.record, v.items, v.special, a.now())
	if err != nil {
		return err
	}
	if a.json {
		return a.print(p)
	}
	return a.showPage(p.Page(a.session.Say, v.title, v.slip, a.pictures()))
}

// openView opens the record for a look at it; there must be one.
func (a *app) openView() (view, error) {
	if a.recordFile == noRecord {
		return view{}, usage("--record none keeps no record to look at")
	}
	s, err := a.open()
	if err != nil {
		return view{}, err
	}
	return a.viewOf(s)
}

// viewOf joins a session's record with the words for its tasks.
func (a *app) viewOf(s *lessons.Session) (v view, err error) {
	v = view{lessons.CourseOrder(s.Library, s.System), lessons.Special(s.Library), map[string]content.TaskWords{}}
	for _, it := range v.items {
		if v.words[it.Task], err = s.Library.Task(it.Task); err != nil {
			return v, err
		}
	}
	return v, nil
}

func (v view) title(task string) string { return v.words[task].Title }

func (v view) slip(task, slip string) string { return strings.TrimSpace(v.words[task].Slips[slip]) }

// pictures reports whether drawings are of use where the output goes.
func (a *app) pictures() bool {
	_, ok := tty(a.out)
	return ok && !a.plain && os.Getenv("TERM") != "dumb"
}

func (a *app) ready() *cobra.Command {
	var pdf, paper string
	cmd := &cobra.Command{
		Use:   "ready",
		Short: "What stands between you and asking your instructor for the lathe",
		Args:  noArguments,
		RunE: func(*cobra.Command, []string) error {
			if pdf == "-" {
				return usage("--pdf -: give the name of a file")
			}
			if paper != "A4" && paper != "Letter" {
				return usage("--paper %q: give A4 or Letter", paper)
			}
			v, err := a.openView()
			if err != nil {
				return err
			}
			r, err := lessons.ReadinessOf(a.record, v.items, v.special)
			if err != nil {
				return err
			}
			if a.json {
				return a.print(map[string]any{"learner": a.record.Learner, "ready_to_ask": r.Ask, "gate_shown": list(r.SafetyCriticalShown), "gate_open": list(r.SafetyCriticalOpen),
					"core_shown": list(r.CoreShown), "core_open": list(r.CoreOpen), "sure_but_wrong": list(r.SureWrong), "mixed_test_passed": r.Passed})
			}
			_, answers, err := a.record.Summaries()
			if err != nil {
				return err
			}
			page := lessons.ReadinessPage(a.record.Learner, answers, a.now(), r, a.session.Say, v.title)
			if pdf == "" {
				return a.showPage(page)
			}
			if err := files.WriteWhole(pdf, func(f *os.File) error { return lessons.WritePDF(f, page, paper, a.now()) }); err != nil {
				return err
			}
			fmt.Fprintln(a.out, a.session.Say("ready-written", "where", pdf))
			return nil
		},
	}
	cmd.Flags().StringVar(&pdf, "pdf", "", "write it as a PDF to `FILE`")
	cmd.Flags().StringVar(&paper, "paper", "A4", "A4 or Letter")
	return cmd
}

// list makes an empty list of none, for JSON.
func list(names []string) []string { return append([]string{}, names...) }

func (a *app) exportRecord() *cobra.Command {
	return &cobra.Command{
		Use:   "export [FILE]",
		Short: "Write your answers as JSON lines",
		Args:  cobra.MaximumNArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			if _, err := a.openView(); err != nil {
				return err
			}
			if len(args) == 0 || args[0] == "-" {
				_, err := a.record.Export(a.out)
				return err
			}
			var n int
			err := files.WriteWhole(args[0], func(f *os.File) (err error) { n, err = a.record.Export(f); return err })
			if err == nil {
				fmt.Fprintln(a.out, a.session.Say("progress-exported", "n", n))
			}
			return err
		},
	}
}

func (a *app) importRecord() *cobra.Command {
	return &cobra.Command{
		Use:   "import FILE",
		Short: "Read answers that were exported, all or none",
		Args:  exactly(1, "a file"),
		RunE: func(_ *cobra.Command, args []string) error {
			v, err := a.openView()
			if err != nil {
				return err
			}
			f, err := os.Open(args[0])
			if err != nil {
				return err
			}
			defer f.Close()
			added, known, err := a.record.Import(f, schedule.Fold(v.items))
			if err == nil {
				fmt.Fprintln(a.out, a.session.Say("progress-imported", "added", added, "known", known))
			}
			return err
		},
	}
}

func (a *app) forget() *cobra.Command {
	yes := false
	cmd := &cobra.Command{
		Use:   "forget",
		Short: "Delete all of your answers, for good",
		Args:  noArguments,
		RunE: func(*cobra.Command, []string) error {
			if _, err := a.openView(); err != nil {
				return err
			}
			if !yes {
				_, n, err := a.record.Summaries()
				if err != nil {
					return err
				}
				reply, err := a.session.Terminal.Ask(lessons.Question{Prompt: a.session.Say("progress-forget-ask", "n", n, "learner", a.record.Learner)})
				if err != nil {
					return err
				}
				if reply != a.record.Learner {
					fmt.Fprintln(a.out, a.session.Say("progress-kept"))
					return nil
				}
			}
			n, err := a.record.Forget()
			if err == nil {
				fmt.Fprintln(a.out, a.session.Say("progress-forgot", "n", n, "learner", a.record.Learner))
			}
			return err
		},
	}
	cmd.Flags().BoolVar(&yes, "yes", false, "do not ask")
	return cmd
}
