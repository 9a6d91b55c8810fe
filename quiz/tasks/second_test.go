package tasks_test

import (
	"flag"
	"math/big"
	"strings"
	"testing"

	"scratchpass/calc"
	"scratchpass/quiz"
	"scratchpass/quiz/tasks"
)

// A second computation of every numeric key, written from the formulas as the trade
// knows them, in big arithmetic, from the numbers as they are printed to the
// learner. It shares nothing with calc.
var secondDraws = flag.Int("second-draws", 200, "problems of each task, level and system in the second computation")

// number is a big.Float with the operators written out.
type number struct{ *big.Float }

const precision = 120

func n(x float64) number { return number{new(big.Float).SetPrec(precision).SetFloat64(x)} }

// dec is a decimal as written, exact to the precision.
func dec(text string) number {
	f, ok := new(big.Float).SetPrec(precision).SetString(text)
	if !ok {
		panic("not a decimal: " + text)
	}
	return number{f}
}

func fresh() *big.Float { return new(big.Float).SetPrec(precision) }

func (a number) plus(b number) number  { return number{fresh().Add(a.Float, b.Float)} }
func (a number) minus(b number) number { return number{fresh().Sub(a.Float, b.Float)} }
func (a number) times(b number) number { return number{fresh().Mul(a.Float, b.Float)} }
func (a number) over(b number) number  { return number{fresh().Quo(a.Float, b.Float)} }
func (a number) sqrt() number          { return number{fresh().Sqrt(a.Float)} }
func (a number) less(b number) bool    { return a.Cmp(b.Float) < 0 }

// pi to forty places.
var pi = dec("3.1415926535897932384626433832795028841972")

// root3 is the square root of three: H = root3/2 P.
var root3 = n(3).sqrt()

// sincos are the series, for an angle in degrees.
func sincos(degrees number) (sin, cos number) {
	x := degrees.times(pi).over(n(180))
	sin, cos = n(0), n(0)
	term := n(1)
	for k := range 60 {
		switch k % 4 {
		case 0:
			cos = cos.plus(term)
		case 1:
			sin = sin.plus(term)
		case 2:
			cos = cos.minus(term)
		case 3:
			sin = sin.minus(term)
		}
		term = term.times(x).over(n(float64(k + 1)))
	}
	return sin, cos
}

func cosOf(degrees number) number { _, c := sincos(degrees); return c }

func tanOf(degrees number) number { s, c := sincos(degrees); return s.over(c) }

// atanOf is the angle in degrees whose tangent is x, by Newton's method.
func atanOf(x number) number {
	a := n(0)
	for range 60 {
		s, c := sincos(a)
		// tan a - x = 0, derivative 1 / cos^2
		a = a.minus(s.over(c).minus(x).times(c).times(c).times(n(180)).over(pi))
	}
	return a
}

// floor is the whole part of a number that is not below 0.
func (a number) floor() number {
	i, _ := a.Float.Int(nil)
	return number{fresh().SetInt(i)}
}

// given are the printed numbers of a problem, in the units they are printed in.
type given struct {
	metric bool
	words  map[string]string
}

func (g given) has(name string) bool { _, ok := g.words[name]; return ok }

func (g given) x(name string) number {
	text, ok := g.words[name]
	if !ok {
		panic("no " + name)
	}
	return dec(text)
}

// pitch is the pitch in the problem's unit of length, from whatever was given.
func (g given) pitch() number {
	switch {
	case g.has("tpi"):
		return g.inch().over(g.x("tpi"))
	case g.has("pitch"):
		return g.x("pitch")
	}
	_, p := g.thread()
	return p
}

// inch is one inch in the problem's unit of length.
func (g given) inch() number {
	if g.metric {
		return dec("25.4")
	}
	return n(1)
}

// thread takes a designation apart by hand: nominal diameter and pitch, in the
// problem's unit.
func (g given) thread() (d, p number) {
	text := g.words["thread"]
	if rest, ok := strings.CutPrefix(text, "M"); ok {
		rest, _, _ = strings.Cut(rest, "-")
		size, pitch, _ := strings.Cut(rest, "x")
		d, p = dec(size), dec(pitch)
		if !g.metric {
			d, p = d.over(dec("25.4")), p.over(dec("25.4"))
		}
		return d, p
	}
	front, _, _ := strings.Cut(text, " ")
	i := strings.LastIndex(front, "-")
	size, tpi := front[:i], front[i+1:]
	d = n(0)
	for _, part := range strings.Split(size, "-") {
		if top, bottom, ok := strings.Cut(part, "/"); ok {
			d = d.plus(dec(top).over(dec(bottom)))
		} else {
			d = d.plus(dec(part))
		}
	}
	return d.times(g.inch()), g.inch().over(dec(tpi))
}

