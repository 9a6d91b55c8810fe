package school

import (
	"context"
	"crypto/rand"
	"crypto/sha256"
	"crypto/subtle"
	"database/sql"
	"encoding/hex"
	"encoding/json"
	"errors"
	"strings"
	"time"

	"scratchpass/lessons/postgres"
)

// How long someone stays signed on. Computers of a school are shared: who walks away is signed off
// before the next lesson, and nobody stays for longer than a day at school has hours.
const (
	longestIdle    = time.Hour
	longestSession = 10 * time.Hour
)

// seenEvery is how often it is noted that someone is still there.
const seenEvery = time.Minute

// ErrNoSession says that nobody is signed on with a token.
var ErrNoSession = errors.New("nobody is signed on")

// Sessions are those who are signed on. They are in the database, so that any node knows them; what
// a browser holds is an identifier and a secret, of which only the hash is kept.
type Sessions struct {
	DB    *postgres.DB
	Clock func() time.Time
}

// Begin signs someone on, and returns the token for their browser. What the sign-on says of them now
// holds for all of their sessions.
func (s Sessions) Begin(ctx context.Context, p Person) (token string, err error) {
	groups, err := json.Marshal(append([]string{}, p.Groups...))
	if err != nil {
		return "", err
	}
	now := s.Clock().UnixMilli()
	id, secret := rand.Text(), rand.Text()
	tx, err := s.DB.BeginTx(ctx, nil)
	if err != nil {
		return "", err
	}
	defer tx.Rollback() //nolint:errcheck // nothing is to be done where it was committed
	for _, do := range []struct {
		statement string
		values    []any
	}{
		{"DELETE FROM sessions WHERE seen_ms < $1 OR began_ms < $2", []any{now - longestIdle.Milliseconds(), now - longestSession.Milliseconds()}},
		{"INSERT INTO people (id, name, groups, seen_ms) VALUES ($1, $2, $3, $4) ON CONFLICT (id) DO UPDATE SET name = excluded.name, groups = excluded.groups, seen_ms = excluded.seen_ms",
			[]any{p.ID, p.Name, string(groups), now}},
		{"INSERT INTO sessions (id, hash, person, began_ms, seen_ms) VALUES ($1, $2, $3, $4, $4)", []any{id, hashOf(secret), p.ID, now}},
	} {
		if _, err := tx.ExecContext(ctx, do.statement, do.values...); err != nil {
			return "", err
		}
	}
	return id + "." + secret, tx.Commit()
}

// hashOf is what is kept of a secret. It is long and random, so that no slow hash is needed.
func hashOf(secret string) string {
	sum := sha256.Sum256([]byte(secret))
	return hex.EncodeToString(sum[:])
}

// Person is who is signed on with a token; ErrNoSession where nobody is, or was for too long.
func (s Sessions) Person(ctx context.Context, token string) (Person, error) {
	id, secret, _ := strings.Cut(token, ".")
	var p Person
	var hash, groups string
	var began, seen int64
	err := s.DB.QueryRowContext(ctx, "SELECT p.id, p.name, p.groups, s.hash, s.began_ms, s.seen_ms FROM sessions s JOIN people p ON p.id = s.person WHERE s.id = $1", id).
		Scan(&p.ID, &p.Name, &groups, &hash, &began, &seen)
	if errors.Is(err, sql.ErrNoRows) {
		return Person{}, ErrNoSession
	}
	if err != nil {
		return Person{}, err
	}
	now := s.Clock().UnixMilli()
	if subtle.ConstantTimeCompare([]byte(hash), []byte(hashOf(secret))) != 1 || now-seen > longestIdle.Milliseconds() || now-began > longestSession.Milliseconds() {
		return Person{}, ErrNoSession
	}
	if err := json.Unmarshal([]byte(groups), &p.Groups); err != nil {
		return Person{}, err
	}
	if now-seen > seenEvery.Milliseconds() {
		_, err = s.DB.ExecContext(ctx, "UPDATE sessions SET seen_ms = $2 WHERE id = $1", id, now)
	}
	return p, err
}

// InGroups are those who have signed on and were in one of some groups of the sign-on then, by name.
func (s Sessions) InGroups(ctx context.Context, groups []string) ([]Person, error) {
	return s.people(ctx, "CAST(groups AS jsonb) ?| $1 ORDER BY name, id", append([]string{}, groups...))
}

// Named are those who have signed on whose names have a text in them, so many of them at most, by
// name.
func (s Sessions) Named(ctx context.Context, text string, most int) ([]Person, error) {
	return s.people(ctx, "strpos(lower(name), lower($1)) > 0 ORDER BY name, id LIMIT $2", text, most)
}

// Known is someone who has signed on; without an ID where nobody with that one has.
func (s Sessions) Known(ctx context.Context, id string) (Person, error) {
	all, err := s.people(ctx, "id = $1", id)
	if err != nil || len(all) == 0 {
		return Person{}, err
	}
	return all[0], nil
}

func (s Sessions) people(ctx context.Context, which string, values ...any) (all []Person, err error) {
	rows, err := s.DB.QueryContext(ctx, "SELECT id, name, groups FROM people WHERE "+which, values...)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	for rows.Next() {
		var p Person
		var groups string
		if err := rows.Scan(&p.ID, &p.Name, &groups); err != nil {
			return nil, err
		}
		if err := json.Unmarshal([]byte(groups), &p.Groups); err != nil {
			return nil, err
		}
		all = append(all, p)
	}
	return all, rows.Err()
}

// End signs someone off.
func (s Sessions) End(ctx context.Context, token string) error {
	id, _, _ := strings.Cut(token, ".")
	_, err := s.DB.ExecContext(ctx, "DELETE FROM sessions WHERE id = $1", id)
	return err
}

// EndAll signs someone off everywhere.
func (s Sessions) EndAll(ctx context.Context, person string) error {
	_, err := s.DB.ExecContext(ctx, "DELETE FROM sessions WHERE person = $1", person)
	return err
}

// Forget deletes someone and signs them off everywhere. Their record is another thing to delete.
func (s Sessions) Forget(ctx context.Context, person string) error {
	_, err := s.DB.ExecContext(ctx, "DELETE FROM people WHERE id = $1", person)
	return err
}
