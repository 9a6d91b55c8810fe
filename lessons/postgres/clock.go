package postgres

import (
	"context"
	"fmt"
	"sync/atomic"
	"time"
)

// Clock is the time as the server of a database has it. Programs that share a database take their
// times from it: else a question that closes at a time would close at another one on a computer whose
// own clock is minutes off.
type Clock struct {
	db   *DB
	own  func() time.Time
	read atomic.Pointer[reading]
}

// reading is what the server's clock said at a moment of this computer's own.
type reading struct{ own, server time.Time }

// readWithin is how long a reading may take at most: it is known no better than that.
const readWithin = time.Second

// Clock is the server's clock, read once for now. own is that of this computer, which tells how long
// ago that was.
func (db *DB) Clock(ctx context.Context, own func() time.Time) (*Clock, error) {
	c := &Clock{db: db, own: own}
	r, _, err := c.reading(ctx)
	if err != nil {
		return nil, fmt.Errorf("the clock of the database's server: %w", err)
	}
	c.read.Store(&r)
	return c, nil
}

// reading reads the server's clock, and tells how long that took.
func (c *Clock) reading(ctx context.Context) (r reading, took time.Duration, err error) {
	var micros int64
	asked := c.own()
	err = c.db.QueryRowContext(ctx, "SELECT CAST(extract(epoch FROM clock_timestamp()) * 1000000 AS bigint)").Scan(&micros)
	took = c.own().Sub(asked)
	return reading{asked.Add(took / 2), time.UnixMicro(micros)}, took, err
}

// Now is the time.
func (c *Clock) Now() time.Time {
	r := c.read.Load()
	return r.server.Add(c.own().Sub(r.own))
}

// Ahead is how far this computer's own clock is ahead of the server's.
func (c *Clock) Ahead() time.Duration {
	r := c.read.Load()
	return r.own.Round(0).Sub(r.server)
}

// Keep reads the clock anew at each tick, until the context ends. A reading that took long, or none
// at all while the database is out of reach, leaves the one before.
func (c *Clock) Keep(ctx context.Context, tick <-chan time.Time) {
	for {
		select {
		case <-ctx.Done():
			return
		case <-tick:
		}
		if r, took, err := c.reading(ctx); err == nil && took < readWithin {
			c.read.Store(&r)
		}
	}
}
