package record

import (
	"database/sql"
	"encoding/json"
	"fmt"
	"time"

	"scratchpass/quiz/bench"
)

// Rehearsal is one whole job at the bench that was brought to its end, as it is kept. The JSON
// is a line of the export.
type Rehearsal struct {
	Learner  string        `json:"learner"`           // whose it is
	At       time.Time     `json:"at"`                // when it ended; kept to the millisecond
	Begun    time.Time     `json:"begun"`             // when its first move was made; tells two rehearsals of a job apart
	Job      string        `json:"rehearsal"`         // name of the job
	JobSum   string        `json:"job_sum,omitempty"` // of the job's own text, where it does not ship; see SumOfJob
	Thread   string        `json:"thread"`            // as it is written
	Verdict  bench.Verdict `json:"verdict"`           // on the part
	Mistakes []MistakeMade `json:"mistakes"`          // each name once, in the order they were made first
	Seconds  float64       `json:"seconds"`           // at the lathe, by its own clock
	Passes   int           `json:"passes"`
	Room     Room          `json:"room"`           // that was left at the end of its passes
	Hints    int           `json:"hints"`          // that were asked for
	Live     bool          `json:"live,omitempty"` // by the clock, not step by step
}

// MistakeMade is how often a mistake was made in a rehearsal.
type MistakeMade struct {
	Name      string `json:"name"`
	Times     int    `json:"times"`      // that stand
	TakenBack int    `json:"taken_back"` // whose moves were taken back
}

// Room is what was left at the ends of passes when the carriage stood.
type Room struct {
	Passes   int         `json:"passes"` // that came to the end of the thread; without any the rest is 0
	Shortest Way         `json:"shortest"`
	Median   Way         `json:"median"`
	Speeds   []SpeedRoom `json:"speeds"` // the slowest first
}

// Way is a way and what it would have taken.
type Way struct {
	Inches  float64 `json:"inches"`
	Seconds float64 `json:"seconds"`
}

// SpeedRoom is that at one speed of the spindle.
type SpeedRoom struct {
	RPM      float64 `json:"rpm"`
	Passes   int     `json:"passes"`
	Shortest Way     `json:"shortest"`
	Longest  Way     `json:"longest"`
}

// Faultless reports whether the part fits and nothing went wrong, not even what was taken back.
func (x Rehearsal) Faultless() bool { return x.Verdict == bench.Fits && len(x.Mistakes) == 0 }

// MistakesMade is how many mistakes were made, with those that were taken back.
func (x Rehearsal) MistakesMade() (n int) {
	for _, m := range x.Mistakes {
		n += m.Times + m.TakenBack
	}
	return n
}

// rehearsalColumns are those of a rehearsal, in the order in which they are written and summed;
// the order never changes.
const rehearsalColumns = "learner, n, at_ms, zone_s, begun_ms, job, job_sum, thread, verdict, mistakes, seconds, passes, room, hints, live, sum"

// FinishRehearsal keeps a rehearsal that has come to its end, and no longer counts it as begun,
// both or neither. It becomes that of the record's learner. One that is there already, by when
// it was begun, is kept once.
func (r *Record) FinishRehearsal(x Rehearsal) error {
	x.Learner = r.Learner
	err := r.change(func(tx *sql.Tx) error {
		if _, err := addRehearsal(tx, x); err != nil {
			return err
		}
		_, err := tx.Exec("DELETE FROM begun WHERE learner = $1 AND job = $2 AND job_sum = $3", x.Learner, x.Job, x.JobSum)
		return err
	})
	if err != nil {
		return fmt.Errorf("the rehearsal could not be kept: %w", err)
	}
	return nil
}

// addRehearsal keeps a rehearsal under the next number, unless it is there already.
func addRehearsal(tx *sql.Tx, x Rehearsal) (added bool, err error) {
	var known bool
	err = tx.QueryRow("SELECT EXISTS (SELECT 1 FROM rehearsals WHERE learner = $1 AND begun_ms = $2 AND job = $3 AND job_sum = $4)", x.Learner, x.Begun.UnixMilli(), x.Job, x.JobSum).Scan(&known)
	if known || err != nil {
		return false, err
	}
	var last int64 // a number is given once, even if its rehearsal was lost
	err = tx.QueryRow("SELECT COALESCE(MAX(n), 0) FROM (SELECT n FROM rehearsals WHERE learner = $1 UNION ALL SELECT n FROM lost_rehearsals WHERE learner = $1) AS given", x.Learner).Scan(&last)
	if err != nil {
		return false, err
	}
	mistakes, err := json.Marshal(append([]MistakeMade{}, x.Mistakes...))
	if err != nil {
		return false, err
	}
	room, err := json.Marshal(x.Room)
	if err != nil {
		return false, err
	}
	values := []any{x.Learner, last + 1, x.At.UnixMilli(), zoneOf(x.At), x.Begun.UnixMilli(), x.Job, x.JobSum, x.Thread, string(x.Verdict), string(mistakes), x.Seconds, x.Passes, string(room), x.Hints, flag(x.Live)}
	_, err = tx.Exec("INSERT INTO rehearsals ("+rehearsalColumns+") VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15, $16)", append(values, sealOf(values...))...)
	return err == nil, err
}

// Rehearsals are those that were brought to their end, in the order they were kept, the oldest
// first.
func (r *Record) Rehearsals() ([]Rehearsal, error) {
	rows, err := readAll(r.db, "SELECT "+rehearsalColumns+" FROM rehearsals WHERE learner = $1 ORDER BY n", r.Learner)
	if err != nil {
		return nil, err
	}
	var all []Rehearsal
	for _, row := range rows {
		x, err := rehearsalOf(row)
		if err != nil {
			return nil, err
		}
		all = append(all, x)
	}
	return all, nil
}

// rehearsalOf is the rehearsal of a row of rehearsalColumns.
func rehearsalOf(row []any) (x Rehearsal, err error) {
	damaged := fmt.Errorf("%w: a rehearsal of %q is not as it was kept", errDamaged, row[0])
	if !wholeRow(row) {
		return x, damaged
	}
	ok := true
	text := func(i int) string { s, is := row[i].(string); ok = ok && is; return s }
	number := func(i int) int64 { n, is := row[i].(int64); ok = ok && is; return n }
	x.Learner, x.At, x.Begun = text(0), moment(number(2), number(3)), time.UnixMilli(number(4))
	x.Job, x.JobSum, x.Thread, x.Verdict = text(5), text(6), text(7), bench.Verdict(text(8))
	if json.Unmarshal([]byte(text(9)), &x.Mistakes) != nil || json.Unmarshal([]byte(text(12)), &x.Room) != nil {
		return x, damaged
	}
	seconds, is := row[10].(float64)
	x.Seconds, x.Passes, x.Hints, x.Live = seconds, int(number(11)), int(number(13)), number(14) != 0
	if !ok || !is {
		return x, damaged
	}
	return x, nil
}
