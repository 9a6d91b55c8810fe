package rehearsal

import (
	"scratchpass/calc"
	"scratchpass/lessons/page"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/bench"
	"scratchpass/quiz/drawing"
)

// HasClock reports whether the face can show a machine that runs by a real clock.
func (s Flow) HasClock() bool {
	if face, ok := s.Face.(page.Clocked); ok && face.Clocked() {
		return true
	}
	_, ok := s.Face.(page.Animator)
	return ok
}

// ChooseClock asks whether the clock is to be real, at a face that has one of its own. At any
// other it is asked for when the program is called.
func (s Flow) ChooseClock() (live bool, err error) {
	if face, ok := s.Face.(page.Clocked); !ok || !face.Clocked() {
		return false, nil
	}
	i, err := sitting.Choose(s.Session, s, s.Say("bench-which-clock"), page.Menu{Options: []string{s.Say("bench-by-steps"), s.Say("bench-by-clock")}})
	return i == 1, err
}

// setSteps goes step by step from here, or by the clock again.
func (s Flow) setSteps(r *Rehearsal, steps bool) error {
	if !r.Bench.Live || !s.HasClock() {
		return s.tell(s.Say("bench-no-live"))
	}
	r.steps = steps
	if steps {
		return s.tell(s.Say("bench-live-steps"))
	}
	return s.tell(s.Say("bench-live"))
}

// let lets a pass go on in real time: in a picture that this program moves, or in one that
// the face moves by itself. It counts unless it was broken off.
func (s Flow) let(r *Rehearsal, p *pass) (counts bool, err error) {
	if face, ok := s.Face.(page.Animator); ok {
		return true, face.Run(p)
	}
	course, ok := p.base.Course()
	if !ok { // a way of cutting that is not drawn there
		return false, s.setSteps(r, true)
	}
	reply, err := s.Ask(page.Prompt{Text: s.Say("bench-timed-how"), Takes: s.timed(p.base, course)})
	if err != nil {
		return false, err
	}
	taken, err := page.ParseTaken(reply)
	switch {
	case err != nil:
		return false, s.tell(s.Say("bench-unread", "problem", err.Error()))
	case taken.Broken:
		return false, s.tell(s.Say("bench-live-broken"))
	case taken.Steps:
		return false, s.setSteps(r, true)
	}
	p.take(taken)
	return true, nil
}

// take lets the keys come at their moments.
func (p *pass) take(t page.Taken) {
	at := 0.0
	for _, press := range t.Presses {
		p.Advance(press.At - at)
		p.Key(press.Key)
		at = press.At
	}
	p.Advance(t.End - at)
}

// timed is what a face needs to show how the pass goes.
func (s Flow) timed(b bench.Bench, c bench.Course) page.Timed {
	t := page.Timed{Title: s.Say("bench-title", "title", b.Job.Title), Closed: c.Closed, Keeps: c.Keeps, Clear: c.Clear, Fails: !c.Closed && !c.Closes,
		Nut: page.Nut{Past: c.Past, Seconds: c.NutSeconds, Slack: c.Slack, Share: c.ThreadShare}}
	if c.HasDial {
		if face, middle, err := drawing.TurningDial(b.Job.Lathe.DialMarks, s.Drawings()); err == nil {
			t.Dial = &page.Turning{Face: face, Middle: middle, Marks: b.Job.Lathe.DialMarks, At: c.Mark, Seconds: c.MarkSeconds}
		}
	}
	way := drawing.Way{ThreadFrom: c.ThreadFrom, ThreadTo: c.ThreadEnds, Inside: b.Job.Side == calc.Inside}
	if face, from, to, err := way.Draw(s.Drawings()); err == nil {
		t.Way = page.Travel{Face: face, From: from, To: to, Tool: c.Tool, ThreadEnds: c.ThreadEnds, Seconds: c.WaySeconds}
	}
	if d, err := s.section(b); err == nil {
		t.Work = &d
	}
	say := func(key string) string { return s.Say("bench-timed-" + key) }
	t.Says = page.Timing{How: say("how"), Start: say("start"), Close: say("close"), OutOpen: say("out-open"), OutStop: say("out-stop"), Out: say("out"), Open: say("open"), Stop: say("stop"),
		Steps: say("steps"), Leave: say("leave"), Mark: say("mark"), Between: say("between"), Closed: say("closed"), Opened: say("opened"), Dropping: say("dropping"), NoScript: say("no-script")}
	return t
}
