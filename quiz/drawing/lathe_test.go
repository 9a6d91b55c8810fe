package drawing_test

import (
	"strings"
	"testing"

	"scratchpass/quiz/drawing"
)

// Each part of the lathe can be shown alone: one name, and words that say where it is.
func TestEachPartOfTheLatheAlone(t *testing.T) {
	words := shipped(t)
	for _, key := range drawing.LatheParts() {
		d, ok := drawing.LathePart(key, words)
		if !ok || len(d.Labels) != 1 || d.Labels[0].Part != drawing.Marked {
			t.Fatalf("%s: %v, labels %v", key, ok, d.Labels)
		}
		marked := false
		for _, s := range d.Shapes {
			marked = marked || s.Part == drawing.Marked
		}
		if name := d.Labels[0].Text; !marked || !strings.Contains(d.Title, name) || !strings.Contains(d.Twin, name) || strings.Count(d.Twin, ".") < 3 {
			t.Errorf("%s: marked %v, %q: %q", key, marked, d.Title, d.Twin)
		}
		apart(t, key, d)
	}
	for _, key := range []string{"", "gib"} {
		if _, ok := drawing.LathePart(key, words); ok {
			t.Errorf("%q is no part of the lathe", key)
		}
	}
}

// A problem that asks for the safe marks must not show them.
func TestSafeMarksAreShownInAnExampleAlone(t *testing.T) {
	words := shipped(t)
	heavy := func(f drawing.Facts) (n int) {
		d, err := drawing.Of("safe-marks", f, words)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range d.Shapes {
			if s.Part == drawing.Marked {
				n++
			}
		}
		return n
	}
	if example, asked := heavy(drawing.Facts{Example: true}), heavy(drawing.Facts{Numbers: map[string]float64{"marks": 8, "gear": 16}}); example != asked+4 {
		t.Errorf("%d marked in the example, %d in a problem", example, asked)
	}
}

// Where facts turn a figure into its sister, the words are the sister's.
func TestWordsFollowTheFacts(t *testing.T) {
	for _, c := range []struct{ figure, fact, word, want string }{
		{"compound-swung", "kind", "outside-right", "towards the tailstock"},
		{"compound-swung", "kind", "outside-left", "towards the headstock"},
		{"compound-swung", "kind", "inside-right", "towards the headstock"},
		{"compound-swung", "kind", "inside-left", "towards the tailstock"},
		{"compound-unswung", "kind", "inside-left", "boring bar"},
		{"centre-gauge", "side", "inside", "boring bar"},
	} {
		d, err := drawing.Of(c.figure, drawing.Facts{Words: map[string]string{c.fact: c.word}}, shipped(t))
		if err != nil || !strings.Contains(d.Twin, c.want) {
			t.Errorf("%s for %s: %v %s", c.figure, c.word, err, d.Twin)
		}
		apart(t, c.figure+" "+c.word, d)
		for _, s := range d.Shapes {
			for _, p := range s.Points {
				if p.X < -0.01 || p.Y < -0.01 || p.X > d.Width+0.01 || p.Y > d.Height+0.01 {
					t.Errorf("%s for %s: something is drawn at %v, outside", c.figure, c.word, p)
				}
			}
		}
	}
}