// angle is the compound's angle from the cross-slide line.
func (g given) angle() number {
	if g.has("scale") {
		return n(90).minus(g.x("scale"))
	}
	return g.x("angle")
}

// sum adds up the cuts; springs are not printed in sums.
func (g given) sum() number {
	s := n(0)
	for _, part := range strings.Split(g.words["cuts"], " + ") {
		s = s.plus(dec(part))
	}
	return s
}

// h1724 is the outside depth, 17/24 of the sharp height.
func (g given) h1724() number { return root3.over(n(2)).times(n(17)).over(n(24)).times(g.pitch()) }

// toolDepth is the depth for a tool flat: (P/2 - f) cos 30 and what lies above the
// pitch line.
func (g given) toolDepth(inside bool) number {
	above := n(3) // from a nominal blank 3/8 H
	if inside {
		above = n(2) // from the basic bore 2/8 H
	}
	p := g.pitch()
	return root3.over(n(2)).times(p).times(above).over(n(8)).plus(p.over(n(2)).minus(g.x("tool-flat")).times(root3).over(n(2)))
}

// mod is a modulo m, both not below 0.
func (a number) mod(m number) number { return a.minus(a.over(m).floor().times(m)) }

// second holds the second computations. A numeric task without one is an error.
var second = map[string]func(g given) number{
	"pitch-from-tpi": func(g given) number { return g.pitch() },
	"single-depth":   func(g given) number { return g.h1724() },
	"depth-for-tool": func(g given) number { return g.toolDepth(g.words["side"] == "inside") },
	"compound-travel": func(g given) number {
		return g.h1724().over(cosOf(g.angle()))
	},
	"diameter-dial-plunge": func(g given) number { return g.h1724().times(n(2)) },
	"radius-dial-plunge":   func(g given) number { return g.h1724() },
	"rule-of-thumb": func(g given) number {
		return g.pitch().over(dec("1.5")).minus(g.toolDepth(true).over(cosOf(g.angle())))
	},
	"dial-past-a-turn":   func(g given) number { return g.x("start").plus(g.x("infeed")).mod(g.x("turn")) },
	"dial-after-springs": func(g given) number { return g.x("start").plus(g.sum()).mod(g.x("turn")) },
	"infeed-left":        func(g given) number { return g.x("total").minus(g.sum()) },
	"find-where-you-are": func(g given) number { return g.x("total").minus(g.x("dial")) },
	"finish-with-cross-slide": func(g given) number {
		h := g.x("total").minus(g.x("done")).times(cosOf(g.angle()))
		if g.words["dial-reads"] == "diameter" {
			return h.times(n(2))
		}
		return h
	},
}

func TestSecondComputation(t *testing.T) {
	done := 0
	for _, task := range tasks.All() {
		first, err := quiz.Make(task, quiz.NewCode(task.Name, 1, anySystem(task), 1, quiz.DefaultLathe(anySystem(task))))
		if err != nil {
			t.Fatal(err)
		}
		if first.Answer.Kind.Name() != "quantity" {
			continue
		}
		compute := second[task.Name]
		if compute == nil {
			t.Errorf("%s has no second computation", task.Name)
			continue
		}
		t.Run(task.Name, func(t *testing.T) {
			for level := quiz.NumbersGiven; level <= quiz.OnTheJob; level++ {
				for _, s := range []quiz.System{quiz.Imperial, quiz.Metric} {
					if !task.Allows(s) {
						continue
					}
					for seed := range draws(*secondDraws) {
						p := problem(t, task, level, s, seed+500, lathe(s, seed))
						g := given{metric: s == quiz.Metric, words: map[string]string{}}
						for _, one := range p.Values.Givens() {
							g.words[one.Name] = one.Value
						}
						want, _ := compute(g).Float64()
						got := p.Answer.Key.X * p.Answer.Unit.Factor
						if !calc.Within(got, want, 1e-9*max(1, want, -want)) {
							t.Fatalf("%s: key %v, second computation %v (%v)", p.Code, got, want, g.words)
						}
						done++
					}
				}
			}
		})
	}
	t.Logf("%d problems", done)
}

func anySystem(t *quiz.Task) quiz.System {
	if t.Allows(quiz.Imperial) {
		return quiz.Imperial
	}
	return quiz.Metric
}
