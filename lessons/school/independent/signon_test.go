package main

import (
	"net/http"
	"net/url"
	"strings"
	"testing"
)

// Everyone signs on, and gets the part that their groups have there: with a public client and one
// that has a secret, wherever the provider tells names and groups.
func TestSignOn(t *testing.T) {
	for _, kind := range []struct {
		secret string
		tells  Telling
	}{{"", Asked}, {"", Mixed}, {"a client's secret / with + signs", AtOnce}, {"a client's secret / with + signs", Asked}} {
		t.Run(string(kind.tells)+map[bool]string{true: " public", false: " secret"}[kind.secret == ""], func(t *testing.T) {
			b := newBoth(t, kind.secret, kind.tells)
			for _, row := range []struct {
				user, name string
				has, not   []string
			}{
				{"ira", "Ira Stone", []string{`href="/people"`, `href="/audit"`}, []string{"/groups/", "/study"}},
				{"ina", "Ina Field", []string{`href="/audit"`}, []string{"/groups/", "/people", "/study"}},
				{"hal", "Hal Marsh", []string{`href="/groups/turning-1"`}, []string{"/people", "/audit"}},
				{"cato", "Cato Wood", []string{`href="/groups/turning-1"`}, []string{"/people", "/audit"}},
				{"ada", "Ada Brook", []string{`href="/study"`}, []string{"/groups/", "/people", "/audit"}},
				{"eve", "Eve Hill", []string{"no part here"}, []string{"/groups/", "/people", "/audit", "/study"}},
			} {
				at := b.browser().signOn("/home", row.user)
				if at.status != http.StatusOK || at.path != "/home" {
					t.Fatalf("%s: %d at %s: %s\n%s", row.user, at.status, at.path, at.page, b.failed())
				}
				for _, want := range append(row.has, "Hello, "+row.name) {
					if !strings.Contains(at.page, want) {
						t.Errorf("%s: no %q in %s", row.user, want, at.page)
					}
				}
				for _, no := range row.not {
					if strings.Contains(at.page, no) {
						t.Errorf("%s: %q in %s", row.user, no, at.page)
					}
				}
			}
			if f := b.failed(); f != "" {
				t.Error(f)
			}
		})
	}
}

// Who wants a page and has to sign on first comes to that page. Who signs off is signed off, and
// what the browser had does not sign them on again; that they came is in the audit.
func TestThereAndOff(t *testing.T) {
	b := newBoth(t, "", Mixed)
	cato := b.browser()
	if at := cato.signOn("/groups/turning-1", "cato"); at.status != http.StatusOK || at.path != "/groups/turning-1" {
		t.Fatal(at, b.failed())
	}
	_, had := cato.cookies()
	if at := cato.post(b.school+"/sign-off", nil); at.path != "/" {
		t.Error("signed off, they are at ", at.path)
	}
	cato.stop = "/auth?"
	if at := cato.get(b.school + "/sign-on"); !strings.Contains(at.to, "prompt=login") {
		t.Error("the sign-on may take who comes next for who has left: ", at.to)
	}
	cato.stop = ""
	if at := cato.signOn("/home", "ada"); !strings.Contains(at.page, "Hello, Ada Brook") {
		t.Error("who comes next at the browser: ", at.page, b.failed())
	}
	cato.stop = "/auth?"
	if at := cato.get(b.school + "/sign-on"); strings.Contains(at.to, "prompt") {
		t.Error("asked anew although nobody has signed off: ", at.to)
	}
	r, err := http.NewRequestWithContext(t.Context(), http.MethodGet, b.school+"/home", nil)
	if err != nil {
		t.Fatal(err)
	}
	r.AddCookie(&http.Cookie{Name: "school", Value: had["school"]})
	again := b.browser()
	again.stop = "/sign-on"
	if at := again.came(again.client.Do(r)); at.status != http.StatusSeeOther {
		t.Error("an old cookie lets someone in: ", at)
	}
	if at := b.browser().signOn("/audit", "ina"); !strings.Contains(at.page, "Cato Wood") || !strings.Contains(at.page, "signed on") {
		t.Error("not in the audit: ", at.page)
	}
	if at := b.browser().signOn("/audit", "cato"); at.status != http.StatusForbidden {
		t.Error("an instructor reads the audit: ", at.status)
	}
}

