package served_test

import (
	"fmt"
	"strings"
	"testing"

	"scratchpass/lessons/class"
)

// In a lesson about passes the button for who does not know says so; the word that is sent stays.
// Where it would be final it asks once, in place; elsewhere it is sent at once and may be changed.
func TestWhoDoesNotKnow(t *testing.T) {
	for _, c := range []struct {
		rules string
		way   class.Way
		asks  bool
	}{
		{"rules: {feedback: at-once}", class.OwnPace, true},
		{"rules: {feedback: end}", class.Ticket, true},
		{"rules: {feedback: end}", class.OwnPace, false},
		{"rules: {feedback: end}", class.Together, false},
		{"rules: {feedback: at-once}", class.Together, false},
	} {
		roster := people(1)
		s := openShop(t, class.Head{Roster: roster}, fmt.Sprintf(three, c.rules), c.way)
		p := s.phone()
		p.comesIn(roster[0].Name)
		if c.way == class.Together {
			s.do("open", "place", "0")
		}
		_, page := p.get("")
		has(t, page, `value="pass" formnovalidate>I don&#39;t know</button>`)
		_, page = p.answers(0, "", "word", "pass")
		if _, kept := s.kept(roster[0].ID, 0, 0); kept == c.asks {
			t.Errorf("%s, %s: kept after one tap: %v", c.rules, c.way, kept)
		}
		if !c.asks {
			continue
		}
		has(t, page, `formaction="/r/`+roomCode+`/answer?pass=sure">Send &#39;I don&#39;t know&#39;? Your answer counts.</button>`)
		if strings.Contains(page, `value="pass" formnovalidate>I`) || strings.Count(page, `value="pass"`) != 1 {
			t.Error("two buttons: ", page)
		}
		p.post("answer?pass=sure", "set", "0", "place", "0", "word", "pass")
		if a, kept := s.kept(roster[0].ID, 0, 0); !kept || a.Text != "pass" {
			t.Error("not kept: ", a)
		}
		if c.way == class.Ticket {
			_, page = p.get("?at=0")
			has(t, page, "Your answer is kept: I don&#39;t know.")
		}
	}
}
