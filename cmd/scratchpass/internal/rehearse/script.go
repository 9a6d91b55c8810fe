package rehearse

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/content"
	"scratchpass/lessons/rehearsal"
	"scratchpass/quiz/bench"
	"scratchpass/quiz/files"
)

// playScript plays a log from beginning to end and tells what came of it.
func playScript(ctx context.Context, r *cli.Run, lib *content.Library, path string) error {
	text, err := files.Read(path, files.MostMoves)
	if err != nil {
		return err
	}
	script, err := bench.ParseScript(path, text)
	if err != nil {
		return cli.UsageError(err)
	}
	job, err := scriptJob(r, lib, path, script)
	if err != nil {
		return err
	}
	played, err := script.Replay(path, job)
	if err != nil {
		return cli.UsageError(err)
	}
	words, err := lib.Bench()
	if err != nil {
		return err
	}
	if r.JSON {
		return r.PrintJSON(played.Document(script.Job, words))
	}
	s, _, err := r.Open(ctx)
	if err != nil {
		return err
	}
	return s.Face.Show(rehearsal.Flow{Session: s}.Played(played, words))
}

// besideScript reads the job that a script names: one that ships, or a file in the folder
// of the script. A script is handed in by someone, and has no business elsewhere.
func besideScript(lib *content.Library, script, name string) (job cli.NamedJob, err error) {
	job.Name = name
	if job.Written, err = lib.Job(name); err == nil || !content.ErrNotThere(err) {
		return job, err
	}
	elsewhere := cli.Usagef("%s: job %.100q: give one of %s, or the name of a file that lies beside the script", script, name, strings.Join(lib.JobNames(), ", "))
	if filepath.Base(name) != name || !filepath.IsLocal(name) || strings.ContainsAny(name, `/\:`) {
		return job, elsewhere
	}
	dir := filepath.Dir(script)
	root, err := os.OpenRoot(dir)
	if err != nil {
		return job, err
	}
	defer root.Close()
	if _, err := root.Stat(name); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return job, elsewhere // a link that leads away
	}
	return job, job.ReadFile(lib, filepath.Join(dir, name))
}

// scriptJob is the job of a script: the one it carries, one that ships, or a file beside
// the script.
func scriptJob(r *cli.Run, lib *content.Library, path string, script bench.Script) (job bench.Job, err error) {
	own, _, err := r.Lathe()
	if err != nil {
		return job, err
	}
	var named cli.NamedJob
	if script.As == "" {
		if named, err = besideScript(lib, path, script.Job); err != nil {
			return job, err
		}
	}
	if job, err = script.ReadJob(path, named.Written, own); err != nil {
		err = cli.Usagef("job %s: %w", script.Job, err)
	}
	return job, err
}
