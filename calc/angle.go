package calc

import "math"

// Angle is held in degrees: 29.5 stays 29.5, where radians would turn it into
// 29.500000000000004.
type Angle float64

// Degrees returns the angle of x degrees.
func Degrees(x float64) Angle { return Angle(x) }

// DegreesMinutes returns the angle of d degrees and m minutes.
func DegreesMinutes(d, m float64) Angle { return Angle(d + m/60) }

// Degrees returns the angle as a number of degrees.
func (a Angle) Degrees() float64 { return float64(a) }

func (a Angle) radians() float64 { return float64(a) * math.Pi / 180 }

// Sin returns the sine; 0 for an angle that is NaN or infinite.
func (a Angle) Sin() float64 { return finite(math.Sin(a.radians())) }

// Cos returns the cosine; 0 for an angle that is NaN or infinite.
func (a Angle) Cos() float64 { return finite(math.Cos(a.radians())) }

// Tan returns the tangent; 0 for an angle that is NaN or infinite.
func (a Angle) Tan() float64 { return finite(math.Tan(a.radians())) }

// AngleOfSlope returns the angle whose tangent is rise over run, between -90 and
// 90 degrees; 0 when both are 0.
func AngleOfSlope(rise, run Length) Angle {
	if run < 0 {
		rise, run = -rise, -run
	}
	return Angle(finite(math.Atan2(rise.Inches(), run.Inches()) * 180 / math.Pi))
}
