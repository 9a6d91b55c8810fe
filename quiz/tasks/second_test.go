package tasks_test

import (
	"flag"
	"math/big"
	"strings"
	"testing"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
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
		size, pitch, _ := strings.Cut(rest, "x")
		if _, p, several := strings.Cut(pitch, "-P"); several { // M16xL3-P1.5
			pitch = p
		}
		pitch, _, _ = strings.Cut(pitch, "-")
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
	if count := dec(tpi); !strings.ContainsAny(size, "/.") && !count.less(n(24)) { // a screw number
		return dec("0.060").plus(dec("0.013").times(dec(size))), g.inch().over(count)
	}
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

// starts is the number of starts, from the callout or as given.
func (g given) starts() number {
	text, called := g.words["thread"]
	if !called {
		return g.x("starts")
	}
	if front, ok := strings.CutSuffix(text, " STARTS"); ok {
		return dec(front[strings.LastIndex(front, " ")+1:])
	}
	if _, rest, ok := strings.Cut(text, "xL"); ok {
		lead, pitch, _ := strings.Cut(rest, "-P")
		pitch, _, _ = strings.Cut(pitch, "-")
		return dec(lead).over(dec(pitch))
	}
	return n(1)
}

// nominal is the nominal diameter.
func (g given) nominal() number {
	if g.has("nominal") {
		return g.x("nominal")
	}
	d, _ := g.thread()
	return d
}

// part is so many eighths of the sharp height, for a pitch.
func (g given) eighths(k float64) number {
	return root3.over(n(2)).times(n(k)).over(n(8)).times(g.pitch())
}

// diameter is the size that is turned.
func (g given) diameter() number {
	if g.has("diameter") {
		return g.x("diameter")
	}
	d, _ := g.thread()
	return d
}

// leadAngle is atan of lead over the circumference at the pitch line.
func (g given) leadAngle() number {
	e := g.nominal
	diameter := number{}
	if g.has("pitch-diameter") {
		diameter = g.x("pitch-diameter")
	} else {
		diameter = e().minus(g.eighths(6))
	}
	return atanOf(g.pitch().times(g.starts()).over(diameter.times(pi)))
}

// total is the infeed planned, by the rule of thumb where a thread is given.
func (g given) total() number {
	if g.has("total") {
		return g.x("total")
	}
	return g.pitch().over(dec("1.5"))
}

// ceil is the next whole number up.
func (a number) ceil() number {
	if f := a.floor(); f.less(a) {
		return f.plus(n(1))
	}
	return a
}

func least(a, b number) number {
	if a.less(b) {
		return a
	}
	return b
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

// mod is a modulo m, both not below 0. A decimal has no exact binary form, so a whole
// number of turns may lie a hair below: the floor is taken a hair above.
func (a number) mod(m number) number {
	hair := dec("0.000000000000000000000001")
	return a.minus(a.over(m).plus(hair).floor().times(m))
}

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
	"even-chip-load": func(g given) number { return g.total().times(g.x("pass").over(g.x("passes")).sqrt()) },
	"number-of-passes": func(g given) number {
		ratio := g.total().over(g.x("first"))
		return ratio.times(ratio).ceil()
	},
	"flank-width": func(g given) number {
		h := number{}
		if g.has("depth") {
			h = g.x("depth")
		} else {
			h = g.h1724()
		}
		return h.times(n(4)).over(root3).plus(g.x("tool-flat"))
	},
	"metric-thread-inch-dial": func(g given) number {
		p := number{}
		if g.has("pitch-mm") {
			p = g.x("pitch-mm").over(dec("25.4"))
		} else {
			_, p = g.thread()
		}
		return root3.over(n(2)).times(n(17)).over(n(24)).times(p).over(cosOf(g.angle()))
	},
	"sideways-shift": func(g given) number { return g.h1724().times(tanOf(g.angle())) },
	"what-a-spring-pass-leaves": func(g given) number {
		share := number{}
		if g.has("left-on") {
			share = g.x("left-on").over(g.x("cut"))
		} else {
			share = g.x("stays").over(n(100))
		}
		left := g.x("cut").times(share)
		springs, _ := g.x("springs").Int64()
		for range springs {
			left = left.times(share)
		}
		return left
	},
	"best-wire": func(g given) number { return g.pitch().over(root3) },
	"cut-to-fit": func(g given) number {
		k := number{}
		if g.has("clearance") {
			k = g.x("clearance")
		} else {
			k = g.x("least-clearance").plus(g.x("most-clearance")).over(n(2))
		}
		feed := g.x("plug").plus(k).minus(g.x("present"))
		if g.words["dial-reads"] == "radius" {
			return feed.over(n(2))
		}
		return feed
	},
	"in-or-out": func(g given) number {
		low := number{}
		if g.has("low") {
			low = g.x("low")
		} else {
			low = g.x("high").minus(g.x("tolerance"))
		}
		return least(g.x("measured").minus(low), g.x("high").minus(g.x("measured")))
	},
	"infeed-from-wires": func(g given) number {
		excess := number{}
		if g.has("excess") {
			excess = g.x("excess")
		} else {
			excess = g.x("reading").minus(g.x("target"))
		}
		return excess.over(n(2)).over(cosOf(g.angle()))
	},
	"over-wires": func(g given) number {
		return g.x("pitch-diameter").plus(g.x("wire").times(n(3))).minus(g.eighths(8))
	},
	"pitch-diameter-from-wires": func(g given) number {
		return g.x("reading").minus(g.x("wire").times(n(3))).plus(g.eighths(8))
	},
	"scratch-pass-check": func(g given) number { return g.x("over").over(g.pitch()).plus(n(1)) },
	"dial-divisions": func(g given) number {
		if g.has("division") {
			return g.x("infeed").over(g.x("division"))
		}
		return g.x("infeed").times(g.x("lines")).over(g.x("turn"))
	},
	"tpi-from-metric-pitch": func(g given) number { return g.inch().over(g.pitch()) },
	"number-size": func(g given) number {
		if g.has("number") {
			return dec("0.060").plus(dec("0.013").times(g.x("number")))
		}
		d, _ := g.thread()
		return d
	},
	"multi-start-lead": func(g given) number { return g.pitch().times(g.starts()) },
	"count-crests": func(g given) number {
		pitch := g.x("last").minus(g.x("first")).over(g.x("crests").minus(n(1)))
		if g.words["wanted"] == "pitch" || g.metric && !g.has("wanted") {
			return pitch
		}
		return g.inch().over(pitch)
	},
	"minor-diameter":         func(g given) number { return g.nominal().minus(g.h1724().times(n(2))) },
	"start-chamfer":          func(g given) number { return g.nominal().minus(g.h1724().times(n(2))) },
	"basic-pitch-diameter":   func(g given) number { return g.nominal().minus(g.eighths(6)) },
	"bore-for-inside-thread": func(g given) number { return g.nominal().minus(g.eighths(10)) },
	"tool-nose-flat":         func(g given) number { return g.pitch().over(n(8)) },
	"lead-angle":             func(g given) number { return g.leadAngle() },
	"side-clearance": func(g given) number {
		if g.has("lead-angle") {
			return g.x("clearance").plus(g.x("lead-angle"))
		}
		return g.x("clearance").plus(g.leadAngle())
	},
	"depth-for-small-blank": func(g given) number {
		under := number{}
		if g.has("under") {
			under = g.x("under")
		} else {
			under = g.nominal().minus(g.x("blank"))
		}
		return g.h1724().minus(under.over(n(2)))
	},
	"threading-speed": func(g given) number {
		return g.x("turning-speed").times(n(12)).over(pi.times(g.diameter())).over(n(4))
	},
	"threading-speed-metric": func(g given) number {
		return g.x("turning-speed").times(n(1000)).over(pi.times(g.diameter())).over(n(4))
	},
	"carriage-speed": func(g given) number {
		return g.x("rpm").over(n(60)).times(g.pitch()).times(g.x("starts"))
	},
	"time-to-shoulder": func(g given) number {
		return g.x("gap").over(g.pitch()).times(n(60)).over(g.x("rpm"))
	},
	"fastest-for-the-gap": func(g given) number {
		return n(60).times(g.x("gap")).over(g.pitch()).over(g.x("seconds"))
	},
	"gear-ratio": func(g given) number { return g.pitch().times(g.x("lead-screw")) },
	"gear-ratio-metric-thread": func(g given) number {
		p := number{}
		if g.has("pitch") {
			p = g.x("pitch")
		} else if g.has("pitch-mm") {
			p = g.x("pitch-mm")
		} else {
			_, p = g.thread()
			p = p.times(dec("25.4"))
		}
		return p.times(n(5)).times(g.x("lead-screw")).over(n(127))
	},
	"compound-other-zero": func(g given) number {
		a := number{}
		switch {
		case !g.has("included"):
			a = g.x("angle")
		case g.has("less"):
			a = g.x("included").over(n(2)).minus(g.x("less"))
		default:
			a = g.x("included").over(n(2))
		}
		return n(90).minus(a)
	},
	"acme-compound-angle": func(g given) number {
		included := map[string]float64{"acme": 29, "stub-acme": 29, "trapezoidal": 30, "whitworth": 55, "unified": 60, "metric": 60}
		if form, ok := g.words["form"]; ok {
			return n(included[form]).over(n(2))
		}
		return g.x("included").over(n(2))
	},
	"compound-travel-needed": func(g given) number {
		return g.h1724().over(cosOf(g.angle())).plus(g.x("spare"))
	},
	"marks-that-fit": func(g given) number {
		// k marks on, the carriage has gone k T/(N M) inches, or k T N/M mm on a metric lead
		// screw; that over the pitch must be whole, and so must a whole turn.
		turn := g.x("gear").over(g.x("lead-screw"))
		if g.metric {
			turn = g.x("gear").times(g.x("lead-screw"))
		}
		marks, _ := g.x("marks").Int64()
		whole := func(x number) bool {
			near := x.plus(dec("0.5")).floor()
			gap := x.minus(near)
			return gap.Abs(gap.Float).Cmp(dec("0.0000001").Float) < 0
		}
		if !whole(turn.over(g.pitch())) {
			return n(0)
		}
		fit := 0.0
		for k := range marks {
			if whole(turn.times(n(float64(k))).over(g.x("marks")).over(g.pitch())) {
				fit++
			}
		}
		return n(fit)
	},
	"boring-bar-room": func(g given) number {
		bore := number{}
		if g.has("bore") {
			bore = g.x("bore")
		} else {
			bore = g.nominal().minus(g.eighths(10))
		}
		return bore.minus(g.x("bar")).minus(g.x("tool")).minus(g.x("withdraw"))
	},
	"next-start": func(g given) number {
		if g.has("lead") {
			return g.x("lead").over(g.x("starts"))
		}
		return g.pitch()
	},
	"bar-stiffness": func(g given) number {
		short := number{}
		if g.has("new-overhang") {
			short = g.x("new-overhang")
		} else {
			short = g.x("overhang").minus(g.x("shorter-by"))
		}
		r := g.x("overhang").over(short)
		return r.times(r).times(r)
	},
	"room-to-start": func(g given) number {
		return g.x("rpm").over(n(60)).times(g.pitch()).times(g.x("seconds"))
	},
	"percent-of-thread": func(g given) number {
		return g.nominal().minus(g.x("bore")).times(n(100)).over(g.eighths(10))
	},
	"relief-groove-diameter": func(g given) number {
		return g.nominal().minus(g.h1724().times(n(2))).minus(g.x("below").times(n(2)))
	},
	"relief-groove-width": func(g given) number {
		return g.x("speed").over(n(60)).times(g.pitch()).times(g.x("seconds"))
	},
}

func TestSecondComputation(t *testing.T) {
	done := 0
	for _, task := range tasks.All() {
		first, err := problem.New(task, problem.NewCode(task.Name, 1, anySystem(task), 1, machine.DefaultLathe(anySystem(task))))
		if err != nil {
			t.Fatal(err)
		}
		if first.Expected.Kind != answer.Quantity {
			continue
		}
		compute := second[task.Name]
		if compute == nil {
			t.Errorf("%s has no second computation", task.Name)
			continue
		}
		t.Run(task.Name, func(t *testing.T) {
			for level := problem.NumbersGiven; level <= problem.OnTheJob; level++ {
				for _, s := range []machine.System{machine.Imperial, machine.Metric} {
					if !task.Allows(s) {
						continue
					}
					for seed := range draws(*secondDraws) {
						p := made(t, task, level, s, seed+500, lathe(s, seed))
						g := given{metric: s == machine.Metric, words: map[string]string{}}
						for _, one := range p.Values.Givens() {
							g.words[one.Name] = one.Value
						}
						want, _ := compute(g).Float64()
						got := p.Expected.Key.X * p.Expected.Unit.Factor
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

func anySystem(t *problem.Task) machine.System {
	if t.Allows(machine.Imperial) {
		return machine.Imperial
	}
	return machine.Metric
}
