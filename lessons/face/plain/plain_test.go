package plain

import (
	"bytes"
	"context"
	"errors"
	"io"
	"strings"
	"testing"
	"time"

	"scratchpass/lessons/page"
)

func over(input string) (page.Face, *bytes.Buffer) {
	var out bytes.Buffer
	return New(context.Background(), strings.NewReader(input), &out, Options{Width: 60, Echo: true}), &out
}

func TestStopsAtTheEndOfTheInput(t *testing.T) {
	for input, want := range map[string]int{"": 0, "one\n": 1, "one\ntwo": 1, "one\r\ntwo\n": 2, strings.Repeat("x", 100000) + "\nnext\n": 2} {
		face, _ := over(input)
		n := 0
		for {
			line, err := face.Ask(page.Prompt{Text: "?"})
			if err != nil {
				if !errors.Is(err, page.ErrStopped) {
					t.Errorf("%.20q: %v", input, err)
				}
				break
			}
			if len(line) > longestLine || strings.ContainsAny(line, "\r\n") {
				t.Errorf("%.20q: read %d bytes", input, len(line))
			}
			n++
		}
		if n != want {
			t.Errorf("%.20q: %d lines were answers, want %d", input, n, want)
		}
	}
}

func TestPassesNothingOnToTheTerminal(t *testing.T) {
	face, out := over("\x1b[2J\u202e\x07evil\n")
	if err := face.Show(page.Page{page.Paragraph{Text: "a\x1b[31mb\u009bc\u202ed"}}); err != nil {
		t.Fatal(err)
	}
	if _, err := face.Ask(page.Prompt{Text: "?", Takes: page.Menu{Options: []string{"x\x1b[2J", "y"}}}); err != nil {
		t.Fatal(err)
	}
	for _, bad := range []string{"\x1b", "\u009b", "\u202e", "\x07"} {
		if strings.Contains(out.String(), bad) {
			t.Errorf("%q went out: %q", bad, out)
		}
	}
}

func TestStopsWithItsContext(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	r, w := io.Pipe() // never written: the reader waits for ever
	defer w.Close()
	face := New(ctx, r, io.Discard, Options{})
	time.AfterFunc(10*time.Millisecond, cancel)
	if _, err := face.Ask(page.Prompt{Text: "?"}); !errors.Is(err, page.ErrStopped) {
		t.Errorf("got %v", err)
	}
}

// Pictures are left out, gaps are empty lines, and rows of figures are columns only where
// there is room and leave for them.
func TestShow(t *testing.T) {
	p := page.Page{page.Heading{Text: "Title"}, page.Gap{}, page.Score{Text: "3/4"}, page.Paragraph{},
		page.Columns{Head: "n feed", Rows: []page.ColumnRow{{Row: "1 0.005", Sentence: "1. Feed 0.005 in."}}}}
	for o, want := range map[Options]string{
		{Width: 80}:                "Title\n\n1. Feed 0.005 in.\n\n",
		{Width: 80, Columns: true}: "Title\n\nn feed\n1 0.005\n\n",
		{Width: 60, Columns: true}: "Title\n\n1. Feed 0.005 in.\n\n",
		{Columns: true}:            "Title\n\nn feed\n1 0.005\n\n",
	} {
		var out bytes.Buffer
		if err := New(context.Background(), strings.NewReader(""), &out, o).Show(p); err != nil || out.String() != want {
			t.Errorf("%+v: %v\n%s", o, err, out.String())
		}
	}
}

// failing takes nothing.
type failing struct{}

func (failing) Write([]byte) (int, error) { return 0, errors.New("disk full") }

func TestAStreamThatFailsIsSaid(t *testing.T) {
	face := New(context.Background(), strings.NewReader("1\n"), failing{}, Options{})
	if err := face.Show(page.Page{page.Paragraph{Text: "x"}}); err == nil {
		t.Error("a page went nowhere")
	}
	if _, err := face.Ask(page.Prompt{Text: "?", Takes: page.Menu{Options: []string{"a"}}}); err == nil {
		t.Error("a menu went nowhere")
	}
	if _, err := face.Ask(page.Prompt{Text: "?"}); err == nil {
		t.Error("a question went nowhere")
	}
}
