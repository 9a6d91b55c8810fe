package calc

// Infeed says which flanks a pass cuts.
type Infeed int

// Along one flank by the compound, or straight in on both.
const (
	OneFlank Infeed = iota
	BothFlanks
)

// ChipWidth returns the width of the chip at a depth, along the edge of the tool:
//
//	b = h / cos 30 + f       one flank
//	b = 2 h / cos 30 + f     both flanks
//
// h is the depth after the pass, 0 to 1 in; f the tip flat. Source: geometry.
func ChipWidth(radial, flat Length, feed Infeed) (Length, error) {
	side, err := flankLength(radial)
	if err := firstError(err, between("tool flat", flat, 0, 0.25)); err != nil {
		return 0, err
	}
	if feed == BothFlanks {
		side = side.Times(2)
	}
	return side + flat, nil
}

// ChipStraightIn is ChipWidth on both flanks: b is the width on one of them by
// FlankWidth, f the tip flat.
var ChipStraightIn = Formula[func(radial, flat Length) (Length, error)]{"2 x b + f",
	func(radial, flat Length) (Length, error) { return ChipWidth(radial, flat, BothFlanks) }}
