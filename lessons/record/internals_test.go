package record

import (
	"encoding/json"
	"strings"
	"testing"
	"time"
)

// What tests need to bring about by order what else would happen by chance.

// Exec runs a statement on the record's own connection: a fault put in by a trigger, a
// full disk, no patience with other programs.
func (r *Record) Exec(statement string) error {
	_, err := r.db.Exec(statement)
	return err
}

// Statement is a change of one statement.
func (r *Record) Statement(statement string) error { return r.exec(statement) }

// Setting is a setting of the database on the record's own connection.
func (r *Record) Setting(name string) (value string, err error) {
	err = r.db.QueryRow("PRAGMA " + name).Scan(&value)
	return value, err
}

// Step takes the file from one version to the next.
// Path is the file of the record.
func (r *Record) Path() string { return r.path }

// Unheard adds a line to a sitting as if the program had not heard that it was kept.
func (s *Sittings) Unheard(line []byte) {
	last := s.last
	if err := s.Append(line); err != nil {
		panic(err)
	}
	s.last, s.unsure = last, true
}

// UnheardMoves adds lines to a log, at the first millisecond, as if the program had not heard that they
// were kept.
func (m *Moves) UnheardMoves(lines ...string) {
	last, rows := m.at.last, []line(nil)
	for i, text := range lines {
		rows = append(rows, line{last + 1 + int64(i), text + "\n"})
	}
	if err := m.Append(time.UnixMilli(1), lines...); err != nil {
		panic(err)
	}
	m.at.last, m.unsure = last, rows
}

// Behind takes it that lines from a number on may be there, which the program has not heard of.
func (m *Moves) Behind(n int64) { m.unsure, m.at.last = make([]line, m.at.last-n), n }

func (r *Record) Step(version int) error { return r.step(version) }

// Retry is what opening does while another program holds the file.
func Retry(try func() (bool, error), sleep func(time.Duration)) error { return retry(try, sleep) }

// SetAsideAs sets a record aside under a name.
func SetAsideAs(path, aside string) (string, error) { return setAside(path, aside) }

// Newest is the version of the newest form.
var Newest = len(schemas)

// SchemaOf are the statements that take an empty file to a form, without what is done to its rows.
func SchemaOf(form int) (all string) {
	for _, step := range schemas[:form] {
		all += step.sql + ";"
	}
	return all
}

// QueryRow reads one value on the record's own connection.
func (r *Record) QueryRow(query string, into any) error { return r.db.QueryRow(query).Scan(into) }

// Waits sets how long one waits for who else has the file, while a test runs.
func Waits(t testing.TB, wait time.Duration) {
	before := openWait
	openWait = wait
	t.Cleanup(func() { openWait = before })
}

// Passing sets what is done at the moments at which a kill might leave something half done.
func Passing(do func(moment string)) { passing = do }

// AnswerRow and StateRow are rows of the tables of answers and of summaries as they are kept, with
// their sums: for who writes very many.
func AnswerRow(a Answer, n int64) []any {
	return []any{a.Learner, n, a.At.UnixMilli(), int64(zoneOf(a.At)), a.Task, a.Code, a.Given, string(a.Verdict), a.Slip, a.Cause, a.Points, string(a.Certainty),
		flag(a.Hint), a.Seconds, a.Situation, a.Key, a.Content, row{Answer: a, n: n}.seal()}
}

// StateTexts are summaries as they are kept, and the count of all, by task.
func StateTexts(of map[string]Summary, answers, rule int) (all [][2]string) {
	put := func(task string, state any) {
		text, err := json.Marshal(state)
		if err != nil {
			panic(err)
		}
		all = append(all, [2]string{task, string(text)})
	}
	put(everything, count{answers, rule})
	for task, s := range of {
		put(task, s)
	}
	return all
}

func StateRow(learner, task, text string) []any {
	return []any{learner, task, text, sealOf(learner, task, text)}
}

// AnswerColumns and StateColumns are those of the two.
var AnswerColumns, StateColumns = strings.Split(columns, ", "), strings.Split(copied["states"], ", ")
