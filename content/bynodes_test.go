package content

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"
)

// The words that ship are not read twice when they are asked for, but here.
func TestWhatShipsIsFit(t *testing.T) {
	read := 0
	err := fs.WalkDir(embedded, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		text, err := embedded.ReadFile(name)
		if err != nil {
			return err
		}
		found, fit := byNodes(name, text)
		if !fit {
			t.Errorf("%s is too much", name)
		}
		for _, f := range found {
			t.Error(f)
		}
		read++
		return nil
	})
	if err != nil || read < 100 {
		t.Errorf("%d files read, %v", read, err)
	}
}

// Those of someone's own folder are, in files and in the shared lists.
func TestOctalNumbersOfOnesOwn(t *testing.T) {
	own := Reading("mine", fstest.MapFS{
		"lessons/095-x.yaml": {Data: []byte("title: x\nminutes: 010\n")},
		"phrases.yaml":       {Data: []byte("010: ten\n")},
	})
	if _, err := own.Lesson("x"); err == nil || err.Error() != "mine/lessons/095-x.yaml:2: 010 would be read as an octal number; write it without the leading 0" {
		t.Error(err)
	}
	if _, err := own.Phrases(); err == nil || err.Error() != "mine/phrases.yaml:1: 010 would be read as an octal number; write it without the leading 0" {
		t.Error(err)
	}
}

// What a quoted text hides is found, with its line; keys are texts too.
func TestHiddenCharacters(t *testing.T) {
	for text, want := range map[string]string{
		`title: "\e]0;x\a"`:                   "a.yaml:1: the character U+001B is not allowed here; write plain text",
		`why: "a\x9b5m"`:                      "a.yaml:1: the character U+009B is not allowed here; write plain text",
		"why: a\ngoals: [b, \"\\u202ec\"]":    "a.yaml:2: the character U+202E is not allowed here; write plain text",
		`why: "\u2066a"`:                      "a.yaml:1: the character U+2066 is not allowed here; write plain text",
		`why: "a\u200bb"`:                     "a.yaml:1: the character U+200B is not allowed here; write plain text",
		`why: "a\Lb"`:                         "a.yaml:1: the character U+2028 is not allowed here; write plain text",
		`why: "a\0b"`:                         "a.yaml:1: the character U+0000 is not allowed here; write plain text",
		`why: "a\r\nb"`:                       "a.yaml:1: the character U+000D is not allowed here; write plain text",
		`"wh\e": a`:                           "a.yaml:1: the character U+001B is not allowed here; write plain text",
		"why: !!binary G10wO3gH":              "a.yaml:1: !!binary is not allowed here; write plain text",
		`title: "a\nb"`:                       `a.yaml:1: "title" has a line break; write it on one line`,
		"why: a\ntitle: |\n  a\n  b\n":        `a.yaml:2: "title" has a line break; write it on one line`,
		"parts:\n- title: \"a\\nb\"":          `a.yaml:2: "title" has a line break; write it on one line`,
		`"a\nb": c`:                           `a.yaml:1: "a\nb" has a line break; write it on one line`,
		"why: &a b\ngoals: [*a]":              "a.yaml:2: *a points at another place; write the text itself",
		"title: " + strings.Repeat("é", 201):  `a.yaml:1: "title" has more than 200 letters; say it shorter`,
		"why: " + strings.Repeat("ab ", 1400): "a.yaml:1: the text has more than 4000 letters; split it",
		strings.Repeat("[", 50):               "a.yaml:",
		"goals: " + strings.Repeat("[", 45) + strings.Repeat("]", 45): "a.yaml:1: blocks and lists stand inside one another more than 40 deep",
	} {
		var l Lesson
		err := Decode("a.yaml", []byte(text), &l)
		if err == nil || !strings.HasPrefix(err.Error(), want) {
			t.Errorf("%.60q: %v, want %s", text, err, want)
		}
	}
	for _, text := range []string{`why: "a\nb\tc"`, "why: |\n  a\n  b\n", "title: " + strings.Repeat("é", 200)} {
		var l Lesson
		if err := Decode("a.yaml", []byte(text), &l); err != nil {
			t.Errorf("%.60q: %v", text, err)
		}
	}
}

// What is larger than words are is told before anything else is done with it: to compare
// each key with each other would take an hour.
func TestTooMuch(t *testing.T) {
	var keys, lines strings.Builder
	for i := range 20_001 {
		fmt.Fprintf(&keys, "k%d: a\n", i)
		lines.WriteString("- a\n")
	}
	for text, want := range map[string]string{
		keys.String():                           "the block has 20001 keys: give at most 2000",
		lines.String():                          "the file has more than 20000 keys and texts; split it",
		strings.Repeat("# a comment\n", 30_000): "the file has more than 262144 bytes",
		strings.Repeat("\x01\n", 100_000):       "a.yaml:1: the character U+0001 is not allowed here",
	} {
		var l Lesson
		err := Decode("a.yaml", []byte(text), &l)
		if err == nil || !strings.Contains(err.Error(), want) || len(err.Error()) > 100*mostFindings {
			t.Errorf("%.60q: %.200v, want %s", text, err, want)
		}
	}
}

// An own folder has ordinary files of a fit length, and not too many.
func TestFilesOfOnesOwn(t *testing.T) {
	dir := t.TempDir()
	lessons := filepath.Join(dir, "lessons")
	if err := os.Mkdir(lessons, 0o700); err != nil {
		t.Fatal(err)
	}
	write := func(name string, size int) {
		t.Helper()
		if err := os.WriteFile(filepath.Join(lessons, name), []byte(strings.Repeat("#", size)), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	write("095-long.yaml", mostBytes+1)
	if err := os.Mkdir(filepath.Join(lessons, "096-folder.yaml"), 0o700); err != nil {
		t.Fatal(err)
	}
	wants := map[string]string{"long": "more than 262144 bytes", "folder": "it is no ordinary file"}
	if err := os.Symlink("/dev/zero", filepath.Join(lessons, "097-endless.yaml")); err == nil {
		if _, err := os.Stat("/dev/zero"); err == nil {
			wants["endless"] = "it is no ordinary file"
		}
	}
	own, err := With(dir)
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range wants {
		if name == "folder" { // a folder is no name among the lessons
			if _, err := readText(os.DirFS(dir), "lessons/096-folder.yaml"); err == nil || !strings.Contains(err.Error(), want) {
				t.Errorf("%s: %v, want %s", name, err, want)
			}
			continue
		}
		if _, err := own.Lesson(name); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %s", name, err, want)
		}
	}
	for i := range mostFiles {
		write(fmt.Sprintf("%d.yaml", i), 1)
	}
	if _, err := With(dir); err == nil || !strings.Contains(err.Error(), "more than 1000 files") {
		t.Errorf("a crowded folder: %v", err)
	}
}
