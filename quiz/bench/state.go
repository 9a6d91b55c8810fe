package bench

import (
	"slices"

	"scratchpass/calc"
)

// Bench is the state of the lathe and of the part. It is a value: Step returns the
// next one and leaves this one as it was.
type Bench struct {
	Job   Job
	Live  bool    // the hands' own time is real: none is added
	Clock float64 // seconds

	// Drive.
	RPM    float64
	Turn   int         // spindle: 1 forward, 0 standing, -1 reverse
	Turns  float64     // of the spindle so far
	Lead   calc.Length // carriage travel in a turn of the spindle, by the gears
	Screw  calc.Length // how far the lead screw would have carried the carriage
	Nut    bool        // the half-nut is closed
	FeedOn bool        // the power feed is still engaged

	// Where the tool is.
	Z        calc.Length // along the bed: 0 where the thread begins, + towards the headstock
	Cross    calc.Slide
	Compound calc.Slide
	Zeros    [2]calc.Length // the screws' place at which the dials were set to zero: cross, compound
	Zeroed   [2]bool        // they have been set
	AtTouch  bool           // the cross slide's was set while the tool just touched
	Angle    calc.Angle     // of the compound from the cross-slide line, as it truly stands

	LeverLeft bool        // the tumbler turns the lead screw for left-hand threads
	Flipped   bool        // the tool is set upside down
	TurnedOn  calc.Length // how far the work was turned on from start to start, along the thread
	FirstGear int         // teeth of the first driver of the train; 0 where it is not known
	InGroove  bool        // the carriage is wound back to the groove behind the thread, not to the free end

	// Set-up.
	Dressed, KeyOut, Squared, Height, Oiled, Snug bool
	Set                                           struct{ Angle, Lead, Speed, Taper bool }
	Taper                                         float64 // of the taper attachment, on the diameter; 0 where it is not set
	OnCone                                        bool    // the tool was squared to the cone, not to the axis

	// The work so far.
	Passes   []Pass
	cutting  *Pass       // the pass under way; never changed, only replaced
	first    calc.Length // phase of the first pass: where the carriage stood on the screw
	hasFirst bool
	FirstDip int  // mark of the first pass, 1 to N; 0 when it was not taken on a mark
	Dip      int  // mark on which the half-nut was last closed
	Dirty    bool // chips lie in the thread
	Doubt    bool // called away: where the slides stand has not been checked since
	Past     bool // the line goes past the next time one is waited for
	Moved    bool // taken out of the chuck: a cut from here on misses the groove
	Out      bool // taken out from between centres, to be tried
	Torn     bool // the thread was dragged, ringed or run into
	LastIn   calc.Length
	Away     Event // how the tool was last taken out
	Tests    []Test
	Margins  []Margin // what was left at the end of each pass that came there

	Spoiled  []Spoil // why the part is scrap, as far as a move made it so
	Mistakes []Mistake
	Log      []Entry
	Over     bool
	Outcome  *Outcome
}

// Pass is one run of the tool through the thread.
type Pass struct {
	N         int
	Mark      int         // of the thread dial, 1 to N; 0 when it was on none
	Compound  calc.Length // total infeed on the compound
	Straight  calc.Length // total feed of the cross slide past its place at first touch, straight in
	Set       calc.Length // how deep the tool was set
	Before    calc.Length // how deep the groove was
	Depth     calc.Length // how deep it is now
	Start     int         // which start it ran in, 0 for that of the first pass
	Across    calc.Length // along the bed, with what the compound and the line have moved it
	Shift     calc.Length // beside the first groove, by the line it was closed on
	From, To  calc.Length // along the thread
	Lead      calc.Length
	Hand      calc.Hand
	Way       float64 // 1 towards the headstock, -1 towards the tailstock
	Turn      int     // of the spindle
	RPM       float64
	Width     calc.Length // of the chip
	Thickness calc.Length
	Force     float64
	Quiet     calc.Length // widest chip that does not chatter here
	Counted   calc.Length // what of the width counts
	Both      bool        // cut on both flanks
	Chatter   bool
	Spring    bool
	Leaning   bool    // the tool was not square to the work
	OffCentre bool    // its tip was not at centre height
	OnCone    bool    // it stood square to the cone of a taper thread
	Lean      float64 // how much deeper the tool went for each length along: 0 where its way was the thread's
}

// Cuts reports whether a chip came off that one would see.
func (p Pass) Cuts() bool { return p.Thickness >= seenChip }

// Happening is what came of an event, for the learner to read: the name of a text and
// its figures.
type Happening struct {
	Name  string
	Facts Facts
}

// Facts are figures by name, as they are shown.
type Facts map[string]string

// Entry is one line of the log.
type Entry struct {
	At       float64
	Event    Event
	Happened []Happening
}

// Test is one try of the fit.
type Test struct {
	What, Result string
}

