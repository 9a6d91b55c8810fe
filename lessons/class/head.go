package class

import (
	"context"
	"crypto/rand"
	"errors"
	"math/big"
	"strings"
	"time"
)

// Head is what a room is called and for whom it is. It does not change.
type Head struct {
	Code   string       `json:"code"`   // what people type to come in
	Title  string       `json:"title"`  // on pages
	Began  time.Time    `json:"began"`  // in milliseconds
	Key    string       `json:"key"`    // of the instructor's private link
	Roster []Apprentice `json:"roster"` // whose names are known; others come as visitors
	Listed bool         `json:"listed"` // phones show the names to tap
	Sheets bool         `json:"sheets"` // the set may be on paper, too, with a code on each sheet
	Draws  int          `json:"draws"`  // the version that draws the numbers: problem.Draws
}

// ids are those of the roster, in whose order people sit.
func (h Head) ids() []string {
	ids := make([]string, len(h.Roster))
	for i, a := range h.Roster {
		ids[i] = a.ID
	}
	return ids
}

// letters are those of room codes: none that can be taken for another when read from afar.
const letters = "ACDEFHJKLMNPRTUVWXY34679"

// codeLength is how many letters a room code has: with 24 letters 190 million codes. At the
// rate at which tries are let through that is far from guessed in a lesson.
const codeLength = 6

// NewCode returns a room code.
func NewCode() string {
	var b strings.Builder
	for range codeLength {
		n, err := rand.Int(rand.Reader, big.NewInt(int64(len(letters))))
		if err != nil {
			panic("class: the system gives no random numbers: " + err.Error())
		}
		b.WriteByte(letters[n.Int64()])
	}
	return b.String()
}

// ReadCode is a room code as it was typed: in small letters, with spaces or a hyphen.
func ReadCode(text string) string {
	return strings.Map(func(r rune) rune {
		if strings.ContainsRune(letters, r) {
			return r
		}
		return -1
	}, strings.ToUpper(text))
}

// IsCode reports whether a code may be one of a room: no other is worth a look.
func IsCode(code string) bool { return len(code) == codeLength }

// ErrNoRoom says that there is no room with a code.
var ErrNoRoom = errors.New("there is no such room")

// Journal keeps the events of rooms. What Append has returned without an error is on disk, and
// survives a power cut.
type Journal interface {
	// Begin keeps the head of a new room. A room that is there already is an error.
	Begin(ctx context.Context, h Head) error
	// Heads are those of all rooms, the latest first.
	Heads(ctx context.Context) ([]Head, error)
	// After are the events of a room after one, in their order.
	After(ctx context.Context, room string, seq int64) ([]Event, error)
	// Append keeps an event, numbers it, and returns it. An event whose key is there already is
	// not kept again: the one that is there is returned.
	Append(ctx context.Context, room string, e Event) (Event, error)
	// Follow calls do with the events of each room that were kept, in their order, before
	// Append returns. It is called once, before the first Append.
	Follow(do func(room string, events []Event))
	// Forget deletes a room, its people and their answers.
	Forget(ctx context.Context, room string) error
	Close() error
}
