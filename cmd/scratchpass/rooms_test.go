package main

import (
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// rooms is which of our packages each room may import. A package inside a room has
// the same rights as the room. DEVELOPERS.md explains the table.
var rooms = map[string][]string{
	"calc":    {},
	"content": {},
	"quiz":    {"calc", "content", "quiz"},
	"lessons": {"calc", "content", "quiz", "lessons"},
	"cmd":     {"calc", "content", "quiz", "lessons", "cmd"},
}

// only is which packages of others a room may import, where that is limited.
var only = map[string]func(path string) bool{
	"calc": func(path string) bool { return !strings.Contains(path, ".") }, // the standard library
}

// onlyHere is which packages one folder has to itself.
var onlyHere = map[string]string{"github.com/charmbracelet/huh": "lessons/screen"}

// forbidden in calc: no input or output, clock, randomness.
var forbidden = map[string][]string{"calc": {"os", "io", "net", "time", "math/rand", "math/rand/v2", "embed"}}

func TestRooms(t *testing.T) {
	const module = "scratchpass/"
	seen := map[string]int{}
	root := filepath.Join("..", "..")
	err := filepath.WalkDir(root, func(path string, entry os.DirEntry, err error) error {
		if err != nil {
			return err
		}
		path, _ = filepath.Rel(root, path)
		path = filepath.ToSlash(path)
		if entry.IsDir() && strings.HasPrefix(entry.Name(), ".") && path != "." {
			return filepath.SkipDir
		}
		if !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return nil
		}
		room, _, _ := strings.Cut(path, "/")
		if _, ok := rooms[room]; !ok {
			t.Errorf("%s stands outside the rooms", path)
			return nil
		}
		f, err := parser.ParseFile(token.NewFileSet(), filepath.Join(root, path), nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, i := range f.Imports {
			imported := strings.Trim(i.Path.Value, `"`)
			seen[room]++
			if ours, ok := strings.CutPrefix(imported, module); ok {
				target, _, _ := strings.Cut(ours, "/")
				if !slices.Contains(rooms[room], target) {
					t.Errorf("%s imports %s: %s may import %v", path, imported, room, rooms[room])
				}
				continue
			}
			if allowed := only[room]; allowed != nil && !allowed(imported) {
				t.Errorf("%s imports %s: calc stands on the standard library alone", path, imported)
			}
			if slices.Contains(forbidden[room], imported) {
				t.Errorf("%s imports %s: %s has no input, output, clock or chance", path, imported, room)
			}
			if dir := onlyHere[imported]; dir != "" && filepath.ToSlash(filepath.Dir(path)) != dir {
				t.Errorf("%s imports %s: only %s may", path, imported, dir)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	for room := range rooms {
		if seen[room] == 0 {
			t.Errorf("no import seen in %s: the test looks in the wrong place", room)
		}
	}
}

// The top level holds the five rooms and what a Go module needs.
func TestTopLevel(t *testing.T) {
	entries, err := os.ReadDir(filepath.Join("..", ".."))
	if err != nil {
		t.Fatal(err)
	}
	allowed := []string{"cmd", "lessons", "quiz", "calc", "content", "README.md", "DEVELOPERS.md", "go.mod", "go.sum"}
	for _, e := range entries {
		if !strings.HasPrefix(e.Name(), ".") && !slices.Contains(allowed, e.Name()) {
			t.Errorf("%s does not belong at the top level", e.Name())
		}
	}
}
