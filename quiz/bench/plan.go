package bench

import (
	"math"

	"scratchpass/calc"
)

// Plan is the pass-by-pass card of a job: what to set, and every reading to come back
// to. It is a rehearsal aid: the fit decides, not the card.
type Plan struct {
	Job     Job
	RPM     int     // the fastest of the lathe's speeds that keeps both rules below
	Usual   float64 // rpm by surface speed
	Fastest float64 // rpm at which the gap leaves handTime seconds
	TooFast bool    // even the slowest speed of the lathe is faster than that
	Trains  []calc.Train
	Lead    calc.Length
	Marks   []int // of the thread dial when the first pass was on mark 1
	Scale   calc.Angle

	Depth    calc.Length // straight in, for the middle of the limits
	Travel   calc.Length // of the compound for that depth
	Estimate calc.Length // by the rule of thumb
	Leave    calc.Length // where the compound is left
	Lag      float64
	Overhang calc.Length // inside: as short as the bar can be set
	Out      calc.Length // how far the tool is taken out, by the cross slide's dial

	Steps []PlanStep

	Wire             calc.Length // best wire; outside threads
	OverMax, OverMin calc.Length
	Cautions         []string // keys of the cautions
}

// PlanStep is one line of the card.
type PlanStep struct {
	Kind     string      // scratch, cut, spring, test or finish
	Feed     calc.Length // as the dial shows it
	Total    calc.Length // on the compound since first touch
	Compound calc.Length // what its dial then reads
	Turns    int         // and how often it has passed its zero
	Cross    calc.Length // what the cross slide's dial reads in the cut
	Depth    calc.Length // straight in, as set
}

// handTime is how long a beginner should have for the moves at the end of a pass:
// common practice, no source. Everyone should take their own.
const handTime = 2.0

// The plan's cuts as shares of the pitch: at 10 threads per inch 0.005, 0.003 and
// 0.002. Common practice, no source.
const (
	firstShare, middleShare, lastShare = 0.05, 0.03, 0.02
	leaveShare                         = 0.92 // of the full travel, where the compound is left
)

// NewPlan plans a job with the compound at an angle from the cross-slide line, 29 to 30
// degrees.
func NewPlan(j Job, angle calc.Angle) (Plan, error) {
	p := Plan{Job: j, Lead: j.Thread.Lead(), Overhang: j.StandsOut}
	if j.Side == calc.Inside {
		p.Overhang = min(j.StandsOut, j.LeastOverhang())
		j.StandsOut = p.Overhang
	}
	p.Lag = New(j).Lag()
	if angle < 28 || angle > 30.5 {
		return p, &calc.InputError{What: "compound angle from the cross-slide line", Got: calc.Shortest(angle.Degrees(), 2), Want: "29, 29.5 or 30"}
	}
	var err error
	if p.Scale, err = calc.CompoundScaleReading(angle, j.Lathe.CompoundZero); err != nil {
		return p, err
	}
	if err := p.speeds(); err != nil {
		return p, err
	}
	if err := p.drive(); err != nil {
		return p, err
	}
	if p.Depth, err = j.FullDepth(); err != nil {
		return p, err
	}
	if p.Travel, err = calc.CompoundTravel(p.Depth, angle); err != nil {
		return p, err
	}
	if p.Estimate, err = calc.RuleOfThumbTravel(j.Thread.Pitch); err != nil {
		return p, err
	}
	p.passes(angle)
	if j.Side == calc.Outside {
		wires, err := calc.WiresFor(j.Thread.Pitch)
		if err != nil {
			return p, err
		}
		p.Wire = wires.Best
		p.OverMax, err = calc.OverWires(j.Limits.Pitch.Max, wires.Best, j.Thread.Pitch)
		if err != nil {
			return p, err
		}
		if p.OverMin, err = calc.OverWires(j.Limits.Pitch.Min, wires.Best, j.Thread.Pitch); err != nil {
			return p, err
		}
	}
	p.cautions()
	return p, nil
}

