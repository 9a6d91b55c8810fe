package calc

import (
	"fmt"
	"math"
)

// Span is a largest and a smallest size. Given is false where the standard gives
// none.
type Span struct {
	Max, Min Length
	Given    bool
}

func span(maximum, minimum Length) Span { return Span{maximum, minimum, true} }

// Middle returns the size half-way between the limits: what to aim for.
func (s Span) Middle() Length { return (s.Max + s.Min).Times(0.5) }

// Limits are the limits of size of a thread of one class.
type Limits struct {
	Side      Side
	Allowance Length // outside threads: how far below basic the largest may be
	Major     Span   // outside: both; inside: the least only, in Min
	Pitch     Span
	Minor     Span // inside: both; outside: the reference root in Max
}

// LimitsOf returns the limits of size of a designation with a class:
// UnifiedLimits for inch threads, MetricLimits for metric ones.
func LimitsOf(d Designation) (Limits, error) {
	if d.Class == "" {
		return Limits{}, fmt.Errorf("%s: the class is missing: write one behind it, such as 2A, 2B, 6g or 6H", Quoted(d.String()))
	}
	if d.Metric {
		return MetricLimits(d)
	}
	return UnifiedLimits(d)
}

// sixPlaces rounds an intermediate value as ASME B1.30 has it.
func sixPlaces(x float64) float64 { return Round(x, 6) }

// evenPlaces rounds halves to the even digit. Published tolerances and minor diameters come
// out so: 0.8135 is printed 0.814 for 7/8-14, 2.4385 is printed 2.438 for 2-1/2-14.
func evenPlaces(x float64, places int) float64 {
	scale := math.Pow10(places)
	return math.RoundToEven(Round(x*scale, 5)) / scale
}

func inchPlaces(l Length, places int) Length { return Inches(Round(l.Inches(), places)) }

// pitchTolerance2A is the tolerance of the pitch diameter of class 2A:
//
//	Td2 = 0.0015 (D^(1/3) + LE^(1/2) + 10 P^(2/3))
//
// LE is the length of engagement: D for the coarse, fine, 4-, 6- and 8-thread
// series, 9 P for the others. Source: ASME B1.1, formula for class 2A.
func pitchTolerance2A(d Designation) float64 {
	D, P := toleranceDiameter(d), Round(d.Pitch.Inches(), 8)
	engagement := 9 * P
	if d.Series == UNC || d.Series == UNF || d.Series == UN && d.TPI <= 8 {
		engagement = D
	}
	return 0.0015 * (math.Cbrt(D) + math.Sqrt(engagement) + 10*math.Pow(P, 2.0/3))
}

// Factors of the class on Td2 of class 2A. Source: ASME B1.1.
var classFactor = map[string]float64{"1A": 1.5, "2A": 1, "3A": 0.75, "1B": 1.95, "2B": 1.3, "3B": 0.975}

