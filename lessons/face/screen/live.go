package screen

import (
	"math"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"scratchpass/lessons/face/text"
	"scratchpass/lessons/page"
)

// framesPerSecond is how often a moving picture is drawn.
const framesPerSecond = 30

// play asks for a moving picture; done tells how it ended.
type play struct {
	motion page.Motion
	done   chan<- error
}

// Run shows a moving picture until it is done, or until Esc leaves it.
func (s *Screen) Run(m page.Motion) error {
	if s.Stop.Err() != nil {
		return page.ErrStopped
	}
	s.begin()
	done := make(chan error, 1)
	s.program.Send(play{m, done})
	select {
	case err := <-done:
		return err
	case <-s.ended:
		if s.failed != nil {
			return s.failed
		}
	case <-s.Stop.Done():
	}
	return page.ErrStopped
}

// player shows a moving picture: the clock and the keys go to the motion, which keeps none
// itself.
type player struct {
	motion page.Motion
	done   chan<- error
	last   time.Time
}

type frame time.Time

func nextFrame() tea.Cmd {
	return tea.Tick(time.Second/framesPerSecond, func(t time.Time) tea.Msg { return frame(t) })
}

func newPlayer(p play) *player { return &player{p.motion, p.done, time.Now()} }

func (p *player) tick(m *model, now frame) tea.Cmd {
	p.advance(time.Time(now))
	if p.motion.Done() {
		p.end(m, nil)
		return nil
	}
	return nextFrame()
}

func (p *player) key(m *model, k tea.KeyMsg) tea.Cmd {
	p.advance(time.Now()) // the key counts from the moment it was pressed, not from the next frame
	switch {
	case k.Type == tea.KeyEsc: // back to the bench, where the clock stands
		p.end(m, nil)
		return nil
	case k.Type == tea.KeyCtrlC:
		p.end(m, page.ErrStopped)
		return nil
	case k.String() == " ":
		p.motion.Key("space")
	default:
		p.motion.Key(k.String())
	}
	if p.motion.Done() {
		p.end(m, nil)
	}
	return nil
}

// end gives the screen back to the sheet.
func (p *player) end(m *model, err error) {
	m.picture = nil
	p.done <- err // it has room for one
}

func (p *player) advance(now time.Time) {
	if gone := now.Sub(p.last); gone > 0 {
		p.motion.Advance(min(gone.Seconds(), 2)) // a machine that slept was no lathe that ran on
		p.last = now
	}
}

func (p *player) view(t *theme, columns, rows int) string {
	return drawFrame(p.motion.Scene(), columns, rows, t)
}

// leastDial is the fewest lines in which a dial can be made out.
const leastDial = 6

// Frame draws a scene: the thread dial, as large as the lines below it leave room for,
// the way of the tool, and what is said.
func Frame(s page.Scene, columns, rows int, look Look) string {
	return drawFrame(s, columns, rows, newTheme(look))
}

func drawFrame(s page.Scene, columns, rows int, t *theme) string {
	wide := max(columns-2, text.NarrowestWidth)
	below := []string{"", track(s.Track, min(columns-2, 76))}
	for _, line := range s.Lines {
		below = append(below, text.Wrap(line, wide))
	}
	var lines []string
	room := rows - 1 - strings.Count(strings.Join(below, "\n"), "\n")
	if s.Dial != nil && room >= leastDial {
		lines = t.cells(s.Dial.Cells(min(columns-2, 2*room, 34)))
		lines = lines[:min(len(lines), room)]
	}
	return strings.Join(append(lines, below...), "\n")
}

// track is the way of the tool from the start of the thread to what lies behind it:
// V the tool, = the thread, . clear run, # what the tool must not hit.
func track(t page.Track, columns int) string {
	cells := max(columns-2, 20)
	at := func(share float64) int {
		return min(max(int(math.Round(share*float64(cells))), 0), cells)
	}
	row := []byte(strings.Repeat(".", cells) + "##")
	for i := at(t.ThreadFrom); i < at(t.ThreadTo); i++ {
		row[i] = '='
	}
	tool := []byte(strings.Repeat(" ", cells+2))
	tool[at(t.Tool)] = 'V'
	return strings.TrimRight(string(tool), " ") + "\n" + string(row)
}
