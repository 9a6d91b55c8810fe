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
}

// Open opens a room that the journal has, with what happened in it before.
func Open(ctx context.Context, j Journal, h Head, makes Maker, clock func() time.Time) (*Live, error) {
	l := &Live{journal: j, clock: clock, room: NewRoom(h, makes), changed: make(chan struct{})}
	if err := l.catchUp(ctx); err != nil {
		return nil, err
	}
	return l, nil
}

// catchUp applies what the journal has and the room has not.
func (l *Live) catchUp(ctx context.Context) error {
	events, err := l.journal.After(ctx, l.room.Head.Code, l.room.Seq)
	if err != nil {
		return err
	}
	l.apply(events)
	return l.broken
}

// apply goes on with events; the lock is held, or nobody else has the room yet.
func (l *Live) apply(events []Event) {
	for _, e := range events {
		if l.broken != nil || e.Seq <= l.room.Seq {
			continue
		}
		if err := l.room.Apply(e); err != nil {
			l.broken = fmt.Errorf("room %s can't go on: %w", l.room.Head.Code, err)
		}
	}
	close(l.changed)
	l.changed = make(chan struct{})
}

// Deliver takes events that the journal has kept. Where some are missing before them, another
// program has kept those: they are fetched.
func (l *Live) Deliver(ctx context.Context, events []Event) error {
	l.mu.Lock()
	defer l.mu.Unlock()
	if len(events) > 0 && events[0].Seq > l.room.Seq+1 {
		return l.catchUp(ctx)
	}
	l.apply(events)
	return l.broken
}

// See calls look with the room as it is, which no one changes meanwhile. look keeps nothing of
// it.
func (l *Live) See(look func(*Room)) {
	l.mu.Lock()
	defer l.mu.Unlock()
	look(l.room)
}

// Changed is closed when the room has changed since the event seq, or at once if it has
// already.
func (l *Live) Changed(seq int64) <-chan struct{} {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.room.Seq > seq {
		now := make(chan struct{})
		close(now)
		return now
	}
	return l.changed
}

// Do keeps what someone does. It returns when the event is on disk and the room has it.
func (l *Live) Do(ctx context.Context, e Event) error {
	l.mu.Lock()
	err, code := l.broken, l.room.Head.Code
	l.mu.Unlock()
	if err != nil {
		return err
	}
	e.At = l.clock().Truncate(time.Millisecond).UTC()
	if e.Key == "" {
		e.Key = rand.Text()
	}
	_, err = l.journal.Append(ctx, code, e)
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
