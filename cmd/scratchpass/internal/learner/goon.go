package learner

import (
	"context"
	"errors"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/course"
	"scratchpass/lessons/practice"
	"scratchpass/lessons/sitting"
)

// Flows are what a sitting may be of that was broken off.
var Flows = []sitting.Flow{course.Lesson{}, practice.Practice{}, practice.Best{}, practice.MixedTest{}, practice.HandedOut{}, practice.Drill{}}

func addGoOn(cmd *cobra.Command, goOn *bool) {
	cmd.Flags().BoolVar(goOn, "go-on", false, "go on at the question where you were stopped last")
}

// takeUp goes on with the sitting that was broken off, whatever it was of.
func takeUp(ctx context.Context, r *cli.Run, args []string) error {
	switch {
	case len(args) > 0:
		return cli.Usagef("--go-on goes on with what was broken off; leave out %q", args)
	case r.JSON:
		return cli.Usagef("--go-on talks with you; leave out --json")
	case r.RecordFile == cli.NoRecord:
		return cli.Usagef("--record none keeps nothing to go on with")
	}
	s, _, err := r.Open(ctx)
	if err != nil {
		return err
	}
	err = s.GoOn(Flows...)
	if errors.Is(err, sitting.ErrNothingStored) {
		return cli.UsageError(err)
	}
	return err
}
