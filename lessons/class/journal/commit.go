package journal

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"maps"
	"math/bits"
	"slices"
	"strings"
	"time"

	"scratchpass/lessons/class"
)

// result is what became of one job of a batch.
type result struct {
	kept
	fresh bool // it was not there before
}

// insert numbers and keeps n events: those whose room is there and whose key is not. It tells of each
// that it has kept. PostgreSQL wants to be told what is a number, and looks each of these keys up by
// itself: for EXISTS it may read all keys that there are.
func insert(n int) string {
	var b strings.Builder
	b.WriteString("WITH sent (place_in, room, at_ms, kind, who, in_set, place, n, body, name, certainty, once) AS (VALUES ")
	for i := range n {
		if i > 0 {
			b.WriteString(", ")
		}
		fmt.Fprintf(&b, "(%d", i)
		for k := range values {
			if isNumber[k] {
				fmt.Fprintf(&b, ", CAST($%d AS BIGINT)", i*values+k+1)
				continue
			}
			fmt.Fprintf(&b, ", $%d", i*values+k+1)
		}
		b.WriteString(")")
	}
	b.WriteString(`)
	INSERT INTO events (room, ` + columns + `)
	SELECT room, (SELECT coalesce(max(seq), 0) FROM events e WHERE e.room = sent.room) + row_number() OVER (PARTITION BY room ORDER BY place_in),
		at_ms, kind, who, in_set, place, n, body, name, certainty, once
	FROM sent WHERE (SELECT code FROM rooms WHERE code = sent.room) IS NOT NULL AND (SELECT seq FROM events e WHERE e.room = sent.room AND e.once = sent.once) IS NULL
	RETURNING room, once, seq`)
	return b.String()
}

// values is how many values an event has in an insert; isNumber tells which are numbers.
const values = 11

var isNumber = [values]bool{1: true, 4: true, 5: true, 6: true}

func valuesOf(j job) []any {
	e := j.event
	return []any{j.room, e.At.UnixMilli(), string(e.Kind), e.Who, e.Set, e.Place, e.N, e.Text, e.Name, string(e.Certainty), e.Key}
}

// event names an event among all: no other has its key in its room.
type event struct{ room, key string }

// commit keeps a batch, in as many questions to the database for many events as for one.
func (w *writer) commit(ctx context.Context, batch []job) ([]result, error) {
	var all []any
	n, touched, sent := 0, map[string]bool{}, map[event]bool{}
	for _, j := range batch {
		touched[j.room] = true
		if id := (event{j.room, j.event.Key}); !sent[id] {
			sent[id] = true
			all = append(all, valuesOf(j)...)
			n++
		}
	}
	for ; bits.OnesCount(uint(n)) > 1; n++ { // few different texts: a database need not read them anew
		all = append(all, valuesOf(job{})...) // in no room, so not kept
	}
	tx, err := w.db.BeginTx(ctx, nil)
	if err != nil {
		return nil, err
	}
	defer tx.Rollback() //nolint:errcheck // nothing is to be done where it was committed
	if err := w.engine.lock(ctx, tx, slices.Collect(maps.Keys(touched))); err != nil {
		return nil, err
	}
	seqs, err := inserted(tx.QueryContext(ctx, insert(n), all...))
	if err != nil {
		return nil, err
	}
	results := make([]result, len(batch))
	for i, j := range batch {
		id := event{j.room, j.event.Key}
		if j.event.Seq = seqs[id]; j.event.Seq == 0 {
			if results[i].kept, err = before(ctx, tx, j); err != nil {
				return nil, err
			}
			continue
		}
		delete(seqs, id) // it is told of once
		results[i] = result{kept{event: j.event}, true}
	}
	if w.slow > 0 {
		time.Sleep(w.slow)
	}
	return results, tx.Commit()
}

// inserted are the numbers of the events that an insert has kept.
func inserted(rows *sql.Rows, err error) (map[event]int64, error) {
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	seqs := map[event]int64{}
	for rows.Next() {
		var id event
		var seq int64
		if err := rows.Scan(&id.room, &id.key, &seq); err != nil {
			return nil, err
		}
		seqs[id] = seq
	}
	return seqs, rows.Err()
}

// before is the event that is there already under the key of a job.
func before(ctx context.Context, tx *sql.Tx, j job) (kept, error) {
	e, err := scan(tx.QueryRowContext(ctx, "SELECT "+columns+" FROM events WHERE room = $1 AND once = $2", j.room, j.event.Key))
	if errors.Is(err, sql.ErrNoRows) {
		return kept{j.event, class.ErrNoRoom}, nil
	}
	return kept{event: e}, err
}
