package served

import (
	"net/http"
	"strings"

	"scratchpass/calc"
	"scratchpass/lessons/class"
	"scratchpass/lessons/page"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/arithmetic"
	"scratchpass/quiz/set"
)

// worth is the value of a sum that was worked out beside a question which takes one number; empty for
// anything else.
func worth(typed string, it set.Item) string {
	sum, ok := strings.CutPrefix(typed, "=")
	if _, number := sitting.PromptOf(it.Problem, it.Words).Takes.(page.Number); !ok || !number {
		return ""
	}
	x, err := arithmetic.Value(strings.TrimSpace(sum))
	if err != nil {
		return ""
	}
	return calc.Shortest(x, 6)
}

// passes reports whether it is said that someone does not know.
func passes(text string) bool {
	word, _ := page.Typed(text, page.Anywhere)
	return word == page.WordPass
}

// asksPass reports whether someone is to be asked once whether they mean that they do not know:
// where a tap would be final.
func (s *Server) asksPass(r *http.Request, l *class.Live, e class.Event) (asks bool) {
	if !passes(e.Text) || r.URL.Query().Get("pass") == "sure" {
		return false
	}
	l.See(func(room *class.Room) { a := room.Sets[e.Set]; asks = a.Way == class.Ticket || a.FirstCounts() })
	return asks
}
