package bench

import (
	"strings"

	"scratchpass/calc"
)

// Form is the form of a thread: what its tool, its depth and its gauges follow.
type Form int

// The forms that the bench cuts.
const (
	Vee  Form = iota // 60 degrees, unified and metric
	Acme             // 29 degrees
	Pipe             // taper pipe thread, NPT: 60 degrees, square to the axis, on a cone of 1 in 16
)

// The series of the forms that are no unified series, as a callout writes them.
const (
	acmeSeries calc.Series = "ACME"
	pipeSeries calc.Series = "NPT"
)

// ParseThread reads the callout of a thread of any form that the bench cuts.
func ParseThread(text string) (calc.Designation, error) {
	switch {
	case calc.IsAcme(text):
		d, err := calc.ParseAcme(text)
		return calc.Designation{Size: d.Size, Nominal: d.Nominal, Pitch: d.Pitch, TPI: d.TPI, Series: acmeSeries, Class: d.Class, Starts: d.Starts, Hand: d.Hand}, err
	case calc.IsPipe(text):
		d, err := calc.ParsePipe(text)
		return calc.Designation{Size: d.Size, Nominal: d.Outside, Pitch: d.Pitch, TPI: d.TPI, Series: pipeSeries, Starts: 1, Hand: d.Hand}, err
	}
	return calc.ParseDesignation(text)
}

// Form is the form of the job's thread.
func (j Job) Form() Form { return formOf(j.Thread) }

func formOf(d calc.Designation) Form {
	switch d.Series {
	case acmeSeries:
		return Acme
	case pipeSeries:
		return Pipe
	}
	return Vee
}

// sideOf is the side that a thread's class tells; known is false where it tells none. The
// classes of an Acme thread, such as 2G, are of both sides.
func sideOf(d calc.Designation) (side calc.Side, known bool) {
	if formOf(d) != Vee {
		return calc.Outside, false
	}
	return d.Side()
}

// limitsOf are the limits of size of a thread on a side.
func limitsOf(d calc.Designation, side calc.Side) (calc.Limits, error) {
	switch formOf(d) {
	case Acme:
		return calc.AcmeLimits(calc.AcmeDesignation{Size: d.Size, Nominal: d.Nominal, Pitch: d.Pitch, TPI: d.TPI, Class: d.Class, Starts: d.Starts, Hand: d.Hand}, side)
	case Pipe:
		p, err := calc.ParsePipe(d.String())
		if err != nil {
			return calc.Limits{}, err
		}
		return calc.PipeLimits(p, side)
	}
	return calc.LimitsOf(d)
}

// flankAngle is how far each flank of the thread leans from square to its axis.
func (j Job) flankAngle() calc.Angle {
	if j.Form() == Acme {
		return calc.AcmeAngle / 2
	}
	return calc.VeeFlank
}

// Tool is the tip of the tool, with its flanks.
func (j Job) Tool() calc.ToolTip {
	t := j.Tip
	t.Flank = j.flankAngle()
	return t
}

// UsualAngle is what the compound is usually set to, from the cross-slide line: half a degree
// less than the flanks of a 60-degree thread, the flank itself of an Acme thread.
func (j Job) UsualAngle() calc.Angle {
	if j.Form() == Acme {
		return j.flankAngle()
	}
	return j.flankAngle() - halfDegree
}

// compoundAngles are the angles between which the compound cuts one flank and leaves the other
// clean; want says them in words.
func (j Job) compoundAngles() (low, high calc.Angle, want string) {
	want = "29, 29.5 or 30"
	if j.Form() == Acme {
		want = "14.5, or a little less"
	}
	return j.flankAngle() - underFlank, j.flankAngle() + halfDegree, want
}

// widestFlat is the widest tip that makes the thread.
func (j Job) widestFlat() (calc.Length, error) {
	switch j.Form() {
	case Acme:
		return calc.AcmeCrestFlat(j.Thread.Pitch)
	case Pipe:
		_, most, err := j.pipeFlats()
		return most, err
	}
	return calc.WidestFlat(j.Side, j.Thread.Pitch)
}

