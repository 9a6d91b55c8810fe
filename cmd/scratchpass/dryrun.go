package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"strings"

	"github.com/spf13/cobra"

	"scratchpass/content"
	"scratchpass/lessons"
	"scratchpass/quiz"
	"scratchpass/quiz/bench"
	"scratchpass/quiz/tasks"
)

// jobFlags are the sizes of a job that may be given on the command line, instead of or
// on top of a job that is written down.
type jobFlags struct{ w content.Job }

func (j *jobFlags) add(cmd *cobra.Command) {
	f := cmd.Flags()
	for _, flag := range []struct {
		name string
		into *string
		help string
	}{
		{"thread", &j.w.Thread, "`THREAD` to cut, such as \"3/4-10 UNC-2A\""},
		{"side", &j.w.Side, "outside or inside, where the class does not tell"},
		{"blank", &j.w.Blank, "`SIZE` of the blank, with its unit"},
		{"bore", &j.w.Bore, "`SIZE` of the bore"},
		{"length", &j.w.Length, "`SIZE`: how long the thread is"},
		{"end", &j.w.End, "what lies behind the thread: shoulder, bottom or chuck"},
		{"gap", &j.w.Gap, "`SIZE` of the free way from the end of the thread to that"},
		{"hold", &j.w.Hold, "chuck or centres"},
		{"stands-out", &j.w.StandsOut, "`SIZE`: how far the work stands out of the jaws, or the bar out of its holder"},
		{"bar", &j.w.Bar, "`SIZE` of the boring bar"},
		{"reach", &j.w.Reach, "`SIZE`: how far the tool stands out of the bar"},
		{"flat", &j.w.Flat, "`SIZE` of the flat on the tip of the tool"},
		{"nose", &j.w.Nose, "`SIZE`: radius of a round tip, instead of a flat"},
	} {
		f.StringVar(flag.into, flag.name, "", flag.help)
	}
}

// over puts what the flags say over a job that is written down. A job of its own
// that leaves sizes out gets usual ones.
func (j *jobFlags) over(base content.Job, own quiz.Lathe) content.Job {
	out := base
	put := func(into *string, flag string) {
		if flag != "" {
			*into = flag
		}
	}
	if j.w.Thread != "" { // another thread: the sizes of the old one say nothing
		out = content.Job{Title: j.w.Thread, Story: base.Story, Lathe: base.Lathe}
	}
	put(&out.Thread, j.w.Thread)
	put(&out.Side, j.w.Side)
	put(&out.Blank, j.w.Blank)
	put(&out.Bore, j.w.Bore)
	put(&out.Length, j.w.Length)
	put(&out.End, j.w.End)
	put(&out.Gap, j.w.Gap)
	put(&out.Hold, j.w.Hold)
	put(&out.StandsOut, j.w.StandsOut)
	put(&out.Bar, j.w.Bar)
	put(&out.Reach, j.w.Reach)
	if j.w.Nose != "" {
		out.Flat = ""
	}
	put(&out.Flat, j.w.Flat)
	put(&out.Nose, j.w.Nose)
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
	default:
		written, err = readJob(lib, name)
		if err != nil {
			return r, job, err
		}
		_, err = lib.Job(name)
		ships = err == nil
	}
	if a.latheFile != "" || a.units != "" {
		written.Lathe = "" // the learner's word counts
	}
	meant := flags.over(written, own)
	if job, err = bench.ParseJob(meant, own); err != nil {
		return r, job, usage("job %s: %w", name, err)
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
		return w, usage("no job is called %q%s, and there is no such file; the jobs are %s", name, tasks.Offer(name, lib.JobNames()), strings.Join(lib.JobNames(), ", "))
	case err != nil:
		return w, err
	}
	return w, content.Decode(name, text, &w)
}

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
					fmt.Fprintf(a.out, "%-18s %s\n", name, w.Title)
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
	kept, err := a.keepLog(s, r, log)
	if err != nil {
		return err
	}
	err = s.DryRun(r)
	if kept != "" && len(r.Bench.Log) > 0 {
		fmt.Fprintln(a.out, s.Say("bench-log-kept", "where", kept))
	}
	return err
}

