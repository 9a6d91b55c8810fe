package postgres

import (
	"context"
	"strings"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgconn"
	"github.com/jackc/pgxlisten"
)

// Programs that share a database tell each other that something has changed, never what: whoever
// hears of it reads it. So a word that is lost costs time and nothing else. Words are told after
// what they are about was committed, in a statement of their own: in the transaction itself they
// would let only one transaction at a time commit.

// longestWord is how many bytes PostgreSQL lets one word have. Source: PostgreSQL 15, NOTIFY:
// "In the default configuration it must be shorter than 8000 bytes".
const longestWord = 7999

// channel is the name of a channel in the schema at hand, so that two schemas don't hear each
// other.
const channel = "left('scratchpass ' || $1 || ' ' || current_schema(), 63)"

// Tell tells all who listen to a topic some words without spaces.
func (db *DB) Tell(ctx context.Context, topic string, words []string) error {
	for _, told := range packed(words) {
		if _, err := db.ExecContext(ctx, "SELECT pg_notify("+channel+", $2)", topic, told); err != nil {
			return err
		}
	}
	return nil
}

// packed are words with spaces between, as few texts as there can be.
func packed(words []string) (all []string) {
	for _, w := range words {
		last := len(all) - 1
		if last < 0 || len(all[last])+1+len(w) > longestWord {
			all = append(all, w)
			continue
		}
		all[last] += " " + w
	}
	return all
}

// again is how long one waits before a connection that was cut is made anew.
const again = 200 * time.Millisecond

// Listen calls heard with each word that is told of a topic, and missed whenever some may have
// been told that were not heard: at first, and after the connection was cut. It ends with the
// context; a database that is out of reach is tried again until then. problem is told what goes wrong
// meanwhile.
func (db *DB) Listen(ctx context.Context, topic string, heard func(word string), missed func(), problem func(error)) {
	for ctx.Err() == nil {
		if err := db.listen(ctx, topic, listener{heard, missed}, problem); err != nil && ctx.Err() == nil {
			problem(err)
		}
		select {
		case <-time.After(again):
		case <-ctx.Done():
		}
	}
}

func (db *DB) listen(ctx context.Context, topic string, to listener, problem func(error)) error {
	var name string
	if err := db.QueryRowContext(ctx, "SELECT "+channel, topic).Scan(&name); err != nil {
		return err
	}
	l := pgxlisten.Listener{ReconnectDelay: again,
		Connect: func(ctx context.Context) (*pgx.Conn, error) { return pgx.ConnectConfig(ctx, db.config) },
		LogError: func(ctx context.Context, err error) {
			if ctx.Err() == nil {
				problem(err)
			}
		},
	}
	l.Handle(name, to)
	return l.Listen(ctx)
}

// listener hands on what is told.
type listener struct {
	heard  func(string)
	missed func()
}

func (l listener) HandleNotification(_ context.Context, n *pgconn.Notification, _ *pgx.Conn) error {
	for w := range strings.FieldsSeq(n.Payload) {
		l.heard(w)
	}
	return nil
}

func (l listener) HandleBacklog(context.Context, string, *pgx.Conn) error {
	l.missed()
	return nil
}
