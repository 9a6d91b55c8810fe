package content

import (
	"io/fs"
	"testing"
	"testing/fstest"
)

// The words that ship are not looked through for octal numbers when they are read, but
// here.
func TestNoOctalNumberShips(t *testing.T) {
	read := 0
	err := fs.WalkDir(embedded, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		text, err := embedded.ReadFile(name)
		if err != nil {
			return err
		}
		var found Findings
		octal(name, text, &found)
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
