package content

import (
	"io/fs"
	"maps"
	"path"
	"slices"
	"strings"
)

// question looks at what the words of an instructor's own question refer to, and at what is
// missing. Its numbers and its key are looked at by those who work them out.
func (c *checker) question(q *Question) {
	say := func(at, wrong string) { c.found = append(c.found, q.At(at, wrong)) }
	for _, missing := range []struct{ key, text string }{{"title", q.Title}, {"skill", q.Skill}, {"ask", q.Ask}, {"at_the_lathe", q.AtTheLathe}} {
		if strings.TrimSpace(missing.text) == "" {
			say("", missing.key+" is missing")
		}
	}
	for _, name := range slices.Sorted(maps.Keys(q.Mistakes)) {
		if strings.TrimSpace(q.Mistakes[name].Say) == "" {
			say(name, "the mistake "+name+" has nothing to say")
		}
	}
	line := func(text string) int { return q.At(text, "").Line }
	for _, key := range q.Safety {
		reference(c, q.file.where, line(key), "caution", key, c.safety)
	}
	if q.Drawing != "" && !slices.Contains(c.known.Drawings, q.Drawing) {
		say(q.Drawing, "no drawing is called "+q.Drawing+"; they are "+strings.Join(c.known.Drawings, ", "))
	}
}

// layout looks for folders and files of an instructor's folder whose names no one reads, and
// that are nearly those of some that are read.
func (c *checker) layout() {
	shipped, err := fs.ReadDir(embedded, ".")
	if err != nil {
		return // it is part of the program
	}
	var files []string
	for _, e := range shipped {
		if !e.IsDir() {
			files = append(files, e.Name())
		}
	}
	for _, f := range c.lib.folders {
		if f.ships {
			continue
		}
		entries, err := fs.ReadDir(f.fsys, ".")
		if err != nil {
			continue // read again, and said, where its files are
		}
		for _, e := range entries[:min(len(entries), mostFiles)] {
			c.misnamed(f, e, files)
		}
		c.misplaced(f)
	}
}

// misnamed says it of one entry of the folder, which may also hold files that are no words,
// such as blueprints.
func (c *checker) misnamed(f folder, e fs.DirEntry, files []string) {
	where := path.Join(f.name, e.Name())
	switch {
	case e.IsDir() && !slices.Contains(folders, e.Name()):
		if near := misspelt(e.Name(), folders); near != "" && holdsYAML(f.fsys, e.Name()) {
			c.say(where, 0, "no folder of this name is read; the folders are %s; did you mean %s?", strings.Join(folders, ", "), near)
		}
	case e.IsDir():
		c.misnamedIn(f, e.Name())
	case path.Ext(e.Name()) == ".yml", path.Ext(e.Name()) == ".yaml" && !slices.Contains(files, e.Name()):
		base := strings.TrimSuffix(strings.TrimSuffix(e.Name(), ".yml"), ".yaml") + ".yaml"
		if near := misspelt(base, files); near != "" {
			c.say(where, 0, "no file of this name is read here; did you mean %s?", near)
		}
	}
}

// misnamedIn says it of the files in one folder that is read.
func (c *checker) misnamedIn(f folder, dir string) {
	entries, err := fs.ReadDir(f.fsys, dir)
	if err != nil {
		return // said where its files are read
	}
	for _, e := range entries[:min(len(entries), mostFiles)] {
		for _, end := range []string{".yml", ".yaml.txt", ".yml.txt"} {
			if base, ok := strings.CutSuffix(e.Name(), end); ok {
				c.say(path.Join(f.name, dir, e.Name()), 0, "only files that end in .yaml are read; did you mean %s.yaml?", base)
			}
		}
	}
}

// holdsYAML reports whether a folder has files as those that are read.
func holdsYAML(fsys fs.FS, dir string) bool {
	entries, _ := fs.ReadDir(fsys, dir) // one that can't be read holds none
	return slices.ContainsFunc(entries[:min(len(entries), mostFiles)], func(e fs.DirEntry) bool {
		return path.Ext(e.Name()) == ".yaml" || path.Ext(e.Name()) == ".yml"
	})
}
