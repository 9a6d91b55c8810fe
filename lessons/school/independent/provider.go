// Command independent is a sign-on that others wrote, on this computer alone: the provider of
// OpenID Connect that github.com/zitadel/oidc comes with, with its page to sign on, and a few people of
// ours in groups. It is for tests, and for whoever tries out a school's server without a school. It is
// a Go module of its own, so that nothing of it comes into the program.
package main

import (
	"context"
	"io"
	"log/slog"
	"net/http"
	"slices"

	"github.com/zitadel/oidc/v3/example/server/exampleop"
	"github.com/zitadel/oidc/v3/example/server/storage"
	"github.com/zitadel/oidc/v3/pkg/oidc"
	"github.com/zitadel/oidc/v3/pkg/op"
)

// password is everyone's.
const password = "threads"

// Someone is who can sign on.
type Someone struct {
	User, First, Last string
	Groups            []string
}

// people are those of the README's settings, and one whom the school knows and the program does not.
var people = []Someone{
	{"ira", "Ira", "Stone", []string{"it-staff"}},
	{"ina", "Ina", "Field", []string{"inspectors"}},
	{"hal", "Hal", "Marsh", []string{"metal-heads"}},
	{"cato", "Cato", "Wood", []string{"teach-turning-1"}},
	{"ada", "Ada", "Brook", []string{"first-year", "choir"}},
	{"eve", "Eve", "Hill", []string{"choir"}},
}

// user is them as the provider has it.
func (s Someone) user() *storage.User {
	return &storage.User{ID: "id-" + s.User, Username: s.User, Password: password, FirstName: s.First, LastName: s.Last}
}

// users finds people for the provider.
type users struct{}

func (users) GetUserByID(id string) *storage.User {
	return one(func(s Someone) bool { return "id-"+s.User == id })
}

func (users) GetUserByUsername(name string) *storage.User {
	return one(func(s Someone) bool { return s.User == name })
}

func (users) ExampleClientID() string { return storage.ServiceUserID }

func one(is func(Someone) bool) *storage.User {
	if i := slices.IndexFunc(people, is); i >= 0 {
		return people[i].user()
	}
	return nil
}

// Telling is where a provider tells what it knows of people. Providers differ in it, and a standard
// leaves them free to.
type Telling string

// All that we try.
const (
	Asked  Telling = "asked"  // names and groups where it is asked for them
	Mixed  Telling = "mixed"  // groups in the token, names where it is asked: as this provider comes
	AtOnce Telling = "atonce" // both in the token
)

// groups is the scope, and the claim.
const groups = "groups"

// store is the provider's own store, which tells groups as well.
type store struct {
	*storage.Storage
	tells Telling
}

func (s store) SetUserinfoFromRequest(ctx context.Context, info *oidc.UserInfo, token op.IDTokenRequest, scopes []string) error {
	if err := s.Storage.SetUserinfoFromRequest(ctx, info, token, scopes); err != nil {
		return err
	}
	if s.tells != Asked {
		addGroups(info, token.GetSubject(), scopes)
	}
	return nil
}

func (s store) SetUserinfoFromToken(ctx context.Context, info *oidc.UserInfo, token, subject, origin string) error {
	if err := s.Storage.SetUserinfoFromToken(ctx, info, token, subject, origin); err != nil {
		return err
	}
	addGroups(info, subject, []string{groups})
	return nil
}

func addGroups(info *oidc.UserInfo, subject string, scopes []string) {
	for _, s := range people {
		if "id-"+s.User == subject && slices.Contains(scopes, groups) {
			info.AppendClaims(groups, s.Groups)
		}
	}
}

// GetClientByClientID is a client that may ask for groups.
func (s store) GetClientByClientID(ctx context.Context, id string) (op.Client, error) {
	c, err := s.Storage.GetClientByClientID(ctx, id)
	return client{c, s.tells}, err
}

type client struct {
	op.Client
	tells Telling
}

func (client) IsScopeAllowed(scope string) bool       { return scope == groups }
func (c client) IDTokenUserinfoClaimsAssertion() bool { return c.tells == AtOnce }

// Provider is what a sign-on serves for one client, which people come back to at an address. Without
// a secret the client is a public one.
func Provider(issuer, back, secret string, tells Telling) http.Handler {
	one := storage.NativeClient("scratchpass", back)
	if secret != "" {
		one = storage.WebClient("scratchpass", secret, back)
	}
	own := storage.NewStorageWithClients(users{}, map[string]*storage.Client{"scratchpass": one})
	return exampleop.SetupServer(issuer, store{own, tells}, slog.New(slog.NewTextHandler(io.Discard, nil)), false)
}
