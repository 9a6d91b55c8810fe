package screen

import (
	"errors"
	"math"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"scratchpass/content"
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
	end, err := await(s, done)
	return errors.Join(end, err)
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

func (p *player) view(m *model) string {
	return drawFrame(p.motion.Scene(), m)
}

// leastDial is the fewest lines in which a dial can be made out, and sceneWords how many
// are kept free for what is said below it: the dial keeps its size whatever that is.
const (
	leastDial  = 6
	sceneWords = 7
)

// drawFrame draws a scene in the frame of every page: the thread dial, as large as the lines
// kept free below it leave room for, the way of the tool, and what is said.
func drawFrame(s page.Scene, m *model) string {
	wide := max(m.wide(), text.NarrowestWidth)
	top := m.headed(s.Title, page.Where{})
	foot := m.footed(s.Keys)
	rows := m.rows - len(top) - len(foot)
	below := append([]string{""}, strings.Split(track(s.Track, min(wide, 76)), "\n")...)
	for _, line := range s.Lines {
		below = append(below, strings.Split(text.Wrap(content.Printable(line), wide), "\n")...)
	}
	var lines []string
	if room := rows - sceneWords - 3; s.Dial != nil && room >= leastDial {
		lines = m.theme.cells(s.Dial.Cells(min(wide, 2*room, 34)))
		lines = lines[:min(len(lines), room)]
	}
	lines = append(lines, below...)
	for len(lines) < rows {
		lines = append(lines, "")
	}
	left := strings.Repeat(" ", m.margin())
	for i, line := range lines {
		if line != "" {
			lines[i] = ansi.Truncate(left+line, m.columns, "")
		}
	}
	return strings.Join(append(append(top, lines[:max(rows, 0)]...), foot...), "\n")
}

// track is the way of the tool from the start of the thread to what lies behind it, as one sees
// it at the lathe, with the headstock at the left and the start of the thread at the right:
// V the tool, = the thread, . clear run, # what the tool must not hit.
func track(t page.Track, columns int) string {
	const wall = 2
	cells := max(columns-wall, 20)
	at := func(share float64) int {
		return min(max(int(math.Round(share*float64(cells))), 0), cells)
	}
	row := []byte(strings.Repeat("#", wall) + strings.Repeat(".", cells))
	last := len(row) - 1
	for i := at(t.ThreadFrom); i < at(t.ThreadTo); i++ {
		row[last-i] = '='
	}
	tool := []byte(strings.Repeat(" ", len(row)))
	tool[last-at(t.Tool)] = 'V'
	return strings.TrimRight(string(tool), " ") + "\n" + string(row)
}
