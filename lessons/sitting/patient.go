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
// lost: it is tried again until it is kept or the person gives up. person says that someone
// sits there who can be asked; where nobody does, it is an error after a while.
func (s *Session) KeepIn(book Book, store Store, person bool) {
	p := patience{s, person, saidAfter}
	s.Book, s.Store = patientBook{book, p}, patientStore{store, p}
}

// patience is how something is kept that may have to wait.
type patience struct {
	session *Session
	person  bool
	after   time.Duration // it is said
}

// until does something until it is done or the person gives up. typed is what would be lost.
func (p patience) until(typed string, do func() error) error {
	for tries := 1; ; tries++ {
		err := p.saying(do)
		switch {
		case err == nil:
			return nil
		case !p.person && errors.Is(err, record.ErrBusy) && tries < triesAlone:
			continue
		case !p.person:
			return lost(typed, err)
		}
		if e := p.goOn(err); e != nil {
			return lost(typed, err)
		}
	}
}

// saying does something, and says so when it has to wait.
func (p patience) saying(do func() error) error {
	done := make(chan error, 1)
	go func() { done <- do() }()
	wait := time.NewTimer(p.after)
	defer wait.Stop()
	select {
	case err := <-done:
		return err
	case <-wait.C:
	}
	err := p.session.Face.Show(page.Page{page.Aside{Text: p.session.Say("say-record-busy")}})
	return errors.Join(<-done, err)
}

// goOn asks whether to try again; an error says that the person gives up.
func (p patience) goOn(why error) error {
	s := p.session
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
	patience patience
}

func (b patientBook) Keep(a record.Answer) error {
	return b.patience.until(a.Given, func() error { return b.Book.Keep(a) })
}

func (b patientBook) SetPlace(lesson string, part int) error {
	return b.patience.until("", func() error { return b.Book.SetPlace(lesson, part) })
}

func (b patientBook) AddTest(t record.Test) error {
	return b.patience.until("", func() error { return b.Book.AddTest(t) })
}

// patientStore is a store that waits.
type patientStore struct {
	Store
	patience patience
}

func (s patientStore) Restart(line []byte) error {
	return s.patience.until("", func() error { return s.Store.Restart(line) })
}

func (s patientStore) Append(text []byte) error {
	var l line
	if err := json.Unmarshal(text, &l); err != nil {
		return err
	}
	return s.patience.until(l.Reply, func() error { return s.Store.Append(text) })
}

func (s patientStore) Clear() error { return s.patience.until("", s.Store.Clear) }
