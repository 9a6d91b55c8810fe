package progress

import (
	"context"
	"slices"
	"strings"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/content"
	"scratchpass/lessons/progress"
)

// showJob tells of the rehearsals of the jobs of one name: one that ships, or one that was
// rehearsed.
func (v view) showJob(ctx context.Context, r *cli.Run, name string) error {
	all, err := progress.RehearsalsOf(v.Record)
	if err != nil {
		return err
	}
	of := all.OfJob(name)
	names := v.Session.Library.JobNames()
	if len(of.Done)+len(of.Begun) == 0 && !slices.Contains(names, name) {
		return cli.Usagef("no job called %.60q ships or was rehearsed; those that ship are %s%s", name, strings.Join(names, ", "), content.DidYouMean(name, names))
	}
	if r.JSON {
		return r.PrintJSON(of)
	}
	return r.ShowPage(ctx, of.Page(name, v.Speaker()))
}
