package bench

import (
	"fmt"
	"math"
	"slices"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/machine"
)

// Usual fills in what a job that someone gives by its thread alone leaves out: a blank
// or bore in the middle of its limits, a thread one and a half times as long as it is
// thick, or as long as a nut, a gap that leaves the hands their time at the lathe's slowest
// speed, a usual tool, a stock bar. What is given stays; what can't be filled in is left
// for ParseJob to ask for.
func Usual(w content.Job, own machine.Lathe) content.Job {
	d, err := ParseThread(w.Thread)
	if err != nil {
		return w
	}
	j := Job{Thread: d, Lathe: own, Towards: w.Towards}
	if w.Towards == "" {
		j.Towards = j.usualWay()
	}
	if w.Side == "" {
		if _, known := sideOf(d); !known {
			w.Side = calc.Outside.String()
		}
	}
	if j.side(w.Side) != nil {
		return w
	}
	unit, step := machine.InchUnit, 0.005
	if d.Metric {
		unit, step = machine.MMUnit, 0.1
	}
	round := func(l calc.Length) calc.Length {
		return calc.Inches(wholeUp(l.Inches()*unit.Factor/step) * step / unit.Factor)
	}
	put := func(into *string, l calc.Length) calc.Length {
		if *into == "" {
			*into = unit.Text(l.Inches())
		}
		given, err := calc.LengthOf(*into, calc.UnitInch)
		if err != nil {
			return l
		}
		return given
	}
	word := func(into *string, usual string) {
		if *into == "" {
			*into = usual
		}
	}
	times := 1.5
	if j.Side == calc.Inside {
		times = nutLength
	}
	length := put(&w.Length, round(j.usualLength(times)))
	ahead := put(&w.Ahead, round(usualAhead))
	gap := put(&w.Gap, round(max(d.Pitch.Times(2.5), j.timeForHands())+ahead))
	if w.Round == "" {
		put(&w.Flat, calc.Inches(math.Floor(j.usualFlat().Inches()*unit.Factor/step*10)*step/10/unit.Factor))
	}
	switch {
	case j.Form() == Acme && j.Side == calc.Outside: // a screw is long, and held at both ends
		word(&w.Hold, Centres)
	case j.Form() == Acme: // a nut that a screw runs in is of bronze
		word(&w.Material, calc.Brass.String())
	}
	word(&w.Hold, Chuck)
	if j.Form() == Pipe {
		word(&w.Taper, Attachment)
	}
	if w.Title == "" {
		w.Title = d.String()
	}
	if j.Side == calc.Outside {
		word(&w.End, Shoulder)
		put(&w.Blank, j.Limits.Major.Middle())
		put(&w.StandsOut, max(round(length+gap+d.Nominal.Times(0.5)), 0.25))
		return w
	}
	word(&w.End, Jaws)
	bore := put(&w.Bore, j.Limits.Minor.Middle())
	if w.Bar == "" {
		stock := j.usualBar(j.narrowest(bore, length))
		if stock == 0 {
			return w // CheckUsual says why
		}
		w.Bar = unit.Text(stock.Inches())
	}
	bar := put(&w.Bar, 0)
	put(&w.Reach, min(round(d.Pitch.Times(1.2)), j.narrowest(bore, length)-bar-j.toClear()))
	put(&w.StandsOut, max(round(length+gap+calc.Inches(0.05)), 0.25))
	return w
}

// usualLength is so many diameters, and for a pipe thread the one that its standard gives: the
// effective thread outside; inside what goes in by hand, and three turns by wrench.
func (j Job) usualLength(times float64) calc.Length {
	if j.Form() != Pipe {
		return j.Thread.Nominal.Times(times)
	}
	d, _ := calc.ParsePipe(j.Thread.String()) // it was read
	pipe, _ := calc.PipeThread(d.Outside, d.TPI, d.L1)
	if j.Side == calc.Inside {
		return d.L1 + d.Pitch.Times(wrenchTurns)
	}
	return pipe.L2
}

// narrowest is how narrow a bore gets: a taper thread's gets narrower as it goes in.
func (j Job) narrowest(bore, length calc.Length) calc.Length {
	if j.Form() == Pipe {
		return bore - length.Times(calc.PipeTaper)
	}
	return bore
}

// timeForHands is the way that the carriage goes at the slowest speed in the time that
// hands should have at the end of a pass; 0 where the speeds are not known.
func (j Job) timeForHands() calc.Length {
	if len(j.Lathe.Speeds) == 0 || !j.Hurries() {
		return 0
	}
	return j.Thread.Lead().Times(float64(slices.Min(j.Lathe.Speeds)) / 60 * j.hands())
}

// CheckThread returns what is wrong with a job's thread and side, on which all other
// sizes hang.
func CheckThread(w content.Job) error {
	d, err := ParseThread(w.Thread)
	if err != nil {
		if form := otherForm(w.Thread); form != "" {
			return fmt.Errorf("thread %s: the bench cuts threads of the 60-degree form, inch and metric, Acme and NPT, and no %s", calc.Quoted(w.Thread), form)
		}
		return err
	}
	j := Job{Thread: d}
	return j.side(w.Side)
}
