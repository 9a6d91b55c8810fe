package cli

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"scratchpass/lessons/page"
	"scratchpass/quiz/machine"
)

// How a run ends: the code, and whether something is said.
func TestEnd(t *testing.T) {
	failed := errors.New("no room left")
	for _, c := range []struct {
		name string
		err  error
		code int
		says string
	}{
		{"done", nil, ExitDone, ""},
		{"failed", failed, ExitFailed, "scratchpass: no room left\n"},
		{"called wrongly", Usagef("--count %d: give 1 to 200", 0), ExitUsage, "scratchpass: --count 0: give 1 to 200\n"},
		{"called wrongly, further up", fmt.Errorf("work: %w", UsageError(failed)), ExitUsage, "scratchpass: work: no room left\n"},
		{"stopped before a session was open", fmt.Errorf("asked: %w", page.ErrStopped), ExitStopped, ""},
		{"a control character", errors.New("\x1b[31mred"), ExitFailed, "scratchpass: "},
	} {
		t.Run(c.name, func(t *testing.T) {
			var out, errOut bytes.Buffer
			if code := New(strings.NewReader(""), &out, &errOut).End(c.err); code != c.code {
				t.Errorf("exit code %d, want %d", code, c.code)
			}
			if got := errOut.String(); !strings.HasPrefix(got, c.says) || c.says == "" && got != "" || strings.ContainsRune(got, '\x1b') || out.Len() > 0 {
				t.Errorf("said %q and printed %q, want %q", got, out.String(), c.says)
			}
		})
	}
}

// What was opened is closed whatever happens, last things first, and an error there is not
// lost; the first error is the one that is told.
func TestAtEnd(t *testing.T) {
	for _, c := range []struct {
		err  error
		says string
	}{
		{nil, "scratchpass: the second can't be closed\n"},
		{errors.New("no room left"), "scratchpass: no room left\n"},
	} {
		var errOut bytes.Buffer
		r := New(strings.NewReader(""), &bytes.Buffer{}, &errOut)
		closed := 0
		r.AtEnd(func() error { closed++; return errors.New("the first can't be closed") })
		r.AtEnd(func() error { closed++; return errors.New("the second can't be closed") })
		if code := r.End(c.err); code != ExitFailed || closed != 2 || errOut.String() != c.says {
			t.Errorf("after %v: exit code %d, %d closed, said %q", c.err, code, closed, errOut.String())
		}
	}
}

// Numbers below zero are arguments; options, and a lone minus, stay what they are.
func TestNegativesAsArguments(t *testing.T) {
	got := NegativesAsArguments([]string{"-0.0015", "-.5", "-3 thou", "--seed", "-h", "-", ""})
	want := []string{"\u22120.0015", "\u2212.5", "\u22123 thou", "--seed", "-h", "-", ""}
	if !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

// Another day has today's time of day: answers of one sitting stay in order.
func TestNow(t *testing.T) {
	o := Options{asOf: "2026-11-27"}
	before, got := time.Now(), o.Now()
	if got.Format(time.DateOnly) != "2026-11-27" || got.Location() != time.Local {
		t.Errorf("the day is %v", got)
	}
	clock := func(at time.Time) time.Duration {
		return at.Sub(time.Date(at.Year(), at.Month(), at.Day(), 0, 0, 0, 0, at.Location()))
	}
	if apart := clock(got) - clock(before); apart > time.Minute { // midnight may pass in between
		t.Errorf("the time of day is %v, it was %v", got, before)
	}
}

// One --seed gives the same seeds each time, each of four digits, so that codes stay short.
func TestSeeds(t *testing.T) {
	draw := func() (all []uint32) {
		o := Options{seed: 7, seeded: true}
		seeds := o.Seeds()
		for range 10 {
			all = append(all, seeds().First())
		}
		return all
	}
	if a, b := draw(), draw(); !slices.Equal(a, b) || slices.Max(a) > 0xffff {
		t.Errorf("%x and %x", a, b)
	}
}

// JSON on a terminal does nothing to it, and is read as it was.
func TestJSONHidesNothing(t *testing.T) {
	said := map[string]string{"a": "x\x1b[2J\u009b5m\u202e\u2028\ufffd\U000e0041é<\n"}
	var out strings.Builder
	if err := New(nil, &out, nil).PrintJSON(said); err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(out.String(), `"x\u001b[2J\u009b5m\u202e\u2028\ufffd\udb40\udc41é<\n"`) {
		t.Errorf("printed %q", out.String())
	}
	var read map[string]string
	if err := json.Unmarshal([]byte(out.String()), &read); err != nil || read["a"] != said["a"] {
		t.Errorf("read %q, %v", read, err)
	}
}

// A name that was typed with an escape in it is kept as words: with it, the lathe could not
// be read any more.
func TestKeptLatheIsRead(t *testing.T) {
	r := New(nil, nil, nil)
	r.LatheFile = filepath.Join(t.TempDir(), "lathe.yaml")
	l := machine.InchLathe
	l.Name = "\x1b[2J Old\nred \u202e"
	if _, err := r.KeepLathe(l); err != nil {
		t.Fatal(err)
	}
	if got, _, err := r.Lathe(); err != nil || got.Name != "[2J Old red" {
		t.Errorf("read %q, %v", got.Name, err)
	}
}
