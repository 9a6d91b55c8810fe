package calc

// Length is a distance. It is held in inches, so that a decimal inch given on a
// drawing survives unchanged; a length given in millimetres is exact to one part
// in 10^15 and wants rounding only when it is shown.
type Length float64

// The inch is exactly 25.4 mm (international agreement of 1959).
const (
	Inch Length = 1
	Thou Length = Inch / 1000

	// MillimetresPerInch is exact by definition.
	MillimetresPerInch = 25.4
)

// Inches returns the length x inches.
func Inches(x float64) Length { return Length(x) }

// Millimetres returns the length x millimetres.
func Millimetres(x float64) Length { return Length(x / MillimetresPerInch) }

// Inches returns the length as a number of inches.
func (l Length) Inches() float64 { return float64(l) }

// Millimetres returns the length as a number of millimetres.
func (l Length) Millimetres() float64 { return float64(l) * MillimetresPerInch }

// Times returns k times the length; 0 where that is not a finite number.
func (l Length) Times(k float64) Length { return Length(finite(float64(l) * k)) }

// Over returns how many times m goes into l, and 0 where there is no finite
// answer (m is 0, or either is not a number).
func (l Length) Over(m Length) float64 { return finite(float64(l) / float64(m)) }

// Plus returns the sum of the lengths; 0 where that is not a finite number.
func (l Length) Plus(more ...Length) Length {
	for _, m := range more {
		l += m
	}
	return Length(finite(float64(l)))
}

// Remainder returns what is left of l after whole turns of m have been taken
// off, from 0 up to but not including m. It returns 0 where m is not above 0.
// A remainder within a billionth of a whole turn counts as 0, so that ten
// moves of 0.010 on a 0.100 dial read 0 and not 0.0999999.
func (l Length) Remainder(m Length) Length {
	turns := l.Over(m)
	if m <= 0 {
		return 0
	}
	part := turns - floorNear(turns)
	return m.Times(part)
}

// Turns returns the whole turns of m in l, rounded towards minus infinity.
func (l Length) Turns(m Length) int {
	if m <= 0 {
		return 0
	}
	return toInt(floorNear(l.Over(m)))
}
