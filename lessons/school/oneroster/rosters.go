package oneroster

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"time"

	"scratchpass/lessons/postgres"
	"scratchpass/lessons/school"
	"scratchpass/quiz/set"
)

// Rosters are the class lists of a school's groups. Those of files are read anew each time; those of
// the service are fetched by whichever node finds them due, and kept in the database.
type Rosters struct {
	Settings school.Settings
	DB       *postgres.DB
	Service  *Service // nil where the school has none
	Clock    func() time.Time
	Told     func(Fetched) // of each list that was fetched, or was to be
}

// Fetched is what came of fetching a list: nothing in it names anyone.
type Fetched struct {
	Group  string
	People int
	Took   time.Duration
	Err    error // nil for a list that is kept
}

// List is a class list.
type List struct {
	People  []set.Apprentice
	Fetched bool      // it is from the service
	At      time.Time // when it was fetched; zero where it never was
	Fault   string    // why it could not be fetched the last time; empty where it could
	Tried   time.Time // when that was
}

// When a list is fetched again, and how long that may take.
const (
	againAfter   = 15 * time.Minute // what failed, or did not end
	longestFetch = 3 * time.Minute
)

// Errors of fetching by hand.
var (
	ErrBeingFetched = errors.New("the list is being fetched already: look again in a minute")
	ErrNotFetched   = errors.New("the class list of this group is not fetched from a service")
	errEmpty        = errors.New("the OneRoster service gives an empty class, where there were people before: the list that was there is kept")
)

// IsFetched reports whether the list of a group is from the service.
func IsFetched(g school.Group) bool { return g.Class != "" && g.Roster == "" }

// Of is the list of a group. One that can't be read is an error; one that could not be fetched the last
// time is the one from before, and says so.
func (r Rosters) Of(ctx context.Context, g school.Group) (l List, err error) {
	switch {
	case IsFetched(g):
		return r.kept(ctx, g)
	case g.Roster == "":
	case IsBulk(g.Roster):
		l.People, err = ReadBulk(g.Roster, g.Class, r.Clock())
	default:
		l.People, err = set.ReadRoster(g.Roster, nil)
	}
	return l, err
}

func (r Rosters) kept(ctx context.Context, g school.Group) (l List, err error) {
	l.Fetched = true
	var people string
	var got, tried int64
	err = r.DB.QueryRowContext(ctx, "SELECT people, got_ms, tried_ms, fault FROM rosters WHERE name = $1 AND class = $2", g.Name, g.Class).Scan(&people, &got, &tried, &l.Fault)
	if errors.Is(err, sql.ErrNoRows) { // it was never tried
		return l, nil
	}
	if err != nil {
		return l, err
	}
	if got > 0 {
		l.At = time.UnixMilli(got).UTC()
	}
	l.Tried = time.UnixMilli(tried).UTC()
	return l, json.Unmarshal([]byte(people), &l.People)
}

// Fetch fetches the list of a group now.
func (r Rosters) Fetch(ctx context.Context, g school.Group) error {
	if !IsFetched(g) || r.Service == nil {
		return ErrNotFetched
	}
	try, err := r.claim(ctx, g, byHand)
	if err != nil {
		return err
	}
	if try == 0 {
		return ErrBeingFetched
	}
	return r.fetch(ctx, g, try)
}

// FetchDue fetches the lists that are due and that no other node is at. What goes wrong with them is
// told; the error is one of the database.
func (r Rosters) FetchDue(ctx context.Context) error {
	if r.Service == nil {
		return nil
	}
	every := r.Settings.OneRoster.Rest()
	due := dueAfter{every, min(every, againAfter), max(longestFetch, min(every, againAfter))}
	for _, g := range r.Groups() {
		try, err := r.claim(ctx, g, due)
		if err != nil {
			return err
		}
		if try > 0 {
			_ = r.fetch(ctx, g, try) // it was told
		}
	}
	return nil
}

// Keep fetches what is due at each tick, until the context ends. Lists of groups that the settings do
// not know any more go first.
func (r Rosters) Keep(ctx context.Context, ticks <-chan time.Time, problem func(error)) {
	if _, err := r.DB.ExecContext(ctx, "DELETE FROM rosters WHERE NOT name = ANY($1)", school.Names(r.Groups())); err != nil && ctx.Err() == nil {
		problem(err)
	}
	for {
		if err := r.FetchDue(ctx); err != nil && ctx.Err() == nil {
			problem(err)
		}
		select {
		case <-ticks:
		case <-ctx.Done():
			return
		}
	}
}

