package sitting_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"scratchpass/lessons/page"
	"scratchpass/lessons/record"
	"scratchpass/lessons/sitting"
)

// stubborn keeps nothing for so many tries.
type stubborn struct {
	sitting.Book
	fails int
	why   error
	slow  time.Duration
	kept  []string
}

func (b *stubborn) Keep(a record.Answer) error {
	time.Sleep(b.slow)
	if b.fails > 0 {
		b.fails--
		return b.why
	}
	b.kept = append(b.kept, a.Given)
	return nil
}

// listener types these replies and hears what is shown.
type listener struct {
	replies []string
	heard   strings.Builder
}

func (l *listener) Show(p page.Page) error {
	for _, block := range p {
		fmt.Fprintf(&l.heard, "%v\n", block)
	}
	return nil
}

func (l *listener) Ask(q page.Prompt) (string, error) {
	fmt.Fprintf(&l.heard, "%s\n", q.Text)
	if len(l.replies) == 0 {
		return "", page.ErrStopped
	}
	reply := l.replies[0]
	l.replies = l.replies[1:]
	return reply, nil
}

// An answer that can't be kept at once is not lost: it waits, the person is asked, and it is
// kept when they try again. Who gives up is told what was typed. Where nobody sits it is tried
// a few times.
func TestPatience(t *testing.T) {
	busy := fmt.Errorf("kept not: %w", record.ErrBusy)
	full := errors.New("the disk is full")
	for _, row := range []struct {
		name    string
		book    stubborn
		replies []string
		nobody  bool
		kept    bool
		heard   string
	}{
		{name: "at once", kept: true},
		{name: "full, and tried again", book: stubborn{fails: 2, why: full}, replies: []string{"", ""}, kept: true, heard: "It could not be kept: the disk is full"},
		{name: "busy, and tried again", book: stubborn{fails: 1, why: busy}, replies: []string{""}, kept: true, heard: "Press Enter to try again"},
		{name: "out of reach, and tried again", book: stubborn{fails: 1, why: fmt.Errorf("%w (dial tcp)", record.ErrAway)}, replies: []string{""}, kept: true, heard: "It could not be kept: the database is out of reach."},
		{name: "nobody to ask, out of reach for a while", book: stubborn{fails: 2, why: fmt.Errorf("%w (dial tcp)", record.ErrAway)}, nobody: true, kept: true},
		{name: "it goes on elsewhere", book: stubborn{fails: 1, why: fmt.Errorf("kept not: %w", record.ErrElsewhere)}, replies: []string{""}},
		{name: "given up", book: stubborn{fails: 9, why: full}, replies: []string{"", "stop"}},
		{name: "the end of the input", book: stubborn{fails: 9, why: full}},
		{name: "nobody to ask, busy for a while", book: stubborn{fails: 2, why: busy}, nobody: true, kept: true},
		{name: "nobody to ask, busy for long", book: stubborn{fails: 3, why: busy}, nobody: true},
		{name: "nobody to ask, full", book: stubborn{fails: 1, why: full}, nobody: true},
		{name: "slow", book: stubborn{slow: 30 * time.Millisecond}, kept: true, heard: "Another program is using your record"},
	} {
		face := &listener{replies: row.replies}
		s := session(t, face)
		sitting.SaidAfter(t, time.Millisecond)
		s.Attended = !row.nobody
		s.KeepIn(&row.book, nil)
		err := s.Book.Keep(record.Answer{Given: "0.0613"})
		if row.kept != (err == nil) || row.kept != (len(row.book.kept) == 1) {
			t.Errorf("%s: %v, kept %v", row.name, err, row.book.kept)
		}
		if !row.kept && (!errors.Is(err, row.book.why) || !strings.Contains(err.Error(), `what was typed and is not kept: "0.0613"`)) {
			t.Errorf("%s: %v", row.name, err)
		}
		if !strings.Contains(face.heard.String(), row.heard) || row.nobody && strings.Contains(face.heard.String(), "Enter") {
			t.Errorf("%s: heard %q", row.name, face.heard.String())
		}
	}
}
