package rehearse

import (
	"reflect"
	"strings"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/content"
	"scratchpass/lessons/rehearsal"
	"scratchpass/quiz/bench"
)

// findJob finds the job that is meant: one that ships by name, a file, or sizes alone.
func findJob(r *cli.Run, lib *content.Library, name string, sizes *jobFlags) (h rehearsal.Rehearsal, job bench.Job, err error) {
	own, _, err := r.Lathe()
	if err != nil {
		return h, job, err
	}
	named, err := nameJob(lib, name, sizes)
	if err != nil {
		return h, job, err
	}
	written := named.Written
	switch {
	case r.LatheFile != "":
		written.Lathe = "" // the learner's word counts
	case r.Units != "" && written.Lathe != "" && own.Metric != (written.Lathe == "metric"):
		return h, job, cli.Usagef("--units %s: %s is a job on the %s lathe; leave it out, or give --lathe FILE with another lathe", r.Units, named.Name, written.Lathe)
	}
	meant := sizes.over(written, own)
	if err := bench.CheckThread(meant); err != nil { // the rest could not be filled in
		return h, job, cli.UsageError(err)
	}
	if job, err = bench.ParseJob(meant, own); err != nil {
		return h, job, cli.UsageError(err)
	}
	h.Name = content.OneLine(named.Name) // it stands in a line of the log
	if !named.Ships || !reflect.DeepEqual(meant, written) {
		if h.As, err = bench.OneLine(meant); err != nil {
			return h, job, err
		}
	}
	if meant.Lathe == "" {
		h.Lathe, err = bench.OneLine(job.Lathe.File())
	}
	return h, job, err
}

// nameJob reads the job that was named; where none was, sizes must tell one.
func nameJob(lib *content.Library, name string, sizes *jobFlags) (cli.NamedJob, error) {
	switch {
	case name == "" && !sizes.ownJob():
		return cli.NamedJob{}, cli.Usagef("which job? Give one of %s, a file, or --thread", strings.Join(lib.JobNames(), ", "))
	case name == "":
		return cli.NamedJob{Name: "own"}, nil
	case sizes.ownJob():
		return cli.NamedJob{}, cli.Usagef("%q is a job with its own thread; leave out --thread, or the job", name)
	}
	return cli.ReadJob(lib, name)
}
