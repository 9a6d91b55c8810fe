package bench

import "scratchpass/calc"

// Course is how a pass goes by itself from where the bench stands, the spindle turning
// forward: for a picture that moves where the bench is not. Shares are of the whole way of
// the tip, from the start of a pass to where something meets what lies behind the thread;
// times are in seconds.
type Course struct {
	Mark        float64 // under the index, from 0
	HasDial     bool
	MarkSeconds float64 // from mark to mark, with the half-nut open

	ThreadFrom, ThreadEnds float64 // shares
	Tool                   float64 // a share: where the tip is
	WaySeconds             float64 // for the whole way, with the half-nut closed

	Past        float64 // how far the lead screw is past a whole thread, as a share of one
	NutSeconds  float64 // for one thread of the lead screw
	Slack       float64 // share of a thread past which a half-nut still drops back
	ThreadShare float64 // one thread of the lead screw, as a share of the way

	Closed, Keeps, Clear bool // the half-nut is closed; it has to stay so; the tool is clear
	Closes               bool // the half-nut would close
}

// whole is the way of the tip in a pass, until something that stands ahead of it meets what
// lies behind the thread.
func (b Bench) whole() calc.Length { return b.Job.StartRoom() + b.Job.Length + b.Job.Free() }

// Way is where the thread begins and ends and where the tip is, as shares of the whole way of
// the tip.
func (b Bench) Way() (from, to, tip float64) {
	whole, before := b.whole(), b.Job.StartRoom()
	return before.Over(whole), (before + b.Job.Length).Over(whole), max(0, (whole - b.Left()).Over(whole))
}

// Course is how a pass goes from here. It is nothing where the spindle does not turn forward, or
// the tool goes another way than towards the headstock.
func (b Bench) Course() (Course, bool) {
	if b.Turn <= 0 || b.Over || b.Job.OtherWay() || b.Hand() != calc.RightHand {
		return Course{}, false
	}
	screw, speed := b.Job.screwLead(), b.perSecond()
	whole := b.whole()
	c := Course{
		WaySeconds: whole.Over(speed),
		Past:       (-b.phase()).Remainder(screw).Over(screw), NutSeconds: screw.Over(speed), Slack: nutSlack, ThreadShare: screw.Over(whole),
		Closed: b.Nut, Keeps: b.Job.KeepClosed(), Clear: b.Clear(),
	}
	c.ThreadFrom, c.ThreadEnds, c.Tool = b.Way()
	if at, ok := b.Mark(); ok {
		dial, _ := b.Job.Lathe.ThreadDial()
		if spacing, err := dial.Spacing(); err == nil {
			c.Mark, c.HasDial, c.MarkSeconds = at, true, spacing.Over(speed)
		}
	}
	if !b.Nut {
		after, _ := b.Step(Event{Verb: "close"})
		c.Closes = after.Nut
	}
	return c, true
}
