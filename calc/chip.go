package calc

import "math"

// Infeed says which flanks a pass cuts.
type Infeed int

// Along one flank by the compound, or straight in on both.
const (
	OneFlank Infeed = iota
	BothFlanks
)

// ChipWidth returns the width of the chip at a depth, along the edge of the tool:
//
//	b = h / cos 30 + f       one flank
//	b = 2 h / cos 30 + f     both flanks
//
// h is the depth after the pass, 0 to 1 in; f the tip flat. Source: geometry.
func ChipWidth(radial, flat Length, feed Infeed) (Length, error) {
	side, err := FlankLength(radial)
	if err := firstError(err, between("tool flat", flat, 0, 0.25)); err != nil {
		return 0, err
	}
	if feed == BothFlanks {
		side = side.Times(2)
	}
	return side + flat, nil
}

// GrooveArea returns the section of a groove at a depth, in square inches:
//
//	A(h) = f h + h^2 tan 30
//
// h is 0 to 1 in, f 0 to 0.25 in. Source: geometry of the 60-degree form.
func GrooveArea(radial, flat Length) (float64, error) {
	if err := firstError(between("depth", radial, 0, 1), between("tool flat", flat, 0, 0.25)); err != nil {
		return 0, err
	}
	h, f := radial.Inches(), flat.Inches()
	return f*h + h*h*Angle(30).Tan(), nil
}

// ChipArea returns the section that one pass takes, in square inches:
//
//	A(to) - A(from)
//
// It is the same along one flank and on both: only the shape differs.
func ChipArea(from, to, flat Length) (float64, error) {
	before, err := GrooveArea(from, flat)
	after, err2 := GrooveArea(to, flat)
	if err := firstError(err, err2); err != nil {
		return 0, err
	}
	if to < from {
		return 0, badLength("depth", to, "a depth of "+LengthText(from)+" or more: metal does not come back")
	}
	return after - before, nil
}

// depthOfArea is the depth at which a groove has an area: GrooveArea turned round.
func depthOfArea(area float64, flat Length) Length {
	t, f := Angle(30).Tan(), flat.Inches()
	return Inches((math.Sqrt(f*f+4*t*area) - f) / (2 * t))
}
