// Package signon signs people on by the school's own sign-on: OpenID Connect, with a code, a proof
// key and a nonce. Between leaving for it and coming back nothing is kept on a node, so that any node
// may finish what another has begun.
package signon

import (
	"context"
	"crypto/rand"
	"crypto/subtle"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"os"
	"strings"
	"sync"
	"time"

	"github.com/coreos/go-oidc/v3/oidc"
	"golang.org/x/oauth2"

	"scratchpass/content"
	"scratchpass/lessons/school"
)

// SignOn is a school's sign-on.
type SignOn struct {
	settings school.SignOn
	back     string // the address that people come back to
	seal     school.Seal
	clock    func() time.Time
	secret   string

	mu       sync.Mutex
	provider *oidc.Provider // nil until it was reached
}

// New reads what is needed for a sign-on whose people come back to an address. It is reached when it
// is first needed, so that a program starts without it.
func New(s school.SignOn, back string, seal school.Seal, clock func() time.Time) (*SignOn, error) {
	o := &SignOn{settings: s, back: back, seal: seal, clock: clock}
	if s.SecretFile != "" {
		text, err := os.ReadFile(s.SecretFile)
		if err != nil {
			return nil, fmt.Errorf("the secret of the sign-on: %w", err)
		}
		o.secret = strings.TrimSpace(string(text))
	}
	return o, nil
}

// LongestAway is how long someone may take to sign on elsewhere.
const LongestAway = 15 * time.Minute

// away is what has to be known of someone who has left to sign on; it waits in their browser, sealed.
type away struct {
	State    string    `json:"state"`
	Nonce    string    `json:"nonce"`
	Verifier string    `json:"verifier"`
	To       string    `json:"to"` // the page that they wanted
	Until    time.Time `json:"until"`
}

const sealedAs = "someone who signs on"

// Leave is where a browser is to be sent, and what it has to bring back: for a cookie. to is the page
// to go to afterwards, a path on this host. Where anew is wanted the sign-on asks who it is, although
// it may know someone at that browser.
func (o *SignOn) Leave(ctx context.Context, to string, anew bool) (address, keep string, err error) {
	p, err := o.reach(ctx)
	if err != nil {
		return "", "", err
	}
	a := away{rand.Text(), rand.Text(), oauth2.GenerateVerifier(), local(to), o.clock().Add(LongestAway)}
	text, err := json.Marshal(a)
	if err != nil {
		return "", "", err
	}
	with := []oauth2.AuthCodeOption{oidc.Nonce(a.Nonce), oauth2.S256ChallengeOption(a.Verifier)}
	if anew {
		with = append(with, oauth2.SetAuthURLParam("prompt", "login"))
	}
	return o.config(p).AuthCodeURL(a.State, with...), o.seal.Close(string(text), sealedAs), nil
}

// local is a path on this host: never an address elsewhere, whoever made the link.
func local(to string) string {
	if !strings.HasPrefix(to, "/") || strings.HasPrefix(to, "//") || strings.ContainsAny(to, "\\\r\n") {
		return "/"
	}
	return to
}

// ErrNotBack says that someone did not come back as they left: too late, from elsewhere, or twice.
var ErrNotBack = errors.New("the sign-on was not finished: begin it once more")

// ErrAway says that the sign-on itself does not answer.
var ErrAway = errors.New("the sign-on is out of reach")

// refuses reports whether the sign-on has answered, and said no.
func refuses(err error) bool {
	var no *oauth2.RetrieveError
	return errors.As(err, &no) && no.Response != nil && no.Response.StatusCode < http.StatusInternalServerError
}

// Back is who has come back, and the page that they wanted. keep is what their browser has brought.
func (o *SignOn) Back(r *http.Request, keep string) (who school.Person, to string, err error) {
	text, err := o.seal.Open(keep, sealedAs)
	var a away
	if err != nil || json.Unmarshal([]byte(text), &a) != nil || o.clock().After(a.Until) {
		return who, "", ErrNotBack
	}
	q := r.URL.Query()
	if subtle.ConstantTimeCompare([]byte(q.Get("state")), []byte(a.State)) != 1 {
		return who, "", ErrNotBack
	}
	if refused := q.Get("error"); refused != "" {
		return who, "", fmt.Errorf("%w (it says %.60q)", ErrNotBack, refused)
	}
	p, err := o.reach(r.Context())
	if err != nil {
		return who, "", err
	}
	tokens, err := o.config(p).Exchange(o.context(r.Context()), q.Get("code"), oauth2.VerifierOption(a.Verifier))
	if err != nil {
		return who, "", fmt.Errorf("%w: %w", map[bool]error{true: ErrNotBack, false: ErrAway}[refuses(err)], err)
	}
	who, err = o.person(r.Context(), p, tokens, a.Nonce)
	return who, a.To, err
}

