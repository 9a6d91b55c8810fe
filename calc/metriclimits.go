package calc

import (
	"fmt"
	"strconv"
	"strings"
)

// metricClass is a tolerance class taken apart: grades of the pitch diameter and of
// the crest diameter, and the position.
type metricClass struct {
	pitch, crest int
	position     byte // g or h outside, G or H inside
}

func parseMetricClass(class string) (metricClass, bool) {
	c := metricClass{}
	switch {
	case len(class) == 2:
		c = metricClass{int(class[0] - '0'), int(class[0] - '0'), class[1]}
	case len(class) == 4 && class[1] == class[3]:
		c = metricClass{int(class[0] - '0'), int(class[2] - '0'), class[1]}
	}
	switch c.position {
	case 'g', 'h':
		return c, c.pitch >= 3 && c.pitch <= 9 && (c.crest == 4 || c.crest == 6 || c.crest == 8)
	case 'G', 'H':
		return c, c.pitch >= 4 && c.pitch <= 8 && c.crest >= 4 && c.crest <= 8
	}
	return c, false
}

// MetricLimits returns the limits of size of a metric thread from the standard's tables
// of tolerances and deviations:
//
//	outside  largest = basic - es, smallest = largest - tolerance
//	inside   smallest = basic + EI, largest = smallest + tolerance
//
// Positions h and H have no deviation, G is as far above as g is below. Classes are one
// grade and position, such as 6g or 6H, or two, the pitch diameter's first, such as 4g6g.
// Grades outside are 3 to 9 for the pitch diameter and 4, 6, 8 for the major diameter;
// inside they are 4 to 8. Nominal diameters from 1 to 180 mm. What the tables do not have
// is an error that says what they do have, and never a guess.
// Source: ISO 965-1 by the tables named in testdata/published.
func MetricLimits(d Designation) (Limits, error) {
	c, ok := parseMetricClass(d.Class)
	if !d.Metric || !ok {
		return Limits{}, &InputError{"class", Quoted(d.Class), metricClasses + " for a metric thread"}
	}
	if err := firstError(checkPitch(d.Pitch), checkNominal(d.Nominal, d.Pitch)); err != nil {
		return Limits{}, err
	}
	side, _ := d.Side()
	pitchQuantity, crestQuantity := toleranceTd2, toleranceTd
	if side == Inside {
		pitchQuantity, crestQuantity = toleranceTD2, toleranceTD1
	}
	pitchTolerance, err := tolerance(d, pitchQuantity, c.pitch)
	if err != nil {
		return Limits{}, err
	}
	crestTolerance, err := tolerance(d, crestQuantity, c.crest)
	if err != nil {
		return Limits{}, err
	}
	deviation := Length(0)
	if c.position == 'g' || c.position == 'G' {
		if deviation, err = tolerance(d, deviationG, 0); err != nil {
			return Limits{}, err
		}
	}
	round := func(l Length) Length { return Millimetres(Round(l.Millimetres(), 3)) }
	pitch := round(d.Nominal - d.Pitch.Times(HeightOfSharpV*3/4))
	minor := round(d.Nominal - d.Pitch.Times(HeightOfSharpV*5/4))
	if side == Outside {
		l := Limits{Side: Outside, Allowance: deviation}
		l.Major = span(d.Nominal-deviation, d.Nominal-deviation-crestTolerance)
		l.Pitch = span(pitch-deviation, pitch-deviation-pitchTolerance)
		l.Minor = Span{Max: round(l.Major.Max - d.Pitch.Times(HeightOfSharpV*17/12)), Given: false}
		return l, nil
	}
	return Limits{
		Side: Inside, Allowance: deviation, Major: Span{Min: d.Nominal + deviation},
		Pitch: span(pitch+deviation+pitchTolerance, pitch+deviation),
		Minor: span(minor+deviation+crestTolerance, minor+deviation),
	}, nil
}

// tolerance looks a tolerance or a deviation up, or says why there is none.
func tolerance(d Designation, q quantity, grade int) (Length, error) {
	mm, pitch := d.Nominal.Millimetres(), d.Pitch.Millimetres()
	row, ok := metricRowOf(q, mm, pitch)
	if !ok {
		return 0, noRow(d)
	}
	value, ok := row.values[grade]
	if !ok {
		of := map[quantity]string{toleranceTd2: "pitch", toleranceTD2: "pitch", toleranceTd: "major", toleranceTD1: "minor"}[q]
		return 0, fmt.Errorf("%s: for this size and pitch ISO 965-1 gives the %s diameter the grades %s, not %d",
			Quoted(d.String()), of, grades(row), grade)
	}
	return Millimetres(value / 1000), nil
}

// noRow says why the tables have no row for a thread.
func noRow(d Designation) error {
	mm := d.Nominal.Millimetres()
	over, to := 0.0, 0.0
	var here []string
	for _, r := range metricRows() {
		if r.quantity == toleranceTd2 && mm > r.over && mm <= r.to {
			over, to = r.over, r.to
			here = append(here, Shortest(r.pitch, 2))
		}
	}
	if len(here) == 0 {
		return fmt.Errorf("%s: the tolerances at hand are for nominal diameters over 0.99 mm, up to 180 mm; take others from ISO 965-1",
			Quoted(d.String()))
	}
	return fmt.Errorf("%s: over %s up to %s mm ISO 965-1 gives tolerances for pitches of %s mm, not of %s mm",
		Quoted(d.String()), Shortest(over, 2), Shortest(to, 2), listed(here), Shortest(d.Pitch.Millimetres(), 4))
}

func grades(r metricRow) string {
	var all []string
	for g := range 10 {
		if _, ok := r.values[g]; ok {
			all = append(all, strconv.Itoa(g))
		}
	}
	return listed(all)
}

// listed joins words as a sentence does: "4, 5 and 6".
func listed(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}
