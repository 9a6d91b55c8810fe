package calc

import (
	"fmt"
	"strconv"
)

// metricClass is a tolerance class taken apart: grades of the pitch diameter and of
// the crest diameter, and the position.
type metricClass struct {
	pitch, crest int
	position     byte
}

func parseMetricClass(class string) (metricClass, bool) {
	switch len(class) {
	case 2:
		grade, err := strconv.Atoi(class[:1])
		return metricClass{grade, grade, class[1]}, err == nil
	case 4:
		pitch, err1 := strconv.Atoi(class[:1])
		crest, err2 := strconv.Atoi(class[2:3])
		return metricClass{pitch, crest, class[3]}, err1 == nil && err2 == nil && class[1] == class[3]
	}
	return metricClass{}, false
}

// Factors of the grades on the tolerance of grade 6. Source: ISO 965-1.
var (
	gradeTd2 = map[int]float64{3: 0.5, 4: 0.63, 5: 0.8, 6: 1, 7: 1.25, 8: 1.6, 9: 2}
	gradeTD2 = map[int]float64{4: 0.63, 5: 0.8, 6: 1, 7: 1.25, 8: 1.6}
	gradeTD1 = map[int]float64{4: 0.63, 5: 0.8, 6: 1, 7: 1.25, 8: 1.6}
	gradeTd  = map[int]float64{4: 0.63, 6: 1, 8: 1.6}
)

// metricValue looks a tolerance up, in micrometres.
func metricValue(quantity string, d Designation) (float64, bool) {
	mm, pitch := d.Nominal.Millimetres(), d.Pitch.Millimetres()
	for _, r := range metricTable {
		if r.quantity == quantity && Within(r.pitch, pitch, 1e-6) && (r.to == 0 || mm > r.over && mm <= r.to) {
			return r.value, true
		}
	}
	return 0, false
}

// MetricLimits returns the limits of size of a metric thread from tables of grade 6
// with the factors of the other grades, rounded to a micrometre:
//
//	outside  largest = basic - es, smallest = largest - tolerance
//	inside   smallest = basic + EI, largest = smallest + tolerance
//
// Positions h and H have no deviation, G mirrors g. Classes such as 6g, 6h, 4g6g,
// 6H, 6G. A combination that the table does not have is an error and never a guess.
// Source: ISO 965-1 by the tables named in testdata/published. Tolerances of grades
// other than 6 are within a step of the standard's own rounding.
func MetricLimits(d Designation) (Limits, error) {
	c, ok := parseMetricClass(d.Class)
	if !d.Metric || !ok {
		return Limits{}, &InputError{"class", Quoted(d.Class), "6g, 6h, 4g6g, 6H or 6G for a metric thread"}
	}
	if err := firstError(checkPitch(d.Pitch), checkNominal(d.Nominal, d.Pitch)); err != nil {
		return Limits{}, err
	}
	micron := func(x float64) Length { return Millimetres(Round(x, 0) / 1000) }
	var missing error
	find := func(quantity string, grades map[int]float64, grade int) Length {
		value, ok := metricValue(quantity, d)
		factor, has := grades[grade]
		if !ok || !has {
			missing = fmt.Errorf("%s: no tolerance is at hand for this size and class; take it from ISO 965-1", Quoted(d.String()))
		}
		return micron(value * factor)
	}
	deviation := Length(0)
	switch c.position {
	case 'g', 'G':
		es, ok := metricValue("es", d)
		if !ok {
			missing = fmt.Errorf("%s: no deviation is at hand for this pitch; take it from ISO 965-1", Quoted(d.String()))
		}
		deviation = micron(es) // below 0
	case 'h', 'H':
	default:
		return Limits{}, &InputError{"position", Quoted(string(c.position)), "g or h outside, G or H inside"}
	}
	round := func(l Length) Length { return Millimetres(Round(l.Millimetres(), 3)) }
	pitch := round(d.Nominal - d.Pitch.Times(HeightOfSharpV*3/4))
	minor := round(d.Nominal - d.Pitch.Times(HeightOfSharpV*5/4))
	l := Limits{}
	if side, _ := d.Side(); side == Outside {
		l.Side, l.Allowance = Outside, -deviation
		l.Major = span(d.Nominal+deviation, d.Nominal+deviation-find("Td", gradeTd, c.crest))
		l.Pitch = span(pitch+deviation, pitch+deviation-find("Td2", gradeTd2, c.pitch))
		l.Minor = Span{Max: round(l.Major.Max - d.Pitch.Times(HeightOfSharpV*17/12)), Given: false}
	} else {
		l.Side, l.Allowance = Inside, -deviation
		l.Major = Span{Min: d.Nominal - deviation}
		l.Pitch = span(pitch-deviation+find("TD2", gradeTD2, c.pitch), pitch-deviation)
		l.Minor = span(minor-deviation+find("TD1", gradeTD1, c.crest), minor-deviation)
	}
	if missing != nil {
		return Limits{}, missing
	}
	return l, nil
}
