package sitting

import (
	"encoding/json"
	"errors"
	"fmt"
	"hash/fnv"
	"reflect"
	"strconv"
	"time"

	"scratchpass/lessons/page"
	"scratchpass/quiz/machine"
)

// Store keeps the lines of the sitting that is going on. A line that was taken without an
// error survives whatever happens next.
type Store interface {
	Restart(line []byte) error // begins another sitting; the one before is forgotten
	Append(line []byte) error
	Note(line []byte) error   // adds one that the flow makes anew if the computer's crash takes it
	Lines() ([][]byte, error) // of the sitting that was not brought to its end; none where there is none
	Clear() error             // it has come to its end
}

// The kinds of lines. A flow asks for them in the same order each time, because all that
// it does hangs on its fields, its seeds and these lines alone.
const (
	lineStart = "start" // which flow, with what
	lineShown = "shown" // a page was shown
	lineReply = "reply" // what was typed
	lineFact  = "fact"  // what was read elsewhere, such as what the record holds
	lineDone  = "done"  // something was written elsewhere, such as an answer into the record
)

// line is one line of the log, as JSON.
type line struct {
	Kind  string          `json:"kind"`
	At    time.Time       `json:"at"`
	Asked string          `json:"asked,omitempty"` // a sum over the prompt, to notice other words
	Reply string          `json:"reply,omitempty"`
	Value json.RawMessage `json:"value,omitempty"`
}

// start is the value of the first line.
type start struct {
	Flow   string          `json:"flow"`
	Fields json.RawMessage `json:"fields"`
	Seeds  Seeds           `json:"seeds"`
	Lathe  kept            `json:"lathe"`
}

// kept is a lathe with all that a problem may depend on.
type kept struct {
	Code   string `json:"code"`
	Name   string `json:"name"`
	Gears  []int  `json:"gears,omitempty"`
	Speeds []int  `json:"speeds,omitempty"`
}

func (k kept) lathe() (machine.Lathe, error) {
	l, err := machine.LatheOfCode(k.Code)
	l.Name, l.Gears, l.Speeds = k.Name, k.Gears, k.Speeds
	return l, err
}

// ErrChanged says that a stored sitting can't be taken up: the program asks something
// else now.
var ErrChanged = errors.New("the sitting can't be gone on with: words or problems have changed since it was begun")

// log is what a sitting goes by: first the lines that are stored, then the face.
type log struct {
	stored  []line
	now     time.Time
	unseen  []page.Page // shown since the last reply, while the log was read
	goingOn bool        // the log has been read: what comes now is new
}

// begin begins a sitting and stores with what.
func (s *Session) begin(f Flow) (*Sitting, error) {
	seeds := s.Seeds()
	st := newSitting(s, seeds)
	st.log = &log{now: s.Clock(), goingOn: true}
	if s.Store == nil {
		return st, nil
	}
	fields, err := json.Marshal(f)
	if err != nil {
		return nil, err
	}
	value, err := json.Marshal(start{f.Name(), fields, seeds, kept{s.Lathe.Code(), s.Lathe.Name, s.Lathe.Gears, s.Lathe.Speeds}})
	if err != nil {
		return nil, err
	}
	text, err := json.Marshal(line{Kind: lineStart, At: st.log.now, Value: value})
	if err != nil {
		return nil, err
	}
	return st, s.Store.Restart(text)
}

// ErrNothingStored says that no sitting was broken off.
var ErrNothingStored = errors.New("there is nothing to go on with: no sitting was broken off")

// GoOn takes the stored sitting up again, at the prompt where it was left. flows are the
// flows it may be one of.
func (s *Session) GoOn(flows ...Flow) error {
	if s.Store == nil {
		return ErrNothingStored
	}
	lines, err := s.Store.Lines()
	if err != nil {
		return err
	}
	if len(lines) == 0 {
		return ErrNothingStored
	}
	stored := make([]line, len(lines))
	for i, text := range lines {
		if err := json.Unmarshal(text, &stored[i]); err != nil {
			return fmt.Errorf("line %d of the stored sitting: %w", i+1, err)
		}
	}
	var first start
	if err := json.Unmarshal(stored[0].Value, &first); err != nil {
		return fmt.Errorf("the beginning of the stored sitting: %w", err)
	}
	f, err := flowOf(first, flows)
	if err != nil {
		return err
	}
	lathe, err := first.Lathe.lathe()
	if err != nil {
		return err
	}
	s.UseLathe(lathe)
	st := newSitting(s, first.Seeds)
	st.log = &log{now: stored[0].At, stored: stored[1:]}
	return st.finish(f, f.Run(st))
}