// New returns the bench as it is found: work and tool in, nothing set.
func New(j Job) Bench {
	b := Bench{Job: j, FeedOn: true, Z: -j.StartRoom(), KeyOut: j.Hold == Centres} // a dog has no key
	b.Cross, b.Compound = j.slide(), j.slide()
	b.RPM = float64(slices.Max(append([]int{500}, j.Lathe.Speeds...)))
	b.Lead = j.lastLead()
	if j.GearsLeft > 0 {
		b.Lead, b.Set.Lead = j.GearsLeft, true
	}
	b.Angle = 0
	return b
}

// StartRoom is how far before the thread the tool stands when it is wound back.
func (j Job) StartRoom() calc.Length { return j.Thread.Lead().Times(startRoom) }

// slide is a slide that was last moved the way the tool will be fed, its play taken up.
func (j Job) slide() calc.Slide {
	if j.Side == calc.Inside {
		return calc.Slide{Play: crossPlay, Table: crossPlay}
	}
	return calc.Slide{Play: crossPlay}
}

// lastLead is what the gears were set to for the job before: another lead.
func (j Job) lastLead() calc.Length {
	last := calc.Inch / 16
	if j.Lathe.Metric {
		last = calc.Millimetres(1)
	}
	if calc.Within(last.Inches(), j.Thread.Lead().Inches(), 0.0005) {
		last = last.Times(0.8)
	}
	return last
}

// in is the direction of the metal: in outside, out in a bore.
func (b Bench) in() float64 {
	if b.Job.Side == calc.Inside {
		return -1
	}
	return 1
}

// Ways are the words for winding the cross slide deeper into the metal and away from it.
func (j Job) Ways() (deeper, away string) {
	if j.Side == calc.Inside {
		return "out", "in"
	}
	return "in", "out"
}

// Depth is how deep the tip of the tool stands below the surface; above 0 it cuts.
func (b Bench) Depth() calc.Length {
	return (b.Cross.Table + b.Compound.Table.Times(b.Angle.Cos())).Times(b.in()) - b.gapAtStart()
}

// gapAtStart is how far the tool stands off the work before anything is moved.
func (b Bench) gapAtStart() calc.Length {
	if b.Job.Side == calc.Inside {
		return min(clearOf, b.Job.Room().Times(besideBore))
	}
	return clearOf
}

// Clear reports whether the tool is drawn back so far that one can see it. A small bore
// leaves little room for that.
func (b Bench) Clear() bool {
	back := calc.Length(.020)
	if b.Job.Side == calc.Inside {
		back = min(back, b.Job.Room().Times(0.15))
	}
	return b.Depth() < -back
}

// Left is the way that the tip still has until something that stands ahead of it meets
// what lies behind the thread.
func (b Bench) Left() calc.Length { return b.Job.Length + b.Job.Free() - b.place() }

// sideways is how far the compound has moved the tool along the bed, + towards the headstock.
func (b Bench) sideways() calc.Length {
	return b.Compound.Table.Times(b.in() * b.Angle.Sin() * b.Job.Way())
}

// crossTravel and compoundTravel are how far the slides' screws are in the metal's
// direction from their zeros.
func (b Bench) crossTravel() calc.Length { return (b.Cross.Screw - b.Zeros[0]).Times(b.in()) }
func (b Bench) compoundTravel() calc.Length {
	return (b.Compound.Screw - b.Zeros[1]).Times(b.in())
}

// CrossReading and CompoundReading are what the dials show.
func (b Bench) CrossReading() calc.Length {
	return reading((b.Cross.Screw - b.Zeros[0]).Times(b.Job.Lathe.CrossReads.PerRadial()), b.Job.Lathe.Cross.Turn)
}
func (b Bench) CompoundReading() calc.Length {
	return reading(b.Compound.Screw-b.Zeros[1], b.Job.Lathe.Compound.Turn)
}

// reading is what a dial shows when its screw has been wound in so far from zero.
func reading(in, turn calc.Length) calc.Length {
	r, _, err := calc.DialReading(0, in, turn)
	if err != nil {
		return 0 // the slides' own limits come first
	}
	return r
}

// phase is where the carriage stands on the lead screw: passes of one phase run in one
// groove.
func (b Bench) phase() calc.Length { return b.Z - b.Screw }

// Mark returns which mark of the thread dial stands under the index, 0 up to N, and
// whether the lathe has a dial.
func (b Bench) Mark() (float64, bool) {
	dial, ok := b.Job.Lathe.ThreadDial()
	if !ok {
		return 0, false
	}
	at, err := dial.UnderIndex(-b.phase())
	return at, err == nil
}

// PassesDone is how many passes have been finished.
func (b Bench) PassesDone() int { return len(b.Passes) }

// add returns a slice with one more item that shares nothing with others.
func add[T any](s []T, x T) []T { return append(slices.Clip(s), x) }

// all are the passes with the one under way.
func (b Bench) all() []Pass {
	if b.cutting == nil {
		return b.Passes
	}
	p := *b.cutting
	p.To = b.place()
	return add(b.Passes, p)
}

// rightLead reports whether a lead is the thread's, to half a per cent: the errors of
// change gears that come near are smaller.
func (b Bench) rightLead(lead calc.Length) bool {
	return calc.Within(lead.Inches(), b.Job.Thread.Lead().Inches(), b.Job.Thread.Lead().Inches()*0.005)
}
