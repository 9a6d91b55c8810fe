package lessons

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"scratchpass/calc"
	"scratchpass/quiz/bench"
	"scratchpass/quiz/drawing"
)

// Stage is a terminal that can show a picture that moves and take single keys.
type Stage interface {
	// Run shows m until it is done. The learner may leave it: ErrStopped.
	Run(m Motion) error
}

// Motion is a picture that moves. It keeps no clock: the stage tells it how much time
// has gone by.
type Motion interface {
	// Advance lets seconds go by.
	Advance(seconds float64)
	// Key takes a key: "space", "s".
	Key(key string)
	// Frame draws what is to be seen now.
	Frame(columns, rows int) string
	// Done reports whether there is nothing more to see.
	Done() bool
}

// pass is one pass in real time: the thread dial turns, one key closes the half-nut,
// the same key takes the tool out and opens it.
type pass struct {
	s       *Session
	words   func(happened []bench.Happening) Text
	base    bench.Bench // after the last event
	pending float64     // seconds since
	now     bench.Bench // base, that much later
	events  []bench.Event
	said    Text
	ended   bool
	reverse bool // the half-nut stays closed: the key takes the tool out and stops
}

var _ Motion = (*pass)(nil)

func (p *pass) Advance(seconds float64) {
	if p.ended {
		return
	}
	p.pending += seconds
	p.now = p.base.Ahead(p.pending)
	if p.now.Over { // it ran into something
		p.settle()
	}
}

// settle writes the time that went by into the log.
func (p *pass) settle() {
	const longestWait = 600 // seconds, of one event
	for p.pending > longestWait {
		p.step(bench.Event{Verb: "wait", X: longestWait, Has: true})
		p.pending -= longestWait
	}
	wait := calc.Round(p.pending, 3)
	p.pending = 0
	if wait > 0 {
		p.step(bench.Event{Verb: "wait", X: wait, Has: true})
	}
	p.now = p.base
}

func (p *pass) step(e bench.Event) {
	var happened []bench.Happening
	before := len(p.base.Log)
	p.base, happened = p.base.Step(e)
	if len(p.base.Log) > before { // what the bench refused is not kept: the log must play again
		p.events = append(p.events, e)
	}
	if len(happened) > 0 {
		p.said = append(p.said, p.words(happened)...)
	}
	if p.base.Over {
		p.ended = true
	}
}

func (p *pass) Key(key string) {
	if p.ended {
		return
	}
	switch key {
	case "s":
		p.settle()
		p.step(bench.Event{Verb: "stop"})
		p.ended = true
	case "o": // the tool out, by itself
		p.settle()
		p.step(p.base.Away)
	case "h": // the half-nut open, by itself
		p.settle()
		p.step(bench.Event{Verb: "open"})
		p.ended = p.ended || !p.base.Nut
	case "space":
		p.settle()
		if p.ended {
			break
		}
		if !p.base.Nut {
			p.step(bench.Event{Verb: "close"})
			break
		}
		if !p.base.Clear() { // it may be out already
			p.step(p.base.Away)
		}
		if p.reverse {
			p.step(bench.Event{Verb: "stop"})
		} else {
			p.step(bench.Event{Verb: "open"})
		}
		p.ended = true
	}
	p.now = p.base
}

func (p *pass) Done() bool { return p.ended }

// Frame draws the thread dial, as large as the lines below it leave room for, the way of
// the tool and what the keys do.
func (p *pass) Frame(columns, rows int) string {
	b := p.now
	below := p.below(b, columns)
	var lines []string
	if at, ok := b.Mark(); ok {
		room := rows - 1 - strings.Count(strings.Join(below, "\n"), "\n")
		d, err := drawing.ThreadDial(at, b.Job.Lathe.DialMarks, p.s.drawings)
		if err == nil && room >= leastDial {
			lines = d.Terminal(min(columns-2, 2*room, 34))
			lines = lines[:min(len(lines), room)]
		}
	}
	return strings.Join(append(lines, below...), "\n")
}

// leastDial is the fewest lines in which a dial can be made out.
const leastDial = 6

// below is what stands below the dial.
func (p *pass) below(b bench.Bench, columns int) []string {
	wide := max(columns-2, NarrowestWidth)
	lines := []string{"", track(b, min(columns-2, 76)), Wrap(p.s.status(b), wide), Wrap(p.s.say("bench-track"), wide)}
	if p.ended { // what happened is told below the picture, all of it
		return append(lines, "")
	}
	if n := len(p.said); n > 0 {
		lines = append(lines, Wrap(p.said[n-1].Text, wide))
	}
	key := "bench-key-close"
	switch {
	case b.Nut && p.reverse:
		key = "bench-key-stop"
	case b.Nut:
		key = "bench-key-out"
	}
	return append(lines, Wrap(p.s.say(key), wide))
}

