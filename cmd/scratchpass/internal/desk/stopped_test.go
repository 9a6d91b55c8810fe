package desk

import (
	"context"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/page"
	"scratchpass/quiz/handout"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/set"
	"scratchpass/quiz/tasks"
)

// endless lays out sheets and never comes to their end.
type endless struct {
	handout.Writer
	begun   chan bool
	release chan bool
}

func (e endless) Sheet(handout.Sheet) error { return e.wait() }
func (e endless) Close() error              { return e.wait() }

func (e endless) wait() error {
	e.begun <- true
	<-e.release
	return nil
}

// Who stops the program does not wait for the layout of a sheet or of a document, however
// long it takes, and nothing of it is left.
func TestAStopEndsALayout(t *testing.T) {
	words := map[string]string{"set-stopped": "Stopped."}
	lib, err := cli.New(nil, nil, nil).Library()
	if err != nil {
		t.Fatal(err)
	}
	b, err := set.ParseBlueprint("b", []byte("set: b\ntitle: x\nunits: in\nslots: [{tasks: [single-depth]}]"), tasks.Set{}, func(string) (machine.Lathe, error) { return machine.InchLathe, nil })
	if err != nil {
		t.Fatal(err)
	}
	for name, lay := range map[string]func(context.Context, papers) error{
		"a sheet": func(ctx context.Context, p papers) error {
			return p.each(ctx, func(w handout.Writer) error { return w.Sheet(handout.Sheet{}) })
		},
		"a document": func(ctx context.Context, p papers) error {
			if err := p.each(ctx, func(handout.Writer) error { return nil }); err != nil {
				return err
			}
			return p.close(ctx)
		},
	} {
		ctx, stop := context.WithCancel(t.Context())
		w := endless{begun: make(chan bool), release: make(chan bool)}
		go func() { <-w.begun; stop() }()
		var told strings.Builder
		d := &desk{run: cli.New(nil, io.Discard, &told), lib: lib, say: func(name string, _ ...any) string { return words[name] }}
		if d.maker, err = set.NewMaker(b, set.Secret("a secret that stands in a test"), lib); err != nil {
			t.Fatal(err)
		}
		if d.printer, err = set.NewPrinter(d.maker, lib); err != nil {
			t.Fatal(err)
		}
		dir := filepath.Join(t.TempDir(), "sheets")
		out := d.stage(dir)
		p := papers{{desk: d, out: out, format: handout.Format{Ending: ".pdf", New: func(io.Writer, handout.Options) (handout.Writer, error) { return w, nil }}, base: "sheets"}}
		err := lay(ctx, p)
		out.Rollback()
		close(w.release)
		if !errors.Is(err, page.ErrStopped) || told.String() != "Stopped.\n" {
			t.Errorf("%s: %v, %q", name, err, told.String())
		}
		if _, err := os.Stat(dir); !errors.Is(err, os.ErrNotExist) {
			t.Errorf("%s: the folder is there: %v", name, err)
		}
		if err := d.unlessStopped(ctx, func() error { t.Error("work was begun after the stop"); return nil }); !errors.Is(err, page.ErrStopped) {
			t.Error(err)
		}
	}
}
