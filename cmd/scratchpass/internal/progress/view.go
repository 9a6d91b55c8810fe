package progress

import (
	"context"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/progress"
)

// view is a record with the words for its tasks.
type view struct{ progress.View }

// open opens the record for a look at it; there must be one. With whole the whole file is
// looked through first.
func open(ctx context.Context, r *cli.Run, whole bool) (view, error) {
	if r.RecordFile == cli.NoRecord {
		return view{}, cli.Usagef("--record none keeps no record to look at")
	}
	s, rec, err := r.OpenToRead(ctx, whole)
	if err != nil {
		return view{}, err
	}
	v, err := progress.ViewOf(s)
	return view{v.Of(rec, rec.Learner)}, err
}