// pipeFlats are the tips that cut off the least and the most of a pipe thread's root.
func (j Job) pipeFlats() (least, most calc.Length, err error) {
	p, err := calc.ParsePipe(j.Thread.String())
	if err != nil {
		return 0, 0, err
	}
	low, high := p.PipeTruncation()
	wide := 2 * calc.VeeFlank.Tan()
	return low.Times(wide), high.Times(wide), nil
}

// usualFlat is the tip of a job that does not say it.
func (j Job) usualFlat() calc.Length {
	switch j.Form() {
	case Acme:
		flat, _ := calc.AcmeToolFlat(j.Thread.Pitch) // the pitch was read
		return flat
	case Pipe:
		least, most, _ := j.pipeFlats() // the thread was read
		return (least + most).Times(0.5)
	}
	return j.Thread.Pitch.Times(veeFlat)
}

// FullDepth is how deep the tool goes straight in for the middle of the pitch diameter's
// limits.
func (j Job) FullDepth() (calc.Length, error) {
	if j.Form() == Vee {
		return calc.RadialDepth(j.Side, j.Start, j.Limits.Pitch.Middle(), j.Thread.Pitch, j.flat())
	}
	return calc.DepthForFlank(j.flankAngle(), j.Side, j.Start, j.Limits.Pitch.Middle(), j.Thread.Pitch, j.flat())
}

// chipWidth is the width of the chip at a depth.
func (j Job) chipWidth(depth calc.Length, feed calc.Infeed) (calc.Length, error) {
	if j.Form() == Vee {
		return calc.ChipWidth(depth, j.flat(), feed)
	}
	return calc.ChipWidthForFlank(j.flankAngle(), depth, j.flat(), feed)
}

// rootMust is the diameter that the root must reach: no larger outside, no smaller inside.
func (j Job) rootMust() (calc.Length, error) {
	switch {
	case j.Form() != Vee && j.Side == calc.Inside:
		return j.Limits.Major.Min, nil
	case j.Form() != Vee:
		return j.Limits.Minor.Max, nil
	case j.Side == calc.Inside:
		return j.Thread.Nominal, nil
	}
	return calc.BasicInternalMinor(j.Thread.Nominal, j.Thread.Pitch)
}

// leastBore is the bore of the basic form.
func (j Job) leastBore() (calc.Length, error) {
	if j.Form() != Vee {
		return j.Limits.Minor.Min, nil
	}
	return calc.BasicInternalMinor(j.Thread.Nominal, j.Thread.Pitch)
}

// Wired reports whether the thread can be measured over wires: a bore cannot, and on a cone
// they find no place.
func (j Job) Wired() bool { return j.Side == calc.Outside && j.Form() != Pipe }

// bestWire is the wire that touches at the pitch line.
func (j Job) bestWire() (calc.Length, error) {
	if j.Form() == Vee {
		wires, err := calc.WiresFor(j.Thread.Pitch)
		return wires.Best, err
	}
	return calc.BestWireForFlank(j.flankAngle(), j.Thread.Pitch)
}

// overWires is the reading over the best wires for a pitch diameter.
func (j Job) overWires(pitch, wire calc.Length) (calc.Length, error) {
	if j.Form() == Vee {
		return calc.OverWires(pitch, wire, j.Thread.Pitch)
	}
	return calc.OverWiresForFlank(j.flankAngle(), pitch, wire, j.Thread.Pitch)
}

// Flats are the tips that a pipe thread's root may be cut with, or for another form the usual
// tip and the widest.
func (j Job) Flats() (usual, widest calc.Length) {
	usual = j.usualFlat()
	if j.Form() == Pipe {
		usual, _, _ = j.pipeFlats() // the thread was read
	}
	widest, _ = j.widestFlat() // it was checked with the job
	return usual, widest
}

// otherForm names a form that has lessons, and that the bench does not cut; "" for none.
func otherForm(thread string) string {
	for _, form := range []string{"NPTF", "NPSM", "STUB", "BSP", "BSW", "BSF", "TR"} {
		if strings.Contains(strings.ToUpper(thread), form) {
			return form
		}
	}
	return ""
}
