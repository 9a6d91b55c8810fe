package calc

// What the read-out of the cross slide shows at full depth. r0 is what it was set to at
// touch-off, 0 to 12 in, and h the depth straight in, 0 to 1 in. It counts down towards the
// axis and up away from it.
var (
	// ReadOutDiameter is for an external thread, the read-out set to diameter.
	ReadOutDiameter = Formula[func(set, depth Length) (Length, error)]{"r0 - 2 x h",
		func(set, depth Length) (Length, error) { return readOut(set, depth, -2) }}

	// ReadOutDiameterInside is for an internal thread, the read-out set to diameter.
	ReadOutDiameterInside = Formula[func(set, depth Length) (Length, error)]{"r0 + 2 x h",
		func(set, depth Length) (Length, error) { return readOut(set, depth, 2) }}

	// ReadOutRadius is for an external thread, the read-out set to radius.
	ReadOutRadius = Formula[func(set, depth Length) (Length, error)]{"r0 - h",
		func(set, depth Length) (Length, error) { return readOut(set, depth, -1) }}

	// ReadOutRadiusInside is for an internal thread, the read-out set to radius.
	ReadOutRadiusInside = Formula[func(set, depth Length) (Length, error)]{"r0 + h",
		func(set, depth Length) (Length, error) { return readOut(set, depth, 1) }}
)

func readOut(set, depth Length, times float64) (Length, error) {
	if err := firstError(between("reading at touch-off", set, 0, LargestNominal), between("depth", depth, 0, Inch)); err != nil {
		return 0, err
	}
	return set + depth.Times(times), nil
}
