package journal

import (
	"cmp"
	"context"
	"errors"
	"fmt"
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
