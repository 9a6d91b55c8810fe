package journal_test

import (
	"bufio"
	"context"
	"fmt"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"scratchpass/lessons/class"
)

// kills is how often the writing program is killed; the project's own check has more.
func kills() int {
	if n, err := strconv.Atoi(os.Getenv("SCRATCHPASS_KILLS")); err == nil {
		return n
	}
	return 6
}

// TestMain is a program that is killed, where it is asked to be one.
func TestMain(m *testing.M) {
	switch {
	case os.Getenv("JOURNAL_WRITES") != "":
		writeUntilKilled(os.Getenv("JOURNAL_WRITES"), os.Getenv("JOURNAL_FROM"))
	case os.Getenv("JOURNAL_SERVES") != "":
		serveUntilKilled(os.Getenv("JOURNAL_SERVES"))
	default:
		os.Exit(m.Run())
	}
}

// writeUntilKilled answers from 20 phones and says what was acknowledged.
func writeUntilKilled(at, from string) {
	j, err := openAt(context.Background(), at)
	if err != nil {
		fmt.Println("error", err)
		return
	}
	for phone := range 20 {
		go func() {
			for i := 0; ; i++ {
				key := fmt.Sprint(from, "-", phone, "-", i)
				e := class.Event{Kind: class.Answered, Key: key}
				if phone%2 == 0 { // as many make moves
					e.Kind, e.N, e.Text = class.Moved, i, "cross out 0.1"
				}
				if _, err := j.Append(context.Background(), "A", e); err == nil {
					fmt.Println(key)
				}
			}
		}()
	}
	select {}
}

// However often the program is killed: what it acknowledged is there, once.
func TestKilled(t *testing.T) { onBoth(t, killed) }

func killed(t *testing.T, at string) {
	j := open(t, at)
	begin(t, j, "A")
	if err := j.Close(); err != nil {
		t.Fatal(err)
	}
	acknowledged := map[string]bool{}
	for round := range kills() {
		cmd := exec.Command(os.Args[0])
		cmd.Env = append(os.Environ(), "JOURNAL_WRITES="+at, "JOURNAL_FROM="+strconv.Itoa(round))
		out, err := cmd.StdoutPipe()
		if err != nil {
			t.Fatal(err)
		}
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		lines := bufio.NewScanner(out)
		for n := 0; lines.Scan(); n++ {
			key := lines.Text()
			if strings.HasPrefix(key, "error") {
				t.Fatal(key)
			}
			acknowledged[key] = true
			if n == 50+37*round%200 { // in the midst of it, each time elsewhere
				_ = cmd.Process.Kill() // it may have ended
			}
		}
		_ = cmd.Wait() // it was killed
	}
	j = open(t, at)
	defer j.Close()
	events, err := j.After(t.Context(), "A", 0)
	if err != nil {
		t.Fatal(err)
	}
	times := map[string]int{}
	next := map[string]int{} // the move of each phone that comes next
	for i, e := range events {
		if e.Seq != int64(i+1) {
			t.Fatalf("event %d has number %d", i+1, e.Seq)
		}
		if phone := e.Key[:strings.LastIndex(e.Key, "-")]; e.Kind == class.Moved {
			if e.N != next[phone] {
				t.Errorf("move %s stands where %d was to come", e.Key, next[phone])
			}
			next[phone]++
		}
		times[e.Key]++
	}
	for key := range acknowledged {
		if times[key] != 1 {
			t.Errorf("%s was acknowledged and is there %d times", key, times[key])
		}
	}
	t.Logf("%d acknowledged, %d kept, %d kills", len(acknowledged), len(events), kills())
}