// track is the way of the tool from the start of the thread to what lies behind it:
// V the tool, = the thread, . free way, # what must not be met.
func track(b bench.Bench, columns int) string {
	before := b.Job.StartRoom()
	whole := before + b.Job.Length + b.Job.Free() // of the tip: something stands ahead of it
	cells := max(columns-2, 20)
	at := func(l calc.Length) int {
		return min(max(int(math.Round(l.Over(whole)*float64(cells))), 0), cells)
	}
	row := []byte(strings.Repeat(".", cells) + "##")
	for i := at(before); i < at(before+b.Job.Length); i++ {
		row[i] = '='
	}
	tool := []byte(strings.Repeat(" ", cells+2))
	tool[at(whole-b.Left())] = 'V'
	return strings.TrimRight(string(tool), " ") + "\n" + string(row)
}

// liveMove plays a move in real time where it is one that the clock decides. done tells
// that it was.
func (s *Session) liveMove(r *Rehearsal, stage Stage, e bench.Event) (done bool, err error) {
	if compound, straight, ok := e.WholePass(); ok {
		if !r.Bench.MayRepeat(e) {
			return true, s.make(r, e) // which says why not
		}
		return true, s.livePass(r, stage, r.Bench.Feeds(compound, straight))
	}
	switch {
	case e.Verb == "start" && r.Bench.Turn == 0 && r.Bench.Nut: // the carriage runs at once, and so does the clock
		if err := s.make(r, e); err != nil || r.Bench.Over || r.Bench.Turn == 0 {
			return true, err
		}
		return true, s.run(r, stage)
	case e.Verb == "close" && r.Bench.Turn > 0 && !r.Bench.Nut && !r.Bench.FeedOn, e.Verb == "run" && r.Bench.Nut && r.Bench.Turn > 0:
		if r.Bench.Away.Verb == "" {
			return true, s.show(Plain, s.say("bench-live-way"))
		}
		return true, s.run(r, stage)
	}
	return false, nil
}

// livePass feeds, starts, and lets the learner do the rest in real time.
func (s *Session) livePass(r *Rehearsal, stage Stage, feeds []bench.Event) error {
	if r.Bench.Turn == 0 {
		feeds = append(feeds, bench.Event{Verb: "start"})
	}
	for _, f := range feeds {
		back := len(r.TakenBack)
		if err := s.make(r, f); err != nil || r.Bench.Over || len(r.TakenBack) > back {
			return err
		}
	}
	return s.run(r, stage)
}

// run is the part of a pass that the clock decides.
func (s *Session) run(r *Rehearsal, stage Stage) error {
	p := &pass{s: s, base: r.Bench, now: r.Bench, reverse: r.Bench.Job.KeepClosed(),
		words: func(h []bench.Happening) Text { return s.happenings(r.Bench.Job, r.words, h) }}
	err := stage.Run(p)
	if err == nil || len(p.events) > 0 {
		p.settle()
	}
	before := r.Bench
	r.Bench = p.base
	for _, e := range p.events {
		if r.Keep != nil {
			if err := r.Keep(e.Write(r.Bench.Job.System())); err != nil {
				return err
			}
		}
	}
	if err != nil {
		return err
	}
	text := p.said
	if p.ended {
		text = append(text, Block{Plain, s.endOfPass(r.Bench)})
	}
	if err := s.Terminal.Show(text); err != nil {
		return err
	}
	if r.Bench.Over {
		return s.takeBackAll(r, before, len(p.events))
	}
	if !p.ended { // left in the middle of it
		return s.show(Plain, s.say("bench-live-left"))
	}
	if r.Bench.Turn == 0 || p.reverse || !r.Bench.Clear() { // nobody winds back a tool that is still in
		return nil
	}
	return s.make(r, bench.Event{Verb: "return"})
}

// takeBackAll is takeBack for all the events of a pass.
func (s *Session) takeBackAll(r *Rehearsal, before bench.Bench, events int) error {
	left := s.takeBack(r, before)
	if left != nil && !errors.Is(left, ErrStopped) || r.Bench.Over || r.Keep == nil {
		return left
	}
	for range events - 1 {
		if err := r.Keep(bench.Undo); err != nil {
			return err
		}
	}
	return left
}

// endOfPass says where the pass ended.
func (s *Session) endOfPass(b bench.Bench) string {
	if len(b.Passes) == 0 || b.Over {
		return ""
	}
	u, left := b.Job.System().Length(), b.Left()
	return s.say("bench-live-end", "left", u.Text(left.Inches()), "seconds", fmt.Sprintf("%.1f", left.Over(b.Lead.Times(b.RPM/60))))
}
