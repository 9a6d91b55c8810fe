package main

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/charmbracelet/x/term"

	"scratchpass/content"
	"scratchpass/lessons"
	"scratchpass/lessons/record"
	"scratchpass/lessons/screen"
	"scratchpass/quiz/machine"
)

// The exit codes.
const (
	exitDone    = 0
	exitFailed  = 1
	exitUsage   = 2
	exitStopped = 130
)

// usageError is an error in how the program was called.
type usageError struct{ error }

func (e usageError) Unwrap() error { return e.error }

func usage(format string, args ...any) error { return usageError{fmt.Errorf(format, args...)} }

// app is one run of the program: its streams and the options that mean the same
// everywhere.
type app struct {
	stop     context.Context
	in       io.Reader
	out, err io.Writer

	seed       uint64
	seeded     bool
	units      string
	latheFile  string
	contentDir string
	recordFile string
	learner    string
	asOf       string
	plain      bool
	goOn       bool // with a rehearsal that was broken off
	json       bool

	session *lessons.Session // for the line at the end
	record  *record.Record   // the learner's, or nil
	closers []func() error
}

// run runs the program and returns its exit code.
func run(stop context.Context, args []string, in io.Reader, out, errOut io.Writer) int {
	a := &app{stop: stop, in: in, out: out, err: errOut}
	args = negativesAsArguments(args)
	root := a.root(args)
	root.SetArgs(args)
	root.SetIn(in)
	root.SetOut(out)
	root.SetErr(errOut)
	err := root.ExecuteContext(stop)
	for _, end := range a.closers {
		if e := end(); err == nil {
			err = e
		}
	}
	var bad usageError
	switch {
	case err == nil:
		return exitDone
	case errors.Is(err, lessons.ErrStopped):
		if a.session != nil {
			fmt.Fprintln(out, a.session.Goodbye())
		}
		return exitStopped
	case errors.As(err, &bad):
		fmt.Fprintln(errOut, "scratchpass:", content.Printable(err.Error()))
		return exitUsage
	}
	fmt.Fprintln(errOut, "scratchpass:", content.Printable(err.Error()))
	return exitFailed
}

// negativesAsArguments writes the minus of an argument such as -0.0015 as the
// mathematical sign, which every reader of numbers here takes for a minus and the
// command line does not take for an option.
func negativesAsArguments(args []string) []string {
	out := make([]string, len(args))
	for i, arg := range args {
		out[i] = arg
		if rest, ok := strings.CutPrefix(arg, "-"); ok && rest != "" && strings.ContainsAny(rest[:1], ".0123456789") {
			out[i] = "\u2212" + rest
		}
	}
	return out
}

// library returns the words, with the instructor's own in front where given.
func (a *app) library() (*content.Library, error) {
	if a.contentDir == "" {
		return content.Shipped(), nil
	}
	lib, err := content.With(a.contentDir)
	if err != nil {
		return nil, usage("--content %q: %w", a.contentDir, err)
	}
	return lib, nil
}

// lathe returns the lathe and the units that problems are drawn for: what --lathe
// and --units say, else the learner's own machine, else the one that ships.
func (a *app) lathe() (machine.Lathe, machine.System, error) {
	var system machine.System
	if a.units != "" {
		system, _ = machine.ParseSystem(a.units) // checked before any command runs
	}
	lathe := machine.DefaultLathe(system)
	own, err := a.ownLathe()
	switch {
	case err != nil:
		return lathe, system, err
	case own == nil:
		return lathe, system, nil
	}
	its := machine.Imperial
	if own.Metric {
		its = machine.Metric
	}
	switch {
	case a.units == "" || its == system:
		return *own, its, nil
	case a.latheFile != "":
		return lathe, system, usage("--units %s: the lathe in %q has dials in %s; leave one of the two out", system, a.latheFile, its)
	}
	return lathe, system, nil // the learner's own machine is for the other units
}

// ownLathe reads the lathe of --lathe, or the one kept in the configuration folder;
// nil when there is none.
func (a *app) ownLathe() (*machine.Lathe, error) {
	path := a.latheFile
	if path == "" {
		kept, err := keptLathe()
		if err != nil {
			return nil, nil // no home, no kept lathe
		}
		path = kept
	}
	l, err := machine.ReadLathe(path)
	switch {
	case err == nil:
		return &l, nil
	case errors.Is(err, fs.ErrNotExist) && a.latheFile == "":
		return nil, nil
	}
	return nil, err
}

// keptLathe is where the learner's own machine is kept.
func keptLathe() (string, error) {
	dir, err := os.UserConfigDir()
	return filepath.Join(dir, "scratchpass", "lathe.yaml"), err
}

// now is the clock: the real one, or the real time of day on another day.
func (a *app) now() time.Time {
	t := time.Now()
	day, err := time.Parse(time.DateOnly, a.asOf)
	if err != nil {
		return t
	}
	return time.Date(day.Year(), day.Month(), day.Day(), t.Hour(), t.Minute(), t.Second(), t.Nanosecond(), t.Location())
}

// seeds returns the source of seeds: the same for the same --seed, else new each
// time.
func (a *app) seeds() func() uint32 {
	if !a.seeded {
		return rand.Uint32
	}
	source := rand.NewPCG(a.seed, 0)
	return func() uint32 { return uint32(source.Uint64() >> 32 & 0xffff) }
}

// tty returns the file behind a stream when that is a terminal.
func tty(stream any) (*os.File, bool) {
	f, ok := stream.(*os.File)
	return f, ok && term.IsTerminal(f.Fd())
}

// plainWidth is how wide text is laid out where no window says.
const plainWidth = 80

// terminal returns the screen for a person at a terminal, and the plain one for
// everything else.
func (a *app) terminal(more string) lessons.Terminal {
	_, inTTY := tty(a.in)
	_, outTTY := tty(a.out)
	if inTTY && outTTY && !a.plain && os.Getenv("TERM") != "dumb" {
		return &screen.Screen{Stop: a.stop, In: a.in, Out: a.out, Size: a.size, More: more}
	}
	return lessons.NewPlain(a.stop, a.in, a.out, a.width(), !inTTY)
}

// width is how wide plain text may be.
func (a *app) width() int {
	columns, _ := a.size()
	return columns
}

// size is the size of the window, or a usual one where there is none.
func (a *app) size() (columns, rows int) {
	if out, ok := tty(a.out); ok {
		if w, h, err := term.GetSize(out.Fd()); err == nil && w > 0 {
			return w, h
		}
	}
	return plainWidth, 24
}

// open begins a session.
func (a *app) open() (*lessons.Session, error) {
	lib, err := a.library()
	if err != nil {
		return nil, err
	}
	lathe, system, err := a.lathe()
	if err != nil {
		return nil, err
	}
	screens, err := lib.Screens()
	if err != nil {
		return nil, err
	}
	a.session, err = lessons.NewSession(a.terminal(screens["say-page"]), lib, system, lathe, a.seeds())
	if err != nil {
		return nil, err
	}
	a.session.Now = a.now
	a.record, err = a.keepAnswers(a.session)
	return a.session, err
}

// print prints one JSON object.
func (a *app) print(document any) error {
	e := json.NewEncoder(a.out)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(document)
}
