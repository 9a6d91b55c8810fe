package postgrestest

import (
	"bytes"
	"net"
	"net/url"
	"sync"
	"testing"
)

// Proxy is a way to a server that can be cut and mended.
type Proxy struct {
	Address string // of the same schema, by this way

	to string
	l  net.Listener

	mu     sync.Mutex
	away   bool
	losing int // so many acknowledgements of commits are still to be lost
	open   map[net.Conn]bool
}

// Through is a way to the server of an address.
func Through(t testing.TB, address string) *Proxy {
	t.Helper()
	u, err := url.Parse(address)
	if err != nil {
		t.Fatal(err)
	}
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	p := &Proxy{to: u.Host, l: l, open: map[net.Conn]bool{}}
	u.Host = l.Addr().String()
	p.Address = u.String()
	go p.serve()
	t.Cleanup(func() { _ = l.Close(); p.Cut() })
	return p
}

func (p *Proxy) serve() {
	for {
		from, err := p.l.Accept()
		if err != nil {
			return
		}
		to, err := net.Dial("tcp", p.to)
		if err != nil || !p.enter(from, to) {
			_ = from.Close()
			if to != nil {
				_ = to.Close()
			}
			continue
		}
		lost := &lost{p: p}
		go p.carry(to, from, lost.asks)
		go p.carry(from, to, lost.answers)
	}
}

// enter notes the ends of a connection; ok is false where the way is cut.
func (p *Proxy) enter(ends ...net.Conn) (ok bool) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.away {
		return false
	}
	for _, c := range ends {
		p.open[c] = true
	}
	return true
}

// carry carries what comes from one end to the other, while pass lets it.
func (p *Proxy) carry(to, from net.Conn, pass func([]byte) bool) {
	defer func() {
		_, _ = to.Close(), from.Close()
		p.mu.Lock()
		defer p.mu.Unlock()
		delete(p.open, to)
		delete(p.open, from)
	}()
	b := make([]byte, 64<<10)
	for {
		n, err := from.Read(b)
		if n > 0 && !pass(b[:n]) {
			return
		}
		if _, wrong := to.Write(b[:n]); err != nil || wrong != nil {
			return
		}
	}
}

// lost loses the acknowledgement of a commit, and the connection with it.
type lost struct {
	p     *Proxy
	mu    sync.Mutex
	loses bool
}

// asks looks at what the server is asked. Source: PostgreSQL, frontend/backend protocol: a simple
// query is the letter Q, a length and the text.
func (l *lost) asks(b []byte) bool {
	if !bytes.Contains(b, []byte("commit\x00")) {
		return true
	}
	l.p.mu.Lock()
	defer l.p.mu.Unlock()
	if l.p.losing > 0 {
		l.p.losing--
		l.mu.Lock()
		defer l.mu.Unlock()
		l.loses = true
	}
	return true
}

// answers lets answers pass until one is to be lost.
func (l *lost) answers([]byte) bool {
	l.mu.Lock()
	defer l.mu.Unlock()
	return !l.loses
}

// Cut cuts all connections, and lets no new ones through.
func (p *Proxy) Cut() {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.away = true
	for c := range p.open {
		_ = c.Close()
	}
}

// Mend lets connections through again.
func (p *Proxy) Mend() {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.away = false
}

// LoseCommits lets the server commit n times without its acknowledgement arriving.
func (p *Proxy) LoseCommits(n int) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.losing = n
}
