// Package bench is a lathe to rehearse on: a model of one threading job, from the
// set-up to the finished part. It is pure: a state and an event give the next state
// and what happened, and the same events always give the same part.
//
// Its figures are geometry where geometry decides (dials, lines, the groove) and rough
// where nature does (chatter, give, a breaking tool): those teach what goes with what,
// not how much.
package bench

import (
	"errors"
	"fmt"
	"strings"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/machine"
)

// Job is a threading job on one lathe.
type Job struct {
	Title  string
	Story  string
	Thread calc.Designation
	Side   calc.Side
	Limits calc.Limits
	Lathe  machine.Lathe

	Material calc.Material

	Start     calc.Length // diameter of the blank or the bore
	Length    calc.Length // of the thread
	Gap       calc.Length // clear run from its end to what the tool would meet
	Ahead     calc.Length // how far tool, bar or holder stand ahead of the tip
	End       string      // Shoulder, Bottom or Jaws
	Hold      string      // Chuck or Centres
	StandsOut calc.Length // the work out of the jaws, or the bar out of its holder
	Bar       calc.Length // inside: diameter of the bar
	Reach     calc.Length // inside: how far the tool stands out of the bar
	Tip       calc.ToolTip
	Towards   string      // Headstock or Tailstock: the way of the tool in the cut
	Shank     calc.Length // diameter of what lies behind the thread; 0 where it is the usual
	GearsLeft calc.Length // the lead that the last user's gears give, though a tag says that all is set; 0 for none
	Taper     string      // of a taper pipe thread: Attachment or NoAttachment; empty for any other

	Surprises []content.Surprise
}

// What the tool meets beyond the end of the thread.
const (
	Shoulder = "shoulder"
	Bottom   = "bottom" // of a blind bore
	Jaws     = "chuck"
)

// How the work is held.
const (
	Chuck   = "chuck"
	Centres = "centres"
)

// Surprises.
const (
	CalledAway = "called-away"
	LinePast   = "line-past"
)

// System is the system of units of the lathe's dials.
func (j Job) System() machine.System {
	if j.Lathe.Metric {
		return machine.Metric
	}
	return machine.Imperial
}

// mostStarts is the most starts that the bench keeps apart.
const mostStarts = 4

// Check returns an error for a job that can't be cut, or that this bench can't play.
func (j Job) Check() error {
	p := j.Thread.Pitch
	widest, err := j.widestFlat()
	if err != nil {
		return err
	}
	within := func(what string, x, low, high calc.Length) error {
		if x >= low && x <= high {
			return nil
		}
		return &calc.InputError{What: what, Got: j.text(x), Want: j.text(low) + " to " + j.text(high)}
	}
	flat := j.Tip.Flat
	if j.Tip.Nose > 0 {
		flat, _ = calc.FlatOfNose(j.Tip.Nose) // a radius out of range is refused with the flat
	}
	errs := []error{
		j.Lathe.Check(),
		within("flat of the tool (or twice its nose radius x tan 30)", flat, 0, widest),
		within("length", j.Length, p.Times(2), 12),
		within("ahead", j.Ahead, 0, 2),
		within("gap", j.Gap, j.Ahead+p.Times(0.5), j.Ahead+4),
	}
	standsOut := func(what string, least calc.Length) {
		if least < 24 { // else the length or the gap is wrong, and said to be
			errs = append(errs, within(what, j.StandsOut, max(least, 0.25), 24))
		}
	}
	if j.Form() == Pipe && j.Taper != Attachment {
		errs = append(errs, fmt.Errorf("taper %s: a taper pipe thread is cut here with a taper attachment; give taper attachment, or take a lathe that has one", calc.Quoted(j.Taper)))
	}
	if j.Form() != Vee && (j.Thread.Starts > 1 || j.OtherWay()) {
		errs = append(errs, fmt.Errorf("thread %s: the bench cuts Acme and taper pipe threads right-hand, with one start, towards the headstock; other ways are for threads of 60 degrees", j.Thread))
	}
	if j.Thread.Starts > mostStarts {
		errs = append(errs, fmt.Errorf("thread %s: the bench cuts threads with up to %d starts", j.Thread, mostStarts))
	}
	if j.Shank > 0 {
		errs = append(errs, within("shank", j.Shank, 0.05, 12))
	}
	if j.Side == calc.Outside {
		errs = append(errs, within("blank", j.Start, j.Limits.Pitch.Max+p.Times(0.25), j.Thread.Nominal+0.02))
		standsOut("stands_out, more than the thread and its gap,", j.Length+j.Gap)
		if j.End == Bottom {
			errs = append(errs, errors.New("end bottom: only a bore has one; give shoulder or chuck"))
		}
		return errors.Join(errs...)
	}
	if j.Start <= leastBar.Times(1.2) {
		return errors.Join(append(errs, fmt.Errorf("bore %s: too small for a boring bar; the thinnest here is %s", j.text(j.Start), j.text(leastBar)))...)
	}
	basic, err := j.leastBore()
	errs = append(errs, err, within("bore", j.Start, basic-0.02, j.Limits.Pitch.Min-p.Times(0.15)),
		within("bar", j.Bar, leastBar, j.Start), within("reach", j.Reach, p.Times(0.5), 2))
	standsOut("stands_out, so that the bar reaches through the thread and its gap,", j.LeastOverhang()-hair)
	if room := j.Room(); room <= p.Times(0.8) {
		errs = append(errs, fmt.Errorf("bar %s with a tool that reaches %s leaves %s to come clear in a bore of %s: take a thinner bar or a shorter tool",
			j.text(j.Bar), j.text(j.Reach), j.text(max(room, 0)), j.text(j.Start)))
	}
	if j.Hold == Centres {
		errs = append(errs, errors.New("hold centres: a bore can't be cut with a centre in it; give chuck"))
	}
	if j.End == Shoulder {
		errs = append(errs, errors.New("end shoulder: a bore ends at its bottom or, where it goes through, at the chuck; give bottom or chuck"))
	}
	return errors.Join(errs...)
}

