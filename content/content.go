// Package content holds every word a learner reads, as YAML files, and reads them
// strictly. It knows no task, no number and no terminal: it returns texts.
package content

import (
	"embed"
	"errors"
	"fmt"
	"hash/fnv"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
)

//go:embed *.yaml lessons/*.yaml tasks/*.yaml jobs/*.yaml examples/*.yaml
var embedded embed.FS

// Library reads words on demand. Its folders are looked through in order: what an
// instructor's own folder has stands in front of what the program ships.
type Library struct {
	folders []folder
}

type folder struct {
	name  string // put in front of file names in findings; empty for the shipped words
	fsys  fs.FS
	ships bool // with the program: what only a slow look finds was looked for in its tests
}

// Shipped returns the words that come with the program.
func Shipped() *Library { return &Library{[]folder{{fsys: embedded, ships: true}}} }

// folders are those that an instructor's own folder may have.
var folders = []string{"lessons", "tasks", "jobs", "questions"}

// With returns a library in which the files of dir stand in front of the
// shipped ones: a lesson of the same name replaces ours, words of a task replace ours field
// by field, and entries of the shared lists are added or replaced one by one.
func With(dir string) (*Library, error) {
	info, err := os.Stat(dir)
	if err != nil {
		return nil, err
	}
	if !info.IsDir() {
		return nil, &fs.PathError{Op: "content folder", Path: dir, Err: errors.New("not a folder")}
	}
	for _, name := range folders {
		if err := crowded(filepath.Join(dir, name)); err != nil {
			return nil, err
		}
	}
	return Reading(dir, os.DirFS(dir)), nil
}

// Reading is With for any file system; name stands in front of the file names.
func Reading(name string, fsys fs.FS) *Library {
	return &Library{append([]folder{{name: name, fsys: fsys}}, Shipped().folders...)}
}

// file is a file of words, as it was found.
type file struct {
	where string // its name, as findings tell it
	text  []byte
	ships bool
}

// find returns a file from the first folder that has it.
func (l *Library) find(name string) (found file, err error) {
	for _, f := range l.folders {
		var text []byte
		read := readText
		if f.ships {
			read = fs.ReadFile
		}
		if text, err = read(f.fsys, name); err == nil {
			return file{path.Join(f.name, name), text, f.ships}, nil
		}
		if !errors.Is(err, fs.ErrNotExist) {
			return file{}, err
		}
	}
	return file{}, err
}

// names lists the YAML files of a folder over all the library's folders, sorted,
// without their ending.
func (l *Library) names(dir string) []string {
	var all []string
	for _, f := range l.folders {
		entries, err := fs.ReadDir(f.fsys, dir)
		if err != nil {
			continue // an instructor's folder need not have both
		}
		for _, e := range entries {
			if name, ok := strings.CutSuffix(e.Name(), ".yaml"); ok && !e.IsDir() {
				all = append(all, name)
			}
		}
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// TaskNames lists the tasks that have words.
func (l *Library) TaskNames() []string { return l.names("tasks") }

// LessonNames lists the lessons in teaching order, without their numbers.
func (l *Library) LessonNames() []string {
	var names []string
	for _, file := range l.names("lessons") {
		names = append(names, lessonName(file))
	}
	return names
}

// lessonName takes the number off a lesson's file name: 090-how-deep-to-go.
func lessonName(file string) string {
	number, name, ok := strings.Cut(file, "-")
	if !ok || strings.Trim(number, "0123456789") != "" {
		return file
	}
	return name
}

// Task returns the words of a task, or of an instructor's own question.
func (l *Library) Task(name string) (TaskWords, error) {
	w, _, err := l.words(name)
	if !ErrNotThere(err) {
		return w, err
	}
	q, ownErr := l.Question(name)
	if ErrNotThere(ownErr) {
		return w, err
	}
	phrases, phrasesErr := l.Phrases()
	return q.words(phrases), errors.Join(ownErr, phrasesErr)
}

// Version is a short mark of the wording of a task, for records: another wording has
// another mark. It is empty for a task without words.
func (l *Library) Version(task string) string {
	h := fnv.New32a()
	_, files, err := l.words(task)
	if ErrNotThere(err) {
		var own file
		own, err = l.find("questions/" + task + ".yaml")
		files = []file{own}
	}
	if err != nil {
		return ""
	}
	for _, f := range files {
		h.Write(f.text)
	}
	return fmt.Sprintf("%08x", h.Sum32())
}

// Lesson returns a lesson by its name.
func (l *Library) Lesson(name string) (Lesson, error) {
	for _, file := range l.names("lessons") {
		if lessonName(file) == name {
			lesson, err := read[Lesson](l, "lessons/"+file+".yaml")
			lesson.Name = name
			return lesson, err
		}
	}
	return Lesson{}, &fs.PathError{Op: "lesson", Path: name, Err: fs.ErrNotExist}
}

func read[T any](l *Library, name string) (T, error) {
	var out T
	f, err := l.find(name)
	if err != nil {
		return out, err
	}
	if found := decode(f.where, f.text, &out, !f.ships); len(found) > 0 {
		return out, found
	}
	return out, nil
}
