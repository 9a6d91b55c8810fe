package served_test

import (
	"context"
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"scratchpass/lessons/class"
)

// far is a journal that may be out of reach. Nobody shares it.
type far struct {
	class.Journal

	away   atomic.Bool
	notice func(error)
}

var errCable = errors.New("someone has pulled the cable")

// reached is how anything that is asked ends.
func (f *far) reached() error {
	if f.away.Load() {
		return fmt.Errorf("%w: %w", class.ErrAway, errCable)
	}
	return nil
}

// goes lets it go out of reach, or come back.
func (f *far) goes(away bool) {
	f.away.Store(away)
	f.notice(f.reached())
}

func (f *far) Notice(do func(error)) { f.notice = do }

func (f *far) Head(ctx context.Context, room string) (class.Head, error) {
	if err := f.reached(); err != nil {
		return class.Head{}, err
	}
	return f.Journal.Head(ctx, room)
}

func (f *far) After(ctx context.Context, room string, seq int64) ([]class.Event, error) {
	if err := f.reached(); err != nil {
		return nil, err
	}
	return f.Journal.After(ctx, room, seq)
}

func (f *far) Append(ctx context.Context, room string, e class.Event) (class.Event, error) {
	if err := f.reached(); err != nil {
		return e, err
	}
	return f.Journal.Append(ctx, room, e)
}

func (f *far) Hear(context.Context, func(string, int64), func()) {}

func (f *far) Last(ctx context.Context, rooms []string) (map[string]int64, error) {
	last := map[string]int64{}
	for _, room := range rooms {
		events, err := f.Journal.After(ctx, room, 0)
		if err != nil {
			return nil, err
		}
		last[room] = int64(len(events))
	}
	return last, nil
}

// While the database is out of reach, what a phone sends waits for it: it is told to send again, and
// that counts once. All pages go on with what was there. The log and the instructor's page say so
// once.
func TestDatabaseAway(t *testing.T) {
	f := &far{}
	s := &shop{t: t, in: inFile(t), clock: time.Now}
	s.by = func(j class.Journal) class.Journal { f.Journal = j; return f }
	s.start(&class.Head{Code: roomCode, Key: privateKey, Title: "Before your first thread", Roster: people(2)}, withRules(""), class.Together)
	t.Cleanup(func() { s.stop() })
	p, desk := s.phone(), s.phone()
	p.comesIn(people(1)[0].Name)
	s.do("open", "place", "0")
	desk.get("/desk/" + roomCode + "?key=" + privateKey)
	deskSays := func(want bool) {
		t.Helper()
		status, page := desk.get("/desk/" + roomCode + "/part")
		if status != http.StatusOK || strings.Contains(page, `data-key="away"`) != want {
			t.Error("the instructor's page: ", status, page)
		}
	}
	deskSays(false)
	f.goes(true)
	deskSays(true)
	again := ""
	p.got = func(r *http.Response, _ string) { again = r.Header.Get("Retry-After") }
	form := url.Values{"set": {"0"}, "place": {"0"}, "answer": {"0.05"}, "key": {"one"}}
	for range 3 {
		if status, said := p.send(http.MethodPost, "answer", form, "application/json"); status != http.StatusServiceUnavailable || again == "" {
			t.Error("an answer: ", status, said, again)
		}
	}
	for _, path := range []string{"", "seat", "/wall/" + roomCode} {
		from := p
		if path != "" && path[0] == '/' {
			from = desk
		}
		if status, page := from.get(path); status != http.StatusOK {
			t.Error(path, status, page)
		}
	}
	if status, _ := s.phone().get("/r/CCCCCC"); status != http.StatusServiceUnavailable {
		t.Error("a room that is not open: ", status)
	}
	f.goes(false)
	deskSays(false)
	for range 2 {
		if status, said := p.send(http.MethodPost, "answer", form, "application/json"); status != http.StatusOK {
			t.Error("an answer, sent again: ", status, said)
		}
	}
	if a, ok := s.kept("idzq-01", 0, 0); !ok || a.Text != "0.05" {
		t.Error(a, ok)
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	if len(s.fails) != 2 || !errors.Is(s.fails[0], errCable) {
		t.Error("the log: ", s.fails)
	}
}
