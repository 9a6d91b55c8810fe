package bench

import (
	"math"
	"slices"

	"scratchpass/calc"
)

// Schedule is how the cuts of a card go: "equal-area" or "light".
func (p Plan) Schedule() string {
	if p.Light {
		return "light"
	}
	return "equal-area"
}

// cut chooses speed and cuts, lists the passes and tries them at the bench.
func (p *Plan) cut(angle calc.Angle) {
	p.leaveAt(angle)
	p.withdrawal()
	fastest := p.RPM
	c, ok := p.choose(angle)
	if !ok {
		p.Chatters, p.TooMany = len(c.totals) == 0, len(c.totals)
		p.remedy(angle)
		return
	}
	p.RPM = c.rpm
	p.passes(angle, c.totals)
	p.tried()
	if p.Passes() {
		return
	}
	p.Steps, p.RPM = nil, fastest
	if p.Chatters {
		p.remedy(angle)
	}
}

// leaveAt finds where the compound is left.
func (p *Plan) leaveAt(angle calc.Angle) {
	line := p.line()
	late := p.Travel - p.fed(p.tolerance().Times(leaveTolerance)+leaveRoom, angle)
	p.Leave = line.Times(wholeDown(max(p.Travel.Times(leaveShare), late).Over(line)))
}

// tolerance is that of the pitch diameter as it is straight in.
func (p *Plan) tolerance() calc.Length {
	return (p.Job.Limits.Pitch.Max - p.Job.Limits.Pitch.Min).Times(0.5)
}

// withdrawal finds how far the tool is taken out: clear of the crests from the bottom of
// the finished groove.
func (p *Plan) withdrawal() {
	cross := p.Job.Lathe.Cross
	clear := (p.Depth + calc.Thou.Times(20)).Times(p.Job.Lathe.CrossReads.PerRadial())
	p.Out = cross.Turn.Times(max(0.5, wholeUp(clear.Over(cross.Turn)))) // whole turns are the easiest to come back by
	if clear < cross.Turn.Times(0.5) {
		p.Out = cross.Turn.Times(0.5)
	}
	if room := p.Job.Room().Times(0.9 * p.Job.Lathe.CrossReads.PerRadial()); p.Job.Side == calc.Inside && p.Out > room {
		p.Out = cross.Division.Times(math.Floor(room.Over(cross.Division)))
	}
}

// tried plays the card to its end, and notes what goes wrong with it.
func (p *Plan) tried() {
	b, _ := p.played()
	p.Chatters, p.Faults = false, nil
	for _, m := range b.Mistakes {
		switch name := string(m.Name); {
		case m.Name == mistakeChatter:
			p.Chatters = true
		case m.Name != mistakeLostCount && !slices.Contains(p.Faults, name): // the card books nothing
			p.Faults = append(p.Faults, name)
		}
	}
	p.Misses = !p.Chatters && len(p.Faults) == 0 && (b.Outcome == nil || b.Outcome.Verdict != Fits)
}

// played is the bench after every move of the card, as it stands, until the gauge goes, and
// how many passes were fed.
func (p Plan) played() (b Bench, passes int) {
	j := p.Job
	j.Surprises = nil
	b = Play(j, false, p.Events())
	first := slices.IndexFunc(p.Steps, func(s PlanStep) bool { return s.Kind == "test" })
	moves := p.stepEvents()
	for i, s := range p.Steps {
		if i > first && b.fitted() {
			break
		}
		if i > first {
			for _, e := range moves[i] {
				b, _ = b.Step(e)
			}
		}
		if s.Kind != "test" && s.Kind != "spring" && s.Kind != "next" {
			passes++
		}
	}
	b, _ = b.Step(Event{Verb: "done"})
	return b, passes
}

// fitted reports whether the last try went on.
func (b Bench) fitted() bool {
	n := len(b.Tests)
	return n > 0 && b.Tests[n-1].Result != "no-start" && b.Tests[n-1].Result != "binds"
}

// springs is how many spring passes leave on less than a quarter of the tolerance of what
// the last cut left on.
func (p *Plan) springs(last calc.Length) int {
	n, left := 1, p.deep(last, 0).Times(p.Lag*p.Lag)
	for n < mostSpring && left > p.tolerance().Times(0.25) {
		n, left = n+1, left.Times(p.Lag)
	}
	return n
}
