package page

import "scratchpass/quiz/drawing"

// Bench is where a machine stands at a move. A face from which nothing scrolls away shows
// it as a panel that stays in its place, over what has been done; any other tells it.
type Bench struct {
	Title string // of the job
	Told  string // where it stands, in sentences; empty where it is not to be told again
	Signs []Sign // the same and more, one thing each, without its dials
	Dials []Dial
	Work  *drawing.Drawing // the groove with the tool; nil where it can't be drawn

	Moves Moves  // that can be made now
	Head  string // of their list; empty where they were told before
}

// Sign is one thing that can be seen at a machine.
type Sign struct{ Name, Reads string }

// Dial is the dial of a slide, and what it reads.
type Dial struct {
	Sign
	Face drawing.Drawing
}

// Sight is a machine looked at closely: its dials, and the work with the tool.
type Sight struct{ Dials, Work []Figure }

func (Bench) block() {}
func (Sight) block() {}
