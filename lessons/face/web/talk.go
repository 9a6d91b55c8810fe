// Package web is the face for a browser: pages as HTML with drawings inside, forms that
// work without a script, and one talk a learner.
package web

import (
	"context"
	"sync"

	"scratchpass/lessons/face/sheet"
	"scratchpass/lessons/page"
)

// Talk is one learner's sitting at a browser: a face to the flow, and to the browser what
// is to be seen now. Any number of windows may show it; a prompt is answered once.
type Talk struct {
	stop context.Context

	mu      sync.Mutex
	sheet   sheet.Sheet
	prompt  page.Prompt
	number  int           // of the prompt, counted from 1
	waiting bool          // for an answer to it
	ended   bool          // no more will come
	moved   chan struct{} // closed when something above has changed
	answers chan string
	seen    chan struct{} // closed when the last page has been fetched
	once    sync.Once
}

var _ page.Clocked = (*Talk)(nil)

// Buttons tells that a page sends by its buttons.
func (t *Talk) Buttons() {}

// NewTalk returns a talk that ends with the context.
func NewTalk(stop context.Context) *Talk {
	return &Talk{stop: stop, moved: make(chan struct{}), answers: make(chan string), seen: make(chan struct{})}
}

// View is what is to be seen now.
type View struct {
	Title  string
	Where  page.Where
	Body   page.Page
	Panel  *page.Bench // that stays over the page; nil for none
	Log    page.Page   // what was done before, where there is a panel
	Look   []Link      // to what can be looked up
	Prompt page.Prompt
	Number int    // of the prompt
	To     string // where its answer goes
	Name   string // of the prompt, in forms
	Asked  bool   // it waits for an answer
	Ended  bool
}

// Show puts a page on the sheet. A browser scrolls: nothing needs to be held up.
func (t *Talk) Show(p page.Page) error {
	t.mu.Lock()
	defer t.mu.Unlock()
	t.sheet.Add(p)
	return t.stopped()
}

// Ask waits for the answer of a browser.
func (t *Talk) Ask(q page.Prompt) (string, error) {
	t.mu.Lock()
	if err := t.stopped(); err != nil {
		t.mu.Unlock()
		return "", err
	}
	t.prompt, t.waiting = q, true
	t.number++
	t.move()
	t.mu.Unlock()
	select {
	case text := <-t.answers:
		return text, nil
	case <-t.stop.Done():
		return "", page.ErrStopped
	}
}

// stopped is ErrStopped once the context has ended.
func (t *Talk) stopped() error {
	if t.stop.Err() != nil {
		return page.ErrStopped
	}
	return nil
}

// End tells that the flow has come to its end: what it showed last stays.
func (t *Talk) End() {
	t.mu.Lock()
	defer t.mu.Unlock()
	t.ended = true
	t.move()
}

// Seen waits until a browser has fetched the last page.
func (t *Talk) Seen(ctx context.Context) {
	select {
	case <-t.seen:
	case <-ctx.Done():
	case <-t.stop.Done():
	}
}

// move wakes whoever waits for the next prompt; the lock is held.
func (t *Talk) move() {
	close(t.moved)
	t.moved = make(chan struct{})
}

// View is what is to be seen now; it waits until the flow asks something or has ended.
func (t *Talk) View(ctx context.Context) View {
	for {
		t.mu.Lock()
		v := t.view()
		moved := t.moved
		t.mu.Unlock()
		if v.Asked || v.Ended {
			return v
		}
		select {
		case <-moved:
		case <-ctx.Done():
			return v
		case <-t.stop.Done():
			v.Ended = true
			return v
		}
	}
}

// view is what stands there; the lock is held. At the bench what came last stands by itself,
// and by the clock the picture takes the place of the panel.
func (t *Talk) view() View {
	v := View{Title: t.sheet.Title, Where: t.sheet.Where, Prompt: t.prompt, Number: t.number, Asked: t.waiting, Ended: t.ended}
	if t.sheet.Panel == nil {
		v.Body = sheet.Body(t.sheet.All(), v.Title)
		return v
	}
	v.Body = sheet.Body(t.sheet.Fresh, v.Title)
	if _, timed := t.prompt.Takes.(page.Timed); !timed {
		v.Panel, v.Log = t.sheet.Panel, sheet.Body(t.sheet.Old, v.Title)
	}
	return v
}

// Clocked reports that a browser has a clock and keys of its own.
func (t *Talk) Clocked() bool { return true }

// Answer gives the flow an answer to a prompt. One that has been answered already, by
// another window or by a second press of a button, is not answered again: taken is false.
func (t *Talk) Answer(number int, text string) (taken bool) {
	t.mu.Lock()
	if !t.waiting || number != t.number {
		t.mu.Unlock()
		return false
	}
	t.waiting = false
	t.sheet.Read(t.prompt, sheet.Echo(t.prompt, text))
	t.mu.Unlock()
	select {
	case t.answers <- text:
		return true
	case <-t.stop.Done():
		return false
	}
}
