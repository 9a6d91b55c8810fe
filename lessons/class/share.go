package class

import (
	"context"
	"errors"
	"fmt"
	"maps"
	"sync"
	"time"
)

// Several programs may have one room open. What one of them keeps, the others read: soon, because
// they are told that there is something, and in any case at the next look at all rooms.

// Share reads what others keep in the rooms that are open, until the context ends. All of them are
// looked at whenever look says so.
func (h *Hall) Share(ctx context.Context, j Shared, look <-chan time.Time) {
	news := &news{rooms: map[string]int64{}, some: make(chan struct{}, 1)}
	var hearing sync.WaitGroup
	defer hearing.Wait()
	hearing.Go(func() { j.Hear(ctx, news.of, news.ofAny) })
	for {
		select {
		case <-ctx.Done():
			return
		case <-look:
			h.failed(h.Look(ctx, j))
		case <-news.some:
			rooms, any := news.take()
			if any {
				h.failed(h.Look(ctx, j))
			}
			for code, seq := range rooms {
				h.failed(h.reach(ctx, code, seq))
			}
		}
	}
}

// looks is how often rooms are looked at that other programs may have kept something in.
const looks = 2 * time.Second

// Sharing reads what others keep in the rooms that are open, where the journal has others, until
// leave is called. It is called before anything is kept.
func (h *Hall) Sharing(ctx context.Context, j Journal) (leave func()) {
	shared, ok := j.(Shared)
	if !ok {
		return func() {}
	}
	h.Notices(shared)
	ctx, cancel := context.WithCancel(context.WithoutCancel(ctx)) // while the last pages are served, too
	var sharing sync.WaitGroup
	sharing.Go(func() { h.Share(ctx, shared, time.Tick(looks)) })
	return func() { cancel(); sharing.Wait() }
}

// Notices tells whoever has a page open when the journal goes out of reach and when it is back. It
// is called before anything is kept.
func (h *Hall) Notices(j Shared) {
	j.Notice(func(why error) {
		h.away.Store(why != nil)
		h.mu.Lock()
		open := maps.Clone(h.rooms)
		h.mu.Unlock()
		for code := range open {
			if l := h.live(code); l != nil {
				l.look()
			}
		}
		if why == nil {
			why = errBack
		}
		h.fail(why)
	})
}

// Away reports whether the journal is out of reach.
func (h *Hall) Away() bool { return h.away.Load() }

// Look reads what was kept in all rooms that are open, and closes those that are not there any
// more, that nobody looks at, or whose journal went back: what was restored after a server was lost
// has not all that the room had come to. However many are open: to know which have something new is
// one question.
func (h *Hall) Look(ctx context.Context, j Shared) error {
	open, had := map[string]*opened{}, map[string]int64{}
	h.mu.Lock()
	h.sweep()
	maps.Copy(open, h.rooms)
	codes := make([]string, 0, len(open))
	for code, o := range open {
		codes = append(codes, code)
		if o.live != nil {
			had[code] = o.live.last()
		}
	}
	h.mu.Unlock()
	last, err := j.Last(ctx, codes)
	if err != nil {
		return err
	}
	for code, o := range open {
		seq, there := last[code]
		switch {
		case !there:
			h.leave(code, o)
		case seq < had[code]:
			h.leave(code, o)
			err = errors.Join(err, fmt.Errorf("room %s had come to event %d, and its journal has %d: an older one was put in its place, from which it goes on", code, had[code], seq))
		default:
			err = errors.Join(err, h.reach(ctx, code, seq)) // one room that can't go on keeps no other back
		}
	}
	return err
}

// leave closes a room that is no longer what its journal has. Whoever looks at it has to ask for it
// anew.
func (h *Hall) leave(code string, o *opened) {
	h.mu.Lock()
	h.drop(code, o)
	l := o.live
	h.mu.Unlock()
	if l != nil {
		l.leave()
	}
}

// reach reads on in a room that is open, if it has not the event seq.
func (h *Hall) reach(ctx context.Context, code string, seq int64) error {
	l := h.live(code)
	if l == nil || !l.lacks(seq) {
		return nil
	}
	return l.catchUp(ctx)
}

// news are the rooms in which others have kept something since they were last taken.
type news struct {
	some chan struct{} // has something when there are any

	mu    sync.Mutex
	rooms map[string]int64
	any   bool // in which is not known
}

// of notes that an event was kept in a room.
func (n *news) of(room string, seq int64) {
	n.mu.Lock()
	defer n.mu.Unlock()
	n.rooms[room] = max(n.rooms[room], seq)
	n.wake()
}

// ofAny notes that events may have been kept in any room.
func (n *news) ofAny() {
	n.mu.Lock()
	defer n.mu.Unlock()
	n.any = true
	n.wake()
}

func (n *news) wake() {
	select {
	case n.some <- struct{}{}:
	default: // it has not been taken yet
	}
}

func (n *news) take() (rooms map[string]int64, any bool) {
	n.mu.Lock()
	defer n.mu.Unlock()
	rooms, any = n.rooms, n.any
	n.rooms, n.any = map[string]int64{}, false
	return rooms, any
}
