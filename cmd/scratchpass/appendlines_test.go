package main

import (
	"os"
	"path/filepath"
	"testing"
)

// A line that was torn goes; one that only lacks its end, or is not the program's, stays.
func TestTornLinesGo(t *testing.T) {
	const whole = `{"n":1}` + "\n"
	for _, c := range []struct {
		name, before, want string
		torn               func([]byte) bool
	}{
		{"none yet", "", whole, tornAnswer},
		{"whole", whole, whole + whole, tornAnswer},
		{"torn", whole + `{"n":2,"co`, whole + whole, tornAnswer},
		{"only torn", `{"n":2,"co`, whole, tornAnswer},
		{"without its end", whole + `{"n":2}`, whole + `{"n":2}` + "\n" + whole, tornAnswer},
		{"notes of someone", "my notes", "my notes\n" + whole, tornAnswer},
		{"a move", "job first\nin 0.01", "job first\n" + whole, tornMove},
	} {
		t.Run(c.name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "lines")
			if err := os.WriteFile(path, []byte(c.before), 0o600); err != nil {
				t.Fatal(err)
			}
			f, err := appendLines(path, c.torn)
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
	if holds(dir, "key") {
		t.Error("a folder that is not there holds a key")
	}
	if err := os.Mkdir(dir, 0o700); err != nil {
		t.Skip(err) // Windows has no such names
	}
	if err := os.WriteFile(filepath.Join(dir, "key-001.pdf"), nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if !holds(dir, "marks", "key") || holds(dir, "sheets") {
		t.Error("the key in an oddly named folder was not seen")
	}
}
