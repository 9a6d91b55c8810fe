package bench

import (
	"errors"
	"strings"
	"testing"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/machine"
)

// Of every job that ships, each pass goes by its moves without a mistake, ends with the last of
// them and not before, and is as deep as the card has it.
func TestEveryPassByHand(t *testing.T) {
	for _, name := range content.Shipped().JobNames() {
		j := shippedJob(t, name)
		j.Surprises = nil
		p, err := NewPlan(j, AsUsual)
		if err != nil {
			t.Fatal(err)
		}
		if !p.Passes() {
			if _, err := p.Pass(1); !errors.Is(err, ErrNoPasses) {
				t.Error(name, ": ", err)
			}
			continue
		}
		first, err := p.Pass(0)
		if err != nil {
			t.Fatal(err)
		}
		for n := range first.Of + 1 {
			o, err := p.Pass(n)
			if err != nil {
				t.Fatal(name, n, err)
			}
			if n > 0 && len(o.Start.Passes) != n-1 || len(o.Start.Mistakes)+len(o.Start.Spoiled) > 0 || o.Done(o.Start) {
				t.Errorf("%s, pass %d begins after %d passes, with %v", name, n, len(o.Start.Passes), o.Start.Mistakes)
			}
			b := o.Start
			for i, e := range o.Moves {
				if o.Done(b) || o.Ruined(b) || !o.Takes(e) {
					t.Errorf("%s, pass %d is over before move %d, %v", name, n, i, e)
				}
				if again, err := Parse(e.Write(j.System()), j.System()); err != nil || again.Verb != e.Verb {
					t.Errorf("%s: %q can't be typed: %v", name, e.Write(j.System()), err)
				}
				b, _ = b.Step(e)
			}
			if !o.Done(b) || !o.AsDeep(b) || len(o.Made(b)) > 0 || len(b.Passes) != len(o.Start.Passes)+1 {
				t.Errorf("%s, pass %d: done %v, as deep %v, %v: %v", name, n, o.Done(b), o.AsDeep(b), o.Made(b), o.Moves)
			}
		}
		for _, n := range []int{-1, first.Of + 1} {
			var wrong *calc.InputError
			if _, err := p.Pass(n); !errors.As(err, &wrong) {
				t.Errorf("%s has a pass %d: %v", name, n, err)
			}
		}
	}
}

// What a pass comes to, by what was done in it.
func TestAPassThatGoesOtherwise(t *testing.T) {
	p, err := NewPlan(shippedJob(t, "adjusting-screw"), AsUsual)
	if err != nil {
		t.Fatal(err)
	}
	o, err := p.Pass(3)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		moves                string
		done, ruined, asDeep bool
		mistakes             string
	}{
		{"", false, false, false, ""},
		{"cross to 0, close on 1, run, cross out 0.2, open", false, false, false, ""}, // not back yet
		{"cross to 0, close on 1, run, cross out 0.2, open, return", true, false, false, ""},
		{"cross to 0, compound in 0.003, close on 1, wait 5, open", false, true, false, "short opened-first"},
		{"cross to 0, close on 1, run, run", false, true, false, "hit-shoulder"},
		{"close on 1, run, open, return", false, false, false, ""}, // in air: no pass
	} {
		b := o.Start
		for _, text := range strings.Split(c.moves, ", ") {
			if text == "" {
				continue
			}
			e, err := Parse(text, machine.Imperial)
			if err != nil {
				t.Fatal(err)
			}
			b, _ = b.Step(e)
		}
		var made []string
		for _, m := range o.Made(b) {
			made = append(made, string(m.Name))
			if m.Event < 1 || m.Event > len(b.Log)-len(o.Start.Log) {
				t.Errorf("%s: %s at move %d", c.moves, m.Name, m.Event)
			}
		}
		if o.Done(b) != c.done || o.Ruined(b) != c.ruined || o.AsDeep(b) != c.asDeep || strings.Join(made, " ") != c.mistakes {
			t.Errorf("%s: done %v, ruined %v, as deep %v, %v", c.moves, o.Done(b), o.Ruined(b), o.AsDeep(b), made)
		}
	}
	for _, of := range o.Offers(o.Start) {
		if of.Verb == "pass" || of.Verb == "spring" || of.Verb == "done" {
			t.Error("offered: ", of.Text)
		}
	}
}
