package drawing_test

import (
	"strings"
	"testing"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/drawing"
)

// The pictures of a card stand side by side on one sheet, with the sizes of the job on them
// and none of an example.
func TestThePicturesOfACard(t *testing.T) {
	words, err := content.Shipped().Drawings()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name  string
		words map[string]string
		want  []string
	}{
		{"groove", map[string]string{"side": "outside"}, []string{"D = 0.6200", "d1 = 0.5000", "d2 = 0.4800", "w = 0.2700", "f = 0.0110", "cross slide"}},
		{"blind", map[string]string{"side": "inside"}, []string{"B = 0.5300", "w = 0.2700", "f = 0.0110"}},
		{"through", map[string]string{"side": "inside", "groove": "none"}, []string{"B = 0.5300", "D = 0.6200", "f = 0.0110"}},
	} {
		facts := drawing.Facts{Example: true, Words: c.words, Lengths: map[string]calc.Length{"nominal": .62, "pitch": 1.0 / 11, "below": .01,
			"depth": .06, "groove": .27, "bore": .53, "tool-flat": .011}}
		d, err := drawing.Card("thread-profile", facts, .2, .1, words)
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		var labels []string
		for _, l := range d.Labels {
			labels = append(labels, l.Text)
		}
		all := strings.Join(labels, "\n")
		for _, want := range c.want {
			if !strings.Contains(all, want) {
				t.Errorf("%s: no %q in\n%s", c.name, want, all)
			}
		}
		for _, s := range d.Shapes {
			for _, q := range s.Points {
				if q.X < -0.01 || q.Y < -0.01 || q.X > d.Width+0.01 || q.Y > d.Height+0.01 {
					t.Errorf("%s: something is drawn at %v, outside", c.name, q)
				}
			}
		}
		if !strings.Contains(d.Twin, "both at zero") || strings.Contains(d.Twin, "${") {
			t.Errorf("%s: twin %q", c.name, d.Twin)
		}
	}
}
