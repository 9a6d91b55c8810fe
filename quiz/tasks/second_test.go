package tasks_test

import (
	"flag"
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
		if _, p, several := strings.Cut(pitch, "P"); several { // Ph3P1.5
			_, p, _ = strings.Cut(p, "P")
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
	if _, rest, ok := strings.Cut(text, "xPh"); ok {
		lead, pitch, _ := strings.Cut(rest, "P")
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
