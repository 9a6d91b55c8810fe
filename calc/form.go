package calc

import "math"

// HeightOfSharpV is the height of the sharp 60-degree triangle for a pitch of 1:
//
//	H = (sqrt(3) / 2) P = 0.866025 P
//
// Source: ASME B1.1 and ISO 68-1, basic profile.
const HeightOfSharpV = 0.86602540378443864676

// VeeFlank is how far each flank of a 60-degree thread leans from square to its axis.
// Source: ASME B1.1, ISO 68-1.
const VeeFlank Angle = 30

// Form names a published height of a 60-degree thread, as a share of the pitch.
// Books differ in which one they print; none of them is the depth for a tool
// whose tip is not as wide as that book assumes (see RadialDepth).
type Form int

// The published single depths.
const (
	UnifiedExternal  Form = iota // 17/24 H = 0.613435 P: rounded root, tool tip about P/6
	AmericanNational             // 3/4 H = 0.649519 P: flats of P/8
	BasicInternal                // 5/8 H = 0.541266 P: inside threads and basic height
	SharpV                       // H = 0.866025 P: no flats at all
)

// Factor returns the radial depth for a pitch of 1:
//
//	17/24 H, 3/4 H, 5/8 H or H, with H = 0.866025
//
// Source: US Navy training manual p. 6-49 (0.61343, 0.64952, 0.54127).
func (f Form) Factor() float64 {
	switch f {
	case AmericanNational:
		return HeightOfSharpV * 3 / 4
	case BasicInternal:
		return HeightOfSharpV * 5 / 8
	case SharpV:
		return HeightOfSharpV
	}
	return HeightOfSharpV * 17 / 24
}

// RadialDepthOfForm returns the single depth of a published form, measured
// straight in from the crest:
//
//	h = factor x P
//
// The pitch is 0.2 mm to 1 in.
func RadialDepthOfForm(pitch Length, f Form) (Length, error) {
	if err := checkPitch(pitch); err != nil {
		return 0, err
	}
	return pitch.Times(f.Factor()), nil
}

// BasicPitchDiameter returns the diameter at which groove and ridge are equally
// wide:
//
//	E = D - 2 x 3/8 H = D - 0.649519 P
//
// D is the nominal diameter, larger than the pitch and at most 12 in.
// Source: ASME B1.1, ISO 68-1.
func BasicPitchDiameter(nominal, pitch Length) (Length, error) {
	return lessHeights(nominal, pitch, 2*3.0/8)
}

// BasicInternalMinor returns the basic bore of an inside thread:
//
//	D1 = D - 2 x 5/8 H = D - 1.082532 P
//
// Source: ASME B1.1, ISO 68-1.
func BasicInternalMinor(nominal, pitch Length) (Length, error) {
	return lessHeights(nominal, pitch, 2*5.0/8)
}

// UNRMinor returns the reference minor diameter of an outside thread with a
// rounded root:
//
//	d3 = D - 2 x 11/16 H = D - 1.190785 P
//
// Source: Machinery's Handbook 31st ed. p. 2010.
func UNRMinor(nominal, pitch Length) (Length, error) {
	return lessHeights(nominal, pitch, 2*11.0/16)
}

// ExternalMinor returns the root diameter of an outside thread cut to 17/24 H:
//
//	d1 = D - 2 x 17/24 H = D - 1.226869 P
func ExternalMinor(nominal, pitch Length) (Length, error) {
	return lessHeights(nominal, pitch, 2*17.0/24)
}

// lessHeights returns the nominal diameter less k sharp-V heights.
func lessHeights(nominal, pitch Length, k float64) (Length, error) {
	if err := firstError(checkPitch(pitch), checkNominal(nominal, pitch)); err != nil {
		return 0, err
	}
	return nominal - pitch.Times(k*HeightOfSharpV), nil
}

// checkNominal wants a diameter on which a thread of this pitch leaves metal.
func checkNominal(d, pitch Length) error {
	return between("nominal diameter", d, leastNominal(pitch), LargestNominal)
}

// leastNominal is the smallest diameter that has metal left under a thread of a pitch.
func leastNominal(pitch Length) Length { return pitch.Times(1.25) }

// FlatOfNose returns the tip flat that cuts as deep a groove as a round nose of
// radius r. The tip of the nose stands r above the sharp point of the flanks:
//
//	f = 2 r tan 30
//
// r is 0 to 0.25 in. Source: geometry of the 60-degree form.
func FlatOfNose(r Length) (Length, error) {
	if err := between("nose radius", r, 0, 0.25); err != nil {
		return 0, err
	}
	return r.Times(2 * math.Sqrt(3) / 3), nil
}

// The formulas of the 60-degree form. P is the pitch and D the nominal diameter.
var (
	// ExternalDepth is the single depth of an outside thread of Unified and metric form.
	ExternalDepth = Formula[func(pitch Length) (Length, error)]{"0.613435 x P",
		func(pitch Length) (Length, error) { return RadialDepthOfForm(pitch, UnifiedExternal) }}

	// PitchDiameter is BasicPitchDiameter.
	PitchDiameter = Formula[func(nominal, pitch Length) (Length, error)]{"D - 0.649519 x P", BasicPitchDiameter}

	// BasicBore is BasicInternalMinor.
	BasicBore = Formula[func(nominal, pitch Length) (Length, error)]{"D - 1.082532 x P", BasicInternalMinor}

	// MinorDiameter is ExternalMinor; h is the depth by ExternalDepth.
	MinorDiameter = Formula[func(nominal, pitch Length) (Length, error)]{"D - 2 x h", ExternalMinor}

	// NationalFlat is the flat of the American National form, on crest, root and tool.
	NationalFlat = Formula[func(pitch Length) (Length, error)]{"P / 8", eighthOfPitch}
)

func eighthOfPitch(pitch Length) (Length, error) {
	if err := checkPitch(pitch); err != nil {
		return 0, err
	}
	return pitch.Times(1.0 / 8), nil
}
