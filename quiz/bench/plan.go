package bench

import (
	"slices"

	"scratchpass/calc"
)

// Plan is the pass-by-pass card of a job: what to set, and every reading to come back
// to. It is a rehearsal aid: the fit decides, not the card.
type Plan struct {
	Job     Job
	RPM     int     // the fastest of the lathe's speeds that keeps both rules below
	Usual   float64 // rpm by surface speed
	Fastest float64 // rpm at which the gap leaves handTime seconds; 0 where nothing stands behind the end of the cut
	TooFast bool    // even the slowest speed of the lathe is faster than that
	Hands   float64 // how many seconds the gap is to leave

	NoGroove   bool        // the cut begins behind the thread, and the groove there is not as deep as the thread
	Unscrews   bool        // the spindle must turn in reverse, and what drives the work would unscrew in reverse: there are no passes
	Slender    float64     // outside, in the chuck: how many times its diameter the work stands out
	Misses     bool        // followed at the bench the card ends before the fit, or past it: a dial too coarse
	NoGears    bool        // no gears on the list come near the lead
	Chatters   bool        // whatever the cuts, this set-up chatters at the bench
	TooMany    int         // so many passes on the compound are the fewest that this set-up bears, and too many; 0 where they are not
	BarWould   calc.Length // inside: the thinnest stock bar that would do, or does with a slower speed; 0 for none
	SpeedWould int         // the speed in rpm that would do, alone or with that; 0 for none
	HeldWould  bool        // outside: a centre at the free end would do
	Faults     []string    // other mistakes that following the card leads to at the bench: a dial too coarse for the job
	Trains     []calc.Train
	Lead       calc.Length
	Marks      []int   // of the thread dial when the first pass was on mark 1
	IndexBy    string  // several starts: the way from start to start, ByDial, ByCompound or ByTurning
	StartMarks [][]int // by the dial: the marks of each start
	Scale      calc.Angle

	Depth    calc.Length // straight in, for the middle of the limits
	Travel   calc.Length // of the compound for that depth
	Estimate calc.Length // by the rule of thumb; 0 where there is none
	Leave    calc.Length // where the compound is left
	Lag      float64
	Overhang calc.Length // inside: as short as the bar can be set
	Out      calc.Length // how far the tool is taken out, by the cross slide's dial

	Light   bool        // the light schedule was asked for, and not equal area
	First   calc.Length // total on the compound after the first cut
	Springs int         // spring passes before each try
	Steps   []PlanStep

	Wire             calc.Length // best wire; outside threads
	OverMax, OverMin calc.Length
	Cautions         []string // keys of the cautions
}

// AsUsual, for an angle of the compound, is what is usual for the form of the thread.
const AsUsual calc.Angle = -1

// PlanStep is one line of the card.
type PlanStep struct {
	Kind     string      // scratch, cut, spring, test, finish, or next: on to another start
	Start    int         // the start that it is for, from 1
	Mark     int         // of the thread dial that it is closed on; 0 where that does not tell the start
	Straight calc.Length // on the cross slide's dial, turns and all
	Feed     calc.Length // as the dial shows it
	Total    calc.Length // on the compound since first touch
	Compound calc.Length // what its dial then reads
	Turns    int         // and how often it has passed its zero
	Cross    calc.Length // what the cross slide's dial reads in the cut
	Depth    calc.Length // straight in, as set
}

// NewPlan plans a job with the compound at an angle from the cross-slide line, its cuts by
// equal area: 29 to 30 degrees for a 60-degree thread, 14.5 for an Acme thread. Stock out of its limits, and a bar that stands out
// further than steel bears, get an error that says what would do.
func NewPlan(j Job, angle calc.Angle) (Plan, error) { return newPlan(j, angle, false) }

// NewLightPlan is the same with light cuts, for whoever is new to it.
func NewLightPlan(j Job, angle calc.Angle) (Plan, error) { return newPlan(j, angle, true) }

