package record

import (
	"database/sql"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
)

// asides are the tables besides those of the answers and what is made of them, with their
// columns.
var asides = map[string]string{
	"places":   "learner, lesson, part, at_ms",
	"tests":    "learner, at_ms, got, of, sum",
	"sittings": "learner, sitting, n, line",
	"lost":     "learner, n, at_ms, said",

	"rehearsals":      rehearsalColumns,
	"lost_rehearsals": "learner, n, at_ms, said",
	"begun":           "learner, job, job_sum, thread, at_ms, hints",
	"moves":           moveColumns,
}

// summed are those of them whose rows have a sum over the rest, the last of their columns.
var summed = []string{"tests", "rehearsals"}

// belongings are the endings of the files that belong to a database file.
var belongings = []string{"", "-journal", "-wal", "-shm"}

// salvage reads what can be read of a damaged file, past what can't. It works on a copy of
// the file in the folder work: the file itself stays as it is. Where the beginning is
// spoilt, that of a copy of an earlier day stands in for it, or of a new record.
func salvage(path, work string) (salvaged, error) {
	s := salvaged{answers: map[string]map[int64]row{}, counted: map[string][]int64{}, rehearsed: map[string][]int64{}, others: map[string][][]any{}}
	at := filepath.Join(work, "damaged.db")
	for _, ending := range belongings[:3] { // what programs share while they run tells nothing
		if err := copyFile(path+ending, at+ending); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return s, err
		}
	}
	info, err := os.Stat(at)
	if err != nil {
		return s, err
	}
	s.room = info.Size() / leastRow
	s.from(at)
	for _, whole := range []string{path + copyEnding, filepath.Join(work, "new.db")} {
		if len(s.counted) > 0 { // all that is read by way of the list of the tables was
			break
		}
		if err := s.fromWith(whole, at); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return s, err
		}
	}
	return s, nil
}

// fromWith adds what can be read of a file with the first page of another in place of its own.
func (s *salvaged) fromWith(whole, at string) error {
	if filepath.Dir(whole) == filepath.Dir(at) { // none that there is: as good as any that never had another form
		r, err := open(whole, "")
		if err != nil {
			return err
		}
		if err := r.db.Close(); err != nil {
			return err
		}
	}
	if err := transplant(whole, at); err != nil {
		return err
	}
	s.from(at)
	return nil
}

// copyFile copies a file under a name that is not taken.
func copyFile(from, to string) (err error) {
	in, err := os.Open(from)
	if err != nil {
		return err
	}
	defer in.Close()
	out, err := os.OpenFile(to, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o600)
	if err != nil {
		return err
	}
	if _, err = io.Copy(out, in); err == nil {
		err = out.Sync()
	}
	return errors.Join(err, out.Close())
}

// Where the length of the file stands in its first page, in pages, and how long a page is
// unless someone has said otherwise. Source: the SQLite database file format, section 1.3.
const (
	lengthAt   = 28
	pageLength = 4096
)

// transplant writes the first page of one database over that of another of the same kind. It
// has the list of the tables and where each begins, which stays the same for years.
func transplant(from, to string) error {
	page := make([]byte, pageLength)
	in, err := os.Open(from)
	if err != nil {
		return err
	}
	defer in.Close()
	if _, err := io.ReadFull(in, page); err != nil {
		return err
	}
	clear(page[lengthAt : lengthAt+4]) // then it is as long as the file is
	out, err := os.OpenFile(to, os.O_WRONLY, 0)
	if err != nil {
		return err
	}
	_, err = out.WriteAt(page, 0)
	return errors.Join(err, out.Close())
}

// from adds what can be read of a file; what can't be opened has nothing.
func (s *salvaged) from(path string) {
	r, err := connect(path, "", "")
	if err != nil {
		return
	}
	defer r.db.Close()
	var version int
	if err := r.db.QueryRow("PRAGMA user_version").Scan(&version); err != nil {
		return
	}
	s.answersOf(r.db, version)
	for table, columns := range asides {
		rows, err := readAll(r.db, "SELECT "+columns+" FROM "+table) // as far as it goes
		if table == "rehearsals" && Damaged(err) {
			rows = rehearsalsPast(r.db)
		}
		if slices.Contains(summed, table) {
			rows = slices.DeleteFunc(rows, func(row []any) bool { return !wholeRow(row) })
		}
		if table == "lost" || table == "lost_rehearsals" { // a page that is another's gives numbers that are none
			rows = slices.DeleteFunc(rows, func(row []any) bool { return numberOf(row) < 1 })
		}
		if len(rows) > 0 {
			s.others[table] = rows
		}
	}
	s.count(r.db)
}

// count adds what two sources, which lie in other places than the answers, say of how many
// there are: the summaries and an index.
func (s *salvaged) count(db *sql.DB) {
	gone := map[string]int64{}
	for _, lost := range s.others["lost"] {
		if learner, ok := lost[0].(string); ok {
			gone[learner]++
		}
	}
	states, _ := readAll(db, "SELECT learner, state, sum FROM states WHERE task = ''")
	for _, c := range states {
		learner, _ := c[0].(string)
		text, _ := c[1].(string)
		sum, _ := c[2].(int64)
		if all, err := readState[count](learner, everything, text, sum); err == nil {
			s.counted[learner] = append(s.counted[learner], int64(all.Answers)+gone[learner])
		}
	}
	numbered(db, "answers", s.counted)
	numbered(db, "rehearsals", s.rehearsed)
}

// numbered adds what the index over the numbers of a table says that the last of each learner is.
func numbered(db *sql.DB, table string, counted map[string][]int64) {
	numbers, err := readAll(db, "SELECT learner, MAX(n) FROM "+table+" INDEXED BY "+table+"_by_number GROUP BY learner")
	if err != nil {
		return // half of an index tells nothing
	}
	for _, c := range numbers {
		learner, _ := c[0].(string)
		if n, ok := c[1].(int64); ok {
			counted[learner] = append(counted[learner], n)
		}
	}
}
