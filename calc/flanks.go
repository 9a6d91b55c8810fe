package calc

import "math"

// What holds for a thread of any angle: flank is how far each of its flanks leans from square
// to the axis, 5 to 45 degrees, 30 for a 60-degree thread and 14.5 for an Acme thread.

func checkFlank(flank Angle) error { return inRange("angle of a flank", flank.Degrees(), 5, 45) }

// DepthForFlank is RadialDepth for a tool of any angle:
//
//	h = (d - E)/2 + (P/2 - f)/(2 tan A)   outside, d the blank
//	h = (E - d)/2 + (P/2 - f)/(2 tan A)   inside, d the bore
//
// f is 0 to P/2; diameters are above 0 and at most 12 in. Source: geometry.
func DepthForFlank(flank Angle, side Side, start, pitchDiameter, pitch, flat Length) (Length, error) {
	err := firstError(checkFlank(flank), checkPitch(pitch), between("tool flat", flat, 0, pitch.Times(0.5)),
		between("starting diameter", start, Thou, LargestNominal), between("pitch diameter", pitchDiameter, Thou, LargestNominal))
	if err != nil {
		return 0, err
	}
	wall := (start - pitchDiameter).Times(0.5)
	if side == Inside {
		wall = -wall
	}
	if h := wall + (pitch.Times(0.5) - flat).Times(1/(2*flank.Tan())); h > 0 {
		return h, nil
	}
	return 0, badLength("starting diameter", start, "a size from which the tool must still go in to reach the pitch diameter "+LengthText(pitchDiameter))
}

// ChipWidthForFlank is ChipWidth for a tool of any angle:
//
//	b = h / cos A + f       one flank
//	b = 2 h / cos A + f     both flanks
//
// h is 0 to 1 in, f 0 to 0.25 in. Source: geometry.
func ChipWidthForFlank(flank Angle, radial, flat Length, feed Infeed) (Length, error) {
	if err := firstError(checkFlank(flank), between("depth", radial, 0, 1), between("tool flat", flat, 0, 0.25)); err != nil {
		return 0, err
	}
	side := radial.Times(1 / flank.Cos())
	if feed == BothFlanks {
		side = side.Times(2)
	}
	return side + flat, nil
}

// EqualSection returns how far on a pass goes, along a flank or straight in, that takes the
// same section of chip as the first did:
//
//	f x + 2 h x tan A + x^2 tan A = f a + a^2 tan A
//
// x is what it returns, h the depth before it, a the depth of the first and f the tip flat.
// With a sharp tool its sums are the square-root rule of EqualArea. before is 0 to 1 in, first
// 0.0001 to 1 in, f 0 to 0.25 in. Source: geometry.
func EqualSection(flank Angle, before, first, flat Length) (Length, error) {
	err := firstError(checkFlank(flank), between("depth before", before, 0, 1), between("first cut", first, Thou.Times(0.1), 1), between("tool flat", flat, 0, 0.25))
	if err != nil {
		return 0, err
	}
	tan, f, a := flank.Tan(), flat.Inches(), first.Inches()
	wide := f + 2*before.Inches()*tan
	return Inches((math.Sqrt(wide*wide+4*tan*(f*a+a*a*tan)) - wide) / (2 * tan)), nil
}

// BestWireForFlank is the wire that touches at the pitch line:
//
//	W = P / (2 cos A)
//
// 0.57735 P for a 60-degree thread and 0.51645 P for an Acme thread. Source: geometry.
func BestWireForFlank(flank Angle, pitch Length) (Length, error) {
	if err := firstError(checkFlank(flank), checkPitch(pitch)); err != nil {
		return 0, err
	}
	return pitch.Times(1 / (2 * flank.Cos())), nil
}

// OverWiresForFlank is OverWires for a thread of any angle, without the correction for the
// lead angle:
//
//	M = E + W (1 + csc A) - (P/2) cot A
//
// W is P/5 to P. For an Acme thread it is M = E + 4.99393 W - 1.93334 P. Source: geometry.
func OverWiresForFlank(flank Angle, pitchDiameter, wire, pitch Length) (Length, error) {
	err := firstError(checkFlank(flank), checkPitch(pitch), between("wire", wire, pitch.Times(0.2), pitch), between("pitch diameter", pitchDiameter, Thou, LargestNominal))
	if err != nil {
		return 0, err
	}
	return pitchDiameter + wire.Times(1+1/flank.Sin()) - pitch.Times(0.5/flank.Tan()), nil
}
