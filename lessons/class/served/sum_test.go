package served_test

import (
	"fmt"
	"strings"
	"testing"

	"scratchpass/lessons/class"
)

// A sum is worked out and not sent: the page says so, and offers to put its value into the field,
// with a form, so without script too. What help says there speaks of buttons.
func TestASumIsNotSentYet(t *testing.T) {
	roster := people(1)
	s := openShop(t, class.Head{Roster: roster}, fmt.Sprintf(three, "rules: {feedback: end}"), class.OwnPace)
	p := s.phone()
	p.comesIn(roster[0].Name)
	for _, sum := range [][]string{{"answer", "=0.613 x 0.0625"}, {"answer", "", "sum", "0.613 x 0.0625"}} {
		_, page := p.post("answer", append([]string{"set", "0", "place", "0"}, sum...)...)
		has(t, page, "0.038313 — not sent yet", `<button name="use" value="0.038313">Use this as my answer</button>`)
	}
	_, page := p.post("answer", "set", "0", "place", "0", "use", "0.038313")
	has(t, page, `name="answer" value="0.038313"`, `data-scene="asks"`)
	if a, kept := s.kept(roster[0].ID, 0, 0); kept {
		t.Error("kept: ", a)
	}
	for _, none := range []string{"= 1/", "? pitch", "help"} {
		if _, page := p.answers(0, none); !strings.Contains(page, `id="aid"`) || strings.Contains(page, `name="use"`) {
			t.Errorf("%s: %s", none, page)
		}
	}
	_, page = p.answers(0, "help")
	has(t, page, "Answer in inches, such as", "The large button sends your answer.")
}
