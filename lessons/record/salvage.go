package record

import (
	"database/sql"
	"errors"
	"io"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// salvaged is what could be read of a file.
type salvaged struct {
	answers map[string]map[int64]row // by learner and number
	counted map[string][]int64       // what each source says that the number of the learner's last answer is
	others  map[string][][]any       // rows of the other tables
	room    int64                    // how many answers the file has room for: more is no count, but damage
}

// asides are the tables besides those of the answers and what is made of them, with their
// columns.
var asides = map[string]string{
	"places":   "learner, lesson, part, at_ms",
	"tests":    "learner, at_ms, got, of, sum",
	"sittings": "learner, sitting, n, line",
	"lost":     "learner, n, at_ms, said",
}

// belongings are the endings of the files that belong to a database file.
var belongings = []string{"", "-journal", "-wal", "-shm"}

// salvage reads what can be read of a damaged file, past what can't. It works on a copy of
// the file in the folder work: the file itself stays as it is. Where the beginning is
// spoilt, that of a copy of an earlier day stands in for it, or of a new record.
func salvage(path, work string) (salvaged, error) {
	s := salvaged{answers: map[string]map[int64]row{}, counted: map[string][]int64{}, others: map[string][][]any{}}
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
		rows, _ := readAll(r.db, "SELECT "+columns+" FROM "+table) // as far as it goes
		if table == "tests" {
			rows = slices.DeleteFunc(rows, func(row []any) bool { return !wholeTest(row) })
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
		if c[2] != sealOf(learner, everything, text) {
			continue
		}
		if all, err := readState[count]("", text); err == nil {
			s.counted[learner] = append(s.counted[learner], int64(all.Answers)+gone[learner])
		}
	}
	numbers, err := readAll(db, "SELECT learner, MAX(n) FROM answers INDEXED BY answers_by_number GROUP BY learner")
	if err != nil {
		return // half of an index tells nothing
	}
	for _, c := range numbers {
		learner, _ := c[0].(string)
		if n, ok := c[1].(int64); ok {
			s.counted[learner] = append(s.counted[learner], n)
		}
	}
}

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
		case err != nil && !damaged(err): // a column is gone
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

// readAll reads rows of any table as far as they can be read.
func readAll(db queryer, query string) (all [][]any, err error) {
	rows, err := db.Query(query)
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

// merge adds from an older copy what this one has not, and returns how many answers of each
// learner those are.
func (s *salvaged) merge(older salvaged) map[string]int {
	added := map[string]int{}
	for learner, answers := range older.answers {
		if s.answers[learner] == nil {
			s.answers[learner] = map[int64]row{}
		}
		for n, w := range answers {
			if _, there := s.answers[learner][n]; !there {
				s.answers[learner][n] = w
				added[learner]++
			}
		}
	}
	for table, rows := range older.others {
		if len(s.others[table]) == 0 {
			s.others[table] = rows
		}
	}
	return added
}

// gaps are the numbers of a learner's answers that should be there and are not, without
// those that are known to be lost.
func (s salvaged) gaps(learner string) (numbers []int64) {
	known := map[int64]bool{}
	for _, lost := range s.others["lost"] {
		if n, ok := lost[1].(int64); ok && n > 0 && lost[0] == learner {
			known[n] = true
		}
	}
	last := s.last(learner)
	for n := int64(1); n <= last; n++ {
		if _, there := s.answers[learner][n]; !there && !known[n] {
			numbers = append(numbers, n)
		}
	}
	return numbers
}

// last is the number of a learner's last answer as far as it is known: the least that a
// source says, of those that can be, since a source may be spoilt too.
func (s salvaged) last(learner string) int64 {
	there := int64(0)
	for n := range s.answers[learner] {
		there = max(there, n)
	}
	for _, n := range slices.Sorted(slices.Values(s.counted[learner])) {
		if n >= there && n <= there+s.room {
			return n
		}
	}
	return there
}

// learners are those of whom there is anything.
func (s salvaged) learners() []string {
	all := map[string]bool{}
	for name := range s.answers {
		all[name] = true
	}
	for name := range s.counted {
		all[name] = true
	}
	return slices.Sorted(maps.Keys(all))
}
