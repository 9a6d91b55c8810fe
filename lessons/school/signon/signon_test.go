package signon_test

import (
	"crypto/rand"
	"crypto/rsa"
	"crypto/sha256"
	"encoding/base64"
	"encoding/json"
	"errors"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"

	"github.com/go-jose/go-jose/v4"
	"github.com/go-jose/go-jose/v4/jwt"

	"scratchpass/content"
	"scratchpass/lessons/school"
	"scratchpass/lessons/school/signon"
)

// provider is a sign-on that does what a test wants it to. That the same code works with one that
// others wrote is tested elsewhere (../independent).
type provider struct {
	*httptest.Server
	t   *testing.T
	key *rsa.PrivateKey

	says     map[string]any // the claims, besides those of every token
	userinfo map[string]any // what it says when it is asked for more; nil for nothing
	asked    url.Values     // of the last one who came
	secret   string         // the client's; empty for a public client
}

func newProvider(t *testing.T) *provider {
	t.Helper()
	key, err := rsa.GenerateKey(rand.Reader, 2048)
	if err != nil {
		t.Fatal(err)
	}
	p := &provider{t: t, key: key, says: map[string]any{}}
	mux := http.NewServeMux()
	answer := func(w http.ResponseWriter, what any) {
		w.Header().Set("Content-Type", "application/json")
		_ = json.NewEncoder(w).Encode(what)
	}
	mux.HandleFunc("/.well-known/openid-configuration", func(w http.ResponseWriter, _ *http.Request) {
		answer(w, map[string]any{"issuer": p.URL, "authorization_endpoint": p.URL + "/in", "token_endpoint": p.URL + "/token", "jwks_uri": p.URL + "/keys",
			"userinfo_endpoint": p.URL + "/more", "id_token_signing_alg_values_supported": []string{"RS256"}})
	})
	mux.HandleFunc("/keys", func(w http.ResponseWriter, _ *http.Request) {
		answer(w, jose.JSONWebKeySet{Keys: []jose.JSONWebKey{{Key: key.Public(), KeyID: "k", Algorithm: "RS256", Use: "sig"}}})
	})
	mux.HandleFunc("/token", func(w http.ResponseWriter, r *http.Request) {
		sum := sha256.Sum256([]byte(r.FormValue("code_verifier")))
		id, secret, _ := r.BasicAuth()
		if p.secret == "" {
			id, secret = r.FormValue("client_id"), ""
		}
		if id != "scratchpass" || secret != p.secret || r.FormValue("code") != "good" || base64.RawURLEncoding.EncodeToString(sum[:]) != p.asked.Get("code_challenge") {
			w.WriteHeader(http.StatusBadRequest)
			answer(w, map[string]string{"error": "invalid_grant"})
			return
		}
		answer(w, map[string]any{"access_token": "a", "token_type": "Bearer", "id_token": p.token()})
	})
	mux.HandleFunc("/more", func(w http.ResponseWriter, _ *http.Request) {
		if p.userinfo == nil {
			http.NotFound(w, nil)
			return
		}
		answer(w, p.userinfo)
	})
	p.Server = httptest.NewServer(mux)
	t.Cleanup(p.Close)
	return p
}

// token is the token of whoever came last.
func (p *provider) token() string {
	now := time.Now()
	claims := map[string]any{"iss": p.URL, "sub": "17", "aud": "scratchpass", "iat": now.Unix(), "exp": now.Add(time.Minute).Unix(), "nonce": p.asked.Get("nonce"), "name": "Ada Brook"}
	for name, value := range p.says {
		claims[name] = value
	}
	signer, err := jose.NewSigner(jose.SigningKey{Algorithm: jose.RS256, Key: jose.JSONWebKey{Key: p.key, KeyID: "k"}}, nil)
	if err != nil {
		p.t.Fatal(err)
	}
	text, err := jwt.Signed(signer).Claims(claims).Serialize()
	if err != nil {
		p.t.Fatal(err)
	}
	return text
}

