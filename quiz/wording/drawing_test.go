package wording_test

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"scratchpass/content"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/drawing"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
	"scratchpass/quiz/wording"
)

// Beside a question stands a figure with what the question gives, or letters. What is asked
// for is never on it: not the number, nor a word that only the right option has.
func TestDrawings(t *testing.T) {
	labels, err := content.Shipped().Drawings()
	if err != nil {
		t.Fatal(err)
	}
	drawn := 0
	for _, task := range tasks.All() {
		w := words(t, task.Name)
		if w.Task.Drawing == "" {
			continue
		}
		drawn++
		for _, s := range []machine.System{machine.Imperial, machine.Metric} {
			for level := problem.Level(1); level <= 3 && task.Allows(s); level++ {
				for seed := uint32(1); seed <= 20; seed++ {
					p, err := problem.New(task, problem.NewCode(task.Name, level, s, seed, machine.DefaultLathe(s)))
					if err != nil {
						t.Fatal(err)
					}
					keepsAnswer(t, w, p, labels)
				}
			}
		}
	}
	if drawn < 80 {
		t.Errorf("%d tasks with a drawing", drawn)
	}
	w := words(t, "dial-past-a-turn")
	w.Task.Drawing = "no such drawing"
	if _, err := w.Drawing(remake(t, "dial-past-a-turn@1-0001"), labels); err == nil {
		t.Error("a drawing that is not there was drawn")
	}
	w.Task.Drawing = "dial-face"
	if d, err := w.Drawing(remake(t, "single-depth@1-0001"), labels); d != nil || err != nil {
		t.Errorf("a task without a dial draws %v, %v", d, err)
	}
}

// keepsAnswer wants a figure that does not print the answer.
func keepsAnswer(t *testing.T, w *wording.Words, p *problem.Problem, labels map[string]content.DrawingWords) {
	t.Helper()
	d, err := w.Drawing(p, labels)
	if err != nil || d == nil {
		t.Errorf("%s: %v, %v", p.Code, d, err)
		return
	}
	texts := []string{d.Title, d.Twin}
	for _, l := range d.Labels {
		texts = append(texts, l.Text)
	}
	if strings.Contains(d.Twin, "${") {
		t.Errorf("%s: the twin has an open place: %s", p.Code, d.Twin)
	}
	for _, wrong := range misplaced(d) {
		t.Errorf("%s: %s", p.Code, wrong)
	}
	e := &p.Expected
	key := e.Unit.Fixed(e.Key.X)
	given := slices.Contains(slices.Collect(maps.Values(p.Values.Facts().Shown)), key) // then the question has it too
	for _, text := range texts {
		for _, said := range strings.FieldsFunc(text, func(r rune) bool { return !strings.ContainsRune("0123456789.", r) }) {
			if strings.Trim(said, ".") == key && strings.Contains(key, ".") && !given {
				t.Errorf("%s: the answer %s is on the drawing: %s", p.Code, key, text)
			}
		}
		if strings.HasSuffix(text, "= "+key) && !given {
			t.Errorf("%s: the answer %s is on the drawing: %s", p.Code, key, text)
		}
	}
	if right, wrong := named(w.Options(p), e, texts[2:]); right != "" && !wrong {
		t.Errorf("%s: of the options only the right one says %q, as the drawing does", p.Code, right)
	}
}

// named is a label that no option has but the right one, and whether there is one that only
// wrong options have: then the figure names both.
func named(options []string, e *answer.Expected, labels []string) (right string, wrong bool) {
	if len(e.Key.Keys) != 1 {
		return "", false
	}
	for _, text := range labels {
		var have []string
		for i, option := range options {
			if strings.Contains(strings.ToLower(option), strings.ToLower(text)) {
				have = append(have, e.Options[i])
			}
		}
		switch {
		case len(text) < 4 || len(have) == 0:
		case slices.Equal(have, e.Key.Keys):
			right = text
		case !slices.Contains(have, e.Key.Keys[0]):
			wrong = true
		}
	}
	return right, wrong
}

// misplaced are the shapes and labels that leave the figure, and labels that lie on others.
func misplaced(d *drawing.Drawing) []string {
	var wrong []string
	for _, s := range d.Shapes {
		for _, p := range s.Points {
			if p.X < -0.01 || p.Y < -0.01 || p.X > d.Width+0.01 || p.Y > d.Height+0.01 {
				wrong = append(wrong, fmt.Sprintf("something is drawn at %v", p))
			}
		}
	}
	letter := d.Width / float64(d.Columns())
	reach := func(l drawing.Label) (left, right float64) {
		wide := letter * float64(utf8.RuneCountInString(l.Text))
		left = l.At.X - wide/2
		switch l.Align {
		case drawing.Left:
			left = l.At.X
		case drawing.Right:
			left = l.At.X - wide
		}
		return left, left + wide
	}
	for i, l := range d.Labels {
		left, right := reach(l)
		if left < -letter || right > d.Width+letter {
			wrong = append(wrong, fmt.Sprintf("label %q goes from %.0f to %.0f", l.Text, left, right))
		}
		for _, m := range d.Labels[:i] {
			if from, to := reach(m); math.Abs(l.At.Y-m.At.Y) < 1.8*letter && left < to && from < right {
				wrong = append(wrong, fmt.Sprintf("labels %q and %q lie on each other", l.Text, m.Text))
			}
		}
	}
	return wrong
}
