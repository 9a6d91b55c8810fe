package served

import (
	"sync"
	"time"
)

// noted is who has seen the keys of which room lately, as far as that was noted by this node: a page
// that is open fetches its parts anew every few seconds, and one note tells of all of them.
type noted struct {
	mu sync.Mutex
	at map[saw]time.Time // when they last saw them
}

// saw is someone, by their ID, and a room that they saw the keys of.
type saw struct{ who, room string }

// notedFor is how long after a look another one is the same.
const notedFor = time.Hour

// lately reports whether that someone looks is noted already; then it is that look which goes on.
func (n *noted) lately(one saw, now time.Time) bool {
	n.mu.Lock()
	defer n.mu.Unlock()
	at, ok := n.at[one]
	if ok = ok && now.Sub(at) < notedFor; ok {
		n.at[one] = now
	}
	return ok
}

// note takes it down, and forgets those who have not looked for a while.
func (n *noted) note(one saw, now time.Time) {
	n.mu.Lock()
	defer n.mu.Unlock()
	for other, at := range n.at {
		if now.Sub(at) >= notedFor {
			delete(n.at, other)
		}
	}
	n.at[one] = now
}
