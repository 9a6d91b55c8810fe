package bench

import (
	"fmt"
	"math"
	"slices"
	"strings"

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
	d, err := calc.ParseDesignation(w.Thread)
	if err != nil {
		return w
	}
	j := Job{Thread: d, Lathe: own}
	if w.Side == "" {
		if _, known := d.Side(); !known {
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
	length := put(&w.Length, round(d.Nominal.Times(times)))
	ahead := put(&w.Ahead, round(usualAhead))
	gap := put(&w.Gap, round(max(d.Pitch.Times(2.5), j.timeForHands())+ahead))
	if w.Round == "" {
		share := 1.0 / 8
		put(&w.Flat, calc.Inches(math.Floor(d.Pitch.Inches()*unit.Factor*share/step*10)*step/10/unit.Factor))
	}
	word(&w.Hold, Chuck)
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
		stock := usualBar(bore, d.Pitch, d.Metric)
		if stock == 0 {
			return w // CheckUsual says why
		}
		w.Bar = unit.Text(stock.Inches())
	}
	bar := put(&w.Bar, 0)
	put(&w.Reach, min(round(d.Pitch.Times(1.2)), bore-bar-d.Pitch.Times(roomToClear)))
	put(&w.StandsOut, max(round(length+gap+calc.Inches(0.05)), 0.25))
	return w
}

// timeForHands is the way that the carriage goes at the slowest speed in the time that
// hands should have at the end of a pass; 0 where the speeds are not known.
func (j Job) timeForHands() calc.Length {
	if len(j.Lathe.Speeds) == 0 {
		return 0
	}
	return j.Thread.Lead().Times(float64(slices.Min(j.Lathe.Speeds)) / 60 * j.hands())
}

// otherForms are threads that have lessons, and that the bench does not cut.
var otherForms = []string{"ACME", "NPT", "BSP", "BSW", "BSF", "TR", "STUB"}

// CheckThread returns what is wrong with a job's thread and side, on which all other
// sizes hang.
func CheckThread(w content.Job) error {
	d, err := calc.ParseDesignation(w.Thread)
	if err != nil {
		for _, form := range otherForms {
			if strings.Contains(strings.ToUpper(w.Thread), form) {
				return fmt.Errorf("thread %s: the bench cuts threads of the 60-degree form, inch and metric, and no %s", calc.Quoted(w.Thread), form)
			}
		}
		return err
	}
	j := Job{Thread: d}
	return j.side(w.Side)
}
