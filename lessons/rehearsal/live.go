package rehearsal

import (
	"fmt"

	"scratchpass/calc"
	"scratchpass/lessons/page"
	"scratchpass/quiz/bench"
	"scratchpass/quiz/drawing"
)

// pass is one pass in real time: the thread dial turns, one key closes the half-nut,
// the same key takes the tool out and opens it.
type pass struct {
	s       Flow
	words   func(happened []bench.Happening) page.Page
	base    bench.Bench // after the last event
	pending float64     // seconds since
	now     bench.Bench // base, that much later
	owed    float64     // seconds that the bench is ahead: the half-nut has yet to find its thread
	falling bench.Bench // before it was pressed, while time is owed
	fell    float64     // seconds since then
	events  []bench.Event
	said    page.Page
	ended   bool
	reverse bool // the half-nut stays closed: the key takes the tool out and stops
}

var _ page.Motion = (*pass)(nil)

func (p *pass) Advance(seconds float64) {
	if p.ended {
		return
	}
	if p.owed > 0 { // the bench has let that time go by already, with the move
		wait := min(p.owed, seconds)
		p.owed, p.fell, seconds = p.owed-wait, p.fell+wait, seconds-wait
		if p.now = p.falling.Ahead(p.fell); p.owed > 0 {
			return
		}
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
			p.falling, p.fell = p.base, 0
			p.step(bench.Event{Verb: "close"})
			p.owed = p.base.Clock - p.falling.Clock
			p.now = p.falling
			return
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

// Scene is the thread dial, the way of the tool and what the keys do.
func (p *pass) Scene() page.Scene {
	b := p.now
	scene := page.Scene{Title: p.s.Say("bench-title", "title", b.Job.Title), Track: trackOf(b), Lines: []string{p.s.status(b), p.s.Say("bench-track")}}
	if at, ok := b.Mark(); ok {
		if d, err := drawing.ThreadDial(at, b.Job.Lathe.DialMarks, p.s.Drawings()); err == nil {
			scene.Dial = &d
		}
	}
	if p.ended { // what happened is told below the picture, all of it
		scene.Lines = append(scene.Lines, "")
		return scene
	}
	if n := len(p.said); n > 0 {
		scene.Lines = append(scene.Lines, said(p.said[n-1]))
	}
	key := "bench-key-close"
	switch {
	case b.Nut && p.reverse:
		key = "bench-key-stop"
	case b.Nut:
		key = "bench-key-out"
	}
	scene.Keys = p.s.Say(key)
	return scene
}

// said is the text of one thing that happened.
func said(b page.Block) string {
	switch b := b.(type) {
	case page.Paragraph:
		return b.Text
	case page.Mistake:
		return b.Text
	case page.Caution:
		return b.Text
	}
	return ""
}

// trackOf is the way of the tool as a share of the whole: before the thread, the thread,
// and what is free behind it.
func trackOf(b bench.Bench) page.Track {
	from, to, tool := b.Way()
	return page.Track{ThreadFrom: from, ThreadTo: to, Tool: tool}
}

// liveMove plays a move in real time where it is one that the clock decides. done tells
// that it was.
func (s Flow) liveMove(r *Rehearsal, e bench.Event) (done bool, err error) {
	if compound, straight, ok := e.WholePass(); ok {
		if !r.Bench.MayRepeat(e) {
			return true, s.make(r, e) // which says why not
		}
		return true, s.livePass(r, r.Bench.Feeds(compound, straight))
	}
	switch {
	case (e.Verb == "start" || e.Verb == "reverse") && e.Verb == r.Bench.CutVerb() && r.Bench.Turn == 0 && r.Bench.Nut: // the carriage runs at once, and so does the clock
		if err := s.make(r, e); err != nil || r.Bench.Over || r.Bench.Turn == 0 {
			return true, err
		}
		return true, s.byTheClock(r)
	case e.Verb == "close" && r.Bench.Cutting() && !r.Bench.Nut && !r.Bench.FeedOn, e.Verb == "run" && r.Bench.Nut && r.Bench.Cutting():
		if r.Bench.Away.Verb == "" {
			return true, s.tell(s.Say("bench-live-way"))
		}
		return true, s.byTheClock(r)
	}
	return false, nil
}

// livePass feeds, starts, and lets the learner do the rest in real time.
func (s Flow) livePass(r *Rehearsal, feeds []bench.Event) error {
	if r.Bench.Turn == 0 {
		feeds = append(feeds, bench.Event{Verb: r.Bench.CutVerb()})
	}
	for _, f := range feeds {
		back := len(r.TakenBack)
		if err := s.make(r, f); err != nil || r.Bench.Over || len(r.TakenBack) > back {
			return err
		}
	}
	return s.byTheClock(r)
}

// byTheClock is the part of a pass that the clock decides.
func (s Flow) byTheClock(r *Rehearsal) error {
	p := &pass{s: s, base: r.Bench, now: r.Bench, reverse: r.Bench.Job.KeepClosed(),
		words: func(h []bench.Happening) page.Page { return s.happenings(r.Bench.Job, r.words, h) }}
	counts, err := s.let(r, p)
	if err == nil && !counts {
		return nil
	}
	if err == nil || len(p.events) > 0 {
		p.settle()
	}
	before := r.Bench
	r.Bench = p.base
	r.remember(before)
	if r.Keep != nil && len(p.events) > 0 {
		var lines []string
		for _, e := range p.events {
			lines = append(lines, e.Write(r.Bench.Job.System()))
		}
		if err := r.Keep(lines...); err != nil {
			return err
		}
	}
	if err != nil {
		return err
	}
	text := p.said
	if p.ended {
		text = append(text, page.Paragraph{Text: s.endOfPass(r.Bench)})
	}
	if len(r.Bench.Spoiled) > len(before.Spoiled) && !r.Bench.Over {
		text = append(text, page.Aside{Text: s.Say("bench-offer-back")})
	}
	if err := s.Show(text); err != nil {
		return err
	}
	if r.Bench.Over {
		return s.takeBack(r, before)
	}
	if !p.ended { // left in the middle of it
		return s.tell(s.Say("bench-live-left"))
	}
	if r.Bench.Turn == 0 || p.reverse || !r.Bench.Clear() { // nobody winds back a tool that is still in
		return nil
	}
	return s.make(r, bench.Event{Verb: "return"})
}

// endOfPass says where the pass ended.
func (s Flow) endOfPass(b bench.Bench) string {
	if len(b.Passes) == 0 || b.Over || b.InGroove {
		return ""
	}
	u, left := b.Job.System().Length(), b.Left()
	return s.Say("bench-live-end", "left", u.Text(left.Inches()), "seconds", fmt.Sprintf("%.1f", left.Over(b.Lead.Times(b.RPM/60))))
}
