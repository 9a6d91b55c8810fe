package calc_test

import (
	"math/rand/v2"

	"scratchpass/calc"
)

// The formulas of limits, pipes, pitches, plans and fits.
var formulaRowsOfSizes = []formulaRow{
	row("MiddleOfLimits", calc.MiddleOfLimits, both, func(r *rand.Rand) ([]any, map[string]any) {
		high, low := inches(r, 0.5, 0.51), inches(r, 0.48, 0.5)
		return []any{high, low}, symbols{"d2": high, "d1": low}
	}),
	row("PipeSmallEnd", calc.PipeSmallEnd, inch, func(r *rand.Rand) ([]any, map[string]any) {
		d, n := inches(r, 0.4, 3), calc.ThreadsPerInch(from(r, 8, 30))
		return []any{d, n}, symbols{"D": d, "P": 1 / n.Number()}
	}),
	row("PipeHeight", calc.PipeHeight, both, func(r *rand.Rand) ([]any, map[string]any) {
		n := tpiOf(r)
		return []any{n}, symbols{"P": calc.Inches(1 / n.Number())}
	}),
	row("PipeAlong", calc.PipeAlong, both, func(r *rand.Rand) ([]any, map[string]any) {
		turns, n := from(r, 0, 6), tpiOf(r)
		return []any{turns, n}, symbols{"t": turns, "P": calc.Inches(1 / n.Number())}
	}),
	row("PipeDepthForAlong", calc.PipeDepthForAlong, both, func(r *rand.Rand) ([]any, map[string]any) {
		w := inches(r, 0, 1)
		return []any{w}, symbols{"w": w}
	}),
	row("PipeSetOver", calc.PipeSetOver, both, func(r *rand.Rand) ([]any, map[string]any) {
		l := inches(r, 4, 60)
		return []any{l}, symbols{"L": l}
	}),
	row("PitchOfTPI", calc.PitchOfTPI, inch, onlyTPI),
	row("PitchOfTPIMM", calc.PitchOfTPIMM, mm, onlyTPI),
	row("TPIOfPitchMM", calc.TPIOfPitchMM, mm, onlyPitch),
	row("LeadOfStarts", calc.LeadOfStarts, both, func(r *rand.Rand) ([]any, map[string]any) {
		p, z := pitchOf(r), 1+r.IntN(12)
		return []any{p, z}, symbols{"P": p, "z": z}
	}),
	row("PitchOfStarts", calc.PitchOfStarts, both, func(r *rand.Rand) ([]any, map[string]any) {
		z := 1 + r.IntN(12)
		l := pitchOf(r).Times(float64(z))
		return []any{l, z}, symbols{"l": l, "z": z}
	}),
	row("InchesOfMM", calc.InchesOfMM, inch, func(r *rand.Rand) ([]any, map[string]any) {
		p := from(r, 0.5, 6)
		return []any{p}, symbols{"P0": p}
	}),
	row("EvenLoad", calc.EvenLoad, both, func(r *rand.Rand) ([]any, map[string]any) {
		total, passes := inches(r, 0.01, 0.2), 1+r.IntN(40)
		pass := 1 + r.IntN(passes)
		return []any{total, pass, passes}, symbols{"T": total, "p": pass, "Q": passes}
	}),
	row("FitInside", calc.FitInside, both, func(r *rand.Rand) ([]any, map[string]any) {
		plug, k := inches(r, 0.3, 2), inches(r, 0, 0.004)
		e := plug - inches(r, 0, 0.02)
		return []any{plug, e, k}, symbols{"E1": plug, "E": e, "k": k}
	}),
	row("FitInsideOnTravel", calc.FitInsideOnTravel, both, func(r *rand.Rand) ([]any, map[string]any) {
		plug, k := inches(r, 0.3, 2), inches(r, 0, 0.004)
		e := plug - inches(r, 0, 0.02)
		return []any{plug, e, k}, symbols{"g": plug + k - e}
	}),
	row("NumberedSize", calc.NumberedSize, inch, func(r *rand.Rand) ([]any, map[string]any) {
		n := r.IntN(13)
		return []any{n}, symbols{"N": n}
	}),
	row("BestWire", calc.BestWire, both, onlyPitch),
	row("ReadingOverWires", calc.ReadingOverWires, both, wired("E")),
	row("DiameterOverWires", calc.DiameterOverWires, both, wired("M")),
	row("ThreadSlope", calc.ThreadSlope, both, func(r *rand.Rand) ([]any, map[string]any) {
		p := pitchOf(r)
		e, l := nominalOver(r, p), p.Times(float64(1+r.IntN(4)))
		return []any{l, e}, symbols{"l": l, "E": e}
	}),
	row("LeadingClearance", calc.LeadingClearance, both, func(r *rand.Rand) ([]any, map[string]any) {
		c, a := degrees(r, 0, 15), degrees(r, 0, 30)
		return []any{c, a}, symbols{"c": c, "A": a}
	}),
}

