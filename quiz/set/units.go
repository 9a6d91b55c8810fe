package set

import (
	"cmp"
	"math"

	"scratchpass/quiz/machine"
)

// unitsOf is the system of units of a slot: its own, or the blueprint's.
func (b *Blueprint) unitsOf(s Slot) machine.System {
	if own, err := machine.ParseSystem(cmp.Or(s.Units, b.Units)); err == nil {
		return own
	}
	return b.system // what is wrong with it is said elsewhere
}

// latheOf is the lathe of a slot's problems. A blueprint's own lathe serves the slots in the
// units of its dials; the others have the one that ships, like someone whose own machine is
// for the other units.
func (b *Blueprint) latheOf(s Slot) machine.Lathe {
	if system := b.unitsOf(s); system != b.system {
		return machine.DefaultLathe(system)
	}
	return b.lathe
}

// divisions are the finest lines of dials, in inches and in millimetres: every dial has a
// whole number of one of them to a line.
const (
	finestInches = 0.00025
	finestMM     = 0.005
)

// dialsFit reports whether someone can set lengths of a system of units on a lathe's dials.
// What its lead screw is does not matter: a lathe may have dials in inches and a lead screw
// in millimetres. Questions about that screw are then asked of the lathe that ships.
func dialsFit(l machine.Lathe, system machine.System) bool {
	finest := finestInches
	if system == machine.Metric {
		finest = finestMM
	}
	whole := func(d machine.Dial) bool {
		lines := d.Division.Inches() * system.Length().Factor / finest
		return math.Abs(lines-math.Round(lines)) < 0.01 && lines > 0.5
	}
	return whole(l.Cross) && whole(l.Compound)
}
