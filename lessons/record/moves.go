package record

import (
	"database/sql"
	"encoding/json"
	"errors"
	"strings"
	"time"
)

// Log is what was done in one rehearsal, move by move.
type Log struct {
	ID          int64  // tells it apart from all others of the learner's; of two the later one has the higher; 0 for none
	Job, JobSum string // as of a Rehearsal
	Text        string // its lines, as bench.ParseScript reads them, each with its end
	At          time.Time
	last        int64 // the number of its last row
}

// Moves keeps the moves of a learner's rehearsals of a job, line by line, where there is no file for
// them on one computer. A line that was taken without an error survives whatever happens next. Nobody
// holds a log: of two programs that go on with one, the one that is behind hears so, and so does who
// goes on with one after another was begun.
type Moves struct {
	record   *Record
	job, sum string
	at       Log    // the log at hand; its text is not kept up
	unsure   []line // which may be there already: that was not heard
}

// line is a row of a log.
type line struct {
	n    int64
	text string
}

// Moves returns where the moves of rehearsals of a job are kept.
func (r *Record) Moves(job, jobSum string) *Moves { return &Moves{record: r, job: job, sum: jobSum} }

// Newest is the log of the last rehearsal of the job, whether it came to its end or not.
func (m *Moves) Newest() (Log, error) {
	logs, err := m.record.logs("log = (SELECT MAX(log) FROM moves WHERE learner = $1 AND job = $2 AND job_sum = $3)", m.job, m.sum)
	if err != nil || len(logs) == 0 {
		return Log{}, err
	}
	return logs[0], nil
}

// Use takes a log at hand, by its name: what is added then is added to it. One that has no line yet
// is begun by the first that is added, and has no text.
func (m *Moves) Use(id int64) (Log, error) {
	logs, err := m.record.logs("log = $2", id)
	if err != nil {
		return Log{}, err
	}
	m.at, m.unsure = Log{ID: id, Job: m.job, JobSum: m.sum, last: -1}, nil
	if len(logs) > 0 {
		m.at = logs[0]
	}
	return m.at, nil
}

// New is a name for a log that is to be begun, later than any that there is.
func (m *Moves) New() (id int64, err error) {
	var newest sql.NullInt64
	err = m.record.db.QueryRow("SELECT MAX(log) FROM moves WHERE learner = $1", m.record.Learner).Scan(&newest)
	return max(time.Now().UnixNano(), newest.Int64+1), err
}

// Renew gives a log that is to be gone on with another name: then it is the latest, and who has it by
// the name before hears that it goes on elsewhere.
func (m *Moves) Renew(id int64) (renewed int64, err error) {
	err = m.record.change(func(tx *sql.Tx) error {
		var newest int64
		if err := tx.QueryRow("SELECT COALESCE(MAX(log), 0) FROM moves WHERE learner = $1", m.record.Learner).Scan(&newest); err != nil {
			return err
		}
		renewed = max(time.Now().UnixNano(), newest+1)
		result, err := tx.Exec("UPDATE moves SET log = $1 WHERE learner = $2 AND log = $3", renewed, m.record.Learner, id)
		if err != nil {
			return err
		}
		if n, err := result.RowsAffected(); err != nil || n == 0 {
			return errors.Join(err, ErrElsewhere)
		}
		return nil
	})
	return renewed, err
}

// Append adds lines to the log at hand, all of them or none. The first ones of a log begin it; logs
// of earlier rehearsals of the job stay, each in one row from then on.
func (m *Moves) Append(at time.Time, lines ...string) error {
	rows := make([]line, len(lines))
	for i, text := range lines {
		rows[i] = line{m.at.last + 1 + int64(i), text + "\n"}
	}
	err := m.record.change(func(tx *sql.Tx) error { return m.add(tx, at.UnixMilli(), rows) })
	if m.unsure = rows; err == nil {
		m.at.last, m.unsure = m.at.last+int64(len(rows)), nil
	}
	return err
}