// logPath is where the log of a rehearsal is kept.
func (a *app) logPath(given string) (string, error) {
	if given != "" {
		return given, nil
	}
	dir, err := dataFolder()
	if err != nil {
		return "", err
	}
	return filepath.Join(dir, "scratchpass", "dryrun-"+safeName(a.learner)+".log"), nil
}

// safeName makes a file name of a person's name.
func safeName(name string) string {
	return strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' {
			return r
		}
		return '_'
	}, name)
}

// keepLog lets every move be written down at once, so that a rehearsal that is broken
// off can go on. It returns where, or "" when nothing is kept.
func (a *app) keepLog(s *lessons.Session, r *lessons.Rehearsal, given string) (string, error) {
	if a.recordFile == noRecord && given == "" {
		return "", nil
	}
	path, err := a.logPath(given)
	if err != nil {
		return "", nil // no home, no log
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return "", err
	}
	resumed, err := a.resume(s, r, path)
	if err != nil {
		return "", err
	}
	how := os.O_CREATE | os.O_WRONLY | os.O_TRUNC
	if resumed {
		how = os.O_WRONLY | os.O_APPEND
	}
	f, err := os.OpenFile(path, how, 0o600)
	if err != nil {
		return "", err
	}
	a.closers = append(a.closers, f.Close)
	if !resumed {
		if _, err := f.WriteString(r.Bench.Transcript(r.Name, r.As, r.Lathe)); err != nil {
			return "", err
		}
	}
	r.Keep = func(line string) error {
		if _, err := f.WriteString(line + "\n"); err != nil {
			return err
		}
		return f.Sync()
	}
	return path, nil
}

// resume offers to go on with a rehearsal of the same job that was broken off.
func (a *app) resume(s *lessons.Session, r *lessons.Rehearsal, path string) (bool, error) {
	text, err := os.ReadFile(path)
	if err != nil {
		return false, nil
	}
	script, err := bench.ParseScript(path, text)
	if err != nil || script.Job != r.Name || script.As != r.As || script.Lathe != r.Lathe || script.Live != r.Bench.Live || len(script.Lines) == 0 {
		return false, nil
	}
	events, err := script.Events(path, r.Bench.Job.System())
	if err != nil {
		return false, nil // written by another version: it stays readable until the new one begins
	}
	b := bench.Play(r.Bench.Job, script.Live, events)
	if b.Over {
		return false, nil
	}
	yes, err := s.GoOnWith(r.Name, len(events))
	if err != nil || !yes {
		return false, err
	}
	r.Bench = b
	return true, nil
}

// scriptJob is the job of a script: the one it carries, one that ships, or a file beside
// the script.
func (a *app) scriptJob(lib *content.Library, path string, script bench.Script) (job bench.Job, err error) {
	own, _, err := a.lathe()
	if err != nil {
		return job, err
	}
	var written content.Job
	if script.As == "" {
		name := script.Job
		if _, err := lib.Job(name); content.ErrNotThere(err) && !filepath.IsAbs(name) {
			name = filepath.Join(filepath.Dir(path), name)
		}
		if written, err = readJob(lib, name); err != nil {
			return job, err
		}
	}
	if job, err = script.ReadJob(path, written, own); err != nil {
		err = usage("job %s: %w", script.Job, err)
	}
	return job, err
}

// playScript plays a log from beginning to end and tells what came of it.
func (a *app) playScript(lib *content.Library, path string) error {
	text, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	script, err := bench.ParseScript(path, text)
	if err != nil {
		return usageError{err}
	}
	job, err := a.scriptJob(lib, path, script)
	if err != nil {
		return err
	}
	events, err := script.Events(path, job.System())
	if err != nil {
		return usageError{err}
	}
	b := bench.Play(job, script.Live, events)
	words, err := lib.Bench()
	if err != nil {
		return err
	}
	if a.json {
		return a.print(b.Document(script.Job, words))
	}
	s, err := a.open()
	if err != nil {
		return err
	}
	return s.Terminal.Show(s.Played(b, words))
}
