//go:build !windows

package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"
	"github.com/creack/pty"

	"scratchpass/cmd/scratchpass/internal/cli"
)

// console is the program on a terminal of its own.
type console struct {
	t    *testing.T
	cmd  *exec.Cmd
	file *os.File
	mu   sync.Mutex
	seen bytes.Buffer // all that came, with what a terminal obeys
	read int          // how much of it, without that, has been waited for
}

func start(t *testing.T, columns, rows uint16, args ...string) *console {
	t.Helper()
	exe, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	c := &console{t: t, cmd: exec.Command(exe, args...)}
	c.cmd.Env = append(os.Environ(), "TERM=xterm-256color", "HOME="+t.TempDir(), "XDG_CONFIG_HOME="+t.TempDir(), "COLORFGBG=15;0", "SCRATCHPASS_TEST_MAIN=1")
	c.file, err = pty.StartWithSize(c.cmd, &pty.Winsize{Cols: columns, Rows: rows})
	if err != nil {
		t.Skip("no pseudo-terminal here: ", err)
	}
	t.Cleanup(func() { c.file.Close(); _ = c.cmd.Process.Kill() })
	go func() {
		buf := make([]byte, 4096)
		for {
			n, err := c.file.Read(buf)
			c.mu.Lock()
			c.seen.Write(buf[:n])
			c.mu.Unlock()
			if err != nil {
				return
			}
		}
	}()
	return c
}

// text is what has come up since the last call of waitFor, without what a terminal obeys.
func (c *console) text() string {
	text := ansi.Strip(c.raw())
	return text[min(c.read, len(text)):]
}

func (c *console) raw() string {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.seen.String()
}

// waitFor waits until a text has come up since the last call.
func (c *console) waitFor(text string) {
	c.t.Helper()
	for deadline := time.Now().Add(20 * time.Second); time.Now().Before(deadline); time.Sleep(10 * time.Millisecond) {
		if i := strings.Index(c.text(), text); i >= 0 {
			c.read += i + len(text)
			return
		}
	}
	c.t.Fatalf("%q did not come up; the screen has\n%q", text, c.text())
}

func (c *console) send(keys string) {
	c.t.Helper()
	if _, err := c.file.WriteString(keys); err != nil {
		c.t.Fatal(err)
	}
}

// press sends a key until it shows: what is typed before a field is up may be lost on
// purpose, and how long that takes is the machine's affair. A key that leads somewhere
// else is only sent once the field has answered to another.
func (c *console) press(key, shows string) {
	c.t.Helper()
	for deadline := time.Now().Add(20 * time.Second); time.Now().Before(deadline); {
		c.send(key)
		for range 50 {
			if strings.Contains(c.text(), shows) {
				c.waitFor(shows)
				return
			}
			time.Sleep(10 * time.Millisecond)
		}
	}
	c.t.Fatalf("%q did not come up after %q; the screen has\n%q", shows, key, c.text())
}

// exit waits for the end and returns the exit code.
func (c *console) exit() int {
	c.t.Helper()
	done := make(chan error, 1)
	go func() { done <- c.cmd.Wait() }()
	select {
	case <-done:
		return c.cmd.ProcessState.ExitCode()
	case <-time.After(20 * time.Second):
		c.t.Fatal("the program does not end")
		return -1
	}
}

// Nothing is asked of the terminal for a command that talks with no one: a library
// would send its question already while it is initialised.
func TestNothingIsAskedOfTheTerminal(t *testing.T) {
	c := start(t, 80, 24, "--version")
	if code := c.exit(); code != 0 {
		t.Fatal("exit code", code)
	}
	if strings.ContainsRune(c.raw(), '\x1b') {
		t.Errorf("an escape sequence went out: %q", c.text())
	}
}

// A problem is answered on a real screen, and Ctrl-C stops with what was done.
func TestOneProblemOnAScreen(t *testing.T) {
	for _, columns := range []uint16{80, 40} {
		c := start(t, columns, 24, "quiz", "pitch-from-tpi", "--seed", "1", "--count", "3")
		c.waitFor("thou.")
		c.waitFor("> ")
		c.press("0", "> 0")
		c.send(".9999\r")
		c.waitFor("0.9999 in") // with more zeros before it, should the key have gone twice
		c.waitFor("Enter go on")
		c.send("\r")
		c.waitFor("Problem 2 of 3")
		c.waitFor("> ")
		c.press("7", "> 7")
		c.send("\x03")
		c.waitFor("Stopped. 1 answered, 0 right.")
		if code := c.exit(); code != cli.ExitStopped {
			t.Errorf("exit code %d", code)
		}
	}
}

// On the home screen a number goes to its line and Enter takes it.
func TestHomeScreen(t *testing.T) {
	c := start(t, 80, 60)
	c.waitFor("What would you like to do?")
	c.press("3", "> 3)") // a first visit: the whole menu
	c.send("\r")
	c.waitFor("--record FILE")
	c.press("8", "> 8)")
	c.send("\r")
	c.waitFor("Never hold cloth")
	c.waitFor("Enter go on")
	c.press("\r", "What would you like to do?")
	c.press("9", "> 9)")
	c.send("\r")
	if code := c.exit(); code != cli.ExitDone {
		t.Errorf("exit code %d", code)
	}
}

// A signal while the plain terminal waits is a stop like any other.
func TestInterruptInPlainMode(t *testing.T) {
	c := start(t, 80, 24, "quiz", "pitch-from-tpi", "--plain", "--seed", "1")
	c.waitFor("thou. > ")
	if err := c.cmd.Process.Signal(os.Interrupt); err != nil {
		t.Fatal(err)
	}
	c.waitFor("Stopped. Nothing answered.")
	if code := c.exit(); code != cli.ExitStopped {
		t.Errorf("exit code %d", code)
	}
}

// A signal while sheets are made ends that too, and nothing is half written.
func TestInterruptAtTheDesk(t *testing.T) {
	dir := t.TempDir()
	sets := filepath.Join(dir, "sets")
	var out bytes.Buffer
	if code := run(t.Context(), []string{"set", "example", sets}, strings.NewReader(""), &out, &out); code != cli.ExitDone {
		t.Fatal(code, out.String())
	}
	roster := filepath.Join(dir, "roster.csv")
	names := "id,name\n"
	for i := range 2000 {
		names += fmt.Sprintf("mf-%d,Ada %d\n", i, i)
	}
	if err := os.WriteFile(roster, []byte(names), 0o600); err != nil {
		t.Fatal(err)
	}
	sheets := filepath.Join(dir, "sheets")
	c := start(t, 80, 24, "set", "make", filepath.Join(sets, "first-thread.yaml"), "--roster", roster, "--secret", filepath.Join(dir, "secret"), "--format", "text", "--out", sheets)
	c.waitFor("10 of 2000")
	if err := c.cmd.Process.Signal(os.Interrupt); err != nil {
		t.Fatal(err)
	}
	c.waitFor("Stopped.")
	if code := c.exit(); code != cli.ExitStopped {
		t.Errorf("exit code %d", code)
	}
	if left, _ := filepath.Glob(filepath.Join(dir, "*sheets*")); len(left) > 0 {
		t.Errorf("left over: %q", left)
	}
}
