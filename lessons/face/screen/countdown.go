package screen

import (
	"math"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"scratchpass/lessons/page"
)

// countdown is time that runs out; the frame shows how much is left in the place of where
// one is. Without says there is none.
type countdown struct {
	ends  time.Time
	whole float64
	says  func(left int) string
}

// second is a beat of the countdown that ends then; with that countdown its beats end.
type second struct{ ends time.Time }

func (c countdown) beat() tea.Cmd {
	return tea.Tick(time.Second/4, func(time.Time) tea.Msg { return second{c.ends} })
}

// Countdown shows the time that is left, from now on.
func (s *Screen) Countdown(seconds float64, says func(left int) string) {
	s.begin()
	s.program.Send(countdown{time.Now().Add(time.Duration(seconds * float64(time.Second))), seconds, says})
}

// left is the place of where one is, while time runs out.
func (c countdown) left(now time.Time) page.Where {
	left := max(0, c.ends.Sub(now).Seconds())
	return page.Where{Text: c.says(int(math.Ceil(left))), Done: int(c.whole - left), Of: int(c.whole)}
}
