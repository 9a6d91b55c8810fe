package class

import (
	"context"
	"errors"
)

// ErrNoRoom says that there is no room with a code.
var ErrNoRoom = errors.New("there is no such room")

// ErrTaken says that there is a room with a code already.
var ErrTaken = errors.New("there is a room with this code already")

// ErrAway says that what keeps a journal is out of reach: what was to be kept may be sent again
// later, with its key.
var ErrAway = errors.New("the database is out of reach: answers wait on the phones")

// errBack says that it is in reach again.
var errBack = errors.New("the database is in reach again: answers are kept")

// Journal keeps the events of rooms. What Append has returned without an error is on disk, and
// survives a power cut.
type Journal interface {
	// Begin keeps the head of a new room. ErrTaken where there is one with its code.
	Begin(ctx context.Context, h Head) error
	// Head is that of one room; ErrNoRoom where there is none.
	Head(ctx context.Context, room string) (Head, error)
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

// Shared is a journal that other programs keep events in too, and that may be out of reach for a
// while. Its errors are ErrAway then, and come within seconds.
type Shared interface {
	Journal
	// Hear calls heard with a room and the number of an event in it, soon after some program has
	// kept that, and missed whenever it may have missed some. Both are hints: what is kept is
	// found without them, only later. It ends with the context.
	Hear(ctx context.Context, heard func(room string, seq int64), missed func())
	// Last are the numbers of the last events of rooms, 0 for none; without those rooms that are
	// not there.
	Last(ctx context.Context, rooms []string) (map[string]int64, error)
	// Notice calls do with why when the journal goes out of reach, and with nil when it is back. It
	// is called once, before anything is kept.
	Notice(do func(why error))
}
