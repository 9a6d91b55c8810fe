package screen

import (
	"errors"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"scratchpass/lessons"
)

var _ lessons.Stage = (*Screen)(nil)

// framesPerSecond is how often a moving picture is drawn.
const framesPerSecond = 30

// Width is how wide a picture may be.
func (s *Screen) Width() int { return s.width() }

// Run shows a moving picture until it is done, or until Esc leaves it.
func (s *Screen) Run(m lessons.Motion) error {
	if s.Stop.Err() != nil {
		return lessons.ErrStopped
	}
	columns, rows := s.Size()
	p := tea.NewProgram(player{motion: m, columns: columns, rows: rows, last: time.Now()},
		tea.WithInput(s.In), tea.WithOutput(s.Out), tea.WithContext(s.Stop), tea.WithFPS(framesPerSecond))
	end, err := p.Run()
	switch {
	case errors.Is(err, tea.ErrInterrupted), s.Stop.Err() != nil:
		return lessons.ErrStopped
	case err != nil:
		return err
	}
	if end.(player).left {
		return lessons.ErrStopped
	}
	return nil
}

// player is the model of a moving picture: the clock and the keys go to the motion,
// which keeps none itself.
type player struct {
	motion        lessons.Motion
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
	return p.motion.Frame(p.columns, p.rows)
}
