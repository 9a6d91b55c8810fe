package postgres

import (
	"context"
	"database/sql"
	"embed"
	"fmt"
	"io/fs"

	"github.com/pressly/goose/v3"
)

// steps are the steps from an empty database to the newest form. One is never changed once it has
// been released.
//
//go:embed migrations/*.sql
var steps embed.FS

// migrate brings a database to the newest form, alone.
func migrate(ctx context.Context, db *sql.DB) error {
	files, err := fs.Sub(steps, "migrations")
	if err != nil {
		return err
	}
	p, err := goose.NewProvider(goose.DialectPostgres, db, files, goose.WithSessionLocker(alone{}), goose.WithDisableGlobalRegistry(true))
	if err != nil {
		return err
	}
	if behind, err := p.HasPending(ctx); err == nil && behind {
		if _, err := p.Up(ctx); err != nil {
			return err
		}
	}
	now, newest, err := p.GetVersions(ctx)
	if err == nil && now > newest {
		err = fmt.Errorf("it was brought to form %d by a newer program (this one knows %d): use that one", now, newest)
	}
	return err
}

// alone is the lock of who brings a database to another form. Others wait for as long as that
// takes, not for a time.
type alone struct{}

// ourLock is the key of that lock, one for each schema.
const ourLock = "hashtextextended('scratchpass migrations ' || current_schema(), 0)"

func (alone) SessionLock(ctx context.Context, c *sql.Conn) error {
	if _, err := c.ExecContext(ctx, "SET lock_timeout = 0"); err != nil {
		return err
	}
	_, err := c.ExecContext(ctx, "SELECT pg_advisory_lock("+ourLock+")")
	return err
}

func (alone) SessionUnlock(ctx context.Context, c *sql.Conn) error {
	_, err := c.ExecContext(ctx, "SELECT pg_advisory_unlock("+ourLock+")")
	if err == nil {
		_, err = c.ExecContext(ctx, "RESET lock_timeout")
	}
	return err
}
