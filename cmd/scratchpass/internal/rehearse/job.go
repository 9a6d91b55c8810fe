package rehearse

import (
	"errors"
	"io/fs"
	"reflect"
	"strings"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/content"
	"scratchpass/lessons/rehearsal"
	"scratchpass/quiz/bench"
	"scratchpass/quiz/files"
)

// namedJob is a job as it is written down.
type namedJob struct {
	name    string
	written content.Job
	ships   bool // its name alone tells it
}

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
	written := named.written
	switch {
	case r.LatheFile != "":
		written.Lathe = "" // the learner's word counts
	case r.Units != "" && written.Lathe != "" && own.Metric != (written.Lathe == "metric"):
		return h, job, cli.Usagef("--units %s: %s is a job on the %s lathe; leave it out, or give --lathe FILE with another lathe", r.Units, named.name, written.Lathe)
	}
	meant := sizes.over(written, own)
	if err := bench.CheckThread(meant); err != nil { // the rest could not be filled in
		return h, job, cli.UsageError(err)
	}
	if job, err = bench.ParseJob(meant, own); err != nil {
		return h, job, cli.UsageError(err)
	}
	h.Name = content.OneLine(named.name) // it stands in a line of the log
	if !named.ships || !reflect.DeepEqual(meant, written) {
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
func nameJob(lib *content.Library, name string, sizes *jobFlags) (namedJob, error) {
	switch {
	case name == "" && !sizes.ownJob():
		return namedJob{}, cli.Usagef("which job? Give one of %s, a file, or --thread", strings.Join(lib.JobNames(), ", "))
	case name == "":
		return namedJob{name: "own"}, nil
	case sizes.ownJob():
		return namedJob{}, cli.Usagef("%q is a job with its own thread; leave out --thread, or the job", name)
	}
	return readJob(lib, name)
}

// readJob reads a job that ships, or a file.
func readJob(lib *content.Library, name string) (namedJob, error) {
	job := namedJob{name: name}
	var err error
	job.written, err = lib.Job(name)
	if job.ships = err == nil; job.ships || !content.ErrNotThere(err) {
		return job, err
	}
	return job, job.readFile(lib, name)
}

// readFile reads a job from a file.
func (j *namedJob) readFile(lib *content.Library, path string) error {
	text, err := files.Read(path, files.MostWords)
	if errors.Is(err, fs.ErrNotExist) {
		return cli.Usagef("no job is called %q%s, and there is no such file; the jobs are %s", j.name, content.DidYouMean(j.name, lib.JobNames()), strings.Join(lib.JobNames(), ", "))
	}
	if err != nil {
		return err
	}
	return content.Decode(path, text, &j.written)
}
