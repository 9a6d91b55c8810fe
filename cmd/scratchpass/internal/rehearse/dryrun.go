// Package rehearse is the lathe to rehearse on: a whole job played, by itself or from the
// home screen, the card of its passes, and the log that plays it again.
package rehearse

import (
	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/rehearsal"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/bench"
)

// call is how a rehearsal is called.
type call struct {
	job   string   // one that ships, or a file; empty where its sizes tell it or it is to be chosen
	sizes jobFlags // of the job, instead of or on top of it
	live  bool     // the clock is real
	log   string   // a file, or empty for the usual place
	goOn  bool     // with the rehearsal of this job that was broken off
}

// Command is dryrun, with the commands below it.
func Command(r *cli.Run) *cobra.Command {
	var script string
	var c call
	cmd := &cobra.Command{
		Use:   "dryrun [JOB|FILE]",
		Short: "Rehearse a whole threading job on a lathe that only costs you pride",
		Long: `Rehearse a whole threading job: set up, cut pass by pass, try the fit, call it done.
JOB is one that ships (dryrun jobs lists them) or a file; --thread and the other sizes
make your own. --script plays a log again and marks it.`,
		Args: cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			lib, err := r.Library()
			if err != nil {
				return err
			}
			if script != "" {
				if len(args) > 0 || c.live {
					return cli.Usagef("--script plays a log: it has its own job and its own time")
				}
				if r.Units != "" {
					return cli.Usagef("--script plays in the units of its lathe; leave out --units")
				}
				return playScript(cmd.Context(), r, lib, script)
			}
			if r.JSON {
				return cli.Usagef("dryrun talks with you; for JSON use dryrun --script FILE --json or dryrun plan --json")
			}
			s, _, err := r.Open(cmd.Context())
			if err != nil {
				return err
			}
			c.job = cli.OptionalArgument(args)
			return c.play(r, s)
		},
	}
	c.sizes.addTo(cmd)
	cmd.Flags().StringVar(&script, "script", "", "play the moves in `FILE`")
	cmd.Flags().StringVar(&c.log, "log", "", "keep the log in `FILE` (default: in your data folder)")
	cmd.Flags().BoolVar(&c.goOn, "go-on", false, "go on with the rehearsal of this job that was broken off")
	cmd.Flags().BoolVar(&c.live, "live", false, "at a terminal: the clock is real")
	cmd.AddCommand(jobsCommand(r), planCommand(r))
	return cmd
}

// FromHome goes to the bench in a session that is open, with a job that is chosen there.
func FromHome(r *cli.Run, s *sitting.Session) error { return (&call{}).play(r, s) }

// play goes to the bench in a session. What was broken off is offered again.
func (c *call) play(r *cli.Run, s *sitting.Session) error {
	flow := rehearsal.Flow{Session: s}
	name := c.job
	if name == "" && !c.sizes.ownJob() {
		var err error
		if name, err = flow.ChooseJob(); err != nil {
			return err
		}
	}
	h, job, err := findJob(r, s.Library, name, &c.sizes)
	if err != nil {
		return err
	}
	h.Bench = bench.New(job)
	h.Bench.Live = c.live && flow.HasClock()
	if c.live && !h.Bench.Live {
		r.Tell(s, s.Say("bench-no-live"))
	}
	log, err := c.keepMoves(r, s, &h)
	if err != nil {
		return err
	}
	if !c.live && !log.resumed { // what is gone on with keeps its clock
		h.Bench.Live, err = flow.ChooseClock()
	}
	if err == nil {
		err = flow.Run(&h)
	}
	if e := log.close(); err == nil { // closed now: the same job may be begun again from the home screen
		err = e
	}
	if where := log.where(); where != "" && len(h.Bench.Log) > 0 {
		r.Note(s, s.Say("bench-log-kept", "where", where))
	}
	return err
}
