package served

import (
	"maps"
	"sync"
	"time"
)

// presence knows which devices have a page open. It is not kept: after a restart they come
// back by themselves. Other programs that serve the same rooms tell of theirs: see Here.
type presence struct {
	mu   *sync.Mutex
	open map[string]int       // streams of each device
	last map[string]time.Time // when it was heard of last

	there map[string]time.Time // when another program has told of it last
}

func newPresence() presence {
	return presence{&sync.Mutex{}, map[string]int{}, map[string]time.Time{}, map[string]time.Time{}}
}

// told notes that a device is at another program.
func (p presence) told(device string, now time.Time) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.there[device] = now
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
	at = p.last[device]
	if there := p.there[device]; there.After(at) {
		at = there
	}
	return at, p.open[device] > 0
}

// here are the devices that have a page open or were heard of a moment ago. Those that were not for
// long are forgotten.
func (p presence) here(now time.Time) (devices []string) {
	p.mu.Lock()
	defer p.mu.Unlock()
	for device, last := range p.last {
		switch since := now.Sub(last); {
		case p.open[device] > 0 || since <= awayAfter/2:
			devices = append(devices, device)
		case since > forgottenAfter:
			delete(p.last, device)
		}
	}
	maps.DeleteFunc(p.there, func(_ string, last time.Time) bool { return now.Sub(last) > forgottenAfter })
	return devices
}

// forgottenAfter is after how long a device is not remembered to have been here.
const forgottenAfter = 24 * time.Hour

// Here are the devices whose pages this program serves now, for other programs that serve the same
// rooms: else those would think that they are away.
func (s *Server) Here() []string { return s.presence.here(s.o.Clock()) }

// Heard notes that another program serves a device.
func (s *Server) Heard(device string) { s.presence.told(device, s.o.Clock()) }

// awayAfter is after how long without a page open, or a word from it, a device is away.
const awayAfter = 20 * time.Second

// Away reports whether a device has no page open, and was not heard of for a while.
func (p presence) away(device string, now time.Time) bool {
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.open[device] == 0 && now.Sub(p.last[device]) > awayAfter && now.Sub(p.there[device]) > awayAfter
}
