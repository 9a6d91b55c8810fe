package served

import (
	"sync"
	"time"
)

// presence knows which devices have a page open. It is not kept: after a restart they come
// back by themselves.
type presence struct {
	mu   *sync.Mutex
	open map[string]int       // streams of each device
	last map[string]time.Time // when it was heard of last
}

func newPresence() presence {
	return presence{&sync.Mutex{}, map[string]int{}, map[string]time.Time{}}
}

// heard notes that a device sent something.
func (p presence) heard(device string, now time.Time) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.last[device] = now
}

// enter counts a stream of a device; ok is false where it has too many.
func (p presence) enter(device string, now time.Time) (ok bool) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.open[device] >= streamsOfOne {
		return false
	}
	p.open[device]++
	p.last[device] = now
	return true
}

func (p presence) exit(device string, now time.Time) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.open[device]--; p.open[device] <= 0 {
		delete(p.open, device)
	}
	p.last[device] = now
}

// seen is when a device was heard of last since the program started, and whether it has a page
// open now.
func (p presence) seen(device string) (at time.Time, open bool) {
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.last[device], p.open[device] > 0
}

// awayAfter is after how long without a page open, or a word from it, a device is away.
const awayAfter = 20 * time.Second

// Away reports whether a device has no page open, and was not heard of for a while.
func (p presence) away(device string, now time.Time) bool {
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.open[device] == 0 && now.Sub(p.last[device]) > awayAfter
}
