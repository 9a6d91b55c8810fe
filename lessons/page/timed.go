package page

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"scratchpass/calc"
	"scratchpass/quiz/drawing"
)

// Clocked is a face that takes the moments of keys by a clock of its own, beside the learner:
// it answers a prompt that takes Timed.
type Clocked interface {
	Face
	// Clocked reports whether it can do that now.
	Clocked() bool
}

// Timed takes the moments at which keys are pressed while a machine runs, counted from the
// moment at which the learner lets it run. The face shows how it goes, by what stands here:
// it works nothing out, and what comes of the keys the flow tells. The answer is written as
// Taken has it.
type Timed struct {
	Title string
	Dial  *Turning         // nil where the machine has none
	Way   Travel           // of the tool
	Work  *drawing.Drawing // the groove before the pass; nil where it can't be drawn

	Closed bool // the half-nut is closed from the beginning
	Keeps  bool // it stays closed: the key takes the tool out and stops
	Clear  bool // the tool is out from the beginning
	Fails  bool // the half-nut will not close: the first key ends it
	Nut    Nut

	Says Timing
}

// Timing is what is said beside a machine that runs.
type Timing struct {
	How             string // what to do
	Start           string // the machine
	Close           string // the half-nut
	OutOpen         string // the tool out, and the half-nut open
	OutStop         string // the tool out, and the spindle stopped
	Out, Open, Stop string // one by one
	Steps           string // go on step by step instead
	Leave           string // let the lathe wait
	Mark            string // under the index: ${mark}
	Between         string // marks, the next is ${mark}
	Closed, Opened  string // what can be seen of the half-nut
	Dropping        string // it has not found a thread yet
	NoScript        string // where the face can't show it
}

// Turning is a dial that turns. Its face is drawn with the first mark under the index; what
// turns in it moves, about its middle.
type Turning struct {
	Face    drawing.Drawing
	Middle  drawing.Point
	Marks   int
	At      float64 // the mark under the index at the beginning, from 0
	Seconds float64 // from mark to mark, while the half-nut is open
}

// Travel is the way of the tool from the start of the thread to what lies behind it.
type Travel struct {
	Face       drawing.Drawing // the tool in it moves along
	From, To   float64         // its places at the start and at the end of the whole way, in units of the drawing
	Tool       float64         // where it is at the beginning, as a share of the whole way
	ThreadEnds float64         // a share of it too
	Seconds    float64         // for the whole way, with the half-nut closed
}

// Nut is when a half-nut that is pressed falls into the thread of the lead screw.
type Nut struct {
	Past    float64 // how far the screw is past a whole thread at the beginning, in threads
	Seconds float64 // for one thread of the screw
	Slack   float64 // share of a thread past which it still drops back
	Share   float64 // one thread of the screw as a share of the way of the tool
}

func (Timed) takes() {}

// Press is a key and when it was pressed, in seconds from the beginning.
type Press struct {
	Key string
	At  float64
}

// Taken is what a face answers: the keys in their order, and when nothing more was to be seen.
// Broken tells that it was broken off, by the face or by who sat at it, and Steps that they
// would rather go step by step: no key counts then.
type Taken struct {
	Presses       []Press
	End           float64
	Broken, Steps bool
}

// The words of an answer, besides keys.
const (
	takenBroken = "broken"
	takenSteps  = "steps"
	takenEnd    = "end"
)

// What a pass may come to at most.
const (
	mostPresses = 20
	mostSeconds = 3600
)

// Keys of a pass, as a motion takes them.
var timedKeys = []string{"space", "o", "h", "s"}

// String writes it: "space 2.513, space 9.081, end 9.081", "broken" or "steps".
func (t Taken) String() string {
	switch {
	case t.Broken:
		return takenBroken
	case t.Steps:
		return takenSteps
	}
	var all []string
	for _, p := range t.Presses {
		all = append(all, p.Key+" "+calc.Fixed(p.At, 3))
	}
	return strings.Join(append(all, takenEnd+" "+calc.Fixed(t.End, 3)), ", ")
}

// ParseTaken reads what String writes. Moments never go back.
func ParseTaken(text string) (Taken, error) {
	text = strings.TrimSpace(text)
	switch text {
	case takenBroken:
		return Taken{Broken: true}, nil
	case takenSteps:
		return Taken{Steps: true}, nil
	}
	refuse := func(why string) (Taken, error) {
		return Taken{}, fmt.Errorf("can't read the keys %.60q: %s", text, why)
	}
	var t Taken
	last, parts := 0.0, strings.Split(text, ",")
	if len(parts) > mostPresses+1 {
		return refuse("there are too many")
	}
	for i, part := range parts {
		key, number, _ := strings.Cut(strings.TrimSpace(part), " ")
		at, err := seconds(number)
		switch {
		case err != nil:
			return refuse(err.Error())
		case at < last:
			return refuse("a moment lies before the one in front of it")
		case (key == takenEnd) != (i == len(parts)-1):
			return refuse("end with its moment stands last, and nowhere else")
		case key == takenEnd:
			t.End = at
			return t, nil
		case !timedKey(key):
			return refuse("the keys are " + strings.Join(timedKeys, ", "))
		}
		t.Presses, last = append(t.Presses, Press{key, at}), at
	}
	return refuse("end with its moment stands last") // not reached: the last is the end or was refused
}

func timedKey(key string) bool {
	for _, k := range timedKeys {
		if k == key {
			return true
		}
	}
	return false
}

// seconds reads a moment.
func seconds(text string) (float64, error) {
	at, err := strconv.ParseFloat(text, 64)
	if err != nil || !(at >= 0 && at <= mostSeconds) {
		return 0, errors.New("a moment is a number of seconds, from 0 to an hour")
	}
	return at, nil
}
