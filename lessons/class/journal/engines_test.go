package journal_test

import (
	"context"
	"path/filepath"
	"testing"
	"time"

	"scratchpass/lessons/class"
	"scratchpass/lessons/class/journal"
	"scratchpass/lessons/postgres"
	"scratchpass/lessons/postgres/postgrestest"
)

// engines are what a journal can be kept in, with an empty one of each. A test that is no test of
// one of them runs on both.
var engines = map[string]func(testing.TB) string{
	"file":     func(t testing.TB) string { return filepath.Join(t.TempDir(), "a.class") },
	"database": func(t testing.TB) string { return postgrestest.Address(t) },
}

// onBoth runs a test on each engine, with where its journal is.
func onBoth(t *testing.T, do func(t *testing.T, at string)) {
	for name, empty := range engines {
		t.Run(name, func(t *testing.T) { do(t, empty(t)) })
	}
}

// tested is a journal as tests have it.
type tested interface {
	class.Journal
	SlowSync(time.Duration)
}

// openAt opens the journal that is there.
func openAt(ctx context.Context, at string) (tested, error) {
	if postgres.Is(at) {
		return journal.OpenDatabase(ctx, at)
	}
	return journal.Open(at)
}

func open(t testing.TB, at string) tested {
	t.Helper()
	j, err := openAt(t.Context(), at)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

func database(t testing.TB, at string) *journal.Database {
	t.Helper()
	j, err := journal.OpenDatabase(t.Context(), at)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = j.Close() }) // the test has looked at what it holds
	return j
}

func begin(t testing.TB, j class.Journal, code string) {
	t.Helper()
	if err := j.Begin(t.Context(), class.Head{Code: code, Began: time.UnixMilli(1).UTC()}); err != nil {
		t.Fatal(err)
	}
}
