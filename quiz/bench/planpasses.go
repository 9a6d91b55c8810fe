package bench

import "scratchpass/calc"

// passList lists the passes of a card. total is on the compound, straight on the cross
// slide, each as its dial counts.
type passList struct {
	p               *Plan
	angle           calc.Angle
	total, straight calc.Length
	start           int
}

func (l *passList) add(kind string, feed calc.Length) {
	p := l.p
	cross := p.Job.Lathe.Cross
	radial := l.straight.Times(1 / p.Job.Lathe.CrossReads.PerRadial())
	compound := l.total
	if p.StraightIn() { // along the bed: it says which start
		compound = p.Job.Thread.Pitch.Times(float64(l.start))
	} else {
		radial += l.total.Times(l.angle.Cos())
	}
	s := PlanStep{Kind: kind, Feed: feed, Total: l.total, Straight: l.straight, Depth: radial, Start: l.start + 1,
		Compound: reading(compound.Times(p.in()), p.Job.Lathe.Compound.Turn), Turns: compound.Turns(p.Job.Lathe.Compound.Turn),
		Cross: reading(l.straight.Times(p.in()), cross.Turn)}
	if p.IndexBy == ByDial {
		s.Mark = p.StartMarks[l.start][0]
	}
	p.Steps = append(p.Steps, s)
}

// Reads is what the dial of the slide that carries the depth shows after so much travel since
// touch-off, and how many whole turns it has gone past its zero: in a bore it counts down.
func (p Plan) Reads(travel calc.Length) (dial calc.Length, turns int) {
	turn := p.Job.Lathe.Compound.Turn
	if p.StraightIn() {
		turn = p.Job.Lathe.Cross.Turn
	}
	return reading(travel.Times(p.in()), turn), travel.Turns(turn)
}

// next goes on to another start.
func (l *passList) next(start int) {
	l.start = start
	l.add("next", 0)
}

// roughed are the passes of one start: a scratch, the cuts, spring passes.
func (l *passList) roughed(totals []calc.Length) {
	l.total, l.straight = 0, 0
	done := calc.Length(0)
	for i, t := range totals {
		kind, feed := "cut", t-done
		if i == 0 {
			kind = "scratch"
		}
		done = t
		if l.p.StraightIn() {
			l.straight = t
		} else {
			l.total = t
		}
		l.add(kind, feed)
	}
	if l.start == 0 {
		l.p.Springs = l.p.springs(l.p.Steps[len(l.p.Steps)-1].Feed)
	}
	l.springs()
}

func (l *passList) springs() {
	for range l.p.Springs {
		l.add("spring", 0)
	}
}

// passes lists the passes: for each start a scratch, the cuts and spring passes, then a try,
// then straight in by thousandths.
func (p *Plan) passes(angle calc.Angle, totals []calc.Length) {
	l := &passList{p: p, angle: angle}
	if len(totals) > 1 {
		p.First = totals[1]
	}
	p.Leave = totals[len(totals)-1]
	for start := range p.starts() {
		if start > 0 {
			l.next(start)
		}
		l.roughed(totals)
	}
	l.add("test", 0)
	l.finish(p.deep(p.Leave, angle))
}

// finish adds what is left, straight in: a thousandth at a time, or half the tolerance
// where that is less, on each start, with spring passes and a try after every one from where
// the fit may come, and none that would go past the middle of the limits by more than a
// quarter.
func (l *passList) finish(done calc.Length) {
	p := l.p
	line, per := p.Job.Lathe.Cross.Division, p.Job.Lathe.CrossReads.PerRadial()
	tolerance := p.tolerance()
	usual := calc.Thou
	if p.Job.Lathe.Metric {
		usual = calc.Millimetres(0.02)
	}
	feed := line.Times(max(1, wholeDown(min(usual, tolerance.Times(0.5)).Times(per).Over(line))))
	fed := calc.Length(0)
	for len(p.Steps) < 400 {
		next := done + (fed + feed).Times(1/per)
		if next > p.Depth+tolerance.Times(0.25) {
			break
		}
		fed += feed
		l.straight += feed
		near := next >= p.Depth-tolerance
		for start := range p.starts() {
			if p.starts() > 1 {
				l.next(start)
			}
			l.add("finish", feed)
			if near {
				l.springs()
			}
		}
		if near {
			l.add("test", 0)
		}
	}
}