func (m *Moves) add(tx *sql.Tx, at int64, rows []line) error {
	var log, n int64
	err := tx.QueryRow("SELECT log, n FROM moves WHERE learner = $1 ORDER BY log DESC, n DESC LIMIT 1", m.record.Learner).Scan(&log, &n)
	if err != nil && !errors.Is(err, sql.ErrNoRows) {
		return err
	}
	switch {
	case log == m.at.ID && n == m.at.last: // it goes on
	case m.at.last < 0 && log < m.at.ID:
		if err := m.pack(tx); err != nil {
			return err
		}
	case log == m.at.ID && n == m.at.last+int64(len(m.unsure)) && len(m.unsure) > 0:
		return m.heard(tx, rows)
	default:
		return ErrElsewhere
	}
	for _, l := range rows {
		if _, err := tx.Exec("INSERT INTO moves ("+moveColumns+") VALUES ($1, $2, $3, $4, $5, $6, $7)", m.record.Learner, m.at.ID, l.n, m.job, m.sum, at, l.text); err != nil {
			return err
		}
	}
	return nil
}

// heard finds whether what is to be added is what may be there already: else another program has added
// to the log.
func (m *Moves) heard(tx *sql.Tx, rows []line) error {
	there, err := readAll(tx, "SELECT n, line FROM moves WHERE learner = $1 AND log = $2 AND n > $3 ORDER BY n", m.record.Learner, m.at.ID, m.at.last)
	if err != nil {
		return err
	}
	same := len(there) == len(rows)
	for i := 0; same && i < len(rows); i++ {
		same = there[i][0] == rows[i].n && there[i][1] == rows[i].text
	}
	if !same {
		return ErrElsewhere
	}
	return nil
}

// pack puts each log of the job into one row: nothing is added to them any more.
func (m *Moves) pack(tx *sql.Tx) error {
	logs, err := logsIn(tx, m.record.Learner, "log IN (SELECT log FROM moves WHERE learner = $1 AND job = $2 AND job_sum = $3 AND n > 0)", m.job, m.sum)
	if err != nil {
		return err
	}
	for _, l := range logs {
		if _, err := tx.Exec("DELETE FROM moves WHERE learner = $1 AND log = $2 AND n > 0", m.record.Learner, l.ID); err != nil {
			return err
		}
		if _, err := tx.Exec("UPDATE moves SET line = $1, at_ms = $2 WHERE learner = $3 AND log = $4", l.Text, l.At.UnixMilli(), m.record.Learner, l.ID); err != nil {
			return err
		}
	}
	return nil
}

const moveColumns = "learner, log, n, job, job_sum, at_ms, line"

// Logs are all of the learner's, in the order in which they were begun or gone on with.
func (r *Record) Logs() ([]Log, error) { return r.logs("1 = 1") }

func (r *Record) logs(which string, args ...any) ([]Log, error) {
	return logsIn(r.db, r.Learner, which, args...)
}

func logsIn(q queryer, learner, which string, args ...any) (logs []Log, err error) {
	rows, err := readAll(q, "SELECT log, n, job, job_sum, at_ms, line FROM moves WHERE learner = $1 AND "+which+" ORDER BY log, n", append([]any{learner}, args...)...)
	var text strings.Builder
	for i, row := range rows {
		number := func(i int) int64 { n, _ := row[i].(int64); return n }
		words := func(i int) string { s, _ := row[i].(string); return s }
		text.WriteString(words(5))
		if i+1 < len(rows) && rows[i+1][0] == row[0] {
			continue
		}
		logs = append(logs, Log{ID: number(0), Job: words(2), JobSum: words(3), Text: text.String(), At: time.UnixMilli(number(4)), last: number(1)})
		text.Reset()
	}
	return logs, err
}

// logPart is a part of a log as the export has it.
type logPart struct {
	Learner string    `json:"learner"`
	At      time.Time `json:"at"`    // when its last move was made
	Log     int64     `json:"log"`   // which; one that goes on over several lines has the same
	Moves   string    `json:"moves"` // its lines
}

// mostOfLog is how many bytes of a log go into a line of the export, or one line of the log: an
// import reads no longer ones.
const mostOfLog = 16 << 10

// parts are a log in so many lines of the export as it takes.
func (l Log) parts(learner string) (parts []logPart) {
	part := logPart{learner, l.At, l.ID, ""}
	for text := range strings.Lines(l.Text) {
		if len(part.Moves) > 0 && len(part.Moves)+len(text) > mostOfLog {
			parts, part.Moves = append(parts, part), ""
		}
		part.Moves += text
	}
	return append(parts, part)
}

// isLog reports whether a line of an export is of a log: it tells what was done, and counts for nothing.
func isLog(text []byte) bool {
	var probe struct {
		Moves *string `json:"moves"`
	}
	return json.Unmarshal(text, &probe) == nil && probe.Moves != nil
}
