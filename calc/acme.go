package calc

import "math"

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

// acmeNutBore returns the basic bore of the nut of a general purpose Acme thread, the
// smallest its minor diameter may be:
//
//	D1 = D - P
//
// Source: basic form, depth half a pitch on each side; that ASME B1.5 takes it for general
// purpose nuts is from memory.
func acmeNutBore(nominal, pitch Length) (Length, error) {
	if err := firstError(between("Acme pitch", pitch, 0.05, 1), checkNominal(nominal, pitch)); err != nil {
		return 0, err
	}
	return nominal - pitch, nil
}

// acmeAllowance returns how far the pitch diameter of an Acme screw of a class stays below
// the basic one, in inches:
//
//	2G    0.008 sqrt(D)
//	3G    0.006 sqrt(D)
//	4G    0.004 sqrt(D)
//
// nominal is 0.1 to 5 in. The standard's table gives one value for a range of sizes, worked
// out at its middle: at most sizes it is this one, but not at 5/16, 7/16, 1-3/4 and 3.
// Source: ASME B1.5-1988, as Machinery's Handbook 27th ed. prints its table (p. 1841).
func acmeAllowance(factor float64) func(nominal Length) (Length, error) {
	return func(nominal Length) (Length, error) {
		if err := between("nominal diameter", nominal, 0.1, 5); err != nil {
			return 0, err
		}
		return Inches(factor * math.Sqrt(nominal.Inches())), nil
	}
}

// The formulas of an Acme thread. P is the pitch, 0.05 to 1 in, and D the nominal diameter.
// The tip of the tool and the depth are in inches: AcmeTip and AcmeFullDepth for 10 threads
// per inch and coarser, AcmeTipFine and AcmeFullDepthFine for finer ones. AcmePitchLine is
// the basic pitch diameter, AcmeNutBore the basic bore. The allowances of the three classes
// take D in inches.
var (
	AcmeFullDepth     = Formula[func(pitch Length) (Length, error)]{"P / 2 + 0.010", AcmeDepth}
	AcmeFullDepthFine = Formula[func(pitch Length) (Length, error)]{"P / 2 + 0.005", AcmeDepth}
	AcmeNutBore       = Formula[func(nominal, pitch Length) (Length, error)]{"D - P", acmeNutBore}
	AcmeAllowance2G   = Formula[func(nominal Length) (Length, error)]{"0.008 x sqrt(D)", acmeAllowance(0.008)}
	AcmeAllowance3G   = Formula[func(nominal Length) (Length, error)]{"0.006 x sqrt(D)", acmeAllowance(0.006)}
	AcmeAllowance4G   = Formula[func(nominal Length) (Length, error)]{"0.004 x sqrt(D)", acmeAllowance(0.004)}

	AcmeTip       = Formula[func(pitch Length) (Length, error)]{"0.3707 x P - 0.0052", AcmeToolFlat}
	AcmeTipFine   = Formula[func(pitch Length) (Length, error)]{"0.3707 x P - 0.0026", AcmeToolFlat}
	AcmePitchLine = Formula[func(nominal, pitch Length) (Length, error)]{"D - P / 2", acmePitchDiameter}
)