// Free is the way that the tip itself has from the end of the thread until something
// that stands ahead of it meets what lies behind.
func (j Job) Free() calc.Length { return j.Gap - j.Ahead }

// Unscrews reports whether what drives the work would unscrew in reverse.
func (j Job) Unscrews() bool { return j.Lathe.ScrewedNose }

// Sides that the compound's handle is swung to.
const (
	Tailstock = "tailstock"
	Headstock = "headstock"
)

// Swing is the side that the handle is swung to, so that the compound feeds the tool on
// the way that it runs in the cut: for a right-hand thread the tailstock's outside,
// mirrored in a bore, where the tool feeds the other way, and where it runs the other way.
func (j Job) Swing() string {
	if (j.Side == calc.Inside) != j.FromGroove() {
		return Headstock
	}
	return Tailstock
}

// OnItsSide is an example of swinging the compound for a job whose handle goes to the tailstock,
// for this job.
func (j Job) OnItsSide(example string) string {
	if j.Swing() == Tailstock {
		return example
	}
	return strings.NewReplacer(Tailstock, Headstock, Headstock, Tailstock).Replace(example)
}

// Parse reads an event at this job; an error's example is one for it.
func (j Job) Parse(text string) (Event, error) {
	e, err := Parse(text, j.System())
	var input *calc.InputError
	if errors.As(err, &input) {
		return e, &calc.InputError{What: input.What, Got: input.Got, Want: j.OnItsSide(input.Want)}
	}
	return e, err
}

// Room is how far the tool can come away from the wall of a bore before the back of
// the bar meets the far wall.
func (j Job) Room() calc.Length {
	return j.narrowest(j.Start, j.Length) - j.Bar - j.Reach
}

// LeastOverhang is how short the bar can be set: it must reach through the thread and
// its gap before the holder meets the work.
func (j Job) LeastOverhang() calc.Length {
	u, step := j.System().Length(), 0.05
	if j.Lathe.Metric {
		step = 1
	}
	shown := (j.Length + j.Gap).Inches() * u.Factor
	return calc.Inches(wholeUp(shown/step) * step / u.Factor)
}

// text prints a length in the units of the lathe's dials.
func (j Job) text(l calc.Length) string { return j.System().Length().Text(l.Inches()) }

// SafeMarks returns the marks of the thread dial on which the tool finds its groove,
// counted from the first cut's; none where the lathe has no thread dial or no mark fits.
func (j Job) SafeMarks() []int {
	dial, ok := j.Lathe.ThreadDial()
	if !ok {
		return nil
	}
	safe, err := dial.SafeMarks(j.Thread.Lead())
	if err != nil {
		return nil
	}
	return safe
}

// AnyMoment reports whether the half-nut may be closed at any moment.
func (j Job) AnyMoment() bool {
	return calc.AnyMoment(j.screwLead(), j.Thread.Lead())
}

// KeepClosed reports whether the half-nut must stay closed until the thread is done: no
// mark brings the groove back.
func (j Job) KeepClosed() bool { return !j.AnyMoment() && len(j.SafeMarks()) == 0 }

// screwLead is the lead of the lead screw.
func (j Job) screwLead() calc.Length {
	if j.Lathe.Metric {
		return calc.Millimetres(j.Lathe.LeadScrew)
	}
	return calc.Inch.Times(1 / j.Lathe.LeadScrew)
}
