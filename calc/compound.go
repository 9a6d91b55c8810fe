package calc

// CompoundZero says where the scale of a lathe's compound reads 0.
type CompoundZero int

// Both are made; the same setting reads differently on them.
const (
	ZeroAcross CompoundZero = iota // 0 when the compound stands along the cross slide
	ZeroAlong                      // 0 when the compound stands along the bed
)

// The largest angle from the cross-slide line for which an infeed is offered.
// Beyond it the slide hardly moves the tool in.
const largestCompoundAngle Angle = 60

func checkCompoundAngle(a Angle) error {
	return inRange("compound angle from the cross-slide line", a.Degrees(), 0, largestCompoundAngle.Degrees())
}

// CompoundTravel returns how far the compound is fed for a radial depth h when it
// stands at the angle a from the cross-slide line:
//
//	c = h / cos a
//
// h is 0 to 1 in, a is 0 to 60 degrees; 29, 29.5 and 30 are all published for a
// 60-degree thread and differ by less than a dial division on common pitches.
// Source: a right triangle; table of compound feeds at 29 degrees in the tests.
func CompoundTravel(radial Length, a Angle) (Length, error) {
	if err := firstError(between("depth", radial, 0, 1), checkCompoundAngle(a)); err != nil {
		return 0, err
	}
	return radial.Times(1 / a.Cos()), nil
}

// RadialOfCompound returns the radial depth that a compound travel gives:
//
//	h = c cos a
//
// c is 0 to 2 in, a is 0 to 60 degrees.
func RadialOfCompound(travel Length, a Angle) (Length, error) {
	if err := firstError(between("compound travel", travel, 0, 2), checkCompoundAngle(a)); err != nil {
		return 0, err
	}
	return travel.Times(a.Cos()), nil
}

// sidewaysShift is ShiftForDepth.
func sidewaysShift(radial Length, a Angle) (Length, error) {
	if err := firstError(between("depth", radial, 0, 1), checkCompoundAngle(a)); err != nil {
		return 0, err
	}
	return radial.Times(a.Tan()), nil
}

// CompoundScaleReading returns what the compound's scale shows when the slide
// stands at the angle a from the cross-slide line:
//
//	reading = a        scale zero across the bed
//	reading = 90 - a   scale zero along the bed
//
// a is 0 to 90 degrees. From a reading it gives the angle back.
func CompoundScaleReading(a Angle, zero CompoundZero) (Angle, error) {
	if err := inRange("compound angle from the cross-slide line", a.Degrees(), 0, 90); err != nil {
		return 0, err
	}
	if zero == ZeroAlong {
		return 90 - a, nil
	}
	return a, nil
}

// The formulas of the compound at the angle a from the cross-slide line, 0 to 60 degrees:
// its travel for a depth h, the depth of a travel g, how far the tool has moved along the
// bed by the time it is h deep, what a scale with its zero along the bed reads, and the
// angle behind its reading s. h is 0 to 1 in, g 0 to 2 in; for a scale a is 0 to 90
// degrees.
var (
	TravelForDepth = Formula[func(radial Length, a Angle) (Length, error)]{"h / cos(a)", CompoundTravel}
	DepthOfTravel  = Formula[func(travel Length, a Angle) (Length, error)]{"g x cos(a)", RadialOfCompound}
	ShiftForDepth  = Formula[func(radial Length, a Angle) (Length, error)]{"h x tan(a)", sidewaysShift}
	ScaleAlongBed  = Formula[func(a Angle) (Angle, error)]{"90 - a", scaleAlongBed}
	AngleOfScale   = Formula[func(reading Angle) (Angle, error)]{"90 - s", scaleAlongBed}
)

func scaleAlongBed(a Angle) (Angle, error) { return CompoundScaleReading(a, ZeroAlong) }
