package content

import (
	"io/fs"
	"path"
	"slices"
	"strings"
)

// questionsDir is where questions of one's own stand in a folder.
const questionsDir = "questions"

// misplaced says which files of a folder are questions and stand where none is read: beside
// questions, in a folder inside it, or among tasks, lessons or jobs.
func (c *checker) misplaced(f folder) {
	seen := 0
	_ = fs.WalkDir(f.fsys, ".", func(name string, e fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return nil // said where it is read, if it is
		case seen > mostFiles, e.IsDir() && name != "." && (strings.Count(name, "/") >= 2 || strings.HasPrefix(e.Name(), ".")):
			return fs.SkipDir
		case e.IsDir():
			return nil
		}
		seen++
		if path.Dir(name) != questionsDir && asksQuestion(f.fsys, name) {
			c.say(path.Join(f.name, name), 0, "not read: a question belongs in %s/", questionsDir)
		}
		return nil
	})
}

// asksQuestion reports whether a file is a question, by the lines with which its keys begin: it
// says of which kind it is. No YAML is read for that: a hostile file would take long.
func asksQuestion(fsys fs.FS, name string) bool {
	end := path.Ext(name)
	if end != ".yaml" && end != ".yml" {
		return false
	}
	text, err := readText(fsys, name)
	if err != nil {
		return false
	}
	for line := range strings.Lines(string(text)) {
		kind, ok := strings.CutPrefix(line, "kind:")
		kind, _, _ = strings.Cut(kind, "#")
		if ok && slices.Contains([]string{"choice", "several", "order", "number"}, strings.Trim(strings.TrimSpace(kind), `"'`)) {
			return true
		}
	}
	return false
}

// LooksOwn reports whether a folder looks like one of someone's own words: it has a folder of
// those that are read with YAML files in it, or questions.
func LooksOwn(fsys fs.FS) bool {
	if slices.ContainsFunc(folders, func(dir string) bool { return holdsYAML(fsys, dir) }) {
		return true
	}
	return LooksLikeQuestions(fsys)
}

// LooksLikeQuestions reports whether questions stand in a folder itself, as in the folder
// questions of one.
func LooksLikeQuestions(fsys fs.FS) bool {
	entries, err := fs.ReadDir(fsys, ".")
	return err == nil && slices.ContainsFunc(entries[:min(len(entries), mostFiles)], func(e fs.DirEntry) bool {
		return !e.IsDir() && asksQuestion(fsys, e.Name())
	})
}
