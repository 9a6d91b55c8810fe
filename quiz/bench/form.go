package bench

import "scratchpass/calc"

// flankAngle is how far each flank of the thread leans from square to its axis.
func (j Job) flankAngle() calc.Angle { return calc.VeeFlank }
