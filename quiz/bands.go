package quiz

import (
	"math"

	"scratchpass/calc"
)

// Band is a range of numbers that are all marked alike, both ends included.
type Band struct {
	Low, High float64 // in the unit shown; infinite where the range has no end
	Mark      Mark    // its Reply stands for the whole band
	Far       bool    // so far off that a place was lost or another thing meant
}

// Bands says what every bare number is marked as, for places that mark without this
// program: the first band that holds the number gives its mark. Only a quantity and
// a size inside limits have bands; for other answers it returns nil.
func (p *Problem) Bands() []Band {
	a := &p.Answer
	var bands []Band
	add := func(low, high float64, m Mark) {
		bands = append(bands, Band{Low: low * a.Unit.Factor, High: high * a.Unit.Factor, Mark: m, Far: p.farOff(m.Reply)})
	}
	right := Mark{Verdict: Right, Points: 1, Reply: a.Key}
	switch a.Kind.(type) {
	case limits:
		add(a.Low, a.High, right)
		p.slipBands(add)
		p.restBand(add, math.Inf(-1), math.Inf(1), 0)
	case quantity:
		low, high := a.Bounds()
		add(low, high, right)
		shorter := calc.Fixed(a.Key.X*a.Unit.Factor, a.Unit.Places-1)
		if r, err := a.Read(shorter); err == nil && p.roundedRight(shorter, r) {
			add(r.X, r.X, right)
		}
		p.slipBands(add)
		p.unitBands(add)
		p.sideBands(add)
	}
	return bands
}

type addBand func(low, high float64, m Mark)

// slipBands adds the conventions, which earn credit, and then the other slips.
// Where two slips can't be told apart neither is named.
func (p *Problem) slipBands(add addBand) {
	tol := p.Answer.SlipTol
	for _, convention := range []bool{true, false} {
		if !convention {
			p.overlapBands(add)
		}
		for _, s := range p.slips {
			if m := p.MarkReply(s.reply); s.slip.Convention == convention && m.Slip == s.slip.Name {
				add(s.reply.X-tol, s.reply.X+tol, m)
			}
		}
	}
}

// overlapBands adds what lies near two slips that are no twins. Problems that were
// drawn have no such place; those of someone's own numbers may.
func (p *Problem) overlapBands(add addBand) {
	tol := p.Answer.SlipTol
	for i, s := range p.slips {
		for _, other := range p.slips[:i] {
			low, high := max(s.reply.X, other.reply.X)-tol, min(s.reply.X, other.reply.X)+tol
			if low <= high && !twins(s.slip, other.slip) && !s.slip.Convention && !other.slip.Convention {
				add(low, high, p.MarkReply(X((low+high)/2)))
			}
		}
	}
}

// unitBands adds the right number in another unit.
func (p *Problem) unitBands(add addBand) {
	a := &p.Answer
	if a.Key.X == 0 {
		return
	}
	for _, factor := range otherUnits(a.Unit) {
		add((a.Key.X-a.Tol)*factor, (a.Key.X+a.Tol)*factor, Mark{Verdict: UnitSlip, Points: halfPoint, Reply: X(a.Key.X * factor)})
	}
}

// sideBands adds all other numbers: near the key on either side, as near with the
// other sign, and far off.
func (p *Problem) sideBands(add addBand) {
	key, inf := p.Answer.Key.X, math.Inf(1)
	if key == 0 {
		p.restBand(add, -inf, 0, -1)
		p.restBand(add, 0, inf, 1)
		return
	}
	p.restBand(add, min(key, key/farFrom), max(key, key/farFrom), key/2)
	p.restBand(add, min(key, key*farFrom), max(key, key*farFrom), key*2)
	p.restBand(add, min(-key/farFrom, -key*farFrom), max(-key/farFrom, -key*farFrom), -key)
	p.restBand(add, -inf, inf, 2*farFrom*key)
}

// restBand adds numbers that fit nothing; at is one of them.
func (p *Problem) restBand(add addBand, low, high, at float64) {
	add(low, high, Mark{Verdict: p.side(X(at)), Reply: X(at)})
}