// Groups are those whose lists are fetched.
func (r Rosters) Groups() []school.Group {
	return slices.DeleteFunc(r.Settings.AllGroups(), func(g school.Group) bool { return !IsFetched(g) })
}

// dueAfter is how long a list rests before it is fetched again: one that came well, one that did not,
// and one that a node was at and never ended.
type dueAfter struct{ well, badly, lost time.Duration }

// byHand is for lists that someone wants now, although the clock of another node may be ahead.
var byHand = dueAfter{-time.Hour, -time.Hour, longestFetch}

// claim takes the list of a group to fetch it, for this node alone: try is the number of the try, 0
// where it is not due. A list of another class than the settings have now is none.
func (r Rosters) claim(ctx context.Context, g school.Group, due dueAfter) (try int64, err error) {
	err = r.DB.QueryRowContext(ctx, `INSERT INTO rosters AS r (name, class, people, got_ms, tried_ms, tries, ended, fault) VALUES ($1, $2, '[]', 0, $3, 1, false, '')
ON CONFLICT (name) DO UPDATE SET tried_ms = $3, tries = r.tries + 1, ended = false, class = $2,
	people = CASE WHEN r.class = $2 THEN r.people ELSE '[]' END, got_ms = CASE WHEN r.class = $2 THEN r.got_ms ELSE 0 END, fault = CASE WHEN r.class = $2 THEN r.fault ELSE '' END
WHERE r.class <> $2 OR r.tried_ms <= $3 - CASE WHEN NOT r.ended THEN $6::bigint WHEN r.fault = '' THEN $4::bigint ELSE $5::bigint END RETURNING tries`,
		g.Name, g.Class, r.Clock().UnixMilli(), due.well.Milliseconds(), due.badly.Milliseconds(), due.lost.Milliseconds()).Scan(&try)
	if errors.Is(err, sql.ErrNoRows) {
		return 0, nil
	}
	return try, err
}

// fetch fetches a list that was claimed, and keeps it or why there is none.
func (r Rosters) fetch(ctx context.Context, g school.Group, try int64) error {
	begun := r.Clock()
	within, cancel := context.WithTimeout(ctx, longestFetch)
	defer cancel()
	people, err := r.Service.Students(within, g.Class)
	if err == nil {
		err = r.keep(ctx, g, try, people)
	}
	if errors.Is(ctx.Err(), context.Canceled) { // the node stops: another fetches it at once
		_, freed := r.DB.ExecContext(context.WithoutCancel(ctx), "UPDATE rosters SET tried_ms = 0 WHERE name = $1 AND tries = $2 AND NOT ended", g.Name, try)
		return errors.Join(err, freed)
	}
	if err != nil {
		if _, noted := r.DB.ExecContext(context.WithoutCancel(ctx), "UPDATE rosters SET ended = true, fault = $3 WHERE name = $1 AND tries = $2", g.Name, try, err.Error()); noted != nil {
			err = errors.Join(err, noted)
		}
	}
	r.Told(Fetched{g.Name, len(people), r.Clock().Sub(begun), err})
	return err
}

// keep keeps a list, unless another try was begun since: that one is later. A class that has become
// empty is taken for a fault of the service: nobody loses their list by it.
func (r Rosters) keep(ctx context.Context, g school.Group, try int64, people []set.Apprentice) error {
	text, err := json.Marshal(append([]set.Apprentice{}, people...))
	if err != nil {
		return err
	}
	done, err := r.DB.ExecContext(ctx, "UPDATE rosters SET people = $3, got_ms = $4, ended = true, fault = '' WHERE name = $1 AND tries = $2 AND ($5 > 0 OR people = '[]')",
		g.Name, try, string(text), r.Clock().UnixMilli(), len(people))
	if err != nil {
		return err
	}
	if n, err := done.RowsAffected(); err != nil || n > 0 {
		return err
	}
	if len(people) == 0 {
		return errEmpty
	}
	return nil
}

// Check says what is wrong with a group's list: whether it can be had now, without keeping it.
func (r Rosters) Check(ctx context.Context, g school.Group) error {
	if !IsFetched(g) {
		_, err := r.Of(ctx, g)
		return err
	}
	if r.Service == nil {
		return ErrNotFetched
	}
	people, err := r.Service.Students(ctx, g.Class)
	if err == nil && len(people) == 0 {
		err = fmt.Errorf("the class %q has nobody in it", g.Class)
	}
	return err
}
