package cli

import (
	"errors"
	"io/fs"
	"strings"

	"scratchpass/content"
	"scratchpass/quiz/files"
)

// NamedJob is a threading job as it is written down.
type NamedJob struct {
	Name    string
	Written content.Job
	Ships   bool // its name alone tells it
}

// ReadJob reads a job that ships, or a file.
func ReadJob(lib *content.Library, name string) (NamedJob, error) {
	job := NamedJob{Name: name}
	var err error
	job.Written, err = lib.Job(name)
	if job.Ships = err == nil; job.Ships || !content.ErrNotThere(err) {
		return job, err
	}
	return job, job.ReadFile(lib, name)
}

// ReadFile reads a job from a file.
func (j *NamedJob) ReadFile(lib *content.Library, path string) error {
	text, err := files.Read(path, files.MostWords)
	if errors.Is(err, fs.ErrNotExist) {
		return Usagef("no job is called %q%s, and there is no such file; the jobs are %s", j.Name, content.DidYouMean(j.Name, lib.JobNames()), strings.Join(lib.JobNames(), ", "))
	}
	if err != nil {
		return err
	}
	return content.Decode(path, text, &j.Written)
}
