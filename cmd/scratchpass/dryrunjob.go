package main

import (
	"errors"
	"io/fs"
	"os"
	"reflect"
	"strings"

	"github.com/spf13/cobra"

	"scratchpass/content"
	"scratchpass/lessons"
	"scratchpass/quiz/bench"
	"scratchpass/quiz/machine"
)

// jobFlags are the sizes of a job that may be given on the command line, instead of or
// on top of a job that is written down.
type jobFlags struct{ w content.Job }

// jobFlag is one size of a job as a flag.
type jobFlag struct {
	name string
	size *string
	help string
}

// flagsOf are the sizes of a job that may be given, always in the same order.
func flagsOf(w *content.Job) []jobFlag {
	return []jobFlag{
		{"thread", &w.Thread, "`THREAD` to cut, such as \"3/4-10 UNC-2A\""},
		{"side", &w.Side, "outside or inside, where the class does not tell"},
		{"blank", &w.Blank, "`SIZE` of the blank, with its unit"},
		{"bore", &w.Bore, "`SIZE` of the bore"},
		{"length", &w.Length, "`SIZE`: how long the thread is"},
		{"end", &w.End, "what lies behind the thread: shoulder, bottom or chuck"},
		{"gap", &w.Gap, "`SIZE` of the free way from the end of the thread to that"},
		{"hold", &w.Hold, "chuck or centres"},
		{"stands-out", &w.StandsOut, "`SIZE`: how far the work stands out of the jaws, or the bar out of its holder"},
		{"bar", &w.Bar, "`SIZE` of the boring bar"},
		{"reach", &w.Reach, "`SIZE`: how far the tool stands out of the bar"},
		{"flat", &w.Flat, "`SIZE` of the flat on the tip of the tool"},
		{"ahead", &w.Ahead, "`SIZE`: how far tool, bar or holder stand ahead of the tip"},
		{"spindle-nose", &w.Nose, "screwed or locked, where the job tells it and not the lathe"},
		{"nose", &w.Round, "`SIZE`: radius of a round tip, instead of a flat"},
	}
}

func (j *jobFlags) add(cmd *cobra.Command) {
	for _, flag := range flagsOf(&j.w) {
		cmd.Flags().StringVar(flag.size, flag.name, "", flag.help)
	}
}

// over puts what the flags say over a job that is written down. A job of its own
// that leaves sizes out gets usual ones.
func (j *jobFlags) over(base content.Job, own machine.Lathe) content.Job {
	out := base
	if j.w.Thread != "" { // another thread: the sizes of the old one say nothing
		out = content.Job{Title: j.w.Thread, Story: base.Story, Lathe: base.Lathe}
	}
	if j.w.Round != "" {
		out.Flat = ""
	}
	into := flagsOf(&out)
	for i, flag := range flagsOf(&j.w) {
		if *flag.size != "" {
			*into[i].size = *flag.size
		}
	}
	return bench.Usual(out, own)
}

// job reads the job that is meant: one that ships by name, a file, or flags alone.
func (a *app) job(lib *content.Library, name string, flags *jobFlags) (r lessons.Rehearsal, job bench.Job, err error) {
	own, _, err := a.lathe()
	if err != nil {
		return r, job, err
	}
	var written content.Job
	var ships bool
	switch {
	case name == "":
		if flags.w.Thread == "" {
			return r, job, usage("which job? Give one of %s, a file, or --thread", strings.Join(lib.JobNames(), ", "))
		}
		name = "own"
	case flags.w.Thread != "":
		return r, job, usage("%q is a job with its own thread; leave out --thread, or the job", name)
	default:
		written, err = readJob(lib, name)
		if err != nil {
			return r, job, err
		}
		_, err = lib.Job(name)
		ships = err == nil
	}
	switch {
	case a.latheFile != "":
		written.Lathe = "" // the learner's word counts
	case a.units != "" && written.Lathe != "" && own.Metric != (written.Lathe == "metric"):
		return r, job, usage("--units %s: %s is a job on the %s lathe; leave it out, or give --lathe FILE with another lathe", a.units, name, written.Lathe)
	}
	meant := flags.over(written, own)
	if err := bench.CheckThread(meant); err != nil { // the rest could not be filled in
		return r, job, usageError{err}
	}
	if job, err = bench.ParseJob(meant, own); err != nil {
		return r, job, usageError{err}
	}
	r.Name = name
	if ships = ships && reflect.DeepEqual(meant, written); !ships {
		if r.As, err = bench.OneLine(meant); err != nil {
			return r, job, err
		}
	}
	if meant.Lathe == "" {
		r.Lathe, err = bench.OneLine(job.Lathe.File())
	}
	return r, job, err
}

func readJob(lib *content.Library, name string) (content.Job, error) {
	w, err := lib.Job(name)
	if err == nil || !content.ErrNotThere(err) {
		return w, err
	}
	text, err := os.ReadFile(name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return w, usage("no job is called %q%s, and there is no such file; the jobs are %s", name, content.DidYouMean(name, lib.JobNames()), strings.Join(lib.JobNames(), ", "))
	case err != nil:
		return w, err
	}
	return w, content.Decode(name, text, &w)
}
