package served_test

import (
	"context"
	"crypto/sha256"
	"database/sql"
	"encoding/hex"
	"errors"
	"flag"
	"fmt"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/pressly/goose/v3"

	"scratchpass/lessons/class"
	"scratchpass/lessons/postgres"
	"scratchpass/lessons/postgres/postgrestest"
	"scratchpass/lessons/record"
	"scratchpass/lessons/school"
)

// A dump of each form of the database that was released stands in testdata: form-1.sql and so on. One
// is written where it is not there, once, when its form is the newest:
//
//	go test ./lessons/school/served -run EveryForm -dump
//
// By today's program a school is filled, and what the tables of the form had is taken from it. A dump
// that is there is never written again: it is what schools have.
var dumps = flag.Bool("dump", false, "write the dumps of forms that have none")

// migrations are the steps between the forms.
const migrations = "../../postgres/migrations"

// What is in each dump, besides two records.
const (
	dumpRoom   = "ACDEFH"
	dumpKey    = "MDEyMzQ1Njc4OTAxMjM0NTY3ODkwMTIzNDU2Nzg5MDE=" // a key that seals nothing of anyone's
	dumpToken  = "session.secret"
	dumpAnswer = "0.05 in"
)

// dumpTime is when someone signed on who is signed on in a dump.
var dumpTime = time.Date(2026, 11, 27, 9, 0, 0, 0, time.UTC)

func dumpOf(form int) string { return fmt.Sprintf("testdata/form-%d.sql", form) }

// dumped is the school of the dumps.
func dumped(t *testing.T, address string) campus {
	t.Helper()
	c := campusAt(t, address)
	var err error
	if c.seal, err = school.NewSeal(dumpKey); err != nil {
		t.Fatal(err)
	}
	return c
}

// writeDump fills a school, and writes what a form had of it.
func writeDump(t *testing.T, form int) {
	t.Helper()
	server := postgrestest.NewCluster(t)
	newDatabase(server)
	address := server.Address("scratchpass", "scratchpass")
	n := dumped(t, address).node(t)
	fill(t, record.In(n.db, ada))
	fill(t, record.In(n.db, ben))
	roster := []class.Apprentice{{ID: "a1", Name: "Ada Brook"}, {ID: "b2", Name: "Ben Carr"}}
	l, err := n.hall.Begin(t.Context(), class.Head{Code: dumpRoom, Title: "Dumped", Group: "turning-1", Roster: roster}, "set: x\ntitle: Dumped\nunits: in\nslots:\n- {tasks: [compound-travel]}\n", class.Together)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range []class.Event{{Kind: class.Joined, Who: "a1", Text: "phone"}, {Kind: class.Opened}, {Kind: class.Answered, Who: "a1", Text: dumpAnswer, Key: "a1 one"}} {
		if err := l.Do(t.Context(), e); err != nil {
			t.Fatal(err)
		}
	}
	clock := func() time.Time { return dumpTime }
	p := school.Person{ID: ada, Name: "Ada", Groups: []string{"first-year"}}
	_, err = school.Sessions{DB: n.db, Clock: clock}.Begin(t.Context(), p)
	if err := errors.Join(err, school.Audit{DB: n.db, Clock: clock}.Note(t.Context(), p, school.SignedOn, "-")); err != nil {
		t.Fatal(err)
	}
	id, secret, _ := strings.Cut(dumpToken, ".")
	hash := sha256.Sum256([]byte(secret))
	if _, err := n.db.Exec("UPDATE sessions SET id = $1, hash = $2", id, hex.EncodeToString(hash[:])); err != nil {
		t.Fatal(err)
	}
	name := fmt.Sprint("form_", form)
	if _, err := n.db.Exec("CREATE SCHEMA " + name); err != nil {
		t.Fatal(err)
	}
	takeTo(t, address+"?search_path="+url.QueryEscape(name), form)
	copyTables(t, n.db, name)
	dump := filepath.Join(server.Folder, "dump.sql")
	server.Run("pg_dump", "--schema="+name, "--inserts", "--no-owner", "--no-privileges", "--file="+dump, "scratchpass")
	text, err := os.ReadFile(dump)
	if err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	for line := range strings.Lines(string(text)) { // what is a client's, and what names the schema, goes
		if line = strings.ReplaceAll(line, name+".", ""); strings.TrimSpace(line) != "" && !strings.HasPrefix(line, "--") && !strings.HasPrefix(line, `\`) &&
			!strings.HasPrefix(line, "SET ") && !strings.HasPrefix(line, "SELECT pg_catalog.set_config") && !strings.HasPrefix(line, "CREATE SCHEMA") {
			out.WriteString(line)
		}
	}
	if err := os.WriteFile(dumpOf(form), []byte(out.String()), 0o644); err != nil {
		t.Fatal(err)
	}
}

// takeTo brings a database to a form, from none or from an older one.
func takeTo(t *testing.T, address string, form int) {
	t.Helper()
	db, err := sql.Open("pgx", address)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	p, err := goose.NewProvider(goose.DialectPostgres, db, os.DirFS(migrations), goose.WithDisableGlobalRegistry(true))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := p.UpTo(context.Background(), int64(form)); err != nil {
		t.Fatal(err)
	}
}

// copyTables copies what tables of a schema have from those of the newest form.
func copyTables(t *testing.T, db *postgres.DB, schema string) {
	t.Helper()
	rows, err := db.Query("SELECT table_name, string_agg(quote_ident(column_name), ', ' ORDER BY ordinal_position), coalesce(max(column_name) FILTER (WHERE is_identity = 'YES'), '') FROM information_schema.columns WHERE table_schema = $1 AND table_name NOT LIKE 'goose%' GROUP BY table_name ORDER BY max(CASE table_name WHEN 'people' THEN '' ELSE table_name END)", schema)
	if err != nil {
		t.Fatal(err)
	}
	defer rows.Close()
	var statements []string
	for rows.Next() {
		var table, columns, identity string
		if err := rows.Scan(&table, &columns, &identity); err != nil {
			t.Fatal(err)
		}
		to := schema + "." + table
		statements = append(statements, "INSERT INTO "+to+" ("+columns+") OVERRIDING SYSTEM VALUE SELECT "+columns+" FROM public."+table)
		if identity != "" {
			statements = append(statements, "SELECT setval(pg_get_serial_sequence('"+to+"', '"+identity+"'), (SELECT max("+identity+") FROM "+to+"))")
		}
	}
	for _, s := range statements {
		if _, err := db.Exec(s); err != nil {
			t.Fatal(s, err)
		}
	}
}