// flowOf is the flow of that name with the fields it was begun with; what else it needs is that of the
// one in flows.
func flowOf(first start, flows []Flow) (Flow, error) {
	for _, f := range flows {
		if f.Name() != first.Flow {
			continue
		}
		own := reflect.New(reflect.TypeOf(f))
		own.Elem().Set(reflect.ValueOf(f))
		if err := json.Unmarshal(first.Fields, own.Interface()); err != nil {
			return nil, fmt.Errorf("the beginning of the stored sitting: %w", err)
		}
		return own.Elem().Interface().(Flow), nil
	}
	return nil, ErrChanged
}

// next takes the next stored line, which must be of this kind. ok is false when all have
// been read.
func (l *log) next(kind string) (stored line, ok bool, err error) {
	if len(l.stored) == 0 {
		return line{}, false, nil
	}
	stored = l.stored[0]
	if stored.Kind != kind {
		return line{}, false, ErrChanged
	}
	l.stored, l.now = l.stored[1:], stored.At
	return stored, true, nil
}

// append stores a line that is new.
func (st *Sitting) append(l line) error {
	st.log.now = st.Clock()
	if st.Store == nil {
		return nil
	}
	l.At = st.log.now
	text, err := json.Marshal(l)
	if err == nil {
		keep := st.Store.Note
		if l.Kind == lineReply { // what someone has typed is never asked for again
			keep = st.Store.Append
		}
		err = keep(text)
	}
	if err != nil {
		return fmt.Errorf("the sitting could not be kept: %w", err)
	}
	return nil
}

// live shows again what stood on the page when the sitting was left.
func (st *Sitting) live() error {
	if st.log.goingOn {
		return nil
	}
	st.log.goingOn = true
	for _, p := range st.log.unseen {
		if err := st.Face.Show(p); err != nil {
			return err
		}
	}
	st.log.unseen = nil
	return nil
}

// Show shows a page.
func (st *Sitting) Show(p page.Page) error {
	_, ok, err := st.log.next(lineShown)
	if err != nil {
		return err
	}
	if ok {
		st.log.unseen = append(st.log.unseen, p)
		return nil
	}
	if err := st.live(); err != nil {
		return err
	}
	if err := st.Face.Show(p); err != nil {
		return err
	}
	return st.append(line{Kind: lineShown})
}

// Ask asks. What was typed is stored before anything comes of it; the word that stops is
// an error as Ctrl-C is, and is not stored.
func (st *Sitting) Ask(q page.Prompt) (string, error) {
	stored, ok, err := st.log.next(lineReply)
	switch {
	case err != nil:
		return "", err
	case ok && stored.Asked != sumOf(q):
		return "", ErrChanged
	case ok:
		st.log.unseen = nil
		return stored.Reply, nil
	}
	if err := st.live(); err != nil {
		return "", err
	}
	reply, err := st.Face.Ask(q)
	if err != nil {
		return "", err
	}
	if word, _ := page.Typed(reply, []string{page.WordStop}); word != "" { // no answer: who goes on is asked again
		return "", page.ErrStopped
	}
	return reply, st.append(line{Kind: lineReply, Asked: sumOf(q), Reply: reply})
}

func sumOf(q page.Prompt) string {
	h := fnv.New32a()
	h.Write([]byte(q.Text)) // a hash never returns an error
	return strconv.FormatUint(uint64(h.Sum32()), 36)
}

// Fact reads something that may be another thing next time, once: taken up again, the
// sitting goes by what was read then.
func Fact[T any](st *Sitting, read func() (T, error)) (T, error) {
	var value T
	stored, ok, err := st.log.next(lineFact)
	if err != nil {
		return value, err
	}
	if ok {
		return value, json.Unmarshal(stored.Value, &value)
	}
	if value, err = read(); err != nil {
		return value, err
	}
	text, err := json.Marshal(value)
	if err != nil {
		return value, err
	}
	return value, st.append(line{Kind: lineFact, Value: text})
}

// Once does something that outlives the sitting, once. Whoever is killed between the two
// does it again: it must bear that.
func (st *Sitting) Once(do func() error) error {
	_, ok, err := st.log.next(lineDone)
	if ok || err != nil {
		return err
	}
	if err := do(); err != nil {
		return err
	}
	return st.append(line{Kind: lineDone})
}
