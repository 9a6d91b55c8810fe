package main

import (
	"go/parser"
	"go/token"
	"os"
	"path"
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

// storeys are the packages of quiz and of lessons from the ground up. A package imports
// only those that stand before it, so that no arrow runs back up and there is no circle;
// the packages of stages in quiz/tasks stand side by side.
var storeys = map[string][]string{
	"quiz": {"files", "machine", "arithmetic", "answer", "drawing", "figures", "thread", "bench", "problem", "wording", "own", "tasks/internal/shared", "tasks/*", "tasks",
		"handout", "qti", "set"},
	"lessons": {"page", "face/text", "face/sheet", "face/plain", "face/screen", "face/web", "face/inspect", "face/quiet", "mastery", "postgres", "postgres/postgrestest", "record", "schedule", "sitting", "internal/scripted",
		"course", "practice", "rehearsal", "progress", "report", "home", "class", "class/journal", "class/served", "school", "school/oneroster", "school/oneroster/onerostertest", "school/signon", "school/served"},
}

// faceless are the flows: they speak with any face and know none.
var faceless = []string{"lessons/sitting", "lessons/course", "lessons/practice", "lessons/rehearsal", "lessons/progress", "lessons/home"}

// floors is where the groups of commands stand, a package each. A group imports no other,
// so that each can be read by itself.
const floors = "cmd/scratchpass/internal/"

// sharedFloors are what every group may import there.
var sharedFloors = []string{floors + "cli", floors + "codefile"}

// only is which packages of others a room may import, where that is limited.
var only = map[string]func(path string) bool{
	"calc": func(path string) bool { return !strings.Contains(path, ".") }, // the standard library
}

// onlyHere is which packages one folder has to itself.
var onlyHere = map[string]string{"github.com/charmbracelet/huh": "lessons/face/screen", "github.com/charmbracelet/lipgloss": "lessons/face/screen"}

// forbidden in calc: no input or output, clock, randomness.
var forbidden = map[string][]string{"calc": {"os", "io", "net", "time", "math/rand", "math/rand/v2", "embed"}}

// module is what stands before our own packages.
const module = "scratchpass/"

func TestRooms(t *testing.T) {
	seen := map[string]int{}
	for _, file := range ourFiles(t) {
		room := roomOf(file)
		if _, ok := rooms[room]; !ok {
			t.Errorf("%s stands outside the rooms", file)
			continue
		}
		for _, imported := range importsOf(t, file) {
			seen[room]++
			if ours, ok := strings.CutPrefix(imported, module); ok {
				checkOurs(t, file, ours)
			} else {
				checkOthers(t, file, imported)
			}
		}
	}
	for room := range rooms {
		if seen[room] == 0 {
			t.Errorf("no import seen in %s: the test looks in the wrong place", room)
		}
	}
	for _, floor := range sharedFloors {
		if _, err := os.Stat(filepath.Join("..", "..", floor)); err != nil {
			t.Error(err)
		}
	}
}

// checkOurs checks that a file may import a package of ours.
func checkOurs(t *testing.T, file, imported string) {
	room := roomOf(file)
	if !slices.Contains(rooms[room], roomOf(imported)) {
		t.Errorf("%s imports %s: %s may import %v", file, imported, room, rooms[room])
	}
	if strings.HasPrefix(file, floors) && strings.HasPrefix(imported, "cmd/") && !slices.Contains(sharedFloors, imported) {
		t.Errorf("%s imports %s: of the packages of the command it may import %v", file, imported, sharedFloors)
	}
	if slices.Contains(sharedFloors, path.Dir(file)) && strings.HasPrefix(imported, "cmd/") {
		t.Errorf("%s imports %s: what the groups of commands share imports none of them", file, imported)
	}
}

// TestStoreys holds the packages of quiz and lessons to their order.
func TestStoreys(t *testing.T) {
	used := map[string]bool{}
	for _, file := range ourFiles(t) {
		room := roomOf(file)
		order, ok := storeys[room]
		if !ok {
			continue
		}
		own := storeyOf(t, order, path.Dir(file))
		used[room+"/"+order[own]] = true
		for _, imported := range importsOf(t, file) {
			ours, ok := strings.CutPrefix(imported, module)
			if !ok || roomOf(ours) != room {
				continue
			}
			if storeyOf(t, order, ours) >= own {
				t.Errorf("%s imports %s, which does not stand below it: %v", file, ours, order)
			}
			if slices.Contains(faceless, path.Dir(file)) && strings.HasPrefix(ours, "lessons/face/") {
				t.Errorf("%s imports %s: a flow knows no face", file, ours)
			}
		}
	}
	for room, order := range storeys {
		for _, name := range order {
			if !used[room+"/"+name] {
				t.Errorf("%s/%s is not there", room, name)
			}
		}
	}
}

// storeyOf is how high a package stands.
func storeyOf(t *testing.T, order []string, dir string) int {
	t.Helper()
	_, name, _ := strings.Cut(dir, "/")
	at := slices.Index(order, name)
	if at < 0 {
		at = slices.Index(order, path.Dir(name)+"/*")
	}
	if at < 0 {
		t.Fatalf("%s has no place among %v", dir, order)
	}
	return at
}

// checkOthers checks that a file may import a package of someone else.
func checkOthers(t *testing.T, file, imported string) {
	room := roomOf(file)
	if allowed := only[room]; allowed != nil && !allowed(imported) {
		t.Errorf("%s imports %s: calc stands on the standard library alone", file, imported)
	}
	if slices.Contains(forbidden[room], imported) {
		t.Errorf("%s imports %s: %s has no input, output, clock or chance", file, imported, room)
	}
	if dir := onlyHere[imported]; dir != "" && path.Dir(file) != dir {
		t.Errorf("%s imports %s: only %s may", file, imported, dir)
	}
}

func roomOf(path string) string {
	room, _, _ := strings.Cut(path, "/")
	return room
}

// ourFiles are all Go files that are no tests, from the top of the module.
func ourFiles(t *testing.T) []string {
	t.Helper()
	var all []string
	root := filepath.Join("..", "..")
	err := filepath.WalkDir(root, func(path string, entry os.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if path, err = filepath.Rel(root, path); err != nil {
			return err
		}
		if entry.IsDir() && strings.HasPrefix(entry.Name(), ".") && path != "." {
			return filepath.SkipDir
		}
		if _, err := os.Stat(filepath.Join(root, path, "go.mod")); err == nil && path != "." {
			return filepath.SkipDir // a module of its own
		}
		if strings.HasSuffix(path, ".go") && !strings.HasSuffix(path, "_test.go") {
			all = append(all, filepath.ToSlash(path))
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// importsOf are the packages that a file imports.
func importsOf(t *testing.T, file string) []string {
	t.Helper()
	f, err := parser.ParseFile(token.NewFileSet(), filepath.Join("..", "..", file), nil, parser.ImportsOnly)
	if err != nil {
		t.Fatal(err)
	}
	var all []string
	for _, i := range f.Imports {
		all = append(all, strings.Trim(i.Path.Value, `"`))
	}
	return all
}

// Package main builds the command tree and nothing else: what a command does stands in a
// package of its own.
func TestMainOnlyBuilds(t *testing.T) {
	for _, file := range ourFiles(t) {
		if path.Dir(file) != "cmd/scratchpass" {
			continue
		}
		if name := path.Base(file); name != "main.go" && name != "root.go" {
			t.Errorf("%s: a command stands in a package below internal", file)
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
