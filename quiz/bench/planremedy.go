package bench

import (
	"math"

	"scratchpass/calc"
	"scratchpass/quiz/machine"
)

// The bars that shops stock, in inches and in millimetres.
var (
	inchBars   = []float64{1.0 / 4, 5.0 / 16, 3.0 / 8, 1.0 / 2, 5.0 / 8, 3.0 / 4, 1, 1.25}
	metricBars = []float64{6, 8, 10, 12, 16, 20, 25, 32}
)

// stockBars are the bars that shops stock for threads of a system, the thinnest first.
func stockBars(metric bool) []calc.Length {
	var bars []calc.Length
	if metric {
		for _, mm := range metricBars {
			bars = append(bars, calc.Millimetres(mm))
		}
		return bars
	}
	for _, in := range inchBars {
		bars = append(bars, calc.Inches(in))
	}
	return bars
}

// usualBar is the thickest stock bar that a bore takes: about 0.65 of it, with room for the
// tool and to come clear. It is 0 where none does.
func (j Job) usualBar(bore calc.Length) calc.Length {
	for _, share := range []float64{mostBarShare, tightShare} {
		most := min(bore.Times(share), bore-j.Thread.Pitch.Times(shortestReach)-j.toClear())
		best := calc.Length(0)
		for _, bar := range stockBars(j.Thread.Metric) {
			if bar <= most+hair {
				best = bar
			}
		}
		if best > 0 {
			return best
		}
	}
	return 0
}

// toClear is the room that a tool wants to come clear in a bore: a pipe thread is higher.
func (j Job) toClear() calc.Length {
	if j.Form() == Pipe {
		return j.Thread.Pitch.Times(roomOnCone)
	}
	return j.Thread.Pitch.Times(roomToClear)
}

// BarText is the size of a bar in the units of the thread, as bars are sold.
func (j Job) BarText(bar calc.Length) string {
	if j.Thread.Metric {
		return machine.MMUnit.Text(bar.Inches())
	}
	return machine.InchUnit.Text(bar.Inches())
}

// noStockBar says that a bore is too small for any stock bar, and what would do.
func (j Job) noStockBar() error {
	thinnest := stockBars(j.Thread.Metric)[0]
	return &calc.InputError{What: "bore", Got: j.text(j.Start) + ": the thinnest stock bar, " + j.BarText(thinnest) + ", leaves no room for its tool and to come clear",
		Want: "a thinner bar of your own with --bar and --reach, or cut this thread with a tap"}
}

// TooSlim is how many times its diameter a bar stands out, where that is too much for
// steel; 0 else.
func (p Plan) TooSlim() float64 {
	if p.Job.Side != calc.Inside {
		return 0
	}
	if times := p.Overhang.Over(p.Job.Bar); times > barLimit+shareOff {
		return times
	}
	return 0
}

// tooSlim says that a bar stands out too far, and which would do.
func (p Plan) tooSlim(times float64) error {
	want := "a shorter thread or gap"
	for _, bar := range stockBars(p.Job.Thread.Metric) {
		room := p.Job.narrowest(p.Job.Start, p.Job.Length) - bar - p.Job.Thread.Pitch.Times(shortestReach) - p.Job.toClear()
		if p.Overhang <= bar.Times(barLimit) && room >= -hair {
			want = "a steel bar of " + p.Job.BarText(bar) + ", or " + want
			break
		}
	}
	return &calc.InputError{What: "bar", Got: p.Job.text(p.Job.Bar) + " would stand out " + p.Job.text(p.Overhang) + ", " + calc.Fixed(times, 1) +
		" times its diameter; steel bears about 4", Want: want + "; or cut it with a tap"}
}

// remedy finds what would help a set-up that does not bear its cuts: a thicker bar that has
// room, or the free end held; a slower speed than the lathe has; or both.
func (p *Plan) remedy(angle calc.Angle) {
	stiffer := p.stiffer()
	for _, try := range stiffer {
		if _, ok := try.choose(angle); ok {
			p.BarWould, p.HeldWould = try.Job.Bar, p.Job.Side == calc.Outside
			return
		}
	}
	for i, try := range append([]Plan{*p}, stiffer...) {
		if rpm := try.slowerWould(angle); rpm > 0 {
			p.SpeedWould = rpm
			if i > 0 {
				p.BarWould, p.HeldWould = try.Job.Bar, p.Job.Side == calc.Outside
			}
			return
		}
	}
}

// stiffer are the same card with each stock bar that is thicker and has room, or with the
// free end held.
func (p *Plan) stiffer() []Plan {
	try := *p
	if p.Job.Side == calc.Outside {
		try.Job.Hold = Centres // as stiff as the bench takes a centre to be
		return []Plan{try}
	}
	var plans []Plan
	for _, bar := range stockBars(p.Job.Thread.Metric) {
		try.Job.Bar = bar
		try.Job.Reach = min(p.Job.Reach, p.Job.narrowest(p.Job.Start, p.Job.Length)-bar-p.Job.toClear())
		if bar > p.Job.Bar+hair && try.Job.Reach >= p.Job.Thread.Pitch.Times(shortestReach) && try.Job.Check() == nil && try.TooSlim() == 0 {
			plans = append(plans, try)
		}
	}
	return plans
}

// slowerWould is the speed, slower than the lathe has, at which a card could be cut; 0 where
// none helps.
func (p *Plan) slowerWould(angle calc.Angle) int {
	for share := 0.9; share > 0.1; share -= 0.1 {
		try := *p
		try.RPM = int(math.Floor(float64(p.RPM) * share))
		try.Job.Lathe.Speeds = nil
		if _, ok := try.choose(angle); ok && try.RPM > 0 {
			return try.RPM
		}
	}
	return 0
}

func sqrt(n int) float64 { return math.Sqrt(float64(n)) }

// Gear127Would reports whether the gear of 127 teeth would bring a lead near that no gears on
// the list come near: metric threads on an inch lead screw, and the other way round.
func (p Plan) Gear127Would() bool { return p.Job.Thread.Metric != p.Job.Lathe.Metric }

// Helps reports whether something was found that would help a set-up which does not bear its
// cuts; where nothing was, it takes a heavier lathe, or a tap or a die.
func (p Plan) Helps() bool { return p.BarWould > 0 || p.HeldWould || p.SpeedWould > 0 }
