package rehearse

import (
	"context"
	"os"
	"path/filepath"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/content"
	"scratchpass/lessons/rehearsal"
	"scratchpass/quiz/bench"
)

// playScript plays a log from beginning to end and tells what came of it.
func playScript(ctx context.Context, r *cli.Run, lib *content.Library, path string) error {
	text, err := os.ReadFile(path)
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

// scriptJob is the job of a script: the one it carries, one that ships, or a file beside
// the script.
func scriptJob(r *cli.Run, lib *content.Library, path string, script bench.Script) (job bench.Job, err error) {
	own, _, err := r.Lathe()
	if err != nil {
		return job, err
	}
	var named namedJob
	if script.As == "" {
		name := script.Job
		if _, err := lib.Job(name); content.ErrNotThere(err) && !filepath.IsAbs(name) {
			name = filepath.Join(filepath.Dir(path), name)
		}
		if named, err = readJob(lib, name); err != nil {
			return job, err
		}
	}
	if job, err = script.ReadJob(path, named.written, own); err != nil {
		err = cli.Usagef("job %s: %w", script.Job, err)
	}
	return job, err
}
