package files

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"
)

// Names as commands may give them.
var (
	sheetNames = regexp.MustCompile(`^sheets(-\d{3})?\.(pdf|html|txt)$`)
	keyNames   = regexp.MustCompile(`^key(-\d{3})?\.(pdf|html|txt)$`)
	markNames  = regexp.MustCompile(`^marks\.(csv|json)$`)
)

// A line that was torn goes; one that only lacks its end, or is not the program's, stays.
func TestTornLinesGo(t *testing.T) {
	const whole = `{"n":1}` + "\n"
	for _, c := range []struct {
		name, before, want string
		torn               func([]byte) bool
	}{
		{"none yet", "", whole, TornAnswer},
		{"whole", whole, whole + whole, TornAnswer},
		{"torn", whole + `{"n":2,"co`, whole + whole, TornAnswer},
		{"only torn", `{"n":2,"co`, whole, TornAnswer},
		{"without its end", whole + `{"n":2}`, whole + `{"n":2}` + "\n" + whole, TornAnswer},
		{"notes of someone", "my notes", "my notes\n" + whole, TornAnswer},
		{"torn behind many", strings.Repeat(whole, 5000) + `{"n":2,"co`, strings.Repeat(whole, 5000) + whole, TornAnswer},
		{"torn and long", whole + `{"n":"` + strings.Repeat("x", 50_000), whole + whole, TornAnswer},
		{"long, without its end", whole + strings.Repeat("x", 50_000), whole + strings.Repeat("x", 50_000) + "\n" + whole, TornAnswer},
		{"just a piece", strings.Repeat("x", 4096), strings.Repeat("x", 4096) + "\n" + whole, TornAnswer},
		{"a move", "job first\nin 0.01", "job first\n" + whole, TornMove},
	} {
		t.Run(c.name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "lines")
			if err := os.WriteFile(path, []byte(c.before), 0o600); err != nil {
				t.Fatal(err)
			}
			f, err := Append(path, c.torn)
			if err != nil {
				t.Fatal(err)
			}
			if _, err := f.WriteString(whole); err != nil {
				t.Fatal(err)
			}
			if err := f.Close(); err != nil {
				t.Fatal(err)
			}
			if got, err := os.ReadFile(path); err != nil || string(got) != c.want {
				t.Errorf("got %q, %v, want %q", got, err, c.want)
			}
		})
	}
}

// Folders with signs of a pattern in their names are looked into all the same.
func TestHolds(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "class [b] *?")
	if Holds(dir, keyNames) {
		t.Error("a folder that is not there holds a key")
	}
	if err := os.Mkdir(dir, 0o700); err != nil {
		t.Skip(err) // Windows has no such names
	}
	if err := os.WriteFile(filepath.Join(dir, "key-001.pdf"), nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if !Holds(dir, markNames, keyNames) || Holds(dir, sheetNames) {
		t.Error("the key in an oddly named folder was not seen")
	}
}

