package record

import (
	"database/sql"
	"fmt"
)

// schemas are the steps from an empty file to the newest form, in order. A step is
// never changed once it has been released: a record from any of them still opens.
var schemas = []string{
	`CREATE TABLE answers (
		id INTEGER PRIMARY KEY, learner TEXT NOT NULL, at_ms INTEGER NOT NULL, task TEXT NOT NULL, code TEXT NOT NULL,
		given TEXT NOT NULL, verdict TEXT NOT NULL, slip TEXT NOT NULL, points REAL NOT NULL, certainty TEXT NOT NULL,
		hint INTEGER NOT NULL, seconds REAL NOT NULL, content TEXT NOT NULL);
	CREATE INDEX answers_by_learner ON answers (learner, id);`,
	`ALTER TABLE answers ADD COLUMN cause TEXT NOT NULL DEFAULT '';
	ALTER TABLE answers ADD COLUMN form TEXT NOT NULL DEFAULT '';
	ALTER TABLE answers ADD COLUMN answer_key TEXT NOT NULL DEFAULT '';
	CREATE INDEX answers_by_time ON answers (learner, at_ms);
	CREATE TABLE states (learner TEXT NOT NULL, task TEXT NOT NULL, state TEXT NOT NULL, PRIMARY KEY (learner, task));
	CREATE TABLE tests (learner TEXT NOT NULL, at_ms INTEGER NOT NULL, got INTEGER NOT NULL, of INTEGER NOT NULL);
	CREATE TABLE places (learner TEXT NOT NULL, lesson TEXT NOT NULL, part INTEGER NOT NULL, at_ms INTEGER NOT NULL, PRIMARY KEY (learner, lesson));`,
	`CREATE TABLE sittings (learner TEXT NOT NULL, sitting INTEGER NOT NULL, n INTEGER NOT NULL, line TEXT NOT NULL, PRIMARY KEY (learner, sitting, n));`,
}

// migrate brings a file one step nearer to the newest form; done is true when it is there.
func (r *Record) migrate() (done bool, err error) {
	var version int
	if err := r.db.QueryRow("PRAGMA user_version").Scan(&version); err != nil {
		return false, err
	}
	switch {
	case version < 0 || version > len(schemas):
		return false, fmt.Errorf("the record was written by a newer program (form %d, this one knows %d): use that one", version, len(schemas))
	case version == len(schemas):
		return true, nil
	}
	return false, r.step(version)
}

// step takes a file from one version to the next, all of it or nothing. Where another
// program has done so in the meantime, there is nothing to do.
func (r *Record) step(version int) error {
	return r.change(func(tx *sql.Tx) error {
		var now int
		if err := tx.QueryRow("PRAGMA user_version").Scan(&now); err != nil || now != version {
			return err
		}
		if _, err := tx.Exec(schemas[version]); err != nil {
			return err
		}
		_, err := tx.Exec(fmt.Sprintf("PRAGMA user_version = %d", version+1))
		return err
	})
}
