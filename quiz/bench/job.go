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
	"math"
	"strings"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz"
)

// Job is a threading job on one lathe.
type Job struct {
	Title  string
	Story  string
	Thread calc.Designation
	Side   calc.Side
	Limits calc.Limits
	Lathe  quiz.Lathe

	Start     calc.Length // diameter of the blank or the bore
	Length    calc.Length // of the thread
	Gap       calc.Length // free way from its end to what the tool would meet
	Ahead     calc.Length // how far tool, bar or holder stand ahead of the tip
	End       string      // Shoulder, Bottom or Jaws
	Hold      string      // Chuck or Centres
	StandsOut calc.Length // the work out of the jaws, or the bar out of its holder
	Bar       calc.Length // inside: diameter of the bar
	Reach     calc.Length // inside: how far the tool stands out of the bar
	Tip       calc.ToolTip

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
func (j Job) System() quiz.System {
	if j.Lathe.Metric {
		return quiz.Metric
	}
	return quiz.Imperial
}

// ParseJob reads a job that is written down. own is the learner's lathe, for jobs that
// name none.
func ParseJob(w content.Job, own quiz.Lathe) (Job, error) {
	j := Job{Title: w.Title, Story: w.Story, End: w.End, Hold: w.Hold, Surprises: w.Surprises, Lathe: own}
	var errs []error
	say := func(err error) { errs = append(errs, err) }
	switch w.Lathe {
	case "":
	case "inch":
		j.Lathe = quiz.InchLathe
	case "metric":
		j.Lathe = quiz.MetricLathe
	default:
		say(&calc.InputError{What: "lathe", Got: calc.Quoted(w.Lathe), Want: "inch or metric, or leave the line out for your own"})
	}
	var err error
	if j.Thread, err = calc.ParseDesignation(w.Thread); err != nil {
		say(fmt.Errorf("thread: %w", err))
		return j, errors.Join(errs...)
	}
	say(j.side(w.Side))
	word(say, "end", w.End, Shoulder, Bottom, Jaws)
	word(say, "hold", w.Hold, Chuck, Centres)
	size := func(key, text string, into *calc.Length) {
		x, unit, err := calc.ParseLength(text)
		switch {
		case err != nil:
			say(fmt.Errorf("%s: %w", key, err))
		case !unit.Known:
			say(&calc.InputError{What: key, Got: calc.Quoted(text), Want: "a size with its unit, such as 0.750 in or 20 mm"})
		default:
			*into = unit.One.Times(x)
		}
	}
	if j.Side == calc.Inside {
		size("bore", w.Bore, &j.Start)
		size("bar", w.Bar, &j.Bar)
		size("reach", w.Reach, &j.Reach)
		unused(say, "blank", w.Blank, "an outside thread; an inside one has a bore")
	} else {
		size("blank", w.Blank, &j.Start)
		unused(say, "bore", w.Bore, "an inside thread; an outside one has a blank")
		unused(say, "bar", w.Bar, "an inside thread")
		unused(say, "reach", w.Reach, "an inside thread")
	}
	size("length", w.Length, &j.Length)
	size("gap", w.Gap, &j.Gap)
	if w.Ahead != "" {
		size("ahead", w.Ahead, &j.Ahead)
	}
	switch w.Nose {
	case "":
	case "screwed", "locked":
		j.Lathe.ScrewedNose = w.Nose == "screwed"
	default:
		say(&calc.InputError{What: "spindle_nose", Got: calc.Quoted(w.Nose), Want: "screwed or locked, or leave the line out for the lathe's own"})
	}
	size("stands_out", w.StandsOut, &j.StandsOut)
	switch {
	case w.Round != "" && w.Flat != "":
		say(errors.New("flat and nose: give one of the two"))
	case w.Round != "":
		size("nose", w.Round, &j.Tip.Nose)
	default:
		size("flat", w.Flat, &j.Tip.Flat)
	}
	for _, s := range w.Surprises {
		if s.After < 1 || s.After > 200 {
			say(&calc.InputError{What: "surprise after", Got: fmt.Sprint(s.After), Want: "a number of passes from 1 to 200"})
		}
		word(say, "surprise", s.What, CalledAway, LinePast)
	}
	if err := errors.Join(errs...); err != nil {
		return j, err
	}
	return j, j.Check()
}

// side finds which side the thread is on, and its limits. A thread without a class
// gets the usual one.
func (j *Job) side(written string) error {
	side, known := j.Thread.Side()
	switch {
	case written == "" && !known:
		return errors.New("side: the thread has no class that tells; give outside or inside")
	case written != "" && written != calc.Outside.String() && written != calc.Inside.String():
		return &calc.InputError{What: "side", Got: calc.Quoted(written), Want: "outside or inside"}
	case written == calc.Inside.String():
		if known && side == calc.Outside {
			return fmt.Errorf("side: %s is an outside thread by its class", j.Thread)
		}
		side = calc.Inside
	case written == calc.Outside.String():
		if known && side == calc.Inside {
			return fmt.Errorf("side: %s is an inside thread by its class", j.Thread)
		}
	}
	j.Side = side
	if !known {
		j.Thread.Class = map[bool]map[calc.Side]string{true: {calc.Outside: "6g", calc.Inside: "6H"}, false: {calc.Outside: "2A", calc.Inside: "2B"}}[j.Thread.Metric][side]
	}
	var err error
	j.Limits, err = calc.LimitsOf(j.Thread)
	return err
}

func word(say func(error), key, got string, want ...string) {
	for _, w := range want {
		if got == w {
			return
		}
	}
	say(&calc.InputError{What: key, Got: calc.Quoted(got), Want: strings.Join(want, " or ")})
}

func unused(say func(error), key, text, why string) {
	if text != "" {
		say(fmt.Errorf("%s %s: that is for %s", key, calc.Quoted(text), why))
	}
}

// Check returns an error for a job that can't be cut, or that this bench can't play.
func (j Job) Check() error {
	p := j.Thread.Pitch
	widest, err := calc.WidestFlat(j.Side, p)
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
		within("gap, less what stands ahead of the tip,", j.Gap-j.Ahead, p.Times(0.5), 4),
		within("stands_out", j.StandsOut, 0.25, 24),
	}
	switch {
	case j.Thread.Starts > 1:
		errs = append(errs, fmt.Errorf("thread %s: the bench cuts threads with one start", j.Thread))
	case j.Thread.Hand == calc.LeftHand:
		errs = append(errs, fmt.Errorf("thread %s: the bench cuts right-hand threads", j.Thread))
	}
	if j.Side == calc.Outside {
		errs = append(errs, within("blank", j.Start, j.Limits.Pitch.Max+p.Times(0.25), j.Thread.Nominal+0.02),
			within("stands_out, more than the thread and its gap,", j.StandsOut, min(j.Length+j.Gap, 24), 24))
		if j.End == Bottom {
			errs = append(errs, errors.New("end bottom: only a bore has one; give shoulder or chuck"))
		}
		return errors.Join(errs...)
	}
	basic, err := calc.BasicInternalMinor(j.Thread.Nominal, p)
	errs = append(errs, err, within("bore", j.Start, basic-0.02, j.Limits.Pitch.Min-p.Times(0.15)),
		within("bar", j.Bar, 0.1, j.Start), within("reach", j.Reach, p.Times(0.5), 2),
		within("stands_out, at least the length of the thread,", j.StandsOut, min(j.Length, 24), 24))
	if room := j.Room(); room <= p.Times(0.8) {
		errs = append(errs, fmt.Errorf("bar %s with a tool that reaches %s leaves %s to come clear in a bore of %s: take a thinner bar or a shorter tool",
			j.text(j.Bar), j.text(j.Reach), j.text(max(room, 0)), j.text(j.Start)))
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
// towards the headstock as it goes deeper: for a right-hand thread the tailstock's
// outside, mirrored in a bore, where the tool feeds the other way.
func (j Job) Swing() string {
	if j.Side == calc.Inside {
		return Headstock
	}
	return Tailstock
}

// Room is how far the tool can come away from the wall of a bore before the back of
// the bar meets the far wall.
func (j Job) Room() calc.Length { return j.Start - j.Bar - j.Reach }

// LeastOverhang is how short the bar can be set: it must reach through the thread and
// its gap before the holder meets the work.
func (j Job) LeastOverhang() calc.Length {
	u := j.System().Length()
	step := map[bool]float64{false: 0.05, true: 1}[j.Lathe.Metric]
	shown := (j.Length + j.Gap).Inches() * u.Factor
	return calc.Inches(math.Ceil(shown/step-1e-9) * step / u.Factor)
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
	turns := j.screwLead().Over(j.Thread.Lead())
	return calc.Within(calc.Round(turns, 0), turns, 1e-9) && turns > 0.5
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