// What an instructor keeps beside sheets and keys stays, whatever it is called, and what
// could not be replaced comes back.
func TestReplacedFiles(t *testing.T) {
	dir := t.TempDir()
	own := []string{"key ideas.txt", "keyboard.txt", "sheets to order.csv", "codes-of-conduct.txt", "codes/readme.txt", "feedback.txt"}
	for _, name := range append([]string{"key.pdf", "key-002.pdf", "codes/K7F-2QXM.txt"}, own...) {
		if err := os.MkdirAll(filepath.Dir(filepath.Join(dir, name)), 0o700); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, name), []byte("old"), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	there := func(string) error { return os.ErrExist }
	write := func(name string, replace bool) error {
		out := Stage(dir)
		defer out.Rollback()
		if err := out.Write(name, func(w io.Writer) error { _, err := io.WriteString(w, "new"); return err }); err != nil {
			t.Fatal(err)
		}
		return out.Commit(replace, there, keyNames)
	}
	if err := write("key.pdf", false); !errors.Is(err, os.ErrExist) {
		t.Errorf("not to be replaced: %v", err)
	}
	if err := write("key.pdf", true); err != nil {
		t.Fatal(err)
	}
	read := func(name string) string {
		text, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			return "nothing"
		}
		return string(text)
	}
	if read("key.pdf") != "new" || read("key-002.pdf") != "nothing" || read("codes/K7F-2QXM.txt") != "old" {
		t.Errorf("the key: %s, the second of an earlier run: %s, a code: %s", read("key.pdf"), read("key-002.pdf"), read("codes/K7F-2QXM.txt"))
	}
	for _, name := range own {
		if read(name) != "old" {
			t.Errorf("%s was taken away", name)
		}
	}
	// A file can't stand where a folder is: all stays as it was.
	if err := os.Mkdir(filepath.Join(dir, "key.html"), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, "key.html", "x"), nil, 0o600); err != nil {
		t.Fatal(err)
	}
	out := Stage(dir)
	for _, name := range []string{"key.pdf", "key.html/x/y"} { // the second can't be put in its place
		if err := out.Write(name, func(w io.Writer) error { _, err := io.WriteString(w, "newer"); return err }); err != nil {
			t.Fatal(err)
		}
	}
	if err := out.Commit(true, there, keyNames); err == nil {
		t.Error("a file was put where there is none to be")
	}
	out.Rollback()
	if read("key.pdf") != "new" {
		t.Errorf("after an error the key is %s", read("key.pdf"))
	}
	if left, _ := filepath.Glob(filepath.Join(dir, gatheredIn+"*")); len(left) > 0 {
		t.Errorf("left over: %q", left)
	}
}

// What a killed run has gathered goes with the next run, and so does a file that was written
// beside its place; what has old files in it, or is someone else's, stays.
func TestSweep(t *testing.T) {
	dir := t.TempDir()
	put := func(name string) {
		t.Helper()
		path := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, nil, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	for _, name := range []string{
		".scratchpass-1/new/key.pdf", ".scratchpass-2/plan.tmp", ".scratchpass-done-3/old/key.pdf", ".scratchpass-4", // go
		".scratchpass-5/old/key.pdf", ".scratchpass-6/new/x", ".scratchpass-6/mine", ".scratchpass-notes/new/x", "scratchpass-7/new/x", ".scratchpass-8",
	} {
		put(name)
	}
	if err := os.MkdirAll(filepath.Join(dir, ".scratchpass-9", "old", "codes"), 0o700); err != nil { // nothing in it
		t.Fatal(err)
	}
	then := time.Now().Add(-2 * time.Hour)
	if err := os.Chtimes(filepath.Join(dir, ".scratchpass-4"), then, then); err != nil {
		t.Fatal(err)
	}
	m, err := mendLocked(disk{}, dir)
	if err != nil || m.Finished || len(m.Aside) != 1 || filepath.Base(m.Aside[0]) != ".scratchpass-5" {
		t.Errorf("%+v, %v", m, err)
	}
	var left []string
	for _, name := range strings.Fields(holds(t, dir)) {
		left = append(left, strings.TrimSuffix(name, "="))
	}
	if got := strings.Join(left, " "); got != ".scratchpass-5/old/key.pdf .scratchpass-6/mine .scratchpass-6/new/x .scratchpass-8 .scratchpass-notes/new/x scratchpass-7/new/x" {
		t.Errorf("left %s", got)
	}
	if all, err := filepath.Glob(filepath.Join(dir, ".scratchpass-9*")); err != nil || len(all) > 0 {
		t.Errorf("left %q, %v", all, err)
	}
}

// Two programs that add to one file keep each other's lines.
func TestTwoWriters(t *testing.T) {
	path := filepath.Join(t.TempDir(), "answers.jsonl")
	var both [2]*os.File
	for i := range both {
		f, err := Append(path, TornAnswer)
		if err != nil {
			t.Fatal(err)
		}
		defer f.Close()
		both[i] = f
	}
	want := ""
	for i := range 10 {
		line := strings.Repeat("x", 10-i) + "\n"
		want += line
		if _, err := both[i%2].WriteString(line); err != nil {
			t.Fatal(err)
		}
	}
	if got, err := os.ReadFile(path); err != nil || string(got) != want {
		t.Errorf("got %q, %v, want %q", got, err, want)
	}
}
