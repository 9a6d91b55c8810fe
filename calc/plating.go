package calc

// ThickestPlating is the thickest plating that the rule of four thicknesses is used for;
// dipped and sprayed coatings do not lie evenly enough.
const ThickestPlating = 5 * Thou

// platingGrowth is how many thicknesses plating adds to the pitch diameter of a
// 60-degree thread. A layer t on a flank moves the pitch line out by t / sin 30, and a
// diameter has two sides.
const platingGrowth = 4

// PitchDiameterGrowth returns what plating adds to the pitch diameter of an external
// thread of 60 degrees, and takes off that of an internal one:
//
//	2 t / sin 30 = 4 t
//
// t is the thickness of an even layer, 0 to 0.005 in. Source: ASME B1.1 section 7.
func PitchDiameterGrowth(thickness Length) (Length, error) {
	if err := between("plating thickness", thickness, 0, ThickestPlating); err != nil {
		return 0, err
	}
	return thickness.Times(platingGrowth), nil
}

// The pitch diameter to cut to before plating, so that it is E after it. E is 0.02 to 12
// in, and t the thickness of the plating.
var (
	// BeforePlating is for an external thread.
	BeforePlating = Formula[func(after, thickness Length) (Length, error)]{"E - 4 x t",
		func(after, thickness Length) (Length, error) { return plated(after, thickness, -1) }}

	// BeforePlatingInside is for an internal thread.
	BeforePlatingInside = Formula[func(after, thickness Length) (Length, error)]{"E + 4 x t",
		func(after, thickness Length) (Length, error) { return plated(after, thickness, 1) }}
)

func plated(after, thickness Length, sign float64) (Length, error) {
	growth, err := PitchDiameterGrowth(thickness)
	if err := firstError(between("pitch diameter", after, 20*Thou, LargestNominal), err); err != nil {
		return 0, err
	}
	return after + growth.Times(sign), nil
}