// school is a sign-on at the provider.
func (p *provider) school(t *testing.T, seal school.Seal, clock func() time.Time) *signon.SignOn {
	t.Helper()
	settings := school.SignOn{Issuer: p.URL, Client: "scratchpass", Groups: "groups", Scopes: "groups"}
	if p.secret != "" {
		settings.SecretFile = filepath.Join(t.TempDir(), "secret")
		if err := os.WriteFile(settings.SecretFile, []byte(p.secret+"\n"), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	o, err := signon.New(settings, "https://threads.example.school/back", seal, clock)
	if err != nil {
		t.Fatal(err)
	}
	return o
}

func seal(t *testing.T) school.Seal {
	t.Helper()
	s, err := school.NewSeal(school.NewKey())
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// leaves sends someone away, and notes what they were asked with.
func (p *provider) leaves(t *testing.T, o *signon.SignOn, to string) (keep string) {
	t.Helper()
	address, keep, err := o.Leave(t.Context(), to, false)
	if err != nil {
		t.Fatal(err)
	}
	u, err := url.Parse(address)
	if err != nil {
		t.Fatal(err)
	}
	p.asked = u.Query()
	return keep
}

// comes is someone who comes back with a code and a state.
func comes(code, state string) *http.Request {
	return httptest.NewRequest(http.MethodGet, "https://threads.example.school/back?"+url.Values{"code": {code}, "state": {state}}.Encode(), nil)
}

// Who signs on is who the provider says, at whichever node they come back to.
func TestSignOn(t *testing.T) {
	for name, row := range map[string]struct {
		says, userinfo map[string]any
		secret         string
		name           string
		groups         []string
	}{
		"groups in the token":   {says: map[string]any{"groups": []string{"first-year", "else"}}, name: "Ada Brook", groups: []string{"first-year", "else"}},
		"one group":             {says: map[string]any{"groups": "first-year"}, name: "Ada Brook", groups: []string{"first-year"}},
		"groups where asked":    {userinfo: map[string]any{"sub": "17", "groups": []string{"first-year"}, "name": "Other"}, name: "Ada Brook", groups: []string{"first-year"}},
		"more of another":       {userinfo: map[string]any{"sub": "18", "groups": []string{"it-staff"}}, name: "Ada Brook"},
		"the name where asked":  {says: map[string]any{"groups": "first-year", "name": ""}, userinfo: map[string]any{"sub": "17", "groups": []string{"it-staff"}, "name": "Ada B."}, name: "Ada B.", groups: []string{"first-year"}},
		"no groups":             {name: "Ada Brook"},
		"groups of other kinds": {says: map[string]any{"groups": []any{1, nil, "first-year", "a\x00b"}, "name": "Ada\x00 Brook"}, name: content.Printable("Ada\x00 Brook"), groups: []string{"first-year", content.Printable("a\x00b")}},
		"no name":               {says: map[string]any{"name": "", "preferred_username": " ada "}, name: "ada"},
		"a client with secret":  {secret: "of-the-client", name: "Ada Brook"},
	} {
		t.Run(name, func(t *testing.T) {
			p, key := newProvider(t), seal(t)
			p.secret, p.userinfo = row.secret, row.userinfo
			for claim, value := range row.says {
				p.says[claim] = value
			}
			keep := p.leaves(t, p.school(t, key, time.Now), "/groups/turning-1?x=1")
			if p.asked.Get("code_challenge_method") != "S256" || p.asked.Get("redirect_uri") != "https://threads.example.school/back" || p.asked.Get("scope") != "openid profile groups" {
				t.Error("asked with ", p.asked)
			}
			who, to, err := p.school(t, key, time.Now).Back(comes("good", p.asked.Get("state")), keep) // another node
			want := school.Person{ID: p.URL + " 17", Name: row.name, Groups: row.groups}
			if err != nil || !reflect.DeepEqual(who, want) || to != "/groups/turning-1?x=1" {
				t.Errorf("%+v to %s, %v", who, to, err)
			}
		})
	}
}

// Whatever is not as it was when someone left, or as the provider signed it, lets nobody in.
func TestNobodyElse(t *testing.T) {
	now := time.Now()
	late := func() time.Time { return now.Add(16 * time.Minute) }
	for name, row := range map[string]struct {
		says  map[string]any
		code  string
		state string
		keep  string
		clock func() time.Time
		query string
	}{
		"another state":        {state: "other"},
		"no state":             {state: " "},
		"a wrong code":         {code: "bad"},
		"another nonce":        {says: map[string]any{"nonce": "other"}},
		"for another program":  {says: map[string]any{"aud": "other"}},
		"expired":              {says: map[string]any{"exp": now.Add(-time.Hour).Unix()}},
		"from another issuer":  {says: map[string]any{"iss": "https://other.example"}},
		"nothing kept":         {keep: " "},
		"something else kept":  {keep: "AAAA"},
		"too late":             {clock: late},
		"refused by a person":  {query: "&error=access_denied"},
		"kept by another seal": {keep: "other"},
	} {
		t.Run(name, func(t *testing.T) {
			p, key := newProvider(t), seal(t)
			for claim, value := range row.says {
				p.says[claim] = value
			}
			keep := p.leaves(t, p.school(t, key, time.Now), "/")
			switch row.keep {
			case "":
			case "other":
				_, keep, _ = p.school(t, seal(t), time.Now).Leave(t.Context(), "/", false)
			default:
				keep = strings.TrimSpace(row.keep)
			}
			clock, code, state := time.Now, "good", p.asked.Get("state")
			if row.clock != nil {
				clock = row.clock
			}
			if row.code != "" {
				code = row.code
			}
			if row.state != "" {
				state = strings.TrimSpace(row.state)
			}
			r := comes(code, state)
			r.URL.RawQuery += row.query
			if who, _, err := p.school(t, key, clock).Back(r, keep); !errors.Is(err, signon.ErrNotBack) || who.ID != "" {
				t.Errorf("%+v, %v", who, err)
			}
		})
	}
}

// Nobody is sent to another host when they come back, whoever made the link.
func TestNowhereElse(t *testing.T) {
	p, key := newProvider(t), seal(t)
	o := p.school(t, key, time.Now)
	for to, want := range map[string]string{"/study": "/study", "": "/", "https://other.example": "/", "//other.example": "/", `/\other.example`: "/", "study": "/", "/a\r\nb": "/"} {
		keep := p.leaves(t, o, to)
		if _, got, err := o.Back(comes("good", p.asked.Get("state")), keep); got != want || err != nil {
			t.Errorf("%q leads to %q, %v", to, got, err)
		}
	}
}

// A provider that is away is said to be, and is asked again.
func TestProviderAway(t *testing.T) {
	p := newProvider(t)
	o := p.school(t, seal(t), time.Now)
	handler := p.Config.Handler
	p.Config.Handler = http.NotFoundHandler()
	if err := o.Check(t.Context()); err == nil || !strings.Contains(err.Error(), "out of reach") {
		t.Error(err)
	}
	p.Config.Handler = handler
	if err := o.Check(t.Context()); err != nil {
		t.Error(err)
	}
}
