package record_test

import (
	"database/sql"
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"

	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
)

// A dump of each form of a file that was released stands in testdata. One is written where it is not
// there, once, when its form is the newest, and never again:
//
//	go test ./lessons/record -run EveryForm -dump
//
// By today's program a record is filled, and what the tables of the form had is taken from it. The
// first form, of which nothing is left but answers, has a test of its own.
var dumps = flag.Bool("dump", false, "write the dumps of forms that have none")

func dumpOf(form int) string { return fmt.Sprintf("testdata/form-%d.sql", form) }

// ofEverything is a file with something of everything, always the same.
func ofEverything(t *testing.T) *record.Record {
	t.Helper()
	r := withRehearsals(t, filepath.Join(t.TempDir(), "r.db"), 2)
	for n := range 8 {
		a := nth(n)
		a.At, a.Given, a.Hint = a.At.UTC(), "0,0613 \"in\" µ", n == 3
		if err := r.Append(a, schedule.Fold(items)); err != nil {
			t.Fatal(err)
		}
	}
	for _, err := range []error{r.Refold(schedule.Fold(items), rule), r.AddTest(record.Test{At: time.UnixMilli(5), Got: 11, Of: 12}), r.SetPlace("dial-book", 2), r.Sittings().Restart([]byte("{}")), r.Sittings().Append([]byte("x"))} {
		if err != nil {
			t.Fatal(err)
		}
	}
	return r
}

// A file of each form that was released opens, with all that was in it, and goes on.
func TestEveryFormOpens(t *testing.T) {
	in(t, time.UTC) // of older forms it is not known where answers were given
	for form := 2; form <= record.Newest; form++ {
		text, err := os.ReadFile(dumpOf(form))
		if errors.Is(err, os.ErrNotExist) && *dumps {
			text = []byte(dump(t, form))
			err = os.WriteFile(dumpOf(form), text, 0o644)
		}
		if errors.Is(err, os.ErrNotExist) && form == record.Newest {
			continue // it is not released yet
		}
		if err != nil {
			t.Fatal("no dump of a form that was released; write it with -dump: ", err)
		}
		path := filepath.Join(t.TempDir(), "old.db")
		do(t, path, string(text))
		r := open(t, path, "Ada")
		if r.Mended != nil {
			t.Errorf("form %d: it was taken for damaged", form)
		}
		if needs, err := r.NeedsRefold(rule); err != nil || needs != (form < 4) { // sums of summaries came then
			t.Errorf("form %d: summaries are to be made anew: %v, %v", form, needs, err)
		}
		if form < 4 {
			if err := r.Refold(schedule.Fold(items), rule); err != nil {
				t.Fatal(err)
			}
		}
		want, got := all(t, ofEverything(t)), all(t, r)
		if form < 5 { // rehearsals came then
			want[0], want[5] = want[0][:strings.Index(want[0], `{"learner":"Ada","at":"2023-11-14T22:28:20Z","begun"`)], "null"
		}
		if form < 3 { // and sittings
			want[6] = ""
		}
		if !reflect.DeepEqual(got, want) {
			t.Errorf("form %d: %q\nnot %q", form, got, want)
		}
		if err := r.Append(nth(100), schedule.Fold(items)); err != nil {
			t.Fatal(err)
		}
		sound(t, r, 9)
		r.Close()
		if r, err = record.OpenChecked(path, "Ada"); err != nil || r.Mended != nil {
			t.Errorf("form %d: after it went on: %v", form, err)
		}
		r.Close()
	}
}

// dump is what a form has of a filled record, as statements that make a file of it.
func dump(t *testing.T, form int) string {
	t.Helper()
	newest := ofEverything(t)
	db, err := sql.Open("sqlite", filepath.Join(t.TempDir(), "old.db"))
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	db.SetMaxOpenConns(1)
	if _, err := db.Exec(record.SchemaOf(form) + "ATTACH '" + newest.Path() + "' AS newest"); err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	texts := func(query string, values ...any) (all []string) {
		rows, err := db.Query(query, values...)
		if err != nil {
			t.Fatal(query, err)
		}
		defer rows.Close()
		for rows.Next() {
			var text string
			if err := rows.Scan(&text); err != nil {
				t.Fatal(err)
			}
			all = append(all, text)
		}
		return all
	}
	for _, statement := range texts("SELECT sql FROM main.sqlite_master WHERE sql IS NOT NULL ORDER BY type DESC, name") {
		out.WriteString(statement + ";\n")
	}
	for _, table := range texts("SELECT name FROM main.sqlite_master WHERE type = 'table' ORDER BY name") {
		columns := texts("SELECT name FROM pragma_table_info(?)", table)
		for _, values := range texts("SELECT " + "quote(" + strings.Join(columns, ") || ', ' || quote(") + ") FROM newest." + table) {
			out.WriteString("INSERT INTO " + table + " (" + strings.Join(columns, ", ") + ") VALUES (" + values + ");\n")
		}
	}
	for _, id := range texts("PRAGMA main.application_id") {
		out.WriteString("PRAGMA application_id = " + id + ";\n")
	}
	return out.String() + fmt.Sprintf("PRAGMA user_version = %d;\n", form)
}
