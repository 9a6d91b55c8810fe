package record

import (
	"database/sql"
	"strings"
)

// answersOf adds the answers that are whole.
func (s *salvaged) answersOf(db *sql.DB, version int) {
	if found, err := readAll(db, "SELECT name FROM sqlite_schema WHERE name = 'answers'"); err != nil || len(found) == 0 {
		return
	}
	own := columnsOf(version)
	query := "SELECT id, " + own + " FROM answers NOT INDEXED WHERE id "
	last, most := int64(0), mostIDs(db)
	// In a spoilt file one may go round and round: each page is stepped over once at most.
	for rounds := int64(0); last < most && rounds <= 2*(s.room*leastRow/pageLength+batchRows); rounds++ {
		rows, err := readRows(db, query+"> ? ORDER BY id LIMIT ?", last, batchRows)
		before := last
		for _, w := range rows {
			if w.id > last {
				last = w.id
				s.add(w, version)
			}
		}
		switch {
		case err == nil && len(rows) == 0:
			return
		case err != nil && !Damaged(err): // a column is gone
			return
		case err != nil || last == before:
			last = s.step(db, query, last, most, version)
		}
	}
}

// singly is how many answers are looked for one by one behind a place that can't be read: a
// page has fewer.
const singly = 1000

// step goes over the place that can't be read, an answer at a time and then in longer and
// longer steps, to the first behind it that can be read, and returns its number in the file.
func (s *salvaged) step(db *sql.DB, query string, last, most int64, version int) int64 {
	try := func(where string, id int64) (at int64, ok bool) {
		rows, _ := readRows(db, query+where, id)
		if len(rows) != 1 || rows[0].id <= last {
			return 0, false
		}
		s.add(rows[0], version)
		return rows[0].id, true
	}
	for id := last + 1; id <= min(most, last+singly); id++ {
		if at, ok := try("= ?", id); ok {
			return at
		}
	}
	for far := int64(singly); far <= most-last; far *= 2 {
		if at, ok := try("> ? ORDER BY id LIMIT 1", last+far); ok {
			return at
		}
	}
	return most
}

// add adds an answer that is as it was kept.
func (s *salvaged) add(w row, version int) {
	of := s.answers[w.Learner]
	if of == nil {
		of = map[int64]row{}
	}
	if version < sealedSince { // the forms before had no numbers and no sums
		w.n = int64(len(of)) + 1
		w.sum = w.seal()
	}
	if w.whole() != nil || w.n < 1 || w.Learner == "" {
		return
	}
	if _, there := of[w.n]; !there {
		of[w.n], s.answers[w.Learner] = w, of
	}
}

// sealedSince is the form from which answers have numbers and sums.
const sealedSince = 4

// columnsOf are the columns of an answer in a form, with something for those that it has not.
func columnsOf(version int) string {
	has := strings.Split(columns, ", ")
	for i, name := range has {
		switch {
		case version < sealedSince && (name == "n" || name == "sum"):
			has[i] = "0"
		case version < sealedSince && name == "zone_s":
			has[i] = "CAST(strftime('%s', at_ms / 1000, 'unixepoch', 'localtime') AS INTEGER) - at_ms / 1000"
		case version < 2 && (name == "cause" || name == "form" || name == "answer_key"):
			has[i] = "''"
		}
	}
	return strings.Join(has, ", ")
}

// leastRow is the fewest bytes that an answer takes in a file.
const leastRow = 24

// mostIDs is the highest number in the file that an answer has; where it can't be read, more
// than a school would get to in a hundred years.
func mostIDs(db *sql.DB) (most int64) {
	const never = 1 << 40
	if err := db.QueryRow("SELECT MAX(id) FROM answers").Scan(&most); err == nil && most > 0 && most < never {
		return most
	}
	return never
}

// readRows reads answers as far as they can be read.
func readRows(db *sql.DB, query string, args ...any) (all []row, err error) {
	rows, err := db.Query(query, args...)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	for rows.Next() {
		if w, err := scan(rows); err == nil {
			all = append(all, w)
		}
	}
	return all, rows.Err()
}

// mostRehearsals is how many rehearsals are looked for one by one where not all can be read in a
// row: more than anyone makes.
const mostRehearsals = 10_000

// rehearsalsPast reads the rehearsals that can be read, one by one past those that can't.
func rehearsalsPast(db *sql.DB) (all [][]any) {
	most := int64(mostRehearsals)
	if err := db.QueryRow("SELECT MAX(id) FROM rehearsals").Scan(&most); err != nil || most > mostRehearsals {
		most = mostRehearsals
	}
	for id := range most {
		rows, _ := readAll(db, "SELECT "+rehearsalColumns+" FROM rehearsals NOT INDEXED WHERE id = ?", id+1)
		all = append(all, rows...)
	}
	return all
}

// readAll reads rows of any table as far as they can be read.
func readAll(db queryer, query string, args ...any) (all [][]any, err error) {
	rows, err := db.Query(query, args...)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	names, err := rows.Columns()
	if err != nil {
		return nil, err
	}
	for rows.Next() {
		values, into := make([]any, len(names)), make([]any, len(names))
		for i := range values {
			into[i] = &values[i]
		}
		if err := rows.Scan(into...); err != nil {
			return all, err
		}
		all = append(all, values)
	}
	return all, rows.Err()
}