func newPlan(j Job, angle calc.Angle, light bool) (Plan, error) {
	if err := j.Stock(); err != nil {
		return Plan{Job: j}, err
	}
	p := Plan{Job: j, Light: light, Lead: j.Thread.Lead(), Overhang: j.StandsOut}
	if j.Side == calc.Inside {
		p.Overhang = min(j.StandsOut, j.LeastOverhang())
		j.StandsOut = p.Overhang
	}
	p.Lag = New(j).Lag()
	p.Unscrews = (j.KeepClosed() || j.InReverse()) && j.Unscrews()
	p.NoGroove = j.FromGroove() && !j.grooveIsDeep()
	p.Hands = j.hands()
	p.Slender = j.slender()
	if p.Slender > mostSlender {
		return p, &calc.InputError{What: "stands_out, in a chuck,", Got: j.text(j.StandsOut), Want: "at most " + j.text(j.Start.Times(mostSlender)) +
			", six diameters, and from three on a centre at the free end; or hold centres"}
	}
	if times := p.TooSlim(); times > 0 {
		return p, p.tooSlim(times)
	}
	if angle == AsUsual {
		angle = j.UsualAngle()
	}
	if low, high, want := j.compoundAngles(); !(angle >= low && angle <= high) {
		return p, &calc.InputError{What: "compound angle from the cross-slide line", Got: calc.Shortest(angle.Degrees(), 2), Want: want}
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
	if p.Estimate, err = calc.RuleOfThumbTravel(j.Thread.Pitch); err != nil || j.Form() != Vee { // it is for 60-degree threads with flats
		p.Estimate = 0
	}
	if err != nil {
		return p, err
	}
	if p.Passes() {
		p.cutByAWay(angle)
	}
	if err := p.wires(); err != nil {
		return p, err
	}
	p.cautions()
	return p, nil
}

// wires are the best wire and what is to be read over three of it, where the thread is measured so.
func (p *Plan) wires() (err error) {
	j := p.Job
	if !j.Wired() {
		return nil
	}
	if p.Wire, err = j.bestWire(); err != nil {
		return err
	}
	if p.OverMax, err = j.overWires(j.Limits.Pitch.Max, p.Wire); err != nil {
		return err
	}
	p.OverMin, err = j.overWires(j.Limits.Pitch.Min, p.Wire)
	return err
}

// hands is how many seconds a beginner should have at the end of a pass.
func (j Job) hands() float64 {
	if j.KeepClosed() {
		return stopTime
	}
	return handTime
}

// slender is how many times its diameter work in a chuck stands out; 0 for any other.
func (j Job) slender() float64 {
	if j.Side == calc.Inside || j.Hold != Chuck {
		return 0
	}
	return j.StandsOut.Over(j.Start)
}

// Whips reports whether the work stands out so far that its free end must be held.
func (p Plan) Whips() bool { return p.Slender > supportFrom }

// Passes reports whether the thread can be cut as the job stands: without passes the card
// only says what is in the way.
func (p Plan) Passes() bool {
	return !p.Unscrews && !p.NoGroove && !p.TooFast && !p.NoGears && !p.Chatters && p.TooMany == 0 && !p.Misses && len(p.Faults) == 0
}

// speeds finds the fastest speed of the lathe that is slow enough in both ways.
func (p *Plan) speeds() error {
	usual, err := p.Job.usualSpeed()
	if err != nil {
		return err
	}
	fastest, err := calc.FastestFor(p.Job.Free(), p.Lead, p.Hands)
	if err != nil {
		return err
	}
	p.Usual, p.Fastest = usual.RPM(), fastest.RPM()
	most := min(p.Usual, p.Fastest)
	if !p.Job.Hurries() {
		p.Fastest, most = 0, p.Usual
	}
	slowest := 0
	for _, n := range p.Job.Lathe.Speeds {
		if float64(n) <= most+shareOff {
			p.RPM = max(p.RPM, n)
		}
		if slowest == 0 || n < slowest {
			slowest = n
		}
	}
	if p.RPM == 0 {
		p.RPM, p.TooFast = slowest, p.Job.Hurries() && float64(slowest) > p.Fastest+shareOff
	}
	if slowest == 0 { // the lathe's speeds are not known
		p.RPM = int(most)
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
		trains, err := calc.FindTrains(p.Job.Lathe.Gears, ratio, 3)
		if err != nil {
			return err
		}
		p.Trains = fitting(trains)
		p.NoGears = len(p.Trains) == 0 || FarOff(p.Trains[0])
	}
	for _, k := range p.Job.SafeMarks() {
		p.Marks = append(p.Marks, k+1)
	}
	return nil
}

func (p *Plan) in() float64 { return New(p.Job).in() }

// fitting are the gears worth setting: exact ones alone where there are any, else those
// that are near, else the nearest.
func fitting(trains []calc.Train) []calc.Train {
	for _, ppm := range []float64{0, farOff} {
		near := slices.DeleteFunc(slices.Clone(trains), func(t calc.Train) bool { return max(t.PPM, -t.PPM) > ppm })
		if len(near) > 0 {
			return near
		}
	}
	return trains[:min(1, len(trains))]
}

// FarOff reports whether a long thread cut with these gears will not go into its mate.
func FarOff(t calc.Train) bool { return max(t.PPM, -t.PPM) > farOff }

// cautions collects what must be said beside this job.
func (p *Plan) cautions() {
	if p.Whips() {
		p.Cautions = append(p.Cautions, "support-work")
	}
	p.Cautions = append(p.Cautions, "eyes-sleeves-gloves", "chuck-key", "slow-enough", "withdraw-first")
	if p.Job.End != Bottom || p.Job.Gap < 1 {
		p.Cautions = append(p.Cautions, "shoulder")
	}
	if p.Job.Side == calc.Inside {
		p.Cautions = append(p.Cautions, "inside-way-out", "near-the-chuck")
	}
	if p.Job.KeepClosed() {
		p.Cautions = append(p.Cautions, "half-nut-closed")
	}
	if p.Job.Unscrews() {
		p.Cautions = append(p.Cautions, "screwed-chuck")
	}
	p.Cautions = append(p.Cautions, "double-depth", "chips", "stop-to-measure", "no-cloth", "lost-count")
}
