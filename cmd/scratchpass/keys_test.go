//go:build !windows

package main

import (
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/creack/pty"

	"scratchpass/cmd/scratchpass/internal/cli"
)

// At home, arrows go up and down, also as a wheel sends them; a digit sent together with
// Enter goes to its line first, each time.
func TestKeysOfAMenu(t *testing.T) {
	for range 5 {
		c := start(t, 80, 40, "--record", "none")
		c.waitFor("What would you like to do?")
		c.waitFor("Leave")
		c.send("\x1b[B")
		c.send("\x1b[B\x1b[A")
		c.send("\x1bOB") // as a terminal sends a turn of the wheel
		c.waitFor("> 3)")
		c.send("1\r")
		c.waitFor("Which lesson?")
		c.send("\x1b")
		c.waitFor("What would you like to do?")
		c.send("\x03")
		if code := c.exit(); code != cli.ExitStopped {
			t.Fatal("exit code", code)
		}
	}
}

// What is pasted is typed, whole and on one line; a window that changes its size keeps it.
func TestPasteAndResize(t *testing.T) {
	c := start(t, 80, 24, "quiz", "pitch-from-tpi", "--seed", "1", "--count", "2", "--record", "none")
	c.waitFor("Enter mark it")
	c.send("\x1b[200~0.99\n99\x1b[201~")
	c.waitFor("> 0.99")
	for _, size := range []pty.Winsize{{Cols: 40, Rows: 24}, {Cols: 120, Rows: 40}, {Cols: 80, Rows: 24}} {
		if err := pty.Setsize(c.file, &size); err != nil {
			t.Fatal(err)
		}
		c.waitFor("0.99") // drawn anew
	}
	c.send("\r")
	c.waitFor("Not")
	c.send("\x03")
	if code := c.exit(); code != cli.ExitStopped {
		t.Errorf("exit code %d", code)
	}
}

// Ctrl-Z gives the terminal back, and the program goes on where it was.
func TestSuspended(t *testing.T) {
	c := start(t, 80, 24, "quiz", "pitch-from-tpi", "--seed", "1", "--record", "none")
	c.waitFor("Enter mark it")
	c.send("0.12")
	c.waitFor("> 0.12")
	c.send("\x1a")
	for deadline := time.Now().Add(20 * time.Second); !strings.Contains(c.raw(), "\x1b[?1049l"); time.Sleep(10 * time.Millisecond) {
		if time.Now().After(deadline) {
			t.Fatal("the terminal is not given back")
		}
	}
	time.Sleep(100 * time.Millisecond) // it stops itself just after that
	if err := c.cmd.Process.Signal(syscall.SIGCONT); err != nil {
		t.Fatal(err)
	}
	c.waitFor("> 0.12")
	c.send("5\r")
	c.waitFor("0.125")
	c.send("\x03")
	if code := c.exit(); code != cli.ExitStopped {
		t.Errorf("exit code %d", code)
	}
}
