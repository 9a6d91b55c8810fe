package served_test

import (
	"net/http"
	"net/http/httptest"
	"strconv"
	"strings"
	"testing"
	"time"

	"scratchpass/content"
	"scratchpass/lessons/class"
	"scratchpass/lessons/class/served"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/internal/scripted"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/machine"
)

// Who tries many codes is slowed down by where they come from: by a whole network of IPv6, of which one
// computer has all addresses, and by what a proxy of ours says, with or without a port; not by what a
// browser says. Others are not slowed down.
func TestWhoTriesManyCodes(t *testing.T) {
	session, err := sitting.NewSession(&scripted.Face{}, content.Shipped(), machine.Imperial, machine.InchLathe, nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range []struct {
		name   string
		behind bool
		remote string // address and port; # is another each time
		said   string // by a proxy, or who says to be one
		other  string // is another, that is not slowed down
	}{
		{"one address", false, "192.0.2.7:#", "", "192.0.2.8:1"},
		{"one that says to be others", false, "192.0.2.7:1", "10.0.0.#", "192.0.2.8:1"},
		{"a network of IPv6", false, "[2001:db8:0:7::#]:1", "", "[2001:db8:0:8::1]:1"},
		{"a link", false, "[fe80::7%eth0]:#", "", "192.0.2.7:1"},
		{"behind a proxy", true, "127.0.0.1:1", "10.0.0.#, 192.0.2.7", "192.0.2.8"},
		{"behind one that tells ports", true, "127.0.0.1:1", "192.0.2.7:#", "192.0.2.8:1"},
		{"IPv6 behind a proxy", true, "127.0.0.1:1", "2001:db8:0:7::#", "2001:db8:0:8::1"},
		{"IPv6 behind one that tells ports", true, "127.0.0.1:1", "[2001:db8:0:7::#]:443", "[2001:db8:0:8::1]:443"},
	} {
		t.Run(row.name, func(t *testing.T) {
			j, err := inFile(t).Open(t.Context())
			if err != nil {
				t.Fatal(err)
			}
			defer j.Close()
			hall := class.NewHall(j, nil, time.Now, func(err error) { t.Error(err) })
			server := served.New(hall, served.Options{Hosts: []string{"here"}, Words: web.WordsOf(session.Say), Session: session, Clock: time.Now, Behind: row.behind})
			defer server.Stop()
			ask := func(remote, said string) int {
				r := httptest.NewRequest(http.MethodGet, "http://here/r/ACDEFH", nil)
				r.RemoteAddr = remote
				if said != "" {
					r.Header.Set("X-Forwarded-For", said)
				}
				w := httptest.NewRecorder()
				server.Handler().ServeHTTP(w, r)
				return w.Code
			}
			slowed := 0
			for i := range 20 {
				each := strings.NewReplacer("#", strconv.Itoa(i+1))
				if ask(each.Replace(row.remote), each.Replace(row.said)) == http.StatusTooManyRequests {
					slowed++
				}
			}
			remote, said := row.other, ""
			if row.behind {
				remote, said = row.remote, row.other
			}
			if status := ask(remote, said); slowed < 9 || status != http.StatusNotFound {
				t.Errorf("%d of 20 were slowed down, and another: %d", slowed, status)
			}
		})
	}
}
