package class_test

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"scratchpass/lessons/class"
	"scratchpass/quiz/problem"
)

// memory is a journal of rooms without events, or with any, that counts what it is asked.
type memory struct {
	class.Shared // whatever a test does not need is not there

	mu     sync.Mutex
	events map[string][]class.Event
	draws  int

	heads, afters, lasts atomic.Int64
	gate                 chan struct{} // each Head waits for one; nil lets all through
}

func (m *memory) Follow(func(string, []class.Event)) {}

func (m *memory) Head(_ context.Context, room string) (class.Head, error) {
	m.heads.Add(1)
	if m.gate != nil {
		<-m.gate
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	if _, there := m.events[room]; !there {
		return class.Head{}, class.ErrNoRoom
	}
	return class.Head{Code: room, Draws: m.draws}, nil
}

func (m *memory) After(_ context.Context, room string, seq int64) ([]class.Event, error) {
	m.afters.Add(1)
	m.mu.Lock()
	defer m.mu.Unlock()
	return m.events[room][seq:], nil
}

func (m *memory) Last(_ context.Context, rooms []string) (map[string]int64, error) {
	m.lasts.Add(1)
	m.mu.Lock()
	defer m.mu.Unlock()
	last := map[string]int64{}
	for _, room := range rooms {
		if events, there := m.events[room]; there {
			last[room] = int64(len(events))
		}
	}
	return last, nil
}

// pause lets something happen in a room, elsewhere.
func (m *memory) pause(room string) {
	m.mu.Lock()
	defer m.mu.Unlock()
	m.events[room] = append(m.events[room], class.Event{Seq: int64(len(m.events[room]) + 1), Kind: class.Paused})
}

// hallOf is a hall on a memory of so many rooms, with its clock.
func hallOf(t *testing.T, n int) (h *class.Hall, m *memory, now *atomic.Int64) {
	t.Helper()
	m, now = &memory{events: map[string][]class.Event{}, draws: problem.Draws}, &atomic.Int64{}
	for i := range n {
		m.events[fmt.Sprint("R", i)] = nil
	}
	clock := func() time.Time { return begin.Add(time.Duration(now.Load())) }
	return class.NewHall(m, func(class.Head) class.Maker { return makes() }, clock, func(err error) { t.Error(err) }), m, now
}

func enter(t *testing.T, h *class.Hall, code string) *class.Live {
	t.Helper()
	l, err := h.Room(t.Context(), code)
	if err != nil {
		t.Fatal(code, err)
	}
	return l
}

// Many who come at once wait for one reading of the room; who has gone meanwhile is let go, and a
// room that is open waits for none that is being opened.
func TestARoomIsReadOnce(t *testing.T) {
	h, m, _ := hallOf(t, 2)
	enter(t, h, "R1")
	m.gate = make(chan struct{})
	var all sync.WaitGroup
	for range 50 {
		all.Go(func() {
			if _, err := h.Room(context.Background(), "R0"); err != nil {
				t.Error(err)
			}
		})
	}
	gone, cancel := context.WithCancel(t.Context())
	cancel()
	if _, err := h.Room(gone, "R0"); !errors.Is(err, context.Canceled) {
		t.Error("who has gone waits: ", err)
	}
	enter(t, h, "R1")
	m.gate <- struct{}{}
	all.Wait()
	if m.heads.Load() != 2 || m.afters.Load() != 2 {
		t.Error(m.heads.Load(), " heads and ", m.afters.Load(), " lists of events were read for two rooms")
	}
}

// What could not be opened is tried again by who asks next.
func TestARoomThatComesLater(t *testing.T) {
	h, m, _ := hallOf(t, 0)
	if _, err := h.Room(t.Context(), "R0"); !errors.Is(err, class.ErrNoRoom) {
		t.Error(err)
	}
	m.pause("R0")
	enter(t, h, "R0")
	m.draws++
	m.pause("R1")
	if _, err := h.Room(t.Context(), "R1"); err == nil || errors.Is(err, class.ErrNoRoom) {
		t.Error("a room with other numbers is opened: ", err)
	}
}

// A room that nobody has looked at for an hour is closed, and read again when it is asked for; one
// that someone has a page of is not.
func TestUnusedRoomsAreClosed(t *testing.T) {
	h, m, now := hallOf(t, 4)
	dropped, held, asked := enter(t, h, "R0"), enter(t, h, "R1"), enter(t, h, "R2")
	release := held.Hold()
	now.Add(int64(40 * time.Minute))
	enter(t, h, "R2")
	now.Add(int64(40 * time.Minute))
	enter(t, h, "R3")
	if enter(t, h, "R0") == dropped || enter(t, h, "R1") != held || enter(t, h, "R2") != asked {
		t.Error("another room was closed than the one that nobody looked at")
	}
	release()
	release() // once is enough
	now.Add(int64(2 * time.Hour))
	if err := h.Look(t.Context(), m); err != nil {
		t.Fatal(err)
	}
	if enter(t, h, "R1") == held || enter(t, h, "R2") == asked {
		t.Error("rooms that nobody looks at were not closed")
	}
}

// However many rooms are open, to look at all of them is one question, and one for each that has
// something new.
func TestALookIsOneQuestion(t *testing.T) {
	h, m, _ := hallOf(t, 30)
	for i := range 30 {
		enter(t, h, fmt.Sprint("R", i))
	}
	m.pause("R7")
	m.pause("R9")
	m.afters.Store(0)
	if err := h.Look(t.Context(), m); err != nil {
		t.Fatal(err)
	}
	if m.lasts.Load() != 1 || m.afters.Load() != 2 {
		t.Error(m.lasts.Load(), m.afters.Load())
	}
	enter(t, h, "R7").See(func(r *class.Room) {
		if !r.Paused || r.Seq != 1 {
			t.Error("what happened elsewhere is not here")
		}
	})
}

// A room whose journal has less than it had come to, as after an older copy was put in its place, is
// read anew, and that is told once; who has a page of it is told that it is the room no longer.
func TestAJournalThatWentBack(t *testing.T) {
	m := &memory{events: map[string][]class.Event{"R0": nil, "R1": nil}, draws: problem.Draws}
	h := class.NewHall(m, func(class.Head) class.Maker { return makes() }, time.Now, func(err error) { t.Error(err) })
	for range 3 {
		m.pause("R0")
		m.pause("R1")
	}
	back, stays := enter(t, h, "R0"), enter(t, h, "R1")
	changed := back.Changed(3)
	m.events["R0"] = m.events["R0"][:2]
	if err := h.Look(t.Context(), m); err == nil || !strings.Contains(err.Error(), "room R0 had come to event 3, and its journal has 2") {
		t.Error(err)
	}
	<-changed
	<-back.Changed(3)
	if !back.Left() || stays.Left() || enter(t, h, "R1") != stays {
		t.Error("another room was closed than the one that went back")
	}
	enter(t, h, "R0").See(func(r *class.Room) {
		if r.Seq != 2 {
			t.Error("it goes on from event ", r.Seq)
		}
	})
	if err := h.Look(t.Context(), m); err != nil {
		t.Error("told twice: ", err)
	}
}