// Whatever was made up, taken from another or is late lets nobody in.
func TestRefused(t *testing.T) {
	b := newBoth(t, "", Mixed)
	with := func(address, name, value string) string {
		u, err := url.Parse(address)
		if err != nil {
			t.Fatal(err)
		}
		q := u.Query()
		q.Set(name, value)
		u.RawQuery = q.Encode()
		return u.String()
	}
	codeOf := func(address string) string {
		u, err := url.Parse(address)
		if err != nil {
			t.Fatal(err)
		}
		return u.Query().Get("code")
	}
	for _, row := range []struct {
		what string
		back func(r *browser) string // the address that the browser comes back by
		why  string                  // in the log
	}{
		{"another state", func(r *browser) string { return with(r.left("ada"), "state", "made-up") }, ""},
		{"no state", func(r *browser) string { return with(r.left("ada"), "state", "") }, ""},
		{"a code made up", func(r *browser) string { return with(r.left("ada"), "code", "made-up") }, "invalid_grant"},
		{"a code of another's", func(r *browser) string { return with(r.left("ada"), "code", codeOf(b.browser().left("ira"))) }, "invalid_grant"},
		{"an address of another's", func(r *browser) string { r.left("ada"); return b.browser().left("ira") }, ""},
		{"an address and nothing before", func(*browser) string { return b.browser().left("ada") }, "-"},
		{"they gave up", func(r *browser) string { return with(r.left("ada"), "error", "access_denied") }, "access_denied"},
		{"too late", func(r *browser) string { to := r.left("ada"); b.later.Store(16 * 60); return to }, ""},
		{"the nonce of another", func(r *browser) string {
			r.stop = "/auth?"
			to := r.get(b.school + "/sign-on").to // to the provider: someone changes it on the way
			r.stop = "/login/"
			form := r.get(with(to, "nonce", "made-up")).to
			r.stop = "/back?"
			defer func() { r.stop = "" }()
			_, id, _ := strings.Cut(form, "authRequestID=")
			return r.fill(id, "ada").to
		}, "of another sign-on"},
	} {
		t.Run(row.what, func(t *testing.T) {
			b.later.Store(0)
			before := len(b.fails)
			r := b.browser()
			to := row.back(r)
			at := r.get(to)
			if _, named := r.cookies(); at.status != http.StatusForbidden || len(named) > 0 {
				t.Error(at.status, at.path, named)
			}
			if row.why == "-" {
				return
			}
			if b.mu.Lock(); len(b.fails) == before || !strings.Contains(b.fails[len(b.fails)-1], row.why) {
				t.Errorf("the log has %q", b.fails[before:])
			}
			b.mu.Unlock()
		})
	}
}

// A way back is gone once: who finds it in a browser's history, with all that the browser had, gets
// nothing by it.
func TestReplayed(t *testing.T) {
	b := newBoth(t, "", Mixed)
	ada := b.browser()
	to := ada.left("ada")
	had, _ := ada.cookies()
	if at := ada.get(to); at.path != "/home" {
		t.Fatal(at)
	}
	thief := b.browser()
	u, err := url.Parse(b.school)
	if err != nil {
		t.Fatal(err)
	}
	thief.client.Jar.SetCookies(u, had)
	at := thief.get(to)
	if _, named := thief.cookies(); at.status != http.StatusForbidden || named["school"] != "" || !strings.Contains(b.failed(), "invalid_grant") {
		t.Error(at.status, named, b.failed())
	}
}

// That the provider is away is told, and not taken for a sign-on that went wrong.
func TestProviderAway(t *testing.T) {
	b := newBoth(t, "", Mixed)
	r := b.browser()
	to := r.left("ada")
	b.provider.Close()
	if at := r.get(to); at.status != http.StatusServiceUnavailable || !strings.Contains(at.page, "can&#39;t be reached") {
		t.Error(at.status, at.page)
	}
}
