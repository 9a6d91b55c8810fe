package bench

import (
	"errors"
	"fmt"
	"strings"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/machine"
)

// leftSet reads the lead that the last user has left the gears set for; an empty text is none.
func (j *Job) leftSet(text string) error {
	if text == "" {
		return nil
	}
	var left Event
	if err := left.readLead(strings.ToLower(text)); err != nil {
		return &calc.InputError{What: "gears_left", Got: calc.Quoted(text), Want: "a lead such as 9 TPI or 2 mm"}
	}
	j.GearsLeft = left.lead()
	return nil
}

// ParseJob reads a job that is written down. own is the learner's lathe, for jobs that
// name none.
func ParseJob(w content.Job, own machine.Lathe) (Job, error) {
	j := Job{Title: w.Title, Story: w.Story, End: w.End, Hold: w.Hold, Surprises: w.Surprises, Lathe: own}
	var errs []error
	say := func(err error) { errs = append(errs, err) }
	switch w.Lathe {
	case "":
	case "inch":
		j.Lathe = machine.InchLathe
	case "metric":
		j.Lathe = machine.MetricLathe
	default:
		say(&calc.InputError{What: "lathe", Got: calc.Quoted(w.Lathe), Want: "inch or metric, or leave the line out for your own"})
	}
	var err error
	if j.Material, err = calc.ParseMaterial(w.Material); err != nil {
		say(err)
	}
	if j.Thread, err = ParseThread(w.Thread); err != nil {
		say(fmt.Errorf("thread: %w", err))
		return j, errors.Join(errs...)
	}
	say(j.side(w.Side))
	if j.Form() == Pipe {
		word(say, "taper", w.Taper, Attachment, NoAttachment)
		j.Taper = w.Taper
	} else {
		unused(say, "taper", w.Taper, "a taper pipe thread")
	}
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
		if w.Bar == "" && j.Start > 0 && j.usualBar(j.Start) == 0 {
			say(j.noStockBar())
			return j, errors.Join(errs...)
		}
		size("bar", w.Bar, &j.Bar)
		size("reach", w.Reach, &j.Reach)
		unused(say, "blank", w.Blank, "an external thread; an internal one has a bore")
	} else {
		size("blank", w.Blank, &j.Start)
		unused(say, "bore", w.Bore, "an internal thread; an external one has a blank")
		unused(say, "bar", w.Bar, "an internal thread")
		unused(say, "reach", w.Reach, "an internal thread")
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
	if w.Shank != "" {
		size("shank", w.Shank, &j.Shank)
	}
	j.Towards = j.usualWay()
	if w.Towards != "" {
		word(say, "towards", w.Towards, Headstock, Tailstock)
		j.Towards = w.Towards
	}
	say(j.leftSet(w.GearsLeft))
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
	side, known := sideOf(j.Thread)
	said, read := calc.ParseSide(written)
	switch {
	case written == "" && !known:
		return errors.New("side: the thread has no class that tells; give external or internal")
	case written != "" && !read:
		return &calc.InputError{What: "side", Got: calc.Quoted(written), Want: "external or internal"}
	case read && known && said != side:
		return fmt.Errorf("side: %s is an %s thread by its class", j.Thread, side.Word())
	case read:
		side = said
	}
	j.Side = side
	if !known && j.Thread.Class == "" {
		j.Thread.Class = usualClass(j.Thread, side)
	}
	var err error
	j.Limits, err = limitsOf(j.Thread, side)
	return err
}

// usualClass is the class of a thread that names none.
func usualClass(d calc.Designation, side calc.Side) string {
	switch metric := d.Metric; {
	case formOf(d) == Acme:
		return "2G"
	case formOf(d) == Pipe: // it has none
		return ""
	case metric && side == calc.Inside:
		return "6H"
	case metric:
		return "6g"
	case side == calc.Inside:
		return "2B"
	}
	return "2A"
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