// The formulas of speed, spring passes and the thread dial.
var formulaRowsOfSpeed = []formulaRow{
	row("TurningSpeed", calc.TurningSpeed, inch, func(r *rand.Rand) ([]any, map[string]any) {
		v, d := from(r, 10, 300), inches(r, 0.2, 6)
		return []any{calc.FeetPerMinute(v), d}, symbols{"V": v, "D": d}
	}),
	row("TurningSpeedMM", calc.TurningSpeedMM, mm, func(r *rand.Rand) ([]any, map[string]any) {
		v, d := from(r, 5, 100), inches(r, 0.2, 6)
		return []any{calc.MetresPerMinute(v), d}, symbols{"V": v, "D": d}
	}),
	row("ThreadingSpeed", calc.ThreadingSpeed, both, func(r *rand.Rand) ([]any, map[string]any) {
		u := rpmOf(r)
		return []any{u}, symbols{"u": u}
	}),
	row("CarriageSpeed", calc.CarriageSpeed, both, func(r *rand.Rand) ([]any, map[string]any) {
		v, l := rpmOf(r), pitchOf(r)
		return []any{v, l}, symbols{"v": v, "l": l}
	}),
	row("CarriageSpeedOneStart", calc.CarriageSpeedOneStart, both, func(r *rand.Rand) ([]any, map[string]any) {
		v, p := rpmOf(r), pitchOf(r)
		return []any{v, p}, symbols{"v": v, "P": p}
	}),
	row("RoomToStop", calc.RoomToStop, both, func(r *rand.Rand) ([]any, map[string]any) {
		v, p, y := rpmOf(r), pitchOf(r), from(r, 0.3, 4)
		return []any{v, p, y}, symbols{"v": v, "P": p, "y": y}
	}),
	row("TimeForGap", calc.TimeForGap, both, func(r *rand.Rand) ([]any, map[string]any) {
		g, v, l := inches(r, 0.05, 1), rpmOf(r), pitchOf(r)
		return []any{g, v, l}, symbols{"g": g, "j": l.Times(v.RPM() / 60)}
	}),
	row("FastestSpeed", calc.FastestSpeed, both, func(r *rand.Rand) ([]any, map[string]any) {
		g, p, y := inches(r, 0.05, 1), pitchOf(r), from(r, 0.3, 4)
		return []any{g, p, y}, symbols{"g": g, "P": p, "y": y}
	}),
	row("LeftAfter", calc.LeftAfter(0), both, sprung),
	row("LeftAfter", calc.LeftAfter(1), both, sprung),
	row("LeftAfter", calc.LeftAfter(6), both, sprung),
	row("MarkSpacing", calc.MarkSpacing, inch, func(r *rand.Rand) ([]any, map[string]any) {
		d, _ := dialAndLead(r)
		return []any{d}, symbols{"T": d.Teeth, "M": d.Marks, "N": d.LeadScrew}
	}),
	row("MarkSpacingMM", calc.MarkSpacingMM, mm, func(r *rand.Rand) ([]any, map[string]any) {
		d, _ := dialAndLead(r)
		return []any{d}, symbols{"T": d.Teeth, "M": d.Marks, "N": 25.4 / d.LeadScrew.Number()}
	}),
	row("ThreadsPerMark", calc.ThreadsPerMark, inch, func(r *rand.Rand) ([]any, map[string]any) {
		d, l := dialAndLead(r)
		return []any{d, l}, symbols{"u": spacingOf(d), "n": 1 / l.Inches()}
	}),
	row("ThreadsPerMarkByPitch", calc.ThreadsPerMarkByPitch, both, func(r *rand.Rand) ([]any, map[string]any) {
		d, l := dialAndLead(r)
		return []any{d, l}, symbols{"u": spacingOf(d), "P": l}
	}),
	row("ThreadsPerTurn", calc.ThreadsPerTurn, both, func(r *rand.Rand) ([]any, map[string]any) {
		d, l := dialAndLead(r)
		return []any{d, l}, symbols{"M": d.Marks, "y": float64(spacingOf(d) / l)}
	}),
}

func onlyTPI(r *rand.Rand) ([]any, map[string]any) {
	n := tpiOf(r)
	return []any{n}, symbols{"n": n}
}

// wired is a thread under wires; its diameter, or the reading over it, is called so.
func wired(diameter string) func(*rand.Rand) ([]any, map[string]any) {
	return func(r *rand.Rand) ([]any, map[string]any) {
		p := pitchOf(r)
		d, w := nominalOver(r, p), p.Times(from(r, 0.56, 0.9))
		return []any{d, w, p}, symbols{diameter: d, "W": w, "P": p}
	}
}

func sprung(r *rand.Rand) ([]any, map[string]any) {
	e, q := inches(r, 0.001, 0.02), from(r, 0, 0.9)
	return []any{e, q}, symbols{"e": e, "q": q}
}

func dialAndLead(r *rand.Rand) (calc.ThreadDial, calc.Length) {
	return calc.ThreadDial{LeadScrew: calc.ThreadsPerInch(from(r, 1, 20)), Teeth: 8 + r.IntN(60), Marks: 1 + r.IntN(16)}, pitchOf(r)
}

// spacingOf is the way from mark to mark: so many teeth, a thread of the screw each.
func spacingOf(d calc.ThreadDial) calc.Length {
	return calc.Inches(float64(d.Teeth) / d.LeadScrew.Number() / float64(d.Marks))
}
