package sitting

import (
	"encoding/json"
	"errors"
	"fmt"
	"time"

	"scratchpass/lessons/page"
	"scratchpass/lessons/record"
)

// saidAfter is how long something may wait for another program before that is said. Tests have
// less time.
var saidAfter = time.Second

// triesAlone is how often something is tried, for as long as the record waits each time,
// where nobody sits there who could be asked.
const triesAlone = 3

// KeepIn sets where answers and the sitting are kept. What can't be kept at once, because
// another program uses the record or the disk is full, is said, and what was typed is not
// lost: it is tried again until it is kept or the person gives up. Where nobody sits there who
// could be asked, it is an error after a while.
func (s *Session) KeepIn(book Book, store Store) {
	s.Book, s.Store = patientBook{book, s}, patientStore{store, s}
}

// Patiently does something until it is done or the person gives up, as KeepIn says. typed is
// what would be lost.
func (s *Session) Patiently(typed string, do func() error) error {
	for tries := 1; ; tries++ {
		err := s.saying(do)
		switch {
		case err == nil:
			return nil
		case errors.Is(err, record.ErrElsewhere): // it never will be kept
			return lost(typed, err)
		case !s.Attended && record.Passes(err) && tries < triesAlone:
			continue
		case !s.Attended:
			return lost(typed, err)
		}
		if e := s.tryAgain(err); e != nil {
			return lost(typed, err)
		}
	}
}

// saying does something, and says so when it has to wait.
func (s *Session) saying(do func() error) error {
	done := make(chan error, 1)
	go func() { done <- do() }()
	wait := time.NewTimer(saidAfter)
	defer wait.Stop()
	select {
	case err := <-done:
		return err
	case <-wait.C:
	}
	err := s.Face.Show(page.Page{page.Now{Text: s.Say("say-record-busy")}})
	return errors.Join(<-done, err)
}

// tryAgain asks whether to try again; an error says that the person gives up.
func (s *Session) tryAgain(why error) error {
	for _, known := range []error{record.ErrBusy, record.ErrAway} { // what the database calls that helps nobody here
		if errors.Is(why, known) {
			why = known
		}
	}
	if err := s.Face.Show(page.Page{page.Paragraph{Text: s.Say("say-not-kept", "why", why)}}); err != nil {
		return err
	}
	reply, err := s.Face.Ask(page.Prompt{Text: s.Say("say-try-again"), Takes: page.GoOn{}})
	if word, _ := page.Typed(reply, []string{page.WordStop}); err == nil && word != "" {
		return page.ErrStopped
	}
	return err
}

// lost is the error for what could not be kept; it has what was typed, so that it can be
// typed again.
func lost(typed string, err error) error {
	if typed == "" {
		return err
	}
	return fmt.Errorf("%w; what was typed and is not kept: %q", err, typed)
}

// patientBook is a book that waits.
type patientBook struct {
	Book
	session *Session
}

func (b patientBook) Keep(a record.Answer) error {
	return b.session.Patiently(a.Given, func() error { return b.Book.Keep(a) })
}

func (b patientBook) SetPlace(lesson string, part int) error {
	return b.session.Patiently("", func() error { return b.Book.SetPlace(lesson, part) })
}

func (b patientBook) AddTest(t record.Test) error {
	return b.session.Patiently("", func() error { return b.Book.AddTest(t) })
}

func (b patientBook) BeginRehearsal(x record.Begun) error {
	return b.session.Patiently("", func() error { return b.Book.BeginRehearsal(x) })
}

func (b patientBook) FinishRehearsal(x record.Rehearsal) error {
	return b.session.Patiently("", func() error { return b.Book.FinishRehearsal(x) })
}

// patientStore is a store that waits.
type patientStore struct {
	Store
	session *Session
}

func (s patientStore) Restart(line []byte) error {
	return s.session.Patiently("", func() error { return s.Store.Restart(line) })
}

func (s patientStore) Append(text []byte) error {
	var l line
	if err := json.Unmarshal(text, &l); err != nil {
		return err
	}
	return s.session.Patiently(l.Reply, func() error { return s.Store.Append(text) })
}

func (s patientStore) Note(text []byte) error {
	return s.session.Patiently("", func() error { return s.Store.Note(text) })
}

func (s patientStore) Clear() error { return s.session.Patiently("", s.Store.Clear) }
