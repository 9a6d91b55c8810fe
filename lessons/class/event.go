// Package class is a room: people at phones, one instructor, questions of a set. What
// happened in a room is a list of events that only grows; the state of the room, what a phone
// shows and what the instructor sees are made from it. So a room goes on after a power cut as
// if nothing had been, and marks can be made again from its list.
package class

import (
	"time"

	"scratchpass/quiz/answer"
)

// Kind is what an event is.
type Kind string

// What the instructor does.
const (
	Asked   Kind = "asked"    // a set of questions was added; Text is its blueprint, Name its way
	Ran     Kind = "ran"      // a set is run another way from now on; Text is the way
	Turned  Kind = "turned"   // everyone is at an earlier set again
	Opened  Kind = "opened"   // everyone is at a question now; with N only to look at it
	Locked  Kind = "locked"   // it takes no more answers
	Freed   Kind = "unlocked" // it does again
	Showed  Kind = "showed"   // what came, and so many lines of the working; N is how many, Name WithCounts or empty
	Until   Kind = "until"    // a time is up at; Text is the time, empty for none
	Paused  Kind = "paused"   // for all
	Resumed Kind = "resumed"  //
	Longer  Kind = "longer"   // someone has N more minutes
	Let     Kind = "let"      // a second device has the name now; Text is the device
	Refused Kind = "refused"  // it has not
	Renamed Kind = "renamed"  // Text is the new name
	Merged  Kind = "merged"   // someone's answers are those of another; Text is who that is
	Removed Kind = "removed"  // someone is not in the room; their answers stay
	Shut    Kind = "shut"     // nobody new comes in
	Unshut  Kind = "unshut"   //
	Counted Kind = "counted"  // an answer that came late counts
	Seen    Kind = "seen"     // the instructor has seen to someone, and knows what was to be known
	Ended   Kind = "ended"    // the lesson is over
	Goes    Kind = "reopened" // it goes on
	Linked  Kind = "linked"   // its links lead to Text, host and port, from now on
	Benched Kind = "benched"  // a bench round begins; Text is its job (JobText), N the pass, Name WithHints or empty
	Halted  Kind = "halted"   // a bench round, Set, takes no more moves; N is how much of what came is shown, Name as of showed
)

// What a phone does.
const (
	Joined   Kind = "joined"   // with a name; Text is the device, Name a visitor's
	Left     Kind = "left"     // the phone goes to someone else; Text is the device
	Answered Kind = "answered" //
	Hinted   Kind = "hinted"   // took a hint
	Called   Kind = "called"   // asks for the instructor
	Unclear  Kind = "unclear"  // what is still unclear, in a line
	Keeps    Kind = "keeps"    // wants the answers in a record under this name
	Moved    Kind = "moved"    // a move in the bench round Set; Text is the move, N how many they had made before it
	Nudged   Kind = "nudged"   // took a hint there
)

// Event is one thing that happened in a room. Fields that its kind does not need are empty.
type Event struct {
	Seq   int64     `json:"seq"` // in its room, from 1
	At    time.Time `json:"at"`  // in milliseconds
	Kind  Kind      `json:"kind"`
	Who   string    `json:"who,omitempty"`   // the id of a person
	Set   int       `json:"set,omitempty"`   // of the room's, from 0
	Place int       `json:"place,omitempty"` // of a question in the set's blueprint, from 0
	N     int       `json:"n,omitempty"`
	Text  string    `json:"text,omitempty"`
	Name  string    `json:"name,omitempty"`

	Certainty answer.Certainty `json:"certainty,omitempty"`

	// Key is chosen by who sends an event: what comes twice with one key happened once.
	Key string `json:"key,omitempty"`
}

// Question is a question of the room: a place in the blueprint of one of its sets, the same
// for all, whatever its number on someone's sheet.
type Question struct{ Set, Place int }

// question is the one that an event is about.
func (e Event) question() Question { return Question{e.Set, e.Place} }
