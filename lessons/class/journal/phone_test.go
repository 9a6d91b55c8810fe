package journal_test

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"net"
	"net/http"
	"net/http/cookiejar"
	"net/url"
	"runtime"
	"strings"
	"sync"
	"sync/atomic"
	"time"
)

// lines are those that a program has said.
type lines struct {
	mu sync.Mutex
	b  strings.Builder
}

func (l *lines) Write(b []byte) (int, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.b.Write(b)
}

func (l *lines) all() []string {
	l.mu.Lock()
	defer l.mu.Unlock()
	return strings.FieldsFunc(l.b.String(), func(r rune) bool { return r == '\n' })
}

// phone is one in the load test. It does what the script of a room's page does.
type phone struct {
	l      *loaded
	client *http.Client
	code   string
	i      int
	node   atomic.Int64 // that it speaks to; another when that does not answer
}

// base is where it speaks to now.
func (p *phone) base() string { return p.l.nodes[p.node.Load()%int64(len(p.l.nodes))].base }

// errCut is what a phone sees of a connection that was cut.
var errCut = errors.New("the connection was cut")

// cutting is a way to the server that is cut now and then, after the answer has arrived there and
// before its acknowledgement comes back.
type cutting struct {
	to *http.Transport
	l  *loaded
}

func (c cutting) RoundTrip(r *http.Request) (*http.Response, error) {
	answer, err := c.to.RoundTrip(r)
	if err == nil && r.Method == http.MethodPost && strings.HasSuffix(r.URL.Path, "/answer") && c.l.cuts.Add(-1) >= 0 {
		answer.Body.Close()
		return nil, errCut
	}
	return answer, err
}

// from is where a phone calls from. Each has an address of its own, as in a real network, where
// this computer has so many.
func from(phone int64) *net.Dialer {
	if runtime.GOOS != "linux" {
		return &net.Dialer{}
	}
	return &net.Dialer{LocalAddr: &net.TCPAddr{IP: net.IPv4(127, 1, byte(phone>>8), byte(phone))}}
}

// join lets one phone in, and opens its stream.
func (l *loaded) join(ctx context.Context, code string, i int) *phone {
	jar, err := cookiejar.New(nil)
	if err != nil {
		l.t.Fatal(err)
	}
	p := &phone{l: l, code: code, i: i}
	p.client = &http.Client{Jar: jar, Transport: cutting{&http.Transport{MaxIdleConnsPerHost: 2, DialContext: from(l.phones.Add(1)).DialContext}, l}}
	p.node.Store(int64(i))
	r, err := p.client.PostForm(p.base()+"/r/"+code+"/join", url.Values{"name": {fmt.Sprint("Person ", i)}})
	if err != nil {
		l.t.Error(err)
		return p
	}
	page, _ := io.ReadAll(r.Body) // it is looked at next
	r.Body.Close()
	if r.StatusCode != http.StatusOK || !strings.Contains(string(page), "compound") {
		l.t.Errorf("%s, person %d is not let in: %d %.300s", code, i, r.StatusCode, page)
	}
	go func() {
		for ctx.Err() == nil {
			read(ctx, p.client, p.base()+"/r/"+code+"/events", func(string) {})
			time.Sleep(time.Second)
		}
	}()
	return p
}

// read calls do with each line of a stream until that ends.
func read(ctx context.Context, client *http.Client, url string, do func(string)) {
	r, err := http.NewRequestWithContext(ctx, http.MethodGet, url, nil)
	if err != nil {
		return
	}
	answer, err := client.Do(r)
	if err != nil {
		return
	}
	defer answer.Body.Close()
	for lines := bufio.NewScanner(answer.Body); lines.Scan(); {
		do(lines.Text())
	}
}

// sent is how an answer was taken.
type sent struct {
	key         string
	to          *node     // that acknowledged it
	first, last time.Time // when it was sent, and sent last
	took        time.Time // when it was acknowledged
	tries       int
}

// answer sends an answer until it is acknowledged: at once after a cut, with growing waits, and to
// another node, when none is there.
func (p *phone) answer(key string) sent {
	form := url.Values{"set": {"0"}, "place": {"0"}, "answer": {"0.05"}, "key": {key}}
	s := sent{key: key, first: time.Now()}
	for wait := 500 * time.Millisecond; s.tries < 1000; {
		s.tries++
		n := p.node.Load()
		s.to = p.l.nodes[n%int64(len(p.l.nodes))]
		s.last = time.Now()
		status, err := p.post(s.to.base, form)
		s.took = time.Now()
		switch {
		case status == http.StatusOK:
			return s
		case errors.Is(err, errCut):
			continue
		case err != nil:
			p.node.CompareAndSwap(n, n+1)
		case status != http.StatusTooManyRequests && status != http.StatusServiceUnavailable:
			p.l.t.Error(p.code, key, status)
			return s
		}
		time.Sleep(wait/2 + rand.N(wait/2))
		wait = min(2*wait, 30*time.Second)
	}
	p.l.t.Error(p.code, key, "is never taken")
	return s
}

func (p *phone) post(base string, form url.Values) (status int, err error) {
	r, err := http.NewRequest(http.MethodPost, base+"/r/"+p.code+"/answer", strings.NewReader(form.Encode()))
	if err != nil {
		return 0, err
	}
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	r.Header.Set("Accept", "application/json")
	ctx, cancel := context.WithTimeout(context.Background(), 4*time.Second)
	defer cancel()
	answer, err := p.client.Do(r.WithContext(ctx))
	if err != nil {
		return 0, err
	}
	defer answer.Body.Close()
	_, err = io.Copy(io.Discard, answer.Body)
	return answer.StatusCode, err
}
