package calc

// largestNose is the largest nose radius whose groove still has straight flanks where the
// mating part touches them. A circle that touches both flanks leaves them 1.5 r above the
// sharp root. An external thread meets the nut's crests H/4 above it, an internal thread
// the crests of the screw H/8:
//
//	r = H/6 = 0.144338 P     outside
//	r = H/12 = 0.072169 P    inside
//
// Source: geometry of the 60-degree form; H/6 is the basic root radius of ISO metric
// threads, printed as 0.1443 P.
func largestNose(side Side, pitch Length) (Length, error) {
	if err := checkPitch(pitch); err != nil {
		return 0, err
	}
	if side == Inside {
		return pitch.Times(HeightOfSharpV / 12), nil
	}
	return pitch.Times(HeightOfSharpV / 6), nil
}

// finestPitch is largestNose turned round: the finest pitch whose largest nose this is, 0.2 mm
// to 1 in.
func finestPitch(side Side, nose Length) (Length, error) {
	share := 6 / HeightOfSharpV
	if side == Inside {
		share = 12 / HeightOfSharpV
	}
	pitch := nose.Times(share)
	if err := checkPitch(pitch); err != nil {
		return 0, badLength("nose radius", nose, LengthText(FinestPitch.Times(1/share))+" to "+LengthText(CoarsestPitch.Times(1/share)))
	}
	return pitch, nil
}

// depthWithNose is the depth with a round nose. A flat takes 0.866025 of its width off the
// sharp point; the nose takes off its radius, for its tip stands r above that point.
func depthWithNose(side Side, pitch, nose Length) (Length, error) {
	widest, err := largestNose(side, pitch)
	if err != nil {
		return 0, err
	}
	if err := between("nose radius", nose, 0, widest+Thou.Times(0.5)); err != nil {
		return 0, err
	}
	sharp := HeightOfSharpV * 7 / 8 // from a nominal blank
	if side == Inside {
		sharp = HeightOfSharpV * 3 / 4 // from the basic bore
	}
	return pitch.Times(sharp) - nose, nil
}

// The formulas of a tool with a round nose of radius r, straight in to the basic pitch
// diameter: from a blank of nominal size, from a bore of basic size; then the largest nose
// for either, and the finest pitch for a nose. P is the pitch.
var (
	NoseDepthFromNominal = Formula[func(pitch, nose Length) (Length, error)]{"0.757772 x P - r",
		func(pitch, nose Length) (Length, error) { return depthWithNose(Outside, pitch, nose) }}

	NoseDepthFromBore = Formula[func(pitch, nose Length) (Length, error)]{"0.649519 x P - r",
		func(pitch, nose Length) (Length, error) { return depthWithNose(Inside, pitch, nose) }}

	LargestNoseOutside = Formula[func(pitch Length) (Length, error)]{"0.144338 x P",
		func(pitch Length) (Length, error) { return largestNose(Outside, pitch) }}

	LargestNoseInside = Formula[func(pitch Length) (Length, error)]{"0.072169 x P",
		func(pitch Length) (Length, error) { return largestNose(Inside, pitch) }}

	FinestPitchOutside = Formula[func(nose Length) (Length, error)]{"6.928203 x r",
		func(nose Length) (Length, error) { return finestPitch(Outside, nose) }}

	FinestPitchInside = Formula[func(nose Length) (Length, error)]{"13.856406 x r",
		func(nose Length) (Length, error) { return finestPitch(Inside, nose) }}
)
