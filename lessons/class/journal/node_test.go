package journal_test

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/exec"
	"strings"
	"sync"
	"testing"
	"time"

	"scratchpass/content"
	"scratchpass/lessons/class"
	"scratchpass/lessons/class/served"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/set"
	"scratchpass/quiz/tasks"
)

// A node is a program of its own that serves the rooms of a journal, so that it can be killed.

// hallOn is a hall on a journal.
func hallOn(j class.Journal, fail func(error)) *class.Hall {
	makes := class.MakerOf(set.Secret("a secret that stands in a test"), content.Shipped(), tasks.Set{}, func(string) (machine.Lathe, error) { return machine.InchLathe, nil })
	return class.NewHall(j, func(class.Head) class.Maker { return makes }, time.Now, fail)
}

// serveUntilKilled serves a journal, says where, and ends with the test that began it.
func serveUntilKilled(at string) {
	fmt.Println(serveJournal(at))
}

func serveJournal(at string) error {
	ctx := context.Background()
	j, err := openAt(ctx, at)
	if err != nil {
		return err
	}
	wait, err := time.ParseDuration(os.Getenv("JOURNAL_SLOW"))
	if err != nil {
		return err
	}
	j.SlowSync(wait)
	fail := func(err error) { fmt.Fprintln(os.Stderr, err) }
	hall := hallOn(j, fail)
	defer hall.Sharing(ctx, j)()
	s, err := sitting.NewSession(nil, content.Shipped(), machine.Imperial, machine.InchLathe, nil)
	if err != nil {
		return err
	}
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return err
	}
	serves := served.New(hall, served.Options{Hosts: []string{l.Addr().String()}, Words: web.WordsOf(s.Say), Session: s, Clock: time.Now, Fail: fail})
	fmt.Println("http://" + l.Addr().String())
	go func() {
		_, _ = io.Copy(io.Discard, os.Stdin) // it ends when whoever began this has ended
		os.Exit(0)
	}()
	return (&http.Server{Handler: serves.Handler()}).Serve(l)
}

// node is one that was begun.
type node struct {
	base string
	kill func()
}

// peakOf is the most memory that a process has had, as Linux tells it; elsewhere nobody does.
func peakOf(pid int) string {
	text, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
	if _, rest, found := strings.Cut(string(text), "VmHWM:"); err == nil && found {
		peak, _, _ := strings.Cut(rest, "\n")
		return strings.TrimSpace(peak)
	}
	return "nobody knows"
}

func newNode(t *testing.T, at string) *node {
	t.Helper()
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), "JOURNAL_SERVES="+at, "JOURNAL_SLOW="+slow.String())
	said := &lines{}
	cmd.Stderr = said
	out, err := cmd.StdoutPipe()
	if _, e := cmd.StdinPipe(); e != nil || err != nil {
		t.Fatal(err, e)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	n := &node{kill: sync.OnceFunc(func() {
		t.Log("a node had at most ", peakOf(cmd.Process.Pid))
		_ = cmd.Process.Kill() // it may have ended
		_ = cmd.Wait()
	})}
	t.Cleanup(func() {
		n.kill()
		for _, line := range said.all() {
			if !strings.Contains(line, class.ErrAway.Error()) && !strings.Contains(line, "in reach again") && !strings.HasPrefix(line, "\t") {
				t.Error("a node says: ", line)
			}
		}
		t.Log("a node said ", len(said.all()), " lines")
	})
	line, err := bufio.NewReader(out).ReadString('\n')
	if n.base = strings.TrimSpace(line); err != nil || !strings.HasPrefix(n.base, "http://") {
		t.Fatal(errors.Join(err, errors.New(n.base)), said.all())
	}
	return n
}
