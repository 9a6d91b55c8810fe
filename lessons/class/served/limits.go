package served

import (
	"net"
	"net/http"
	"sync"
	"time"

	"golang.org/x/time/rate"
)

// The rates at which requests are let through. A room code is one of 190 million: at one wrong
// one in five seconds an address tries 720 in an hour. A person answers a few times a minute; a
// phone that sends again what was not acknowledged, a few times a second.
const (
	wrongPerSecond, wrongAtOnce     = 0.2, 10 // from one address
	postsPerSecond, postsAtOnce     = 2, 30   // from one device
	fetchesPerSecond, fetchesAtOnce = 10, 60
	joinsPerSecond, joinsAtOnce     = 0.5, 60 // from one address: a class may come in through one
	looksPerSecond, looksAtOnce     = 50, 100 // from one address that has guessed too much
	mostKnown                       = 20_000  // addresses and devices that are told apart
	streamsOfOne                    = 6       // of one device
)

// limits slows down who sends too much, and nobody else.
type limits struct {
	mu      sync.Mutex
	wrong   map[string]*rate.Limiter // by address
	posts   map[string]*rate.Limiter // by device
	fetches map[string]*rate.Limiter
	joins   map[string]*rate.Limiter // by address
	looks   map[string]*rate.Limiter
}

func newLimits() limits {
	return limits{wrong: map[string]*rate.Limiter{},
		posts: map[string]*rate.Limiter{}, fetches: map[string]*rate.Limiter{}, joins: map[string]*rate.Limiter{}, looks: map[string]*rate.Limiter{}}
}

// of is the limiter of one of many. Where there are too many, all begin anew: that lets a few
// more through than it should.
func of(m map[string]*rate.Limiter, who string, each rate.Limit, atOnce int) *rate.Limiter {
	l := m[who]
	if l == nil {
		if len(m) >= mostKnown {
			clear(m)
		}
		l = rate.NewLimiter(each, atOnce)
		m[who] = l
	}
	return l
}

// mayGuess reports whether an address may try another room code.
func (l *limits) mayGuess(r *http.Request) bool {
	l.mu.Lock()
	defer l.mu.Unlock()
	return of(l.wrong, address(r), wrongPerSecond, wrongAtOnce).TokensAt(time.Now()) >= 1
}

// guessed counts a wrong room code.
func (l *limits) guessed(r *http.Request) {
	l.mu.Lock()
	defer l.mu.Unlock()
	of(l.wrong, address(r), wrongPerSecond, wrongAtOnce).Allow()
}

// mayPost reports whether a device may send something now.
func (l *limits) mayPost(device string) bool {
	l.mu.Lock()
	defer l.mu.Unlock()
	return of(l.posts, device, postsPerSecond, postsAtOnce).Allow()
}

// mayFetch reports whether a device may fetch something now.
func (l *limits) mayFetch(device string) bool {
	l.mu.Lock()
	defer l.mu.Unlock()
	return of(l.fetches, device, fetchesPerSecond, fetchesAtOnce).Allow()
}

// mayJoin reports whether an address may ask for a name now.
func (l *limits) mayJoin(r *http.Request) bool {
	l.mu.Lock()
	defer l.mu.Unlock()
	return of(l.joins, address(r), joinsPerSecond, joinsAtOnce).Allow()
}

// mayLook reports whether an address that has tried too many codes may show now that it has a
// name in a room.
func (l *limits) mayLook(r *http.Request) bool {
	l.mu.Lock()
	defer l.mu.Unlock()
	return of(l.looks, address(r), looksPerSecond, looksAtOnce).Allow()
}

func address(r *http.Request) string {
	host, _, err := net.SplitHostPort(r.RemoteAddr)
	if err != nil {
		return r.RemoteAddr
	}
	return host
}
