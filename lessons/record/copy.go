package record

import (
	"database/sql"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
)

// ErrNotEmpty says that there is something of the learner's already where a record was to be copied
// to.
var ErrNotEmpty = errors.New("there are answers or rehearsals under this name already: export them here and import them there, or give another name with --learner")

// CopyTo copies all that is kept of the learner into another record, with its numbers and sums,
// from a file to a server or back: all of it or nothing. It becomes that of the other record's
// learner where that is the same name; another name is an error, for the sums are over the name
// too. What is there already under that name is never mixed with it.
func (r *Record) CopyTo(to *Record) error {
	if r.Learner != to.Learner {
		return fmt.Errorf("a record of %q can't become that of %q by copying: export and import it", r.Learner, to.Learner)
	}
	return to.change(func(tx *sql.Tx) error {
		for table := range copied {
			if table == "states" { // those of no answers go
				continue
			}
			if err := nothingIn(tx, table, to.Learner); err != nil {
				return err
			}
		}
		if _, err := tx.Exec("DELETE FROM states WHERE learner = $1", to.Learner); err != nil {
			return err
		}
		return r.still(func(q queryer) error { return copyRows(q, tx, r.Learner) })
	})
}

func nothingIn(tx *sql.Tx, table, learner string) error {
	there, err := readAll(tx, "SELECT 1 FROM "+table+" WHERE learner = $1 LIMIT 1", learner)
	if err == nil && len(there) > 0 {
		err = ErrNotEmpty
	}
	return err
}

// still looks at the record while nobody changes it.
func (r *Record) still(look func(q queryer) error) error {
	if r.ReadOnly {
		return look(r.db)
	}
	return r.change(func(tx *sql.Tx) error { return look(tx) })
}

func copyRows(from queryer, to *sql.Tx, learner string) error {
	for _, table := range slices.Sorted(maps.Keys(copied)) {
		rows, err := readAll(from, "SELECT "+copied[table]+" FROM "+table+" WHERE learner = $1 ORDER BY "+inOrderOf(table), learner)
		if err != nil {
			return err
		}
		if err := insertAll(to, table, copied[table], rows); err != nil {
			return err
		}
	}
	return nil
}

// copied are all tables with what is kept of a learner, and their columns.
var copied = func() map[string]string {
	all := maps.Clone(asides)
	all["answers"], all["states"] = columns, "learner, task, state, sum"
	return all
}()

// inOrderOf is what rows of a table are put in order by, so that they come to lie in the order in
// which they were kept.
func inOrderOf(table string) string {
	switch table {
	case "tests":
		return "rowid"
	case "states":
		return "task"
	case "places":
		return "lesson"
	case "begun":
		return "job, job_sum"
	case "moves":
		return "log, n"
	}
	return "n"
}

// insertAll writes rows as they were read.
func insertAll(tx *sql.Tx, table, columns string, rows [][]any) error {
	var marks []string
	for i := range strings.Split(columns, ",") {
		marks = append(marks, "$"+strconv.Itoa(i+1))
	}
	statement, err := tx.Prepare("INSERT INTO " + table + " (" + columns + ") VALUES (" + strings.Join(marks, ", ") + ")")
	if err != nil {
		return err
	}
	defer statement.Close()
	for _, row := range rows {
		if _, err := statement.Exec(row...); err != nil {
			return err
		}
	}
	return nil
}
