package classroom

import (
	"context"
	"fmt"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/class"
	"scratchpass/lessons/sitting"
)

// roundOf is the bench round of a job that a class begins with, and the title of the job.
func roundOf(r *cli.Run, s *sitting.Session, o options) (e class.Event, title string, err error) {
	job, err := cli.ReadJob(s.Library, o.job)
	if err != nil {
		return e, "", err
	}
	if r.LatheFile != "" {
		job.Written.Lathe = "" // the lathe that was given counts
	}
	if e.Text, err = class.JobText(job.Name, job.Written, s.Lathe); err != nil {
		return e, "", cli.UsageError(fmt.Errorf("--job %s: %w", o.job, err))
	}
	if e.N = o.pass; o.hints {
		e.Name = class.WithHints
	}
	if _, err = class.NewRound(e.Text, e.N); err != nil {
		err = cli.UsageError(fmt.Errorf("--job %s: %w", o.job, err))
	}
	return e, job.Written.Title, err
}

// rehearse begins the bench round of a class, if it has one and that was not begun before.
func (q questions) rehearse(ctx context.Context, live *class.Live) error {
	if q.round.Text == "" {
		return nil
	}
	begun, other := false, false
	live.See(func(room *class.Room) {
		if begun = len(room.Rounds) > 0; begun {
			other = room.Rounds[0].Text != q.round.Text || room.Rounds[0].Pass.N != q.round.N
		}
	})
	switch {
	case other:
		return fmt.Errorf("%s holds a class that began with another job or pass than this one: give another file with --room, or the job that it began with", q.room)
	case begun:
		return nil
	}
	return live.Rehearse(ctx, q.round)
}
