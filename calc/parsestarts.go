package calc

import (
	"fmt"
	"math"
)

// pitchAndLead reads the pitch and the lead of an inch callout of several starts, as in
// .750-.0625P-.1875L UNS-2A: both in inches, as drawings round them to four places. They
// are the threads per inch and the starts.
func pitchAndLead(pitch, lead string) (ThreadsPerInch, int, error) {
	p, err := ParseNumber(pitch)
	if err != nil {
		return 0, 0, err
	}
	l, err := ParseNumber(lead)
	if err != nil {
		return 0, 0, err
	}
	if err := checkPitch(Inches(p)); err != nil {
		return 0, 0, err
	}
	const rounding = 0.00005 + 1e-9
	n := Round(1/p, 4)
	if half := Round(2/p, 0) / 2; math.Abs(1/half-p) <= rounding {
		n = half
	}
	starts := math.Round(l * n)
	if starts < 1 || starts > 12 || math.Abs(l-starts/n) > rounding*math.Max(1, starts) {
		return 0, 0, fmt.Errorf("a lead of %s in is not a whole number of pitches of %s in", lead, pitch)
	}
	return ThreadsPerInch(n), toInt(starts), nil
}
