package page

import (
	"errors"

	"scratchpass/quiz/drawing"
)

// Face is how a flow speaks with a learner. A flow never writes to a stream itself, so
// that a screen, a pipe, a screen reader, a browser and a test all run the same flow.
type Face interface {
	// Show shows a page. A long one may be held up screen by screen.
	Show(p Page) error

	// Ask asks and returns what was typed; of a menu the number of the line.
	Ask(q Prompt) (string, error)
}

// Buttons is a face with buttons for all that can be sent: it has no use for words about keys.
type Buttons interface {
	Face
	Buttons()
}

// ErrStopped is returned when the learner stops: Ctrl-C, or the end of the input.
var ErrStopped = errors.New("stopped")

// Stopped is ErrStopped with what is said to someone who stopped there.
type Stopped struct{ Farewell string }

func (Stopped) Error() string { return ErrStopped.Error() }

// Is reports that a Stopped is an ErrStopped.
func (Stopped) Is(target error) bool { return target == ErrStopped }

// Farewell returns err with what is said to a learner who stopped; another error, or one
// that has its farewell already, stays as it is.
func Farewell(err error, text string) error {
	var has Stopped
	if errors.Is(err, ErrStopped) && !errors.As(err, &has) {
		return Stopped{text}
	}
	return err
}

// Timer is a face that lets one see how the time runs out. It has its own clock: a flow
// says how much is left, and asks its own clock whether an answer came too late.
type Timer interface {
	// Countdown shows what says makes of the whole seconds that are left, from now on, down to
	// 0 and there on. With no says it ends.
	Countdown(seconds float64, says func(left int) string)
}

// Animator is a face that can show a picture that moves and take single keys.
type Animator interface {
	// Run shows m until it is done. The learner may leave it: ErrStopped.
	Run(m Motion) error
}

// Motion is a picture that moves. It keeps no clock: the face tells it how much time has
// gone by.
type Motion interface {
	// Advance lets seconds go by.
	Advance(seconds float64)
	// Key takes a key: "space", "s".
	Key(key string)
	// Scene is what is to be seen now.
	Scene() Scene
	// Done reports whether there is nothing more to see.
	Done() bool
}

// Scene is one moment of a picture that moves.
type Scene struct {
	Title string
	Dial  *drawing.Drawing // nil where the lathe has none
	Track Track
	Lines []string // what can be seen; each may be wrapped
	Keys  string   // what the keys do now
}

// Track is the way of the tool from the start of the thread to what lies behind it, in
// shares of the whole way. A face shows the start at the right: the headstock is at the left.
type Track struct {
	ThreadFrom, ThreadTo float64
	Tool                 float64
}
