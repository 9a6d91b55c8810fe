package lessons

import (
	"errors"
	"strings"
)

// Terminal is how a session speaks with a learner. A session never writes to a
// stream itself, so that a screen, a pipe, a screen reader and a test all run the
// same flow.
type Terminal interface {
	// Show shows text. Long text may be held up page by page.
	Show(text Text) error

	// Ask asks for a line of text.
	Ask(q Question) (string, error)

	// Choose asks for one of the question's options and returns its number from 1, or
	// what was typed instead.
	Choose(q Question) (string, error)
}

// ErrStopped is returned when the learner stops: Ctrl-C, or the end of the input.
var ErrStopped = errors.New("stopped")

// Question is one thing to answer.
type Question struct {
	Prompt  string   // one line: what to type
	Options []string // for Choose
	Back    bool     // the last option leads back; Esc takes it
}

// The words that can be typed instead of an answer.
const (
	WordHelp   = "help"
	WordRepeat = "repeat"
	WordHint   = "hint"
	WordPass   = "pass"
	WordStop   = "stop"
)

// asked returns the word that was typed instead of an answer, if one was. The
// single letters and the question mark are there for the screen.
func asked(reply string, words []string) (string, bool) {
	word := strings.ToLower(strings.TrimSpace(reply))
	if word == "?" {
		word = WordHelp
	}
	for _, w := range words {
		if word == w {
			return w, true
		}
	}
	return "", false
}

// Style is how a piece of text is meant. A terminal without colour shows the same
// words.
type Style int

// The styles.
const (
	Plain   Style = iota
	Heading       // the title of a lesson or a part
	Caution       // a safety note
	Good          // a right answer
	Bad           // a wrong answer
	Figures       // lines of a working: never wrapped inside a number
	Picture       // a drawing; left out where pictures are of no use
	Faint         // what to type, where you are
)

// Block is a piece of text in one style.
type Block struct {
	Style Style
	Text  string
}

// Text is what is shown at once.
type Text []Block

// Words returns the words of a text, without its pictures, one space between them:
// what must be the same on every terminal.
func (t Text) Words() string {
	var words []string
	for _, b := range t {
		if b.Style != Picture {
			words = append(words, strings.Fields(b.Text)...)
		}
	}
	return strings.Join(words, " ")
}
