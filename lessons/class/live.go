package class

import (
	"context"
	"crypto/rand"
	"fmt"
	"sync"
	"time"
)

// Live is a room that is open: its state, and who is told when that changes.
type Live struct {
	journal Journal
	clock   func() time.Time

	mu      sync.Mutex
	room    *Room
	broken  error // an event could not be applied: the room can't go on
	changed chan struct{}
	holders int // who look at it without a break
	left    bool
}

// Open opens a room that the journal has, with what happened in it before.
func Open(ctx context.Context, j Journal, h Head, makes Maker, clock func() time.Time) (*Live, error) {
	l := newLive(j, h, makes, clock)
	return l, l.catchUp(ctx)
}

// newLive is a room of which nothing was read yet.
func newLive(j Journal, h Head, makes Maker, clock func() time.Time) *Live {
	return &Live{journal: j, clock: clock, room: NewRoom(h, makes), changed: make(chan struct{})}
}

// catchUp applies what the journal has and the room has not. Whoever looks at the room meanwhile
// does not wait for the journal.
func (l *Live) catchUp(ctx context.Context) error {
	events, err := l.journal.After(ctx, l.room.Head.Code, l.last())
	if err != nil {
		return err
	}
	l.mu.Lock()
	defer l.mu.Unlock()
	l.apply(events)
	return l.broken
}

// last is the number of the last event that the room has.
func (l *Live) last() int64 {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.room.Seq
}

// lacks reports whether the room has not come to an event that it can come to.
func (l *Live) lacks(seq int64) bool {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.broken == nil && l.room.Seq < seq
}

// apply goes on with events, of which the room may have some already. The lock is held.
func (l *Live) apply(events []Event) {
	for _, e := range events {
		if l.broken != nil || e.Seq <= l.room.Seq {
			continue
		}
		if err := l.room.Apply(e); err != nil {
			l.broken = fmt.Errorf("room %s can't go on: %w", l.room.Head.Code, err)
		}
	}
	l.wake()
}

// wake lets those who wait for a change look again. The lock is held.
func (l *Live) wake() {
	close(l.changed)
	l.changed = make(chan struct{})
}

// look lets whoever has a page of the room open look again: something else than the room has
// changed.
func (l *Live) look() {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.wake()
}

// leave says that this is the room no longer.
func (l *Live) leave() {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.left = true
	l.wake()
}

// Left reports whether this is the room no longer: it was forgotten, or its hall has another, which
// began anew from the journal.
func (l *Live) Left() bool {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.left
}

// Deliver takes events that the journal has kept. Where some are missing before them, another
// program has kept those: they are fetched.
func (l *Live) Deliver(ctx context.Context, events []Event) error {
	if len(events) > 0 && events[0].Seq > l.last()+1 {
		return l.catchUp(ctx)
	}
	l.mu.Lock()
	defer l.mu.Unlock()
	l.apply(events)
	return l.broken
}

// Hold says that someone looks at the room until release is called, if nothing happens in it too.
func (l *Live) Hold() (release func()) {
	l.hold(1)
	return sync.OnceFunc(func() { l.hold(-1) })
}

func (l *Live) hold(n int) {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.holders += n
}

// held reports whether someone looks at the room.
func (l *Live) held() bool {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.holders > 0
}

// See calls look with the room as it is, which no one changes meanwhile. look keeps nothing of
// it.
func (l *Live) See(look func(*Room)) {
	l.mu.Lock()
	defer l.mu.Unlock()
	look(l.room)
}

// Changed is closed when the room has changed since the event seq, or at once if it has
// already, or is the room no longer.
func (l *Live) Changed(seq int64) <-chan struct{} {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.room.Seq > seq || l.left {
		now := make(chan struct{})
		close(now)
		return now
	}
	return l.changed
}

// Do keeps what someone does. It returns when the event is on disk and the room has it.
func (l *Live) Do(ctx context.Context, e Event) error {
	l.mu.Lock()
	err := l.broken
	l.mu.Unlock()
	if err != nil {
		return err
	}
	e.At = l.clock().Truncate(time.Millisecond).UTC()
	if e.Key == "" {
		e.Key = rand.Text()
	}
	e, err = l.journal.Append(ctx, l.room.Head.Code, e)
	if err == nil && l.lacks(e.Seq) { // another program has kept it, and was cut off before it said so
		err = l.catchUp(ctx)
	}
	return err
}

// Rehearse begins a bench round in the room, after it could be made.
func (l *Live) Rehearse(ctx context.Context, e Event) error {
	if _, err := NewRound(e.Text, e.N); err != nil { // else the room would be broken by it
		return err
	}
	e.Kind = Benched
	return l.Do(ctx, e)
}

// Ask adds a set of questions to the room, after it could be made.
func (l *Live) Ask(ctx context.Context, blueprint string, way Way) error {
	var makes Maker
	var ids []string
	l.See(func(r *Room) { makes, ids = r.makes, r.Head.ids() })
	if _, err := makes(blueprint, ids); err != nil { // else the room would be broken by it
		return err
	}
	return l.Do(ctx, Event{Kind: Asked, Text: blueprint, Name: string(way)})
}
