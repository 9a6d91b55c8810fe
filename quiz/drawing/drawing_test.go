package drawing_test

import (
	"errors"
	"flag"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"scratchpass/content"
	"scratchpass/quiz/drawing"
)

var update = flag.Bool("update", false, "write the pictures anew")

func shipped(t *testing.T) map[string]content.DrawingWords {
	t.Helper()
	words, err := content.Shipped().Drawings()
	if err != nil {
		t.Fatal(err)
	}
	return words
}

// made are drawn for one thread or one state of a bench alone.
var made = []string{"thread-page", "slide-dial", "thread-dial", "groove", "card-dials", "way-of-the-tool"}

func TestEveryDrawingFitsAndHasItsTwin(t *testing.T) {
	words := shipped(t)
	for _, name := range drawing.Names() {
		d, err := drawing.Named(name, words)
		if err != nil {
			t.Fatal(err)
		}
		if d.Title == "" || len(strings.Fields(d.Twin)) < 10 {
			t.Errorf("%s: title %q, twin %q", name, d.Title, d.Twin)
		}
		for _, s := range d.Shapes {
			for _, p := range s.Points {
				if p.X < -0.01 || p.Y < -0.01 || p.X > d.Width+0.01 || p.Y > d.Height+0.01 {
					t.Errorf("%s: something is drawn at %v, outside", name, p)
				}
			}
		}
		for _, columns := range []int{36, 64, 200, -1} {
			lines := d.Terminal(columns)
			if len(lines) < 3 || len(lines) > 22 {
				t.Errorf("%s at %d columns: %d lines", name, columns, len(lines))
			}
			for _, line := range lines {
				if n := utf8.RuneCountInString(line); n > max(20, min(columns, 64)) {
					t.Errorf("%s at %d columns: a line of %d", name, columns, n)
				}
			}
		}
		apart(t, name, d)
	}
	for name := range words {
		if _, err := drawing.Named(name, words); err != nil && !slices.Contains(made, name) {
			t.Errorf("words for a drawing: %v", err)
		}
	}
}

// apart wants each label on the drawing, whole, and none over another.
func apart(t *testing.T, name string, d drawing.Drawing) {
	t.Helper()
	text := strings.Join(d.Terminal(64), "\n")
	letter := d.Width / float64(d.Columns())
	left := func(l drawing.Label) float64 {
		wide := letter * float64(utf8.RuneCountInString(l.Text))
		switch l.Align {
		case drawing.Left:
			return l.At.X
		case drawing.Right:
			return l.At.X - wide
		}
		return l.At.X - wide/2
	}
	for i, l := range d.Labels {
		wide := letter * float64(utf8.RuneCountInString(l.Text))
		if l.Text == "" || !strings.Contains(text, l.Text) {
			t.Errorf("%s: label %q is covered", name, l.Text)
		}
		if left(l) < -letter || left(l)+wide > d.Width+letter {
			t.Errorf("%s: label %q goes from %.0f to %.0f of %.0f", name, l.Text, left(l), left(l)+wide, d.Width)
		}
		for _, m := range d.Labels[:i] {
			other := letter * float64(utf8.RuneCountInString(m.Text))
			if math.Abs(l.At.Y-m.At.Y) < 1.8*letter && left(l) < left(m)+other && left(m) < left(l)+wide {
				t.Errorf("%s: labels %q and %q lie on each other", name, l.Text, m.Text)
			}
		}
	}
}

// A figure drawn from the facts of a problem shows those, and only letters for the rest.
func TestFiguresShowWhatIsGivenAlone(t *testing.T) {
	words := shipped(t)
	for _, name := range drawing.Names() {
		d, err := drawing.Of(name, drawing.Facts{}, words)
		if errors.Is(err, drawing.ErrFacts) {
			continue
		}
		if err != nil {
			t.Fatal(err)
		}
		for _, l := range d.Labels {
			if strings.Contains(l.Text, " = ") {
				t.Errorf("%s, drawn from nothing, says %q", name, l.Text)
			}
		}
	}
	d, err := drawing.Of("compound-triangle", drawing.Facts{Numbers: map[string]float64{"angle": 29}, Shown: map[string]string{"angle": "29"}}, words)
	if text := strings.Join(d.Terminal(64), ""); err != nil || !strings.Contains(text, "a = 29°") || strings.Contains(text, "h =") {
		t.Errorf("%v: %s", err, text)
	}
}

// The pictures of all figures, as SVG to look at and as a terminal shows them.
func TestPictures(t *testing.T) {
	for _, name := range drawing.Names() {
		d, err := drawing.Named(name, shipped(t))
		if err != nil {
			t.Fatal(err)
		}
		for file, got := range map[string]string{name + ".svg": d.SVG() + "\n", name + ".txt": strings.Join(d.Terminal(64), "\n") + "\n"} {
			file = filepath.Join("testdata", "figures", file)
			if *update {
				if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(file)
			if err != nil || string(want) != got {
				t.Errorf("%s differs from what was looked at: %v", file, err)
			}
		}
	}
}
