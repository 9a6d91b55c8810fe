package quiz

import (
	"math"
	"strings"

	"scratchpass/calc"
)

// Verdict is what an answer was found to be.
type Verdict string

// The verdicts.
const (
	Right      Verdict = "right"
	Convention Verdict = "convention" // right by another published convention
	UnitSlip   Verdict = "unit"       // the right number in another unit
	NamedSlip  Verdict = "slip"       // one known wrong road gives this answer
	ScrapWrong Verdict = "scrap-side" // wrong, and on the side that ruins the part
	SafeWrong  Verdict = "safe-side"  // wrong, but metal is still there
	Wrong      Verdict = "wrong"
	Unread     Verdict = "unread" // not understood: asked again, never marked
)

// Mark is the result of marking one answer.
type Mark struct {
	Verdict Verdict
	Slip    string // the slip or convention, when the answer fits one and no other
	Points  float64
	Reply   Reply
	Passed  bool  // no answer was tried
	Err     error // what would have been understood, for Unread
}

// Correct reports whether the answer counts as right.
func (m Mark) Correct() bool { return m.Verdict == Right || m.Verdict == Convention }

// halfPoint is what the right number in the wrong unit earns: the working was right,
// the part would not have been. A part of what is right, and nothing wrong, earns it too.
const halfPoint = 0.5

// Mark marks what a learner typed.
func (p *Problem) Mark(text string) Mark {
	r, err := p.Answer.Read(text)
	if err != nil {
		return Mark{Verdict: Unread, Err: err}
	}
	if p.roundedRight(text, r) {
		return Mark{Verdict: Right, Points: 1, Reply: r}
	}
	return p.MarkReply(r)
}

// roundedRight reports whether a number with one decimal fewer than asked for is the
// key, rounded, and nearer to it than to half-way to any slip: 1.6 for 1.64. Of a
// length that decimal is a dial line, so there the tolerance rules.
func (p *Problem) roundedRight(text string, r Reply) bool {
	u := p.Answer.Unit
	if _, ok := p.Answer.Kind.(quantity); !ok || u.Name == "in" || u.Name == "mm" || u.Places < 2 {
		return false
	}
	_, decimals, _ := strings.Cut(strings.TrimRight(strings.TrimSpace(text), " abcdefghijklmnopqrstuvwxyz"), ".")
	if len(decimals) > u.Places-1 || !calc.Within(r.X*u.Factor, calc.Round(p.Answer.Key.X*u.Factor, u.Places-1), 1e-9) { // 0.1 is 0.10
		return false
	}
	for _, s := range p.slips {
		if math.Abs(r.X-p.Answer.Key.X) > 0.4*p.gapToKey(s.reply) {
			return false
		}
	}
	return true
}

// MarkReply marks an answer that has been read. Right comes before every slip. A
// slip is named only when the answer fits exactly one, or one and its twins.
func (p *Problem) MarkReply(r Reply) Mark {
	a := &p.Answer
	if a.Right(r) {
		return Mark{Verdict: Right, Points: 1, Reply: r}
	}
	switch s := p.fits(r); {
	case s != nil && s.Covers != nil:
		return Mark{Verdict: SafeWrong, Slip: s.Name, Points: halfPoint, Reply: r} // a part of what is right: nothing wrong in it, but not all
	case s != nil && s.Convention:
		return Mark{Verdict: Convention, Slip: s.Name, Points: 1, Reply: r}
	case s != nil:
		return Mark{Verdict: NamedSlip, Slip: s.Name, Reply: r}
	case a.unitSlip(r), a.rowInOtherUnit(r):
		return Mark{Verdict: UnitSlip, Points: halfPoint, Reply: r}
	}
	return Mark{Verdict: p.side(r), Reply: r}
}

// fits returns the slip whose answer this is, or nil when none or several are.
// A convention that fits comes first: it earns credit.
func (p *Problem) fits(r Reply) *Slip {
	var found *Slip
	for i := range p.slips {
		s := p.slips[i]
		covered := s.slip.Covers != nil && s.slip.Covers(p.Answer.Key, r)
		if !covered && !p.Answer.Kind.Same(&p.Answer, r, s.reply, p.Answer.SlipTol) {
			continue
		}
		switch {
		case found == nil, s.slip.Convention && !found.Convention:
			found = s.slip
		case !twins(found, s.slip) && !found.Convention:
			return nil
		}
	}
	return found
}

// farFrom is how many times too large or too small a number is when it is far off.
const farFrom = 6

// farOff reports whether a number is so far from the key that a place was lost or
// another thing meant: no side of the part comes into it.
func (p *Problem) farOff(r Reply) bool {
	given, key := math.Abs(r.X), math.Abs(p.Answer.Key.X)
	_, ok := p.Answer.Kind.(quantity)
	return ok && key > 0 && (given > farFrom*key || given*farFrom < key)
}

// side tells on which side of the key a wrong number lies.
func (p *Problem) side(r Reply) Verdict {
	if _, ok := p.Answer.Kind.(quantity); !ok || p.Answer.Scrap == NoScrapSide {
		return Wrong
	}
	if p.farOff(r) {
		return Wrong
	}
	if r.X < 0 && p.Answer.Key.X > 0 { // a direction was mixed up; no side of the part is meant
		return Wrong
	}
	if (r.X > p.Answer.Key.X) == (p.Answer.Scrap == ScrapHigh) {
		return ScrapWrong
	}
	return SafeWrong
}

// Shown prints a reply the way the problem's answers are shown. A number that was
// given with more places than the answer keeps them.
func (p *Problem) Shown(r Reply) string {
	if _, ok := p.Answer.Kind.(quantity); ok && !calc.Within(calc.Round(r.X*p.Answer.Unit.Factor, p.Answer.Unit.Places), r.X*p.Answer.Unit.Factor, 1e-9) {
		return p.Answer.Unit.WithName(p.Answer.Unit.Exact(r.X))
	}
	return p.Answer.Kind.Show(&p.Answer, r)
}
