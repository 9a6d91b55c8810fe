package bench

import (
	"math"
	"slices"

	"scratchpass/calc"
)

// The heaviest cuts that the card plans, whatever the pitch: common practice, no source.
// A bar that gives takes less.
const (
	heaviest     = calc.Length(.005)
	heaviestBar  = calc.Length(.003)
	givesFrom    = 0.2 // share left on from which a bar gives
	lightestPart = 0.3 // of its cuts that a card which chatters is lightened to, in the end
)

// The plan's cuts as shares of the pitch: at 10 threads per inch 0.005, 0.003 and
// 0.002. Common practice, no source.
const (
	firstShare, middleShare, lastShare = 0.05, 0.03, 0.02
	leaveShare                         = 0.92 // of the full travel, where the compound is left
)

// lighten plans the passes, and plans them lighter and then slower while they chatter at
// the bench.
func (p *Plan) lighten(angle calc.Angle) {
	fastest := p.RPM
	slower := slices.Sorted(slices.Values(p.Job.Lathe.Speeds))
	slices.Reverse(slower)
	slower = slices.DeleteFunc(slower, func(n int) bool { return n >= fastest })
	for _, rpm := range append([]int{fastest}, slower...) {
		p.RPM = rpm
		for part := 1.0; part > lightestPart; part *= 0.8 {
			p.Steps = nil
			p.passes(angle, part)
			if p.tried(); !p.Chatters {
				return
			}
		}
	}
	p.RPM = fastest // neither helps
	p.Steps = nil
	p.passes(angle, 1)
	p.tried()
}

// tried plays the card up to the first try of the fit and the first cut after it, and
// notes what goes wrong with it.
func (p *Plan) tried() {
	j := p.Job
	j.Surprises = nil
	b := Play(j, false, p.Events())
	for _, s := range p.Steps {
		if s.Kind == "finish" {
			b, _ = b.Step(Event{Verb: "start"})
			b, _ = b.Step(Event{Verb: "finish", X: s.Feed.Inches(), Has: true})
			break
		}
	}
	p.Chatters, p.Faults = false, nil
	for _, m := range b.Mistakes {
		if m.Name == mistakeChatter {
			p.Chatters = true
		} else if name := string(m.Name); !slices.Contains(p.Faults, name) {
			p.Faults = append(p.Faults, name)
		}
	}
}

// passes lists the passes: a scratch, cuts on the compound that grow lighter, a spring
// pass and a try, then straight in by thousandths. part lightens the cuts.
func (p *Plan) passes(angle calc.Angle, part float64) {
	line := p.Job.Lathe.Compound.Division
	whole := func(l calc.Length, least float64) calc.Length {
		return line.Times(max(calc.Round(l.Over(line), 0), least))
	}
	pitch, most := p.Job.Thread.Pitch, heaviest
	if p.Job.Side == calc.Inside && p.Lag > givesFrom {
		most = heaviestBar
	}
	p.Leave = line.Times(wholeDown(p.Travel.Times(leaveShare).Over(line)))
	cross := p.Job.Lathe.Cross
	// The tool must come clear of the crests from the bottom of the finished groove.
	clear := (p.Depth + calc.Thou.Times(20)).Times(p.Job.Lathe.CrossReads.PerRadial())
	p.Out = cross.Turn.Times(max(0.5, wholeUp(clear.Over(cross.Turn)))) // whole turns are the easiest to come back by
	if clear < cross.Turn.Times(0.5) {
		p.Out = cross.Turn.Times(0.5)
	}
	if room := p.Job.Room().Times(0.9 * p.Job.Lathe.CrossReads.PerRadial()); p.Job.Side == calc.Inside && p.Out > room {
		p.Out = cross.Division.Times(math.Floor(room.Over(cross.Division)))
	}
	total := calc.Length(0)
	add := func(kind string, feed, straight calc.Length) {
		radial := total.Times(angle.Cos()) + straight.Times(1/p.Job.Lathe.CrossReads.PerRadial())
		s := PlanStep{Kind: kind, Feed: feed, Total: total, Depth: radial,
			Compound: reading(total.Times(p.in()), p.Job.Lathe.Compound.Turn), Turns: total.Turns(p.Job.Lathe.Compound.Turn),
			Cross: reading(straight.Times(p.in()), cross.Turn)}
		p.Steps = append(p.Steps, s)
	}
	total = min(whole(calc.Thou.Times(1.5*part), 1), p.Leave)
	add("scratch", total, 0)
	for total < p.Leave-line.Times(0.5) && len(p.Steps) < 300 {
		share := lastShare
		switch {
		case total < p.Leave.Times(0.5):
			share = firstShare
		case total < p.Leave.Times(0.8):
			share = middleShare
		}
		feed := min(whole(min(pitch.Times(share), most).Times(part), 1), p.Leave-total)
		total += feed
		add("cut", feed, 0)
	}
	add("spring", 0, 0)
	add("test", 0, 0)
	p.finish(add, total.Times(angle.Cos()))
}

// finish adds what is left, straight in: a thousandth at a time, or half the tolerance
// where that is less, with a spring pass and a try after every one from where the fit may
// come, and none that would go past the middle of the limits by more than a quarter.
func (p *Plan) finish(add func(kind string, feed, straight calc.Length), done calc.Length) {
	line, per := p.Job.Lathe.Cross.Division, p.Job.Lathe.CrossReads.PerRadial()
	tolerance := (p.Job.Limits.Pitch.Max - p.Job.Limits.Pitch.Min).Times(0.5)
	usual := calc.Thou
	if p.Job.Lathe.Metric {
		usual = calc.Millimetres(0.02)
	}
	feed := line.Times(max(1, wholeDown(min(usual, tolerance.Times(0.5)).Times(per).Over(line))))
	straight := calc.Length(0)
	for len(p.Steps) < 400 {
		next := done + (straight + feed).Times(1/per)
		if next > p.Depth+tolerance.Times(0.25) {
			break
		}
		straight += feed
		add("finish", feed, straight)
		if next >= p.Depth-tolerance {
			add("spring", 0, straight)
			add("test", 0, straight)
		}
	}
}
