package calc

import "math"

// BarStiffness returns the force in newtons that bends a round bar by one millimetre
// at its tip:
//
//	K = 3 E I / L^3
//
// overhang 0.1 to 60 in, diameter 0.05 to 6 in. Source: from BarGive, E. Isakov, 2019.
func BarStiffness(overhang, diameter Length) (float64, error) {
	give, err := BarGive(1, overhang, diameter)
	if err != nil {
		return 0, err
	}
	return 1 / give.Millimetres(), nil
}

// InSeries returns the stiffness of two springs one behind the other:
//
//	1 / K = 1 / K1 + 1 / K2
//
// Both are in newtons per millimetre, above 0 to 1e9.
func InSeries(first, second float64) (float64, error) {
	if err := firstError(inRange("stiffness", first, 1e-6, 1e9), inRange("stiffness", second, 1e-6, 1e9)); err != nil {
		return 0, err
	}
	return 1 / (1/first + 1/second), nil
}

// WidestQuietChip returns the widest chip that does not chatter at any speed:
//
//	b = 2 K z (1 + z) / kc
//
// stiffness K is in newtons per millimetre, 1e-3 to 1e9; damping z is the damping
// ratio of the set-up, 0 to 1. kc is the SpecificForce of the metal. Source: the absolute limit of
// regenerative chatter, known from textbooks on machining (from memory). An order of
// magnitude: no one knows the damping of the lathe in front of them.
func WidestQuietChip(m Material, stiffness, damping float64) (Length, error) {
	if err := firstError(inRange("stiffness", stiffness, 1e-3, 1e9), inRange("damping", damping, 0, 1)); err != nil {
		return 0, err
	}
	return Millimetres(2 * stiffness * damping * (1 + damping) / m.SpecificForce()), nil
}

// CountedWidth returns how much of a chip's width counts towards chatter: all of it
// from a full thickness on, less in proportion below:
//
//	counted = b x min(1, t / full)
//
// width is 0 to 4 in, thickness 0 to 1 in, full 0.0001 to 0.1 in. Source: thin chips
// are taken without chatter where thick ones are not: common practice, no source.
func CountedWidth(width, thickness, full Length) (Length, error) {
	if err := firstError(between("chip width", width, 0, 4), between("chip thickness", thickness, 0, 1), between("full thickness", full, Thou.Times(0.1), 0.1)); err != nil {
		return 0, err
	}
	return width.Times(math.Min(1, thickness.Over(full))), nil
}

// WorkStiffness returns BarStiffness of a bar of a metal that is not steel: as many times less
// as its modulus is. Ranges are those of BarStiffness. Source: E in the formula of BarGive.
func WorkStiffness(m Material, overhang, diameter Length) (float64, error) {
	k, err := BarStiffness(overhang, diameter)
	return k * m.Modulus() / SteelModulus, err
}

// BetweenCentresStiffness returns the force in newtons that bends a round bar held at both
// ends by one millimetre in its middle, where it is the softest:
//
//	K = 48 E I / L^3
//
// which is 16 times that of WorkStiffness. Ranges are those of BarStiffness. Source: a beam on
// two supports, geometry of the same bending.
func BetweenCentresStiffness(m Material, length, diameter Length) (float64, error) {
	k, err := WorkStiffness(m, length, diameter)
	return 16 * k, err
}
