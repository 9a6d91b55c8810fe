package desk

import (
	"fmt"
	"regexp"
	"strings"
	"sync"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/quiz/files"
)

// fileNames is a kind of files that set commands write, by their names in the folder.
type fileNames func() *regexp.Regexp

// The kinds. They are made when a set command asks for them, not at every start.
var (
	sheetFiles    = namesOf(`^sheets(-\d{3})?\.(pdf|html|txt)$`)
	keyFiles      = namesOf(`^(key|grid)(-\d{3})?\.(pdf|html|txt)$`)
	feedbackFiles = namesOf(`^feedback(-\d{3})?\.(pdf|html|txt)$`)
	codeFiles     = namesOf(`^(codes\.csv|(codes|fields)/[A-Z0-9]{3}-[A-Z0-9]{4}\.(txt|html))$`)
	markFiles     = namesOf(`^(marks\.(csv|json|xlsx)|(waiting|grades|results)\.csv)$`)
	packageFiles  = namesOf(`^(qti[23]\.zip|cartridge\.imscc)$`)
)

func namesOf(form string) fileNames {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(form) })
}

func formsOf(kinds []fileNames) []*regexp.Regexp {
	var all []*regexp.Regexp
	for _, kind := range kinds {
		all = append(all, kind())
	}
	return all
}

// holds reports whether a folder has files of these kinds.
func holds(dir string, kinds ...fileNames) bool { return files.Holds(dir, formsOf(kinds)...) }

// there is the error for a file that is there already.
func (d *desk) there(where string) error {
	return cli.Usagef("%s", d.say("set-there", "where", where))
}

// stage gathers files for a folder, with a sign for it while they are put in place.
func (d *desk) stage(dir string) *files.Staged {
	out := files.Stage(dir)
	out.Sign = d.say("set-unfinished")
	return out
}

// mend finishes first what a run that was interrupted left half done in a folder, and says
// so. It names what an earlier version set aside there.
func (d *desk) mend(dir string) error {
	m, err := files.Mend(dir)
	d.tellFinished(dir, m)
	for _, where := range m.Aside {
		fmt.Fprintln(d.run.Err, d.say("set-aside", "where", where))
	}
	return err
}

func (d *desk) tellFinished(dir string, m files.Mended) {
	if m.Finished {
		fmt.Fprintln(d.run.Err, d.say("set-finished", "dir", dir))
	}
}

// keep puts the files of a folder in their place, and says which of an earlier run were
// taken away.
func (d *desk) keep(out *files.Staged, replace bool, earlier ...fileNames) error {
	d.tellFinished(out.Dir, out.Mended) // of a run that was killed since the folder was looked at
	err := out.Commit(replace, d.there, formsOf(earlier)...)
	if err == nil && len(out.Gone) > 0 {
		fmt.Fprintln(d.run.Err, d.say("set-taken", "dir", out.Dir, "files", strings.Join(out.Gone, ", ")))
	}
	return err
}

// writtenDocument is the JSON of what was written.
type writtenDocument struct {
	Folder  string `json:"folder"`
	Written int    `json:"written"`
}

// done says what was written, as a sentence or as JSON.
func (d *desk) done(sentence string, n int, dir string) error {
	if d.run.JSON {
		return d.run.PrintJSON(writtenDocument{dir, n})
	}
	_, err := fmt.Fprintln(d.run.Out, d.say(sentence, "n", n, "where", dir))
	return err
}
