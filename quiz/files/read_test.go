package files

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// Only ordinary files of a fit length are read; what is none is not even opened.
func TestRead(t *testing.T) {
	dir := t.TempDir()
	whole := filepath.Join(dir, "whole")
	if err := os.WriteFile(whole, []byte("12345"), 0o600); err != nil {
		t.Fatal(err)
	}
	link := filepath.Join(dir, "link")
	if err := os.Symlink(whole, link); err != nil {
		link = whole // Windows wants to be asked
	}
	for _, path := range []string{whole, link} {
		if text, err := Read(path, 5); err != nil || string(text) != "12345" {
			t.Errorf("%s: %q, %v", path, text, err)
		}
	}
	if _, err := Read(whole, 4); err == nil || !strings.Contains(err.Error(), whole) || !strings.Contains(err.Error(), "more than 4 bytes") {
		t.Errorf("a longer file: %v", err)
	}
	if _, err := Read(dir, 5); err == nil || !strings.Contains(err.Error(), "is a folder") {
		t.Errorf("a folder: %v", err)
	}
	if _, err := Read(filepath.Join(dir, "none"), 5); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("no file: %v", err)
	}
}

// A device has no end.
func TestReadDevices(t *testing.T) {
	const endless = "/dev/zero"
	if _, err := os.Stat(endless); err != nil {
		t.Skip(err)
	}
	link := filepath.Join(t.TempDir(), "answers.csv")
	if err := os.Symlink(endless, link); err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{endless, link} {
		if _, err := Read(path, 5); err == nil || !strings.Contains(err.Error(), "a device or a pipe") {
			t.Errorf("%s: %v", path, err)
		}
		if _, err := Append(path, TornAnswer); err == nil || !strings.Contains(err.Error(), "a device or a pipe") {
			t.Errorf("lines added to %s: %v", path, err)
		}
	}
}

// A lock is one program's at a time, and free when it was given back.
func TestLock(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.lock")
	free, err := Lock(path, 0)
	if err != nil {
		t.Fatal(err)
	}
	for _, wait := range []time.Duration{0, 3 * lockTries} {
		if _, err := Lock(path, wait); !errors.Is(err, ErrHeld) || !strings.Contains(err.Error(), path) {
			t.Errorf("after %v: %v", wait, err)
		}
	}
	freed := make(chan error)
	go func() { time.Sleep(2 * lockTries); freed <- free() }()
	again, err := Lock(path, time.Minute) // waits no longer than it must
	if err != nil {
		t.Fatal(err)
	}
	if err := <-freed; err != nil {
		t.Error(err)
	}
	if err := again(); err != nil {
		t.Error(err)
	}
	if _, err := Lock(filepath.Join(path, "below a file"), time.Second); err == nil || errors.Is(err, ErrHeld) {
		t.Errorf("where no lock can be: %v", err)
	}
}

// Several may share a lock; who wants it alone waits for all of them, and they for that one.
func TestLockShared(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.lock")
	var free [2]func() error
	for i := range free {
		var err error
		if free[i], err = LockShared(path, 0); err != nil {
			t.Fatal(err)
		}
	}
	for i := range free {
		if _, err := Lock(path, 0); !errors.Is(err, ErrHeld) {
			t.Errorf("while %d share it: %v", len(free)-i, err)
		}
		if err := free[i](); err != nil {
			t.Error(err)
		}
	}
	alone, err := Lock(path, 0)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := LockShared(path, 0); !errors.Is(err, ErrHeld) {
		t.Errorf("while one has it alone: %v", err)
	}
	if err := alone(); err != nil {
		t.Error(err)
	}
}
