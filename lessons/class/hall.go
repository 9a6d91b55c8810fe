package class

import (
	"context"
	"errors"
	"fmt"
	"sync"
	"sync/atomic"
	"time"

	"scratchpass/quiz/problem"
)

// Hall is where rooms are found by their codes. A room is opened when it is first asked for, and
// closed when nobody has looked at it for a while.
type Hall struct {
	journal Journal
	makes   func(Head) Maker
	clock   func() time.Time
	fail    func(error) // is told of what goes wrong

	away  atomic.Bool // the journal is out of reach
	mu    sync.Mutex  // may be held when that of a room is taken, never the other way round
	rooms map[string]*opened
}

// opened is a room that is open, or is being opened.
type opened struct {
	ready chan struct{} // closed when it is open, or could not be
	err   error         // why it could not be
	live  *Live         // nil until its head was read
	asked time.Time     // when it was asked for last
}

// unused is after how long a room that nobody looks at is closed.
const unused = time.Hour

// NewHall opens the rooms of a journal. makes gives the questions of a room; fail is told of
// rooms that can't go on.
func NewHall(j Journal, makes func(Head) Maker, clock func() time.Time, fail func(error)) *Hall {
	h := &Hall{journal: j, makes: makes, clock: clock, fail: fail, rooms: map[string]*opened{}}
	j.Follow(h.deliver)
	return h
}

// Opened is how many rooms are open.
func (h *Hall) Opened() int {
	h.mu.Lock()
	defer h.mu.Unlock()
	return len(h.rooms)
}

// deliver hands on what was kept in a room, if it is open. One that is not reads it when it is.
func (h *Hall) deliver(room string, events []Event) {
	if l := h.live(room); l != nil {
		h.failed(l.Deliver(context.Background(), events))
	}
}

// live is a room that is open; nil where it is not.
func (h *Hall) live(code string) *Live {
	h.mu.Lock()
	defer h.mu.Unlock()
	if o := h.rooms[code]; o != nil {
		return o.live
	}
	return nil
}

// failed tells of what went wrong. That the journal is out of reach is told once, by who notices.
func (h *Hall) failed(err error) {
	if err != nil && !errors.Is(err, ErrAway) && !errors.Is(err, context.Canceled) {
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

// Room is the room with a code; ErrNoRoom where there is none. Many who ask for one that is not
// open wait for it to be read once; who has one that is open waits for nobody.
func (h *Hall) Room(ctx context.Context, code string) (*Live, error) {
	h.mu.Lock()
	o := h.rooms[code]
	if o == nil {
		h.sweep()
		o = &opened{ready: make(chan struct{})}
		h.rooms[code] = o
		go h.open(code, o) // goes on for the others when the first has gone
	}
	o.asked = h.clock()
	h.mu.Unlock()
	return o.wait(ctx)
}

// wait waits until the room is open, or could not be opened.
func (o *opened) wait(ctx context.Context) (*Live, error) {
	select {
	case <-o.ready:
		return o.live, o.err
	case <-ctx.Done():
		return nil, ctx.Err()
	}
}

// Glance calls look with a room as it is, as Live.See does. One that is not open is read for that alone,
// and stays closed: whoever goes through all rooms must not hold them all.
func (h *Hall) Glance(ctx context.Context, code string, look func(*Room)) error {
	h.mu.Lock()
	o := h.rooms[code]
	h.mu.Unlock()
	if o == nil {
		o = &opened{}
		if err := h.read(code, o); err != nil {
			return err
		}
		o.live.See(look)
		return nil
	}
	l, err := o.wait(ctx)
	if err == nil {
		l.See(look)
	}
	return err
}

// open reads a room.
func (h *Hall) open(code string, o *opened) {
	err := h.read(code, o)
	h.mu.Lock()
	defer h.mu.Unlock()
	if err != nil {
		o.err, o.live = err, nil
		h.drop(code, o)
	}
	close(o.ready)
}

// read reads the head of a room, then its events: from its head on it is told of new ones, so that
// none is missed in between.
func (h *Hall) read(code string, o *opened) error {
	ctx := context.Background()
	head, err := h.journal.Head(ctx, code)
	if err != nil {
		return err
	}
	if head.Draws != problem.Draws {
		return OtherDraws{head}
	}
	l := newLive(h.journal, head, h.makes(head), h.clock)
	h.mu.Lock()
	o.live = l
	h.mu.Unlock()
	return l.catchUp(ctx)
}

// OtherDraws says that a room was begun by a program that draws other numbers: its questions can't be
// made here.
type OtherDraws struct{ Head Head }

func (e OtherDraws) Error() string {
	return fmt.Sprintf("room %s was begun by a program that draws other numbers (%d, this one %d): go on with that one", e.Head.Code, e.Head.Draws, problem.Draws)
}

// drop closes a room, unless another has its place. The lock is held.
func (h *Hall) drop(code string, o *opened) {
	if h.rooms[code] == o {
		delete(h.rooms, code)
	}
}

// sweep closes the rooms that nobody has looked at for a while. The lock is held.
func (h *Hall) sweep() {
	now := h.clock()
	for code, o := range h.rooms {
		if o.live != nil && now.Sub(o.asked) > unused && !o.live.held() {
			h.drop(code, o)
		}
	}
}