// speeds finds the fastest speed of the lathe that is slow enough in both ways.
func (p *Plan) speeds() error {
	usual, err := calc.SpindleSpeedFor(calc.FeetPerMinute(threadingFPM), p.Job.Start)
	if err != nil {
		return err
	}
	fastest, err := calc.FastestFor(p.Job.Gap, p.Lead, handTime)
	if err != nil {
		return err
	}
	p.Usual, p.Fastest = usual.RPM(), fastest.RPM()
	slowest := 0
	for _, n := range p.Job.Lathe.Speeds {
		if float64(n) <= min(p.Usual, p.Fastest) {
			p.RPM = max(p.RPM, n)
		}
		if slowest == 0 || n < slowest {
			slowest = n
		}
	}
	if p.RPM == 0 {
		p.RPM, p.TooFast = slowest, float64(slowest) > p.Fastest
	}
	if slowest == 0 { // the lathe's speeds are not known
		p.RPM = int(min(p.Usual, p.Fastest))
	}
	return nil
}

// drive finds gears and lines.
func (p *Plan) drive() error {
	if len(p.Job.Lathe.Gears) >= 2 {
		ratio, err := calc.GearRatio(p.Lead, p.Job.screwLead())
		if err != nil {
			return err
		}
		if p.Trains, err = calc.FindTrains(p.Job.Lathe.Gears, ratio, 3); err != nil {
			return err
		}
	}
	for _, k := range p.Job.SafeMarks() {
		p.Marks = append(p.Marks, k+1)
	}
	return nil
}

// passes lists the passes: a scratch, cuts on the compound that grow lighter, a spring
// pass and a try, then straight in by thousandths.
func (p *Plan) passes(angle calc.Angle) {
	line := p.Job.Lathe.Compound.Division
	whole := func(l calc.Length, least float64) calc.Length {
		return line.Times(max(calc.Round(l.Over(line), 0), least))
	}
	pitch := p.Job.Thread.Pitch
	p.Leave = line.Times(math.Floor(p.Travel.Times(leaveShare).Over(line) + 1e-6))
	cross := p.Job.Lathe.Cross
	// The tool must come clear of the crests from the bottom of the finished groove.
	clear := (p.Depth + calc.Thou.Times(20)).Times(p.Job.Lathe.CrossReads.PerRadial())
	half := cross.Turn.Times(0.5)
	p.Out = half.Times(math.Ceil(clear.Over(half) - 1e-9))
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
	total = min(whole(calc.Thou.Times(1.5), 1), p.Leave)
	add("scratch", total, 0)
	for total < p.Leave-line.Times(0.5) && len(p.Steps) < 300 {
		share := lastShare
		switch {
		case total < p.Leave.Times(0.5):
			share = firstShare
		case total < p.Leave.Times(0.8):
			share = middleShare
		}
		feed := min(whole(pitch.Times(share), 1), p.Leave-total)
		total += feed
		add("cut", feed, 0)
	}
	add("spring", 0, 0)
	add("test", 0, 0)
	p.finish(add, total.Times(angle.Cos()))
}

// finish adds what is left, straight in.
func (p *Plan) finish(add func(kind string, feed, straight calc.Length), done calc.Length) {
	line, per := p.Job.Lathe.Cross.Division, p.Job.Lathe.CrossReads.PerRadial()
	feed := line.Times(max(1, calc.Round(calc.Thou.Times(per).Over(line), 0)))
	if p.Job.Lathe.Metric {
		feed = line.Times(max(1, calc.Round(calc.Millimetres(0.02*per).Over(line), 0)))
	}
	straight := calc.Length(0)
	for done+straight.Times(1/per) < p.Depth-1e-9 && len(p.Steps) < 400 {
		straight += feed
		add("finish", feed, straight)
	}
	add("spring", 0, straight)
	add("test", 0, straight)
}

func (p *Plan) in() float64 { return New(p.Job).in() }

// cautions collects what must be said beside this job.
func (p *Plan) cautions() {
	p.Cautions = []string{"eyes-sleeves-gloves", "chuck-key", "slow-enough", "withdraw-first"}
	if p.Job.End != Bottom || p.Job.Gap < 1 {
		p.Cautions = append(p.Cautions, "shoulder")
	}
	if p.Job.Side == calc.Inside {
		p.Cautions = append(p.Cautions, "inside-way-out")
	}
	if p.Job.KeepClosed() {
		p.Cautions = append(p.Cautions, "half-nut-closed")
	}
	if p.Job.Lathe.ScrewedNose && p.Job.Hold == Chuck {
		p.Cautions = append(p.Cautions, "screwed-chuck")
	}
	p.Cautions = append(p.Cautions, "double-depth", "chips", "stop-to-measure", "no-cloth", "lost-count")
}
