package calc

// ThreadsPerInch counts threads along one inch. It need not be whole: 4-1/2 and
// 11-1/2 are standard.
type ThreadsPerInch float64

// The coarsest and the finest thread the project deals with. The range takes in
// every unified and metric size from 0-80 to 6 in and M1 to M180.
const (
	CoarsestPitch  Length = 1                 // 1 TPI
	FinestPitch    Length = 0.2 * Inch / 25.4 // the finest of ISO 261; finer than 100 TPI
	LargestNominal Length = 12
)

// Pitch returns the distance from one thread to the next, measured along the axis:
//
//	P = 1 / n
//
// n is 1 to 100 threads per inch; outside that an error says so.
// Source: the definition in ASME B1.7 (terms).
func (n ThreadsPerInch) Pitch() (Length, error) {
	if err := inRange("threads per inch", float64(n), 1, 100); err != nil {
		return 0, err
	}
	return Inch.Times(1 / float64(n)), nil
}

// Number returns the threads per inch as a plain number.
func (n ThreadsPerInch) Number() float64 { return float64(n) }

// TPI returns how many threads of this pitch stand in an inch:
//
//	n = 1 / P      (P in inches)
//	n = 25.4 / P   (P in millimetres)
//
// The pitch is 0.2 mm to 1 in.
func TPI(pitch Length) (ThreadsPerInch, error) {
	if err := checkPitch(pitch); err != nil {
		return 0, err
	}
	return ThreadsPerInch(Inch.Over(pitch)), nil
}

// Lead returns how far the thread advances in one turn:
//
//	lead = starts x P
//
// The pitch is 0.2 mm to 1 in, starts 1 to 12.
func Lead(pitch Length, starts int) (Length, error) {
	if err := firstError(checkPitch(pitch), inRange("starts", float64(starts), 1, 12)); err != nil {
		return 0, err
	}
	return pitch.Times(float64(starts)), nil
}

// checkPitch has a hair of slack, so that a pitch made from 0.2 mm passes.
func checkPitch(p Length) error {
	if p >= FinestPitch.Times(1-1e-9) && p <= CoarsestPitch.Times(1+1e-9) {
		return nil
	}
	return between("pitch", p, FinestPitch, CoarsestPitch)
}

// pitchOfLead returns the distance between neighbouring grooves of a thread of several
// starts:
//
//	P = lead / starts
//
// The lead is 0.2 mm to 12 in, starts 1 to 12, the pitch 0.2 mm to 1 in.
func pitchOfLead(lead Length, starts int) (Length, error) {
	if err := firstError(checkLead(lead), inRange("starts", float64(starts), 1, 12)); err != nil {
		return 0, err
	}
	pitch := lead.Times(1 / float64(starts))
	return pitch, checkPitch(pitch)
}

// The formulas of pitch, lead and threads per inch n, 1 to 100. P is the pitch, 0.2 mm
// to 1 in, l the lead, 0.2 mm to 12 in, and z the starts, 1 to 12. With MM in the name the pitch
// is in millimetres.
var (
	PitchOfTPI    = Formula[func(n ThreadsPerInch) (Length, error)]{"1 / n", ThreadsPerInch.Pitch}
	PitchOfTPIMM  = Formula[func(n ThreadsPerInch) (Length, error)]{"25.4 / n", ThreadsPerInch.Pitch}
	TPIOfPitchMM  = Formula[func(pitch Length) (ThreadsPerInch, error)]{"25.4 / P", TPI}
	LeadOfStarts  = Formula[func(pitch Length, starts int) (Length, error)]{"z x P", Lead}
	PitchOfStarts = Formula[func(lead Length, starts int) (Length, error)]{"l / z", pitchOfLead}

	// InchesOfMM is Millimetres: P0 is in millimetres, what comes out in inches.
	InchesOfMM = Formula[func(mm float64) Length]{"P0 / 25.4",
		func(mm float64) Length { return Millimetres(finite(mm)) }}
)
