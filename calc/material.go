package calc

import (
	"slices"
	"strings"
)

// Material is a metal: how fast it is turned, how hard it is to cut and to bend.
type Material int

// The metals that most first threads are cut in.
const (
	MildSteel Material = iota
	StainlessSteel
	CastIron
	Brass
	Aluminium
	AlloySteel
)

// MaterialNames are the names in files of the metals of the lessons' table of speeds, in
// their order.
var MaterialNames = []string{MildSteel: "mild-steel", StainlessSteel: "stainless", CastIron: "cast-iron", Brass: "brass", Aluminium: "aluminium"}

// Metals are all metals, as a list offers them.
var Metals = []Material{MildSteel, AlloySteel, StainlessSteel, Brass, Aluminium, CastIron}

// String returns the name of a metal in files; mild-steel for one that is none of these.
func (m Material) String() string {
	switch {
	case m == AlloySteel:
		return "alloy-steel"
	case m < 0 || int(m) >= len(MaterialNames):
		return MaterialNames[MildSteel]
	}
	return MaterialNames[m]
}

// ParseMaterial reads the name of a metal; empty is mild steel.
func ParseMaterial(text string) (Material, error) {
	if text == "" {
		return MildSteel, nil
	}
	var names []string
	for _, m := range Metals {
		if m.String() == text {
			return m, nil
		}
		names = append(names, m.String())
	}
	return MildSteel, &InputError{"material", Quoted(text), "one of " + strings.Join(names, ", ")}
}

// turningSpeeds are the slowest and the fastest turning speed for tools of high-speed steel
// that published tables give for a material, in feet a minute. Every end is one table's;
// testdata/published/speeds.csv has the tables.
var turningSpeeds = [...][2]SurfaceSpeed{
	MildSteel:      {80, 120},
	StainlessSteel: {40, 80},
	CastIron:       {50, 80},
	Brass:          {150, 300},
	Aluminium:      {150, 300},
	AlloySteel:     {60, 90},
}

// TurningSpeeds returns the range of published turning speeds for high-speed steel; zero
// for a material that is none of these.
func (m Material) TurningSpeeds() (low, high SurfaceSpeed) {
	if m < 0 || int(m) >= len(turningSpeeds) {
		return 0, 0
	}
	return turningSpeeds[m][0], turningSpeeds[m][1]
}

// ThreadingSpeed is a usual surface speed for threading a metal with high-speed steel:
// ThreadingShare of the middle of its published turning speeds. That share is common
// practice, no source.
func (m Material) ThreadingSpeed() SurfaceSpeed {
	low, high := m.orSteel().TurningSpeeds()
	return SurfaceSpeed((low + high).InFeet() / 2 * ThreadingShare)
}

// orSteel is the metal, or mild steel where it is none.
func (m Material) orSteel() Material {
	if slices.Contains(Metals, m) {
		return m
	}
	return MildSteel
}

// resists are the cutting force of a chip of 1 mm x 1 mm in N/mm^2, how that falls with
// thickness, and Young's modulus in N/mm^2. testdata/published/forces.csv and moduli.csv have
// the tables. The pairs of steel, alloy steel (42CrMo4) and cast iron (GG 25) are from memory,
// tested against Rohm norm RN 1391 p. 43; the others are those of Iscar's table of materials,
// 2017. Books differ by 10 % and more: an order of magnitude only.
var resists = [...]struct{ force, power, modulus float64 }{
	MildSteel:      {SpecificForce, ThicknessPower, SteelModulus},
	AlloySteel:     {2500, 0.26, SteelModulus},
	StainlessSteel: {2150, 0.20, 195000},
	CastIron:       {1160, 0.26, 92000},
	Brass:          {700, 0.27, 104000},
	Aluminium:      {800, 0.25, 70000},
}

// SpecificForce is the cutting force for a chip of 1 mm x 1 mm, in N/mm^2.
func (m Material) SpecificForce() float64 { return resists[m.orSteel()].force }

// Modulus is Young's modulus, in N/mm^2.
func (m Material) Modulus() float64 { return resists[m.orSteel()].modulus }
