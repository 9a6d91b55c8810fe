package sitting_test

import (
	"regexp"
	"strings"
	"testing"

	"scratchpass/content"
	"scratchpass/lessons/internal/scripted"
	"scratchpass/lessons/page"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// On pages help says what may be given to each kind of question, with a unit and an example where it
// is typed, and speaks of no keys and no words that have no button there.
func TestHelpOnPages(t *testing.T) {
	s, err := sitting.NewSession(&scripted.Face{}, content.Shipped(), machine.Imperial, machine.InchLathe, nil)
	if err != nil {
		t.Fatal(err)
	}
	s.OnPages = true
	keys := regexp.MustCompile(`(?i)\b(enter|repeat|stop)\b`)
	for _, c := range []struct{ task, says string }{
		{"single-depth", "Answer in inches, such as 0.1234 or 123.4 thou."},
		{"gear-ratio", "such as 2.5"},
		{"blank-diameter", "such as 0.4900"},
		{"cross-slide-return", "Type one reading in each field, such as 0.105 in."},
		{"square-the-tool", "Tap the line that is right."},
		{"ready-to-start", ""},
		{"one-full-pass", "Put the steps in order with the arrows"},
		{"inch-designation", "with commas between the parts, such as"},
	} {
		task, err := s.Tasks.Find(c.task)
		if err != nil {
			t.Fatal(err)
		}
		p, err := problem.New(task, problem.NewCode(c.task, 1, machine.Imperial, 1, machine.InchLathe))
		if err != nil {
			t.Fatal(err)
		}
		w, err := s.Words(c.task)
		if err != nil {
			t.Fatal(err)
		}
		for _, rules := range []sitting.Rules{{}, {NoHints: true}} {
			shown, _, ok := s.Aid(p, w, page.Page{s.QuestionOf(p, w)}, "help", rules)
			var all []string
			for _, b := range shown {
				all = append(all, b.(page.Paragraph).Text)
			}
			text := strings.Join(all, " ")
			if !ok || !strings.Contains(text, c.says) || keys.MatchString(text) || !strings.Contains(text, "The button I don't know") || strings.Contains(text, "hint") == rules.NoHints {
				t.Errorf("%s: %s", c.task, text)
			}
		}
	}
}
