package calc

import "math"

// acmeTolerance is the tolerance of the pitch diameter of an Acme thread by its class: the
// larger the diameter and the coarser the pitch, the more.
//
//	2G    0.006 sqrt(D) + 0.030 sqrt(P)
//	3G    0.0028 sqrt(D) + 0.014 sqrt(P)
//	4G    0.002 sqrt(D) + 0.010 sqrt(P)
//
// in inches, for both sides. Source: ASME B1.5; the three pairs are from memory, that of 2G is
// tested against a published table.
var acmeTolerance = map[string]struct{ diameter, pitch, allowance float64 }{
	"2G": {0.006, 0.030, 0.008}, "3G": {0.0028, 0.014, 0.006}, "4G": {0.002, 0.010, 0.004},
}

// AcmeLimits returns the limits of size of a general purpose Acme thread of one class:
//
//	screw   major D to D - 0.05 P (at least 0.005 less); pitch diameter D - P/2 less the
//	        allowance, down by the tolerance; minor D - P - 2 c, down by 1.5 tolerances
//	nut     minor D - P to 0.05 P more (at least 0.005); pitch diameter D - P/2, up by the
//	        tolerance; major at least D + 2 c
//
// c is the clearance of AcmeDepth. Classes are 2G, 3G and 4G; no class is 2G, the usual one.
// At a few sizes the standard's table differs by some ten-thousandths: for a part the table
// counts. Source: ASME B1.5, as tables of its limits show it.
func AcmeLimits(d AcmeDesignation, side Side) (Limits, error) {
	class := d.Class
	if class == "" {
		class = "2G"
	}
	t, ok := acmeTolerance[class]
	if !ok {
		return Limits{}, &InputError{"class", Quoted(d.Class), "2G, 3G or 4G; a centralizing thread has other limits"}
	}
	if err := firstError(between("Acme pitch", d.Pitch, 0.05, 1), checkNominal(d.Nominal, d.Pitch), between("nominal diameter", d.Nominal, 0.1, 5)); err != nil {
		return Limits{}, err
	}
	root := math.Sqrt(d.Nominal.Inches())
	tolerance := Inches(Round(Round(t.diameter*root, 4)+Round(t.pitch*math.Sqrt(d.Pitch.Inches()), 4), 4))
	crest := inchPlaces(max(d.Pitch.Times(0.05), 5*Thou), 4)
	clear := acmeClearance(d.Pitch).Times(2)
	l := Limits{Side: side}
	basic, bore := inchPlaces(d.Nominal-d.Pitch.Times(0.5), 4), inchPlaces(d.Nominal-d.Pitch, 4)
	if side == Inside {
		l.Minor, l.Pitch = span(bore+crest, bore), span(basic+tolerance, basic)
		l.Major = Span{Min: d.Nominal + clear}
		return l, nil
	}
	l.Allowance = Inches(Round(t.allowance*root, 4))
	l.Major = span(d.Nominal, d.Nominal-crest)
	l.Pitch = span(basic-l.Allowance, basic-l.Allowance-tolerance)
	l.Minor = span(bore-clear, bore-clear-inchPlaces(tolerance.Times(1.5), 4))
	return l, nil
}
