// Package postgres is the database of a school: what several computers keep together, in
// PostgreSQL. It opens one, brings it to the newest form, and carries words between the programs
// that share it. What is kept in it, and how it is read, is said where that is at home.
package postgres

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io"
	"net"
	"net/url"
	"strings"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgconn"
	"github.com/jackc/pgx/v5/stdlib"
)

// DB is an open database.
type DB struct {
	*sql.DB
	config *pgx.ConnConfig
}

// Is reports whether a name is the address of a database, and not that of a file.
func Is(name string) bool {
	return strings.HasPrefix(name, "postgres://") || strings.HasPrefix(name, "postgresql://")
}

// mostConnections is how many connections a program has at most: a server of the usual settings
// has a hundred for all.
const mostConnections = 10

// longestWait is how long one waits for what another program holds.
const longestWait = "20s"

// Open connects to the database at an address such as postgres://user@host/name, and brings it to
// the newest form. Several programs may do so at once. An error names no password.
func Open(ctx context.Context, address string) (*DB, error) {
	db, err := connect(ctx, address)
	if err != nil {
		return nil, fmt.Errorf("the database %s can't be opened: %w", Shown(address), inALine{err})
	}
	if err := migrate(ctx, db.DB); err != nil {
		return nil, errors.Join(fmt.Errorf("the database %s: %w", Shown(address), err), db.Close())
	}
	return db, nil
}

// inALine is an error of the driver's, which tells of each address that it tried in a line.
type inALine struct{ error }

func (e inALine) Error() string { return strings.Join(strings.Fields(e.error.Error()), " ") }

func (e inALine) Unwrap() error { return e.error }

func connect(ctx context.Context, address string) (*DB, error) {
	config, err := pgx.ParseConfig(address)
	if err != nil {
		return nil, err
	}
	if config.ConnectTimeout == 0 {
		config.ConnectTimeout = 10 * time.Second
	}
	if config.RuntimeParams["lock_timeout"] == "" {
		config.RuntimeParams["lock_timeout"] = longestWait
	}
	db := stdlib.OpenDB(*config)
	db.SetMaxOpenConns(mostConnections)
	db.SetMaxIdleConns(mostConnections)
	if err := db.PingContext(ctx); err != nil {
		return nil, errors.Join(err, db.Close())
	}
	return &DB{db, config}, nil
}

// Shown is an address as it may be printed: without its password.
func Shown(address string) string {
	u, err := url.Parse(address)
	if err != nil {
		return "at an address that can't be read"
	}
	return u.Redacted()
}

// Held reports whether an error says that another program held what was wanted for too long.
func Held(err error) bool {
	var e *pgconn.PgError
	return errors.As(err, &e) && e.Code == "55P03" // lock_not_available
}

// Gone reports whether an error says that the database was out of reach or was shut down: what was
// to be kept may be kept later. Whether it was kept already is not known.
func Gone(err error) bool {
	if err == nil || errors.Is(err, context.Canceled) {
		return false
	}
	var e *pgconn.PgError
	if !errors.As(err, &e) { // no answer of the server's: it was not reached, or fell silent
		var connecting *pgconn.ConnectError
		return errors.As(err, &connecting) || pgconn.Timeout(err) || pgconn.SafeToRetry(err) || isBroken(err)
	}
	switch class := e.Code[:2]; class {
	case "08", "53", "57": // connection, too few resources, stopped by an operator
		return true
	}
	return false
}

// isBroken reports whether an error says that a connection was cut.
func isBroken(err error) bool {
	var cut net.Error
	return errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) || errors.Is(err, net.ErrClosed) || errors.Is(err, sql.ErrConnDone) || errors.Is(err, pgconn.ErrConnClosed) || errors.As(err, &cut)
}