// UnifiedLimits returns the limits of size of an inch thread by the formulas of
// ASME B1.1 with the rounding that its tables show, corrected by the published exceptions:
//
//	major tolerance   0.060 P^(2/3)        (1A 0.090)
//	allowance         0.3 Td2              (1A and 2A)
//	pitch diameter    Td2 x class factor
//	internal minor    see minorTolerance
//
// Classes 1A to 3B; the nominal diameter 0.06 to 12 in. Where the published table
// differs from the formula, the table governs (see unifiedexceptions.go).
// An error where a wide class on a fine thread of large diameter would put the pitch
// diameter beyond root or crest.
// Source: ASME B1.1; checked row by row against tables named in the tests.
func UnifiedLimits(d Designation) (Limits, error) {
	factor, known := classFactor[d.Class]
	if d.Metric || !known {
		return Limits{}, &InputError{"class", Quoted(d.Class), "1A, 2A, 3A, 1B, 2B or 3B for an inch thread"}
	}
	if err := firstError(checkPitch(d.Pitch), checkNominal(d.Nominal, d.Pitch), between("nominal diameter", d.Nominal, 0.06, LargestNominal)); err != nil {
		return Limits{}, err
	}
	P := Round(d.Pitch.Inches(), 8)
	td2 := sixPlaces(pitchTolerance2A(d))
	pitchTolerance := Inches(evenPlaces(td2*factor, 4)) // rounded once: by way of six places 6-40-3B would come out 0.0001 wider
	basicPitch := inchPlaces(d.Nominal-Inches(sixPlaces(0.64951905*P)), 4)
	l := Limits{}
	if side, _ := d.Side(); side == Outside {
		l.Side = Outside
		majorTolerance := Inches(evenPlaces(sixPlaces(majorFactor(d.Class)*math.Pow(P, 2.0/3)), 4))
		if d.Class != "3A" {
			l.Allowance = Inches(evenPlaces(0.3*td2, 4))
		}
		l.Major.Max = inchPlaces(d.Nominal-l.Allowance, 4)
		l.Major = span(l.Major.Max, l.Major.Max-majorTolerance)
		top := basicPitch - l.Allowance
		l.Pitch = span(top, top-pitchTolerance)
		l.Minor = Span{Max: inchPlaces(l.Major.Max-Inches(sixPlaces(1.19078493*P)), 4), Given: false}
	} else {
		l.Side = Inside
		l.Major = Span{Min: d.Nominal}
		l.Pitch = span(basicPitch+pitchTolerance, basicPitch)
		l.Minor = minorLimits(d)
	}
	except(d, &l)
	if l.Side == Outside && l.Pitch.Min <= l.Minor.Max || l.Side == Inside && l.Pitch.Max >= l.Major.Min {
		return Limits{}, &InputError{"class " + d.Class + " of", Quoted(d.String()), "a finer class or a coarser thread; this tolerance is wider than the flanks are"}
	}
	return l, nil
}

func majorFactor(class string) float64 {
	if class == "1A" {
		return 0.090
	}
	return 0.060
}

// minorLimits returns the limits of the minor diameter of an inside thread. The least
// and the tolerance are each rounded to 0.0001 before they are added: only so do the
// published largest ones come out. Then classes 1B and 2B are rounded to 0.001 from size 6
// up, of class 3B the least alone. Source: ASME B1.1 with the rounding of B1.30.
func minorLimits(d Designation) Span {
	least := Round(sixPlaces(d.Nominal.Inches()-1.08253175*Round(d.Pitch.Inches(), 8)), 4)
	most := Round(least+evenPlaces(sixPlaces(minorTolerance(d)), 4), 4)
	if d.Nominal < 0.138-1e-9 {
		return span(Inches(most), Inches(least))
	}
	if d.Class != "3B" {
		most = evenPlaces(most, 3)
	}
	return span(Inches(most), Inches(evenPlaces(least, 3)))
}

// minorTolerance is the tolerance of the minor diameter of an inside thread:
//
//	1B, 2B, D >= 0.25   0.25 P - 0.40 P^2   (0.15 P coarser than 4 TPI)
//	1B, 2B, D < 0.25    0.05 P^(2/3) + 0.03 P/D - 0.002, at most 0.394 P, at least 0.25 P - 0.40 P^2
//	3B                  the same, at most 0.394 P, at least 0.23 P - 1.5 P^2 (13 TPI and finer) or 0.120 P
//
// Source: ASME B1.1.
func minorTolerance(d Designation) float64 {
	D, P := d.Nominal.Inches(), Round(d.Pitch.Inches(), 8)
	small := 0.05*math.Pow(P, 2.0/3) + 0.03*P/D - 0.002
	if d.Class == "3B" {
		least := 0.120 * P
		if d.TPI >= 13 {
			least = 0.23*P - 1.5*P*P
		}
		return math.Max(least, math.Min(small, 0.394*P))
	}
	usual := 0.25*P - 0.40*P*P
	if d.TPI < 4 {
		usual = 0.15 * P
	}
	if D >= 0.25-1e-9 {
		return usual
	}
	return math.Max(usual, math.Min(small, 0.394*P))
}

// MiddleOfLimits is Span.Middle of the larger limit d2 and the smaller d1.
var MiddleOfLimits = Formula[func(largest, least Length) Length]{"(d2 + d1) / 2",
	func(largest, least Length) Length { return span(largest, least).Middle() }}
