package calc

import "math"

// SpindleSpeed is held in turns per minute.
type SpindleSpeed float64

// RPM returns the speed in turns per minute.
func (s SpindleSpeed) RPM() float64 { return float64(s) }

// SurfaceSpeed is how fast the work runs past the tool, held in feet per minute.
type SurfaceSpeed float64

// FeetPerMinute returns the speed of x feet per minute.
func FeetPerMinute(x float64) SurfaceSpeed { return SurfaceSpeed(x) }

// MetresPerMinute returns the speed of x metres per minute.
func MetresPerMinute(x float64) SurfaceSpeed { return SurfaceSpeed(x * 1000 / MillimetresPerInch / 12) }

// InFeet returns the speed in feet per minute.
func (s SurfaceSpeed) InFeet() float64 { return float64(s) }

// InMetres returns the speed in metres per minute.
func (s SurfaceSpeed) InMetres() float64 { return float64(s) * 12 * MillimetresPerInch / 1000 }

// ThreadingShare is how much of the turning speed is usual for threading: common
// practice, no source. State it wherever it is used.
const ThreadingShare = 0.25

// SpindleSpeedFor returns the spindle speed for a surface speed on a diameter:
//
//	rpm = 12 V / (pi D)        V in feet per minute, D in inches
//	rpm = 1000 V / (pi d)      V in metres per minute, d in millimetres
//
// V is 1 to 2000 ft/min, D 0.01 to 24 in. Source: US War Department TM 1-420, 1942:
// rpm = V / (0.2618 D).
func SpindleSpeedFor(v SurfaceSpeed, diameter Length) (SpindleSpeed, error) {
	if err := firstError(inRange("cutting speed in feet per minute", v.InFeet(), 1, 2000), between("diameter", diameter, 0.01, 24)); err != nil {
		return 0, err
	}
	return SpindleSpeed(v.InFeet() * 12 / (math.Pi * diameter.Inches())), nil
}

func checkSpeed(s SpindleSpeed) error { return inRange("spindle speed in rpm", s.RPM(), 1, 5000) }

func checkLead(lead Length) error { return between("lead", lead, FinestPitch.Times(1-1e-9), 12) }

func checkSeconds(t float64) error { return inRange("time in seconds", t, 0.01, 600) }

// carriageTravel returns how far the carriage goes in a time with the half-nut
// closed:
//
//	travel = rpm / 60 x lead x seconds
func carriageTravel(s SpindleSpeed, lead Length, seconds float64) (Length, error) {
	if err := firstError(checkSpeed(s), checkLead(lead), checkSeconds(seconds)); err != nil {
		return 0, err
	}
	return lead.Times(s.RPM() / 60 * seconds), nil
}

// timeToTravel is TimeForGap:
//
//	seconds = gap / (rpm / 60 x lead)
func timeToTravel(gap Length, s SpindleSpeed, lead Length) (float64, error) {
	if err := firstError(between("gap", gap, 0, 100), checkSpeed(s), checkLead(lead)); err != nil {
		return 0, err
	}
	return gap.Over(lead.Times(s.RPM() / 60)), nil
}

// FastestFor returns the highest spindle speed at which a gap gives a person the
// time:
//
//	rpm = 60 x gap / (lead x seconds)
func FastestFor(gap, lead Length, seconds float64) (SpindleSpeed, error) {
	if err := firstError(between("gap", gap, Thou, 100), checkLead(lead), checkSeconds(seconds)); err != nil {
		return 0, err
	}
	return SpindleSpeed(60 * gap.Over(lead) / seconds), nil
}

// The formulas of SpindleSpeedFor, in turns a minute: V is the cutting speed in feet a
// minute and D the diameter in inches, or V in metres a minute and D in millimetres.
var (
	TurningSpeed   = Formula[func(v SurfaceSpeed, diameter Length) (SpindleSpeed, error)]{"12 x V / (3.14159265 x D)", SpindleSpeedFor}
	TurningSpeedMM = Formula[func(v SurfaceSpeed, diameter Length) (SpindleSpeed, error)]{"1000 x V / (3.14159265 x D)", SpindleSpeedFor}
)

// ThreadingSpeed is the share of the turning speed u that is usual for threading:
// ThreadingShare, common practice, no source.
var ThreadingSpeed = Formula[func(turning SpindleSpeed) SpindleSpeed]{"u / 4",
	func(turning SpindleSpeed) SpindleSpeed { return SpindleSpeed(finite(turning.RPM() * ThreadingShare)) }}

// How far the carriage goes with the half-nut closed. v is the spindle speed, 1 to 5000
// turns a minute, l the lead, 0.01 to 12 in, which of one start is the pitch P, and y the
// time, 0.01 to 600 seconds.
var (
	// CarriageSpeed is a length a second.
	CarriageSpeed = Formula[func(s SpindleSpeed, lead Length) (Length, error)]{"v / 60 x l", carriageSpeed}

	// CarriageSpeedOneStart is a length a second.
	CarriageSpeedOneStart = Formula[func(s SpindleSpeed, pitch Length) (Length, error)]{"v / 60 x P", carriageSpeed}

	// RoomToStop is the way in a time: the room to stop in or to start, and the least width
	// of a relief groove, for the time that a person needs.
	RoomToStop = Formula[func(s SpindleSpeed, pitch Length, seconds float64) (Length, error)]{"v / 60 x P x y", carriageTravel}
)

func carriageSpeed(s SpindleSpeed, lead Length) (Length, error) { return carriageTravel(s, lead, 1) }

// TimeForGap is the seconds that the carriage needs for a gap: g is the gap, 0 to 100 in,
// and j the speed by CarriageSpeed, whose ranges hold here too.
var TimeForGap = Formula[func(gap Length, s SpindleSpeed, lead Length) (float64, error)]{"g / j", timeToTravel}

// FastestSpeed is FastestFor: g is the gap, P the pitch of a thread of one start and y
// the seconds.
var FastestSpeed = Formula[func(gap, pitch Length, seconds float64) (SpindleSpeed, error)]{"60 x g / (P x y)", FastestFor}
