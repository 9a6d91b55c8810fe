package school_test

import (
	"errors"
	"reflect"
	"strings"
	"sync"
	"testing"
	"time"

	"scratchpass/lessons/postgres"
	"scratchpass/lessons/postgres/postgrestest"
	"scratchpass/lessons/school"
)

func database(t *testing.T) *postgres.DB {
	t.Helper()
	db, err := postgres.Open(t.Context(), postgrestest.Address(t))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { db.Close() })
	return db
}

// Who is signed on is known until they sign off, walk away for an hour, or have been there for ten;
// what a browser holds is not in the database, and nothing like it lets anyone in.
func TestSessions(t *testing.T) {
	now := time.Date(2026, 11, 27, 9, 0, 0, 0, time.UTC)
	s := school.Sessions{DB: database(t), Clock: func() time.Time { return now }}
	ada := school.Person{ID: "https://login.example.school 17", Name: "Ada", Groups: []string{"first-year", "else"}}
	begin := func() string {
		t.Helper()
		token, err := s.Begin(t.Context(), ada)
		if err != nil {
			t.Fatal(err)
		}
		return token
	}
	is := func(token string, there bool, why string) {
		t.Helper()
		p, err := s.Person(t.Context(), token)
		if there && (err != nil || !reflect.DeepEqual(p, ada)) || !there && !errors.Is(err, school.ErrNoSession) {
			t.Errorf("%+v, %v: %s", p, err, why)
		}
	}
	token := begin()
	is(token, true, "signed on")
	id, secret, _ := strings.Cut(token, ".")
	for _, other := range []string{"", ".", id, id + ".", id + "." + strings.ToLower(secret), "x." + secret, "'." + secret, token + "x"} {
		is(other, false, "not the token: "+other)
	}
	var rows int
	if err := s.DB.QueryRow("SELECT COUNT(*) FROM sessions WHERE hash LIKE '%' || $1 || '%' OR id LIKE '%' || $1 || '%'", secret).Scan(&rows); err != nil || rows > 0 {
		t.Error("the secret is in the database: ", err)
	}
	for range 9 {
		now = now.Add(59 * time.Minute)
		is(token, true, "there every hour")
	}
	now = now.Add(59 * time.Minute)
	is(token, true, "nine hours and fifty minutes")
	now = now.Add(11 * time.Minute)
	is(token, false, "more than ten hours")
	token = begin()
	now = now.Add(time.Hour + time.Millisecond)
	is(token, false, "away for more than an hour")
	first := begin()
	ada.Groups = []string{"teach-1"}
	second := begin()
	is(first, true, "what the sign-on says now holds for the first as well")
	if err := s.End(t.Context(), first); err != nil {
		t.Fatal(err)
	}
	is(first, false, "signed off")
	is(second, true, "only there")
	if err := s.Forget(t.Context(), ada.ID); err != nil {
		t.Fatal(err)
	}
	is(second, false, "forgotten")
}

func TestAudit(t *testing.T) {
	now := time.Date(2026, 11, 27, 9, 0, 0, 123_000_000, time.UTC)
	a := school.Audit{DB: database(t), Clock: func() time.Time { return now }}
	p := school.Person{ID: "issuer 1", Name: "Cato"}
	for _, about := range []string{"one", "two", "three"} {
		if err := a.Note(t.Context(), p, school.SawKeys, about); err != nil {
			t.Fatal(err)
		}
	}
	latest, err := a.Before(t.Context(), 0, 2)
	if err != nil || len(latest) != 2 || latest[0].About != "three" || latest[0] != (school.Entry{Number: latest[0].Number, At: now, Who: "issuer 1", Name: "Cato", Did: school.SawKeys, About: "three"}) {
		t.Error(latest, err)
	}
	if rest, err := a.Before(t.Context(), latest[1].Number, 2); err != nil || len(rest) != 1 || rest[0].About != "one" {
		t.Error(rest, err)
	}
}

// A sealed text is opened with its key for what it was sealed for, and no other way; no letter of it
// can be changed.
func TestSeal(t *testing.T) {
	key := school.NewKey()
	seal, err := school.NewSeal(key)
	if err != nil {
		t.Fatal(err)
	}
	sealed := seal.Close("a text", "this")
	if text, err := seal.Open(sealed, "this"); text != "a text" || err != nil {
		t.Error(text, err)
	}
	if seal.Close("a text", "this") == sealed || strings.Contains(sealed, "text") {
		t.Error("sealed twice it is the same, or can be read")
	}
	if _, err := seal.Open(sealed, "that"); err == nil {
		t.Error("opened as something else")
	}
	for i := range sealed {
		changed := []byte(sealed)
		if changed[i]++; strings.EqualFold(string(changed), sealed) {
			continue
		}
		if text, err := seal.Open(string(changed), "this"); err == nil {
			t.Fatalf("changed at %d: %q", i, text)
		}
	}
	other, _ := school.NewSeal(school.NewKey())
	if _, err := other.Open(sealed, "this"); err == nil {
		t.Error("opened with another key")
	}
	for _, bad := range []string{"", "x", key[4:], key + key} {
		if _, err := school.NewSeal(bad); err == nil {
			t.Error("a key: ", bad)
		}
	}
}

// All nodes that ask for a group's secret at once get one and the same; another group has another;
// it is not in the database as it is; with another key it is an error, and not another secret.
func TestSecrets(t *testing.T) {
	seal, _ := school.NewSeal(school.NewKey())
	s := school.Secrets{DB: database(t), Seal: seal}
	var all sync.WaitGroup
	got := make([]string, 8)
	for i := range got {
		all.Go(func() {
			secret, err := s.Of(t.Context(), []string{"a", "b"}[i%2])
			if err != nil || len(secret) != 32 {
				t.Error(len(secret), err)
			}
			got[i] = string(secret)
		})
	}
	all.Wait()
	for i := range got {
		if (got[i] == got[0]) != (i%2 == 0) {
			t.Error("secret ", i)
		}
	}
	s.Seal, _ = school.NewSeal(school.NewKey())
	if _, err := s.Of(t.Context(), "a"); err == nil || !strings.Contains(err.Error(), `the group "a"`) {
		t.Error(err)
	}
}
