package served

import (
	"net"
	"net/http"
	"net/netip"
	"strings"
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
	wrong   *limiters // room codes, by address
	joins   *limiters // by address
	looks   *limiters // by address
	posts   *limiters // by device
	fetches *limiters // by device
	behind  bool      // a proxy, which tells where a request comes from
}

func newLimits(behind bool) limits {
	return limits{
		wrong: newLimiters(wrongPerSecond, wrongAtOnce), joins: newLimiters(joinsPerSecond, joinsAtOnce), looks: newLimiters(looksPerSecond, looksAtOnce),
		posts: newLimiters(postsPerSecond, postsAtOnce), fetches: newLimiters(fetchesPerSecond, fetchesAtOnce), behind: behind,
	}
}

// limiters are one for each address or device, all alike.
type limiters struct {
	each   rate.Limit
	atOnce int

	mu sync.Mutex
	of map[string]*rate.Limiter
}

func newLimiters(each rate.Limit, atOnce int) *limiters {
	return &limiters{each: each, atOnce: atOnce, of: map[string]*rate.Limiter{}}
}

// one is the limiter of one of many. Where there are too many, all begin anew: that lets a few
// more through than it should.
func (l *limiters) one(who string) *rate.Limiter {
	l.mu.Lock()
	defer l.mu.Unlock()
	one := l.of[who]
	if one == nil {
		if len(l.of) >= mostKnown {
			clear(l.of)
		}
		one = rate.NewLimiter(l.each, l.atOnce)
		l.of[who] = one
	}
	return one
}

// mayGuess reports whether an address may try another room code.
func (l limits) mayGuess(r *http.Request) bool {
	return l.wrong.one(l.address(r)).TokensAt(time.Now()) >= 1
}

// guessed counts a wrong room code.
func (l limits) guessed(r *http.Request) { l.wrong.one(l.address(r)).Allow() }

// mayPost reports whether a device may send something now.
func (l limits) mayPost(device string) bool { return l.posts.one(device).Allow() }

// mayFetch reports whether a device may fetch something now.
func (l limits) mayFetch(device string) bool { return l.fetches.one(device).Allow() }

// mayJoin reports whether an address may ask for a name now.
func (l limits) mayJoin(r *http.Request) bool { return l.joins.one(l.address(r)).Allow() }

// mayLook reports whether an address that has tried too many codes may show now that it has a
// name in a room.
func (l limits) mayLook(r *http.Request) bool { return l.looks.one(l.address(r)).Allow() }

// address is where a request comes from. Behind a proxy of ours that is what it has added last: what
// stands before that may be made up.
func (l limits) address(r *http.Request) string {
	if l.behind {
		all := strings.Split(strings.Join(r.Header.Values("X-Forwarded-For"), ","), ",")
		if last := strings.TrimSpace(all[len(all)-1]); last != "" {
			return network(last)
		}
	}
	return network(r.RemoteAddr)
}

// oneNetwork is how many bits of an address of IPv6 are those of a network. Whoever has one has all of
// its addresses: told apart by them, they could try codes for ever.
const oneNetwork = 64

// network is what an address is told apart by, whether a port stands behind it or not.
func network(address string) string {
	host, _, err := net.SplitHostPort(address)
	if err != nil {
		host = strings.Trim(address, "[]")
	}
	ip, err := netip.ParseAddr(host)
	if err != nil {
		return host
	}
	if ip = ip.Unmap().WithZone(""); ip.Is4() {
		return ip.String()
	}
	of, _ := ip.Prefix(oneNetwork) // an address of IPv6 has as many bits
	return of.String()
}
