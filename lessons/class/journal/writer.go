package journal

import (
	"cmp"
	"context"
	"database/sql"
	"errors"
	"fmt"
	"maps"
	"math/bits"
	"slices"
	"strings"
	"sync"
	"time"
	"unicode/utf8"

	"scratchpass/lessons/class"
)

// ErrClosed says that the journal takes nothing more.
var ErrClosed = errors.New("the class is closed")

// mostAtOnce is how many events are kept with one sync.
const mostAtOnce = 256

// job is an event that waits to be kept.
type job struct {
	room  string
	event class.Event
	done  chan kept
}

// kept is what became of a job.
type kept struct {
	event class.Event
	err   error
}

// writer keeps events, all that wait with one sync.
type writer struct {
	*rooms
	jobs   chan job
	follow func(room string, events []class.Event)

	slow time.Duration // tests have slow disks

	mu     sync.RWMutex // held for reading by who sends a job
	closed bool
	ended  chan struct{}
}

func newWriter(r *rooms) *writer {
	w := &writer{rooms: r, jobs: make(chan job, mostAtOnce), follow: func(string, []class.Event) {}, ended: make(chan struct{})}
	go w.run()
	return w
}

// append waits until an event is kept. A context that ends gives up waiting: whether it is kept
// is not known then.
func (w *writer) append(ctx context.Context, room string, e class.Event) (class.Event, error) {
	if text := cmp.Or(unkeepable(room), unkeepable(string(e.Kind)), unkeepable(e.Who), unkeepable(e.Text), unkeepable(e.Name), unkeepable(string(e.Certainty)), unkeepable(e.Key)); text != "" {
		return e, fmt.Errorf("%q can't be kept: give text in UTF-8, without NUL", text)
	}
	j := job{room, e, make(chan kept, 1)}
	if err := w.send(ctx, j); err != nil {
		return e, err
	}
	select {
	case k := <-j.done:
		return k.event, k.err
	case <-ctx.Done():
		return e, ctx.Err()
	}
}

// unkeepable is a text that some database does not take; empty for one that all take. In a batch it
// would keep the events of others from being kept.
func unkeepable(text string) string {
	if utf8.ValidString(text) && !strings.Contains(text, "\x00") {
		return ""
	}
	return text
}

func (w *writer) send(ctx context.Context, j job) error {
	w.mu.RLock()
	defer w.mu.RUnlock()
	if w.closed {
		return ErrClosed
	}
	select {
	case w.jobs <- j:
		return nil
	case <-ctx.Done():
		return ctx.Err()
	}
}

// close ends the writer when it has kept what waits.
func (w *writer) close() {
	w.mu.Lock()
	if !w.closed {
		w.closed = true
		close(w.jobs)
	}
	w.mu.Unlock()
	<-w.ended
}

func (w *writer) run() {
	defer close(w.ended)
	for first := range w.jobs {
		batch := append(make([]job, 0, 1+len(w.jobs)), first)
		for more := true; more && len(batch) < mostAtOnce; {
			select {
			case j, ok := <-w.jobs:
				if more = ok; ok {
					batch = append(batch, j)
				}
			default:
				more = false
			}
		}
		w.keep(batch)
	}
}

// keep keeps a batch: all of it or nothing.
func (w *writer) keep(batch []job) {
	ctx, cancel := context.WithTimeout(context.Background(), w.engine.within)
	defer cancel()
	results, err := w.commit(ctx, batch)
	if err = w.engine.seen(err); err != nil {
		for _, j := range batch {
			j.done <- kept{j.event, err}
		}
		return
	}
	fresh, last := map[string][]class.Event{}, map[string]int64{}
	var rooms []string
	for i, j := range batch {
		if !results[i].fresh {
			continue
		}
		if fresh[j.room] == nil {
			rooms = append(rooms, j.room)
		}
		fresh[j.room] = append(fresh[j.room], results[i].event)
		last[j.room] = results[i].event.Seq
	}
	for _, room := range rooms {
		w.follow(room, fresh[room])
	}
	for i, j := range batch {
		j.done <- results[i].kept
	}
	w.engine.kept(last)
}

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
