// Package postgrestest gives tests a database of their own.
package postgrestest

import (
	"context"
	"crypto/rand"
	"database/sql"
	"net/url"
	"os"
	"strings"
	"testing"

	_ "github.com/jackc/pgx/v5/stdlib" // the driver
)

// Variable names the address of a server that tests may use. Where it is not set they are
// skipped: whoever has no such server needs none.
const Variable = "SCRATCHPASS_POSTGRES"

// Address is that of an empty schema of the test's own, which is dropped in the end. A server that
// is named and can't be reached is an error.
func Address(t testing.TB) string {
	t.Helper()
	server := os.Getenv(Variable)
	if server == "" {
		t.Skip("no PostgreSQL: " + Variable + " names none")
	}
	u, err := url.Parse(server)
	if err != nil {
		t.Fatal(err)
	}
	db, err := sql.Open("pgx", server)
	if err != nil {
		t.Fatal(err)
	}
	schema := "test_" + strings.ToLower(rand.Text())
	if _, err := db.ExecContext(t.Context(), "CREATE SCHEMA "+schema); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if _, err := db.ExecContext(context.Background(), "DROP SCHEMA "+schema+" CASCADE"); err != nil {
			t.Error(err)
		}
		_ = db.Close()
	})
	q := u.Query()
	q.Set("search_path", schema)
	q.Set("application_name", schema) // so that a test tells its own connections apart
	u.RawQuery = q.Encode()
	return u.String()
}