// person is who the sign-on says has come back.
func (o *SignOn) person(ctx context.Context, p *oidc.Provider, tokens *oauth2.Token, nonce string) (who school.Person, err error) {
	raw, _ := tokens.Extra("id_token").(string)
	token, err := p.Verifier(&oidc.Config{ClientID: o.settings.Client, Now: o.clock}).Verify(o.context(ctx), raw)
	if err != nil {
		return who, fmt.Errorf("%w: %w", ErrNotBack, err)
	}
	if subtle.ConstantTimeCompare([]byte(token.Nonce), []byte(nonce)) != 1 {
		return who, fmt.Errorf("%w: the token is of another sign-on", ErrNotBack)
	}
	claims := map[string]any{}
	if err := token.Claims(&claims); err != nil {
		return who, err
	}
	_, grouped := claims[o.settings.Groups]
	if !grouped || nameOf(claims) == "" { // some tell groups, or names, only where they are asked for
		if err := o.ask(ctx, p, tokens, token.Subject, claims); err != nil {
			return who, err
		}
	}
	return personOf(token.Issuer, token.Subject, o.settings.Groups, claims), nil
}

// ask adds what the sign-on tells of someone where it is asked. What the token says is kept; what is
// about another is not taken, and a sign-on that tells no more has told all.
func (o *SignOn) ask(ctx context.Context, p *oidc.Provider, tokens *oauth2.Token, subject string, claims map[string]any) error {
	info, err := p.UserInfo(o.context(ctx), oauth2.StaticTokenSource(tokens))
	if err != nil || info.Subject != subject {
		return nil
	}
	more := map[string]any{}
	if err := info.Claims(&more); err != nil {
		return err
	}
	for name, value := range more {
		if had, there := claims[name]; !there || had == "" {
			claims[name] = value
		}
	}
	return nil
}

// nameOf is what claims call someone; empty where they don't.
func nameOf(claims map[string]any) string {
	for _, name := range []string{"name", "preferred_username", "email"} {
		if text, _ := claims[name].(string); strings.TrimSpace(text) != "" {
			return strings.TrimSpace(content.Printable(text)) // a database does not take every sign
		}
	}
	return ""
}

// personOf is who a token's claims are about. Issuer and subject tell people apart; a name or an
// address may be given to another one day.
func personOf(issuer, subject, groups string, claims map[string]any) school.Person {
	p := school.Person{ID: issuer + " " + subject, Name: nameOf(claims)}
	switch all := claims[groups].(type) {
	case string:
		p.Groups = []string{content.Printable(all)}
	case []any:
		for _, one := range all {
			if text, ok := one.(string); ok {
				p.Groups = append(p.Groups, content.Printable(text))
			}
		}
	}
	return p
}

// reach is the provider; what it says of itself is asked once.
func (o *SignOn) reach(ctx context.Context) (*oidc.Provider, error) {
	o.mu.Lock()
	defer o.mu.Unlock()
	if o.provider != nil {
		return o.provider, nil
	}
	// Keys are fetched with this context later, too: it must not end with this request.
	p, err := oidc.NewProvider(o.context(context.WithoutCancel(ctx)), o.settings.Issuer)
	if err != nil {
		return nil, fmt.Errorf("%w: %s: %w", ErrAway, o.settings.Issuer, err)
	}
	o.provider = p
	return p, nil
}

// Check reports whether the sign-on can be reached and is the one that it should be.
func (o *SignOn) Check(ctx context.Context) error {
	_, err := o.reach(ctx)
	return err
}

// patient is who speaks to the sign-on, and not for ever.
var patient = &http.Client{Timeout: 10 * time.Second}

func (o *SignOn) context(ctx context.Context) context.Context {
	return oidc.ClientContext(ctx, patient)
}

func (o *SignOn) config(p *oidc.Provider) *oauth2.Config {
	return &oauth2.Config{ClientID: o.settings.Client, ClientSecret: o.secret, Endpoint: p.Endpoint(), RedirectURL: o.back,
		Scopes: append([]string{oidc.ScopeOpenID, "profile"}, strings.Fields(o.settings.Scopes)...)}
}
