package school

import (
	"context"
	"time"

	"scratchpass/lessons/postgres"
)

// Audit is the list of what was done that others may ask about: who saw keys before they were told,
// changed a mark, gave out results or what is kept of a person, or deleted it. It only grows, and
// nobody's answers are in it.
type Audit struct {
	DB    *postgres.DB
	Clock func() time.Time
}

// Entry is one thing that was done.
type Entry struct {
	Number int64
	At     time.Time // in milliseconds
	Who    string    // the person's ID
	Name   string    // what the sign-on called them then
	Did    Did
	About  string // a room, a group, a person
}

// Did is what was done.
type Did string

// What is noted.
const (
	BeganRoom  Did = "began-room"
	SawKeys    Did = "saw-keys"     // of a room, before they were told
	ChangedIt  Did = "changed-mark" // what an answer counts, or whose it is
	SawLearner Did = "saw-learner"  // how one person stands
	GaveOut    Did = "gave-out"     // results of a group, or what is kept of a person
	DeletedAll Did = "deleted-all"  // that was kept of a person
	SignedOn   Did = "signed-on"
)

// Note notes that someone does something, before it is done: what can't be noted is not done.
func (a Audit) Note(ctx context.Context, p Person, did Did, about string) error {
	_, err := a.DB.ExecContext(ctx, "INSERT INTO audit (at_ms, who, name, did, about) VALUES ($1, $2, $3, $4, $5)", a.Clock().UnixMilli(), p.ID, p.Name, string(did), about)
	return err
}

// Before are so many entries before one, the latest first; from the latest on before 0.
func (a Audit) Before(ctx context.Context, number int64, n int) (all []Entry, err error) {
	rows, err := a.DB.QueryContext(ctx, "SELECT id, at_ms, who, name, did, about FROM audit WHERE $1 = 0 OR id < $1 ORDER BY id DESC LIMIT $2", number, n)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	for rows.Next() {
		var e Entry
		var at int64
		if err := rows.Scan(&e.Number, &at, &e.Who, &e.Name, &e.Did, &e.About); err != nil {
			return nil, err
		}
		e.At = time.UnixMilli(at).UTC()
		all = append(all, e)
	}
	return all, rows.Err()
}
