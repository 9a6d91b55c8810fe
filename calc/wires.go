package calc

import "math"

// Wires are the wire sizes for measuring a 60-degree thread over three wires.
type Wires struct{ Best, Least, Largest Length }

// WiresFor returns the best wire, which touches at the pitch line, and the least
// and largest that can be used:
//
//	best 0.57735 P, least 0.56 P, largest 0.90 P
//
// Source: US Navy training manual, three-wire section.
func WiresFor(pitch Length) (Wires, error) {
	if err := checkPitch(pitch); err != nil {
		return Wires{}, err
	}
	return Wires{pitch.Times(1 / math.Sqrt(3)), pitch.Times(0.56), pitch.Times(0.90)}, nil
}

func checkWire(wire, pitch Length) error {
	w, err := WiresFor(pitch)
	if err != nil {
		return err
	}
	slack := Inch / 10000
	return between("wire", wire, w.Least-slack, w.Largest+slack)
}

// OverWires returns the reading over three wires for a pitch diameter:
//
//	M = E - 0.866025 P + 3 W
//
// E is the pitch diameter wanted, W 0.56 to 0.90 P. No correction for the lead
// angle: see WireLeadCorrection. Source: Machinery's Handbook 31st ed. p. 2130;
// US Navy training manual.
func OverWires(pitchDiameter, wire, pitch Length) (Length, error) {
	if err := firstError(checkWire(wire, pitch), between("pitch diameter", pitchDiameter, Thou, LargestNominal)); err != nil {
		return 0, err
	}
	return pitchDiameter - pitch.Times(HeightOfSharpV) + wire.Times(3), nil
}

// PitchDiameterFromWires returns the pitch diameter behind a reading over wires:
//
//	E = M + 0.866025 P - 3 W
func PitchDiameterFromWires(reading, wire, pitch Length) (Length, error) {
	if err := firstError(checkWire(wire, pitch), between("reading over wires", reading, Thou, LargestNominal+1)); err != nil {
		return 0, err
	}
	return reading + pitch.Times(HeightOfSharpV) - wire.Times(3), nil
}

// WireLeadCorrection returns how much more the wires stand out because the groove is
// wound on a cylinder, to add to the reading:
//
//	c = W cos a cot a tan^2(lead angle) / 2,  a = 30 degrees
//
// leadAngle is 0 to 20 degrees. Source: the usual approximation, known from
// handbooks (from memory); tested against an optimisation of a tilting wire, of
// which it misses a fifth at most.
func WireLeadCorrection(wire Length, leadAngle Angle) (Length, error) {
	if err := firstError(between("wire", wire, 0, 1), inRange("lead angle", leadAngle.Degrees(), 0, 20)); err != nil {
		return 0, err
	}
	const flank Angle = 30
	tan := leadAngle.Tan()
	return wire.Times(flank.Cos() / flank.Tan() * tan * tan / 2), nil
}

// LeadAngle returns the angle of the thread at its pitch diameter:
//
//	A = atan(lead / (pi E))
//
// Source: geometry; Machinery's Handbook 27th ed. p. 1763 (1-8: 2 deg 29 min).
func LeadAngle(lead, pitchDiameter Length) (Angle, error) {
	err := firstError(between("lead", lead, FinestPitch.Times(1-1e-9), LargestNominal), between("pitch diameter", pitchDiameter, Thou, LargestNominal))
	if err != nil {
		return 0, err
	}
	return AngleOfSlope(lead, pitchDiameter.Times(math.Pi)), nil
}

// SideClearance returns the clearance to grind on a flank of the tool so that the
// wanted running clearance is left:
//
//	leading = c + A,  trailing = c - A
//
// The leading side is the one that goes first: the left for a right-hand thread
// cut towards the headstock. c is 0 to 15 degrees, A 0 to 30 degrees. The
// trailing figure may be below 0: that side is then cleared by the lead alone.
func SideClearance(running, leadAngle Angle) (leading, trailing Angle, err error) {
	err = firstError(inRange("running clearance", running.Degrees(), 0, 15), inRange("lead angle", leadAngle.Degrees(), 0, 30))
	if err != nil {
		return 0, 0, err
	}
	return running + leadAngle, running - leadAngle, nil
}

// The formulas of three wires: the best one, the reading M over wires W for a pitch
// diameter E, and the pitch diameter behind a reading. P is the pitch.
var (
	BestWire = Formula[func(pitch Length) (Length, error)]{"0.577350 x P",
		func(pitch Length) (Length, error) {
			w, err := WiresFor(pitch)
			return w.Best, err
		}}
	ReadingOverWires  = Formula[func(pitchDiameter, wire, pitch Length) (Length, error)]{"E + 3 x W - 0.866025 x P", OverWires}
	DiameterOverWires = Formula[func(reading, wire, pitch Length) (Length, error)]{"M - 3 x W + 0.866025 x P", PitchDiameterFromWires}
)

// ThreadSlope is LeadAngle: l is the lead and E the pitch diameter.
var ThreadSlope = Formula[func(lead, pitchDiameter Length) (Angle, error)]{"atan(l / (3.14159265 x E))", LeadAngle}

// LeadingClearance is SideClearance of the leading side: c is the running clearance and A
// the lead angle.
var LeadingClearance = Formula[func(running, leadAngle Angle) (Angle, error)]{"c + A",
	func(running, leadAngle Angle) (Angle, error) {
		leading, _, err := SideClearance(running, leadAngle)
		return leading, err
	}}
