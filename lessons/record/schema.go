package record

import (
	"database/sql"
	"fmt"
)

// step is one step of the form of a file.
type step struct {
	sql   string
	after func(tx *sql.Tx) error // what SQL alone can't do; nil where there is nothing
}

// schemas are the steps from an empty file to the newest form, in order. A step is
// never changed once it has been released: a record from any of them still opens.
var schemas = []step{
	{sql: `CREATE TABLE answers (
		id INTEGER PRIMARY KEY, learner TEXT NOT NULL, at_ms INTEGER NOT NULL, task TEXT NOT NULL, code TEXT NOT NULL,
		given TEXT NOT NULL, verdict TEXT NOT NULL, slip TEXT NOT NULL, points REAL NOT NULL, certainty TEXT NOT NULL,
		hint INTEGER NOT NULL, seconds REAL NOT NULL, content TEXT NOT NULL);
	CREATE INDEX answers_by_learner ON answers (learner, id);`},
	{sql: `ALTER TABLE answers ADD COLUMN cause TEXT NOT NULL DEFAULT '';
	ALTER TABLE answers ADD COLUMN form TEXT NOT NULL DEFAULT '';
	ALTER TABLE answers ADD COLUMN answer_key TEXT NOT NULL DEFAULT '';
	CREATE INDEX answers_by_time ON answers (learner, at_ms);
	CREATE TABLE states (learner TEXT NOT NULL, task TEXT NOT NULL, state TEXT NOT NULL, PRIMARY KEY (learner, task));
	CREATE TABLE tests (learner TEXT NOT NULL, at_ms INTEGER NOT NULL, got INTEGER NOT NULL, of INTEGER NOT NULL);
	CREATE TABLE places (learner TEXT NOT NULL, lesson TEXT NOT NULL, part INTEGER NOT NULL, at_ms INTEGER NOT NULL, PRIMARY KEY (learner, lesson));`},
	{sql: `CREATE TABLE sittings (learner TEXT NOT NULL, sitting INTEGER NOT NULL, n INTEGER NOT NULL, line TEXT NOT NULL, PRIMARY KEY (learner, sitting, n));`},
	{sql: `ALTER TABLE answers ADD COLUMN n INTEGER NOT NULL DEFAULT 0;
	ALTER TABLE answers ADD COLUMN zone_s INTEGER NOT NULL DEFAULT 0;
	ALTER TABLE answers ADD COLUMN sum INTEGER NOT NULL DEFAULT 0;
	UPDATE answers SET n = numbered.n FROM (SELECT id, ROW_NUMBER() OVER (PARTITION BY learner ORDER BY id) AS n FROM answers) AS numbered WHERE answers.id = numbered.id;
	DROP INDEX answers_by_learner;
	CREATE UNIQUE INDEX answers_by_number ON answers (learner, n);
	CREATE TABLE lost (learner TEXT NOT NULL, n INTEGER NOT NULL, at_ms INTEGER NOT NULL, said INTEGER NOT NULL, PRIMARY KEY (learner, n));
	ALTER TABLE states ADD COLUMN sum INTEGER NOT NULL DEFAULT 0;
	ALTER TABLE tests ADD COLUMN sum INTEGER NOT NULL DEFAULT 0;
	PRAGMA application_id = ` + fmt.Sprint(applicationID), after: sealAll},
	{sql: `CREATE TABLE rehearsals (
		id INTEGER PRIMARY KEY, learner TEXT NOT NULL, n INTEGER NOT NULL, at_ms INTEGER NOT NULL, zone_s INTEGER NOT NULL, begun_ms INTEGER NOT NULL,
		job TEXT NOT NULL, job_sum TEXT NOT NULL, thread TEXT NOT NULL, verdict TEXT NOT NULL, mistakes TEXT NOT NULL, seconds REAL NOT NULL,
		passes INTEGER NOT NULL, room TEXT NOT NULL, hints INTEGER NOT NULL, live INTEGER NOT NULL, sum INTEGER NOT NULL);
	CREATE UNIQUE INDEX rehearsals_by_number ON rehearsals (learner, n);
	CREATE TABLE lost_rehearsals (learner TEXT NOT NULL, n INTEGER NOT NULL, at_ms INTEGER NOT NULL, said INTEGER NOT NULL, PRIMARY KEY (learner, n));
	CREATE TABLE begun (learner TEXT NOT NULL, job TEXT NOT NULL, job_sum TEXT NOT NULL, thread TEXT NOT NULL, at_ms INTEGER NOT NULL, hints INTEGER NOT NULL, PRIMARY KEY (learner, job, job_sum));`},
	{sql: `CREATE TABLE moves (
		learner TEXT NOT NULL, log INTEGER NOT NULL, n INTEGER NOT NULL, job TEXT NOT NULL, job_sum TEXT NOT NULL, at_ms INTEGER NOT NULL, line TEXT NOT NULL,
		PRIMARY KEY (learner, log, n));`},
}

// applicationID is the number that says whose file a database is: the letters Scps.
// Source: the SQLite database file format, offset 68.
const applicationID = 0x53637073

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
	case r.ReadOnly:
		return false, fmt.Errorf("the record is of an older form (%d of %d), and can't be brought to the newest: it may only be read", version, len(schemas))
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
		if _, err := tx.Exec(schemas[version].sql); err != nil {
			return err
		}
		if after := schemas[version].after; after != nil {
			if err := after(tx); err != nil {
				return err
			}
		}
		_, err := tx.Exec(fmt.Sprintf("PRAGMA user_version = %d", version+1))
		return err
	})
}
