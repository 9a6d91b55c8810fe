package calc

// AcmeAngle is the angle between the flanks of an Acme thread; the compound stands at
// half of it.
const AcmeAngle Angle = 29

// AcmeDepth returns the single depth of an Acme thread with its clearance:
//
//	h = P/2 + 0.010 in    10 threads per inch and coarser
//	h = P/2 + 0.005 in    finer
//
// pitch is 0.05 to 1 in. Source: F. D. Jones, Turning and Boring, 1914.
func AcmeDepth(pitch Length) (Length, error) {
	if err := between("Acme pitch", pitch, 0.05, 1); err != nil {
		return 0, err
	}
	return pitch.Times(0.5) + acmeClearance(pitch), nil
}

// AcmeToolFlat returns the width of the tip of an Acme tool:
//
//	f = 0.3707 P - 0.0052 in    10 threads per inch and coarser
//	f = 0.3707 P - 0.0026 in    finer
//
// Source: Machinery's Data Sheets: Screw Threads, 1910.
func AcmeToolFlat(pitch Length) (Length, error) {
	crest, err := AcmeCrestFlat(pitch)
	if err != nil {
		return 0, err
	}
	// 0.0052 is the clearance of 0.010 times twice the tangent of 14.5 degrees.
	if acmeClearance(pitch) == 10*Thou {
		return crest - 0.0052, nil
	}
	return crest - 0.0026, nil
}

// AcmeCrestFlat returns the width of the flat on the crest of an Acme thread, which is
// that of a tool for a groove without clearance:
//
//	f = 0.3707 P
//
// pitch is 0.05 to 1 in. Source: Machinery's Data Sheets: Screw Threads, 1910.
func AcmeCrestFlat(pitch Length) (Length, error) {
	if err := between("Acme pitch", pitch, 0.05, 1); err != nil {
		return 0, err
	}
	return pitch.Times(0.3707), nil
}

func acmeClearance(pitch Length) Length {
	if pitch >= (Inch / 10).Times(1-1e-9) {
		return 10 * Thou
	}
	return 5 * Thou
}

// acmePitchDiameter returns the basic pitch diameter of an Acme thread:
//
//	E = D - P/2
//
// Source: basic form, depth half a pitch.
func acmePitchDiameter(nominal, pitch Length) (Length, error) {
	if err := firstError(between("Acme pitch", pitch, 0.05, 1), checkNominal(nominal, pitch)); err != nil {
		return 0, err
	}
	return nominal - pitch.Times(0.5), nil
}

// The formulas of an Acme thread. P is the pitch, 0.05 to 1 in, and D the nominal diameter.
// The tip of the tool is in inches: AcmeTip for 10 threads per inch and coarser,
// AcmeTipFine for finer ones. AcmePitchLine is the basic pitch diameter.
var (
	AcmeTip       = Formula[func(pitch Length) (Length, error)]{"0.3707 x P - 0.0052", AcmeToolFlat}
	AcmeTipFine   = Formula[func(pitch Length) (Length, error)]{"0.3707 x P - 0.0026", AcmeToolFlat}
	AcmePitchLine = Formula[func(nominal, pitch Length) (Length, error)]{"D - P / 2", acmePitchDiameter}
)
