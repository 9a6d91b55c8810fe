package journal

import (
	"context"
	"database/sql"
	"fmt"
	"maps"
	"strconv"
	"strings"
	"sync"
	"time"

	"scratchpass/lessons/class"
	"scratchpass/lessons/postgres"
)

// Database is a journal in the database of a school. Several programs may serve its rooms.
type Database struct {
	*rooms
	db *postgres.DB

	hints hints

	mu     sync.Mutex
	away   bool
	notice func(why error)
}

var _ class.Shared = (*Database)(nil)

// patience is how long the database may take for one thing. A phone sends again after 4 seconds.
const patience = 8 * time.Second

// OpenDatabase opens the journal in the database at an address; see postgres.Open.
func OpenDatabase(ctx context.Context, address string) (*Database, error) {
	db, err := postgres.Open(ctx, address)
	if err != nil {
		return nil, err
	}
	return Over(db), nil
}

// Over is the journal in a database that is open. Closing it closes the database.
func Over(db *postgres.DB) *Database {
	d := &Database{db: db, notice: func(error) {}}
	d.hints = newHints(d.tell)
	d.rooms = &rooms{db: db.DB, engine: engine{lock: lock, within: patience, seen: d.seen, kept: d.hints.add}}
	d.writer = newWriter(d.rooms)
	return d
}

// lock locks rooms in the order of their codes: of two programs that want the same ones, neither
// waits for the other while the other waits for it. Statements after it see all that was kept in
// them before. It writes, so that an event which is sent again, and is there already, is acknowledged
// no sooner than a fresh one: where commits wait for another computer to have the log, both wait.
func lock(ctx context.Context, tx *sql.Tx, rooms []string) error {
	_, err := tx.ExecContext(ctx, "SELECT code FROM rooms WHERE code = ANY($1) ORDER BY code FOR UPDATE", rooms)
	return err
}

// seen notices when the database goes out of reach, and when it is back, and says so in an error.
func (d *Database) seen(err error) error {
	gone := postgres.Gone(err)
	if err == nil || gone {
		d.mu.Lock()
		defer d.mu.Unlock()
		if gone {
			err = fmt.Errorf("%w: %w", class.ErrAway, err)
		}
		if d.away != gone {
			d.away = gone
			d.notice(err)
		}
	}
	return err
}

// Notice calls do when the database goes out of reach and when it is back.
func (d *Database) Notice(do func(why error)) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.notice = do
}

// Last are the numbers of the last events of rooms.
func (d *Database) Last(ctx context.Context, rooms []string) (map[string]int64, error) {
	last := map[string]int64{}
	return last, d.each(ctx, func(row scanner) error {
		var code string
		var seq int64
		err := row.Scan(&code, &seq)
		last[code] = seq
		return err
	}, "SELECT code, (SELECT coalesce(max(seq), 0) FROM events WHERE room = code) FROM rooms WHERE code = ANY($1)", rooms)
}

// GoesOn is the latest room that was begun with a kind of event and its text, such as a blueprint that
// was asked, and has not ended; class.ErrNoRoom where there is none.
func (d *Database) GoesOn(ctx context.Context, kind class.Kind, text string) (class.Head, error) {
	all, err := d.heads(ctx, `WHERE EXISTS (SELECT 1 FROM events WHERE room = code AND seq = 1 AND kind = $1 AND body = $2)
		AND coalesce((SELECT kind FROM events WHERE room = code AND kind IN ($3, $4) ORDER BY seq DESC LIMIT 1), '') <> $3
		ORDER BY began_ms DESC, code LIMIT 1`, string(kind), text, string(class.Ended), string(class.Goes))
	if err == nil && len(all) == 0 {
		err = class.ErrNoRoom
	}
	if err != nil {
		return class.Head{}, err
	}
	return all[0], nil
}

// Begin keeps the head of a new room, and which group it is of.
func (d *Database) Begin(ctx context.Context, h class.Head) error {
	return d.begin(ctx, h, "INSERT INTO rooms (code, began_ms, head, of_group) VALUES ($1, $2, $3, $4) ON CONFLICT (code) DO NOTHING", h.Group)
}

// Of are the heads of rooms of a group, so many at most, the latest first.
func (d *Database) Of(ctx context.Context, group string, most int) ([]class.Head, error) {
	return d.heads(ctx, "WHERE of_group = $1 ORDER BY began_ms DESC, code LIMIT $2", group, most)
}

// topic is what programs tell each other: in which room there is which event.
const topic = "rooms"

// tell tells the others of the last events of rooms.
func (d *Database) tell(last map[string]int64) {
	ctx, cancel := context.WithTimeout(context.Background(), patience)
	defer cancel()
	words := make([]string, 0, len(last))
	for room, seq := range last {
		words = append(words, room+":"+strconv.FormatInt(seq, 10))
	}
	_ = d.seen(d.db.Tell(ctx, topic, words)) // a hint: who does not hear it finds the events at the next look
}

// Hear calls heard with what is told, and missed when some may have been missed.
func (d *Database) Hear(ctx context.Context, heard func(room string, seq int64), missed func()) {
	word := func(w string) {
		room, number, _ := strings.Cut(w, ":")
		if seq, err := strconv.ParseInt(number, 10, 64); err == nil {
			heard(room, seq)
		}
	}
	// What goes wrong is left to whoever asks for something: that tells whether the database is away.
	d.db.Listen(ctx, topic, word, missed, func(error) {})
}

// Close ends the writer when it has kept what waits, and leaves the database.
func (d *Database) Close() error {
	d.writer.close()
	d.hints.close()
	return d.db.Close()
}

// hints are the last events of rooms of which others are to be told: all that have come together
// at once, in a line of their own, so that nothing is kept later for it.
type hints struct {
	some  chan struct{} // has something when there are any
	close func()        // ends it when all was told

	mu   *sync.Mutex
	last map[string]int64
}

func newHints(tell func(map[string]int64)) hints {
	some, ended := make(chan struct{}, 1), make(chan struct{})
	h := hints{some, sync.OnceFunc(func() { close(some); <-ended }), &sync.Mutex{}, map[string]int64{}}
	go func() {
		defer close(ended)
		for range some {
			tell(h.take())
		}
	}()
	return h
}

// add adds some.
func (h hints) add(last map[string]int64) {
	if len(last) == 0 {
		return
	}
	h.mu.Lock()
	defer h.mu.Unlock()
	maps.Copy(h.last, last)
	select {
	case h.some <- struct{}{}:
	default: // those before have not been told yet
	}
}

func (h hints) take() map[string]int64 {
	h.mu.Lock()
	defer h.mu.Unlock()
	taken := maps.Clone(h.last)
	clear(h.last)
	return taken
}
