package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"scratchpass/lessons"
	"scratchpass/quiz/bench"
)

func (a *app) dryrun() *cobra.Command {
	var script, log string
	var live bool
	var flags jobFlags
	cmd := &cobra.Command{
		Use:   "dryrun [JOB|FILE]",
		Short: "Rehearse a whole threading job on a lathe that only costs you pride",
		Long: `Rehearse a whole threading job: set up, cut pass by pass, try the fit, call it done.
JOB is one that ships (dryrun jobs lists them) or a file; --thread and the other sizes
make your own. --script plays a log again and marks it.`,
		Args: cobra.MaximumNArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			lib, err := a.library()
			if err != nil {
				return err
			}
			if script != "" {
				if len(args) > 0 || live {
					return usage("--script plays a log: it has its own job and its own time")
				}
				if a.units != "" {
					return usage("--script plays in the units of its lathe; leave out --units")
				}
				return a.playScript(lib, script)
			}
			if a.json {
				return usage("dryrun talks with you; for JSON use dryrun --script FILE --json or dryrun plan --json")
			}
			name := ""
			if len(args) > 0 {
				name = args[0]
			}
			return a.rehearse(name, &flags, live, log)
		},
	}
	flags.add(cmd)
	cmd.Flags().StringVar(&script, "script", "", "play the moves in `FILE`")
	cmd.Flags().StringVar(&log, "log", "", "keep the log in `FILE` (default: in your data folder)")
	cmd.Flags().BoolVar(&a.goOn, "go-on", false, "go on with the rehearsal of this job that was broken off")
	cmd.Flags().BoolVar(&live, "live", false, "at a terminal: the clock is real")
	cmd.AddCommand(a.dryrunJobs(), a.dryrunPlan())
	return cmd
}

func (a *app) dryrunJobs() *cobra.Command {
	return &cobra.Command{
		Use: "jobs", Short: "List the jobs to rehearse", Args: noArguments,
		RunE: func(*cobra.Command, []string) error {
			lib, err := a.library()
			if err != nil {
				return err
			}
			docs := []map[string]string{}
			for _, name := range lib.JobNames() {
				w, err := lib.Job(name)
				if err != nil {
					return err
				}
				docs = append(docs, map[string]string{"name": name, "title": w.Title, "thread": w.Thread})
				if !a.json {
					fmt.Fprintln(a.out, lessons.Wrap(fmt.Sprintf("%-18s %s", name, w.Title), a.width()))
				}
			}
			if a.json {
				return a.print(map[string]any{"jobs": docs})
			}
			return nil
		},
	}
}

// rehearse opens a session at the bench.
func (a *app) rehearse(name string, flags *jobFlags, live bool, log string) error {
	s, err := a.open()
	if err != nil {
		return err
	}
	return a.rehearseIn(s, name, flags, live, log)
}

// rehearseIn goes to the bench in a session. What was broken off is offered again.
func (a *app) rehearseIn(s *lessons.Session, name string, flags *jobFlags, live bool, log string) (err error) {
	if name == "" && flags.w.Thread == "" {
		if name, err = s.ChooseJob(); err != nil {
			return err
		}
	}
	found, job, err := a.job(s.Library, name, flags)
	if err != nil {
		return err
	}
	r := &found
	r.Bench = bench.New(job)
	_, tty := s.Terminal.(lessons.Stage)
	r.Bench.Live = live && tty
	if live && !tty {
		fmt.Fprintln(a.err, s.Say("bench-no-live"))
	}
	kept, end, err := a.keepLog(s, r, log)
	if err != nil {
		return err
	}
	err = s.DryRun(r)
	if e := end(); err == nil { // closed now: the same job may be begun again from the home screen
		err = e
	}
	if kept != "" && len(r.Bench.Log) > 0 {
		fmt.Fprintln(a.out, lessons.Wrap(s.Say("bench-log-kept", "where", kept), a.width()))
	}
	return err
}
