package screen

import (
	"errors"
	"math"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"scratchpass/lessons/face/text"
	"scratchpass/lessons/page"
)

var _ page.Animator = (*Screen)(nil)

// framesPerSecond is how often a moving picture is drawn.
const framesPerSecond = 30

// Run shows a moving picture until it is done, or until Esc leaves it.
func (s *Screen) Run(m page.Motion) error {
	if s.Stop.Err() != nil {
		return page.ErrStopped
	}
	columns, rows := s.Size()
	p := tea.NewProgram(player{motion: m, columns: columns, rows: rows, last: time.Now()},
		tea.WithInput(s.In), tea.WithOutput(s.Out), tea.WithContext(s.Stop), tea.WithFPS(framesPerSecond))
	end, err := p.Run()
	switch {
	case errors.Is(err, tea.ErrInterrupted), s.Stop.Err() != nil:
		return page.ErrStopped
	case err != nil:
		return err
	}
	if end.(player).left {
		return page.ErrStopped
	}
	return nil
}

// player is the model of a moving picture: the clock and the keys go to the motion,
// which keeps none itself.
type player struct {
	motion        page.Motion
	columns, rows int
	last          time.Time
	left          bool
}

type frame time.Time

func nextFrame() tea.Cmd {
	return tea.Tick(time.Second/framesPerSecond, func(t time.Time) tea.Msg { return frame(t) })
}

func (p player) Init() tea.Cmd { return nextFrame() }

func (p player) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		p.columns, p.rows = msg.Width, msg.Height
	case frame:
		p.advance(time.Time(msg))
		if p.motion.Done() {
			return p, tea.Quit
		}
		return p, nextFrame()
	case tea.KeyMsg:
		p.advance(time.Now()) // the key counts from the moment it was pressed, not from the next frame
		switch {
		case msg.Type == tea.KeyEsc: // back to the bench, where the clock stands
			return p, tea.Quit
		case msg.Type == tea.KeyCtrlC:
			p.left = true
			return p, tea.Quit
		case msg.String() == " ":
			p.motion.Key("space")
		default:
			p.motion.Key(msg.String())
		}
		if p.motion.Done() {
			return p, tea.Quit
		}
	}
	return p, nil
}

func (p *player) advance(now time.Time) {
	if gone := now.Sub(p.last); gone > 0 {
		p.motion.Advance(min(gone.Seconds(), 2)) // a machine that slept was no lathe that ran on
		p.last = now
	}
}

func (p player) View() string {
	if p.left {
		return ""
	}
	return Frame(p.motion.Scene(), p.columns, p.rows)
}

// leastDial is the fewest lines in which a dial can be made out.
const leastDial = 6

// Frame draws a scene: the thread dial, as large as the lines below it leave room for,
// the way of the tool, and what is said.
func Frame(s page.Scene, columns, rows int) string {
	wide := max(columns-2, text.NarrowestWidth)
	below := []string{"", track(s.Track, min(columns-2, 76))}
	for _, line := range s.Lines {
		below = append(below, text.Wrap(line, wide))
	}
	var lines []string
	room := rows - 1 - strings.Count(strings.Join(below, "\n"), "\n")
	if s.Dial != nil && room >= leastDial {
		lines = s.Dial.Terminal(min(columns-2, 2*room, 34))
		lines = lines[:min(len(lines), room)]
	}
	return strings.Join(append(lines, below...), "\n")
}

// track is the way of the tool from the start of the thread to what lies behind it:
// V the tool, = the thread, . clear run, # what must not be met.
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
