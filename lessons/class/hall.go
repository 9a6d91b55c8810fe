package class

import (
	"context"
	"sync"
	"time"

	"scratchpass/quiz/problem"
)

// Hall is where rooms are found by their codes. A room is opened when it is first asked for.
type Hall struct {
	journal Journal
	makes   func(Head) Maker
	clock   func() time.Time
	fail    func(error) // is told of a room that can't go on

	mu    sync.Mutex
	rooms map[string]*Live
}

// NewHall opens the rooms of a journal. makes gives the questions of a room; fail is told of
// rooms that can't go on.
func NewHall(j Journal, makes func(Head) Maker, clock func() time.Time, fail func(error)) *Hall {
	h := &Hall{journal: j, makes: makes, clock: clock, fail: fail, rooms: map[string]*Live{}}
	j.Follow(h.deliver)
	return h
}

func (h *Hall) deliver(room string, events []Event) {
	h.mu.Lock()
	l := h.rooms[room]
	h.mu.Unlock()
	if l == nil { // it reads them when it is opened
		return
	}
	if err := l.Deliver(context.Background(), events); err != nil {
		h.fail(err)
	}
}

// Begin begins a room with its first set; without a blueprint nothing is asked in it yet.
func (h *Hall) Begin(ctx context.Context, head Head, blueprint string, way Way) (*Live, error) {
	head.Began, head.Draws = h.clock().Truncate(time.Millisecond).UTC(), problem.Draws
	if err := h.journal.Begin(ctx, head); err != nil {
		return nil, err
	}
	l, err := h.Room(ctx, head.Code)
	if err != nil || blueprint == "" {
		return l, err
	}
	return l, l.Ask(ctx, blueprint, way)
}

// Room is the room with a code; ErrNoRoom where there is none.
func (h *Hall) Room(ctx context.Context, code string) (*Live, error) {
	h.mu.Lock()
	defer h.mu.Unlock()
	if l := h.rooms[code]; l != nil {
		return l, nil
	}
	heads, err := h.journal.Heads(ctx)
	if err != nil {
		return nil, err
	}
	for _, head := range heads {
		if head.Code != code {
			continue
		}
		l, err := Open(ctx, h.journal, head, h.makes(head), h.clock)
		if err == nil {
			h.rooms[code] = l
		}
		return l, err
	}
	return nil, ErrNoRoom
}
