package journal

import (
	"context"
	"errors"
	"fmt"

	"scratchpass/lessons/class"
	"scratchpass/lessons/postgres"
)

// At is where a journal is: a file, or the address of a database. One may be told what to do with
// either, and need not know which it is.
type At string

// String is the place as it may be printed: without a password.
func (a At) String() string {
	if postgres.Is(string(a)) {
		return postgres.Shown(string(a))
	}
	return string(a)
}

// Is reports whether there is a journal, or may be one: a database is not asked.
func (a At) Is() bool { return postgres.Is(string(a)) || Is(string(a)) }

// File is the journal's file; empty for a database.
func (a At) File() string {
	if postgres.Is(string(a)) {
		return ""
	}
	return string(a)
}

// Open opens the journal to serve it; see Open and OpenDatabase.
func (a At) Open(ctx context.Context) (class.Journal, error) {
	if postgres.Is(string(a)) {
		return OpenDatabase(ctx, string(a))
	}
	return Open(string(a))
}

// OpenToRead opens the journal, which may be served at the same time.
func (a At) OpenToRead(ctx context.Context) (class.Journal, error) {
	if postgres.Is(string(a)) {
		return OpenDatabase(ctx, string(a))
	}
	return OpenToRead(string(a))
}

// Head is that of the room with a code; without one, that of the last in a file. A database holds
// the classes of many people: there the code is to be given.
func (a At) Head(ctx context.Context, j class.Journal, code string) (class.Head, error) {
	if code != "" {
		h, err := j.Head(ctx, class.ReadCode(code))
		if errors.Is(err, class.ErrNoRoom) {
			err = fmt.Errorf("%s holds no class with the code %q", a, code)
		}
		return h, err
	}
	if a.File() == "" {
		return class.Head{}, fmt.Errorf("%s holds the classes of many: say which with --code, such as --code K7F3QM", a)
	}
	heads, err := j.Heads(ctx)
	if err == nil && len(heads) == 0 {
		err = fmt.Errorf("%s holds no class yet", a)
	}
	if err != nil {
		return class.Head{}, err
	}
	return heads[0], nil
}
