package calc

import "math"

// Newtons per square millimetre of steel: what a solid bar gives under load.
// Source: the value of Isakov's worked example, Cutting Tool Engineering, July 2019.
const SteelModulus = 206000.0

// SecondMomentRound returns the second moment of area of a solid round bar, in mm^4:
//
//	I = pi d^4 / 64
//
// d is 0.05 to 6 in. Source: E. Isakov, Boring: calculating deflection, 2019.
func SecondMomentRound(diameter Length) (float64, error) {
	if err := between("bar diameter", diameter, 0.05, 6); err != nil {
		return 0, err
	}
	return math.Pi * math.Pow(diameter.Millimetres(), 4) / 64, nil
}

// BarGive returns how far a boring bar gives at its tip:
//
//	y = F L^3 / (3 E I)
//
// force in newtons, 0 to 100000; overhang 0.1 to 60 in. Twice the overhang gives 8
// times as much, twice the diameter a sixteenth. Source: E. Isakov, 2019.
func BarGive(force float64, overhang, diameter Length) (Length, error) {
	i, err := SecondMomentRound(diameter)
	err = firstError(err, inRange("force in newtons", force, 0, 100000), between("overhang", overhang, 0.1, 60))
	if err != nil {
		return 0, err
	}
	return Millimetres(force * math.Pow(overhang.Millimetres(), 3) / (3 * SteelModulus * i)), nil
}

// Cutting force of low-carbon steel, N/mm^2 for a chip of 1 mm x 1 mm, and how it
// falls with thickness. Source: the pair 1780 and 0.17 from memory, tested against
// Rohm norm RN 1391 p. 43. Books differ by 10 %: an order of magnitude only.
const (
	SpecificForce  = 1780.0
	ThicknessPower = 0.17
)

// CuttingForce returns the force on the tool in newtons for a chip of a metal:
//
//	F = kc1.1 b h^(1 - mc)
//
// width b along the edge and thickness h, both 0.00001 to 1 in. Source: O. Kienzle, 1952, as
// handbooks have it; the pairs are those of Material.
func CuttingForce(m Material, width, thickness Length) (float64, error) {
	if err := firstError(between("chip width", width, 0.00001, 1), between("chip thickness", thickness, 0.00001, 1)); err != nil {
		return 0, err
	}
	r := resists[m.orSteel()]
	return r.force * width.Millimetres() * math.Pow(thickness.Millimetres(), 1-r.power), nil
}

// LagRatio returns which share of a commanded cut stays on because bar and tool
// give way:
//
//	r = K_cut / (K_cut + K_bar)
//
// cut is the force per length of depth that the cut needs, bar the stiffness of the
// bar, in the same unit; both from 0, not both 0. After s spring passes r^(s+1) of
// the cut remains (LeftOnAfterSprings).
func LagRatio(cut, bar float64) (float64, error) {
	if err := firstError(inRange("stiffness of the cut", cut, 0, 1e12), inRange("stiffness of the bar", bar, 1e-9, 1e12)); err != nil {
		return 0, err
	}
	return cut / (cut + bar), nil
}

// TimesStiffer is how many times stiffer a bar is at a new overhang: r is the old overhang
// over the new one, both 0.1 to 60 in. Source: from BarGive.
var TimesStiffer = Formula[func(overhang, newOverhang Length) (float64, error)]{"r x r x r", timesStiffer}

func timesStiffer(overhang, newOverhang Length) (float64, error) {
	if err := firstError(between("overhang", overhang, 0.1, 60), between("new overhang", newOverhang, 0.1, 60)); err != nil {
		return 0, err
	}
	return math.Pow(overhang.Over(newOverhang), 3), nil
}
