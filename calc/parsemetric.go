package calc

import "fmt"

// metricClasses are the classes that an error offers; the tables have more.
const metricClasses = "4g6g, 6g, 6h, 6H or 6G"

// metricForm is a metric callout: the diameter; behind x the pitch, or the lead and the
// pitch of several starts as ISO 965-1 writes them (Ph3P1.5) or as ASME B1.13M once did
// (L3-P1.5); the class. Only the class minds capitals.
var metricForm = lazily(`^(?i:M) ?(\d{1,3}(?:\.\d{1,2})?)` +
	`(?: ?(?i:X) ?(?:(?i:L|PH) ?(\d{1,2}(?:\.\d{1,3})?) ?-? ?(?i:P) ?)?(\d{1,2}(?:\.\d{1,3})?))?` +
	`(?: ?- ?(\d[A-Za-z](?:\d[A-Za-z])?))?$`)

// metricDesignation reads a metric callout. Without a pitch it is the coarse one, as
// ISO 965-1 has it: M12-6g is M12x1.75-6g.
func metricDesignation(d Designation, text string) (Designation, error) {
	m := metricForm().FindStringSubmatch(text)
	if m == nil {
		return d, fmt.Errorf("not a thread: give %s", designationWant)
	}
	diameter, err := ParseNumber(m[1])
	if err != nil {
		return d, err
	}
	d.Metric, d.Nominal, d.Size = true, Millimetres(diameter), Shortest(diameter, 2)
	if m[3] == "" {
		pitch, ok := MetricCoarsePitch(d.Nominal)
		if !ok {
			return d, fmt.Errorf("the coarse series has no M%s; write the pitch, such as M%sx1", d.Size, d.Size)
		}
		d.Pitch = pitch
	} else {
		pitch, err := ParseNumber(m[3])
		if err != nil {
			return d, err
		}
		d.Pitch = Millimetres(pitch)
	}
	if err := checkMetricSize(d); err != nil {
		return d, err
	}
	if m[2] != "" {
		lead, err := ParseNumber(m[2])
		starts := Millimetres(lead).Over(d.Pitch)
		if err != nil || !isWhole(starts) || starts < 1 || starts > 12 {
			return d, fmt.Errorf("a lead of %s mm is not a whole number of pitches of %s mm", m[2], m[3])
		}
		d.Starts = toInt(Round(starts, 0))
	}
	if _, known := parseMetricClass(m[4]); !known && m[4] != "" {
		return d, fmt.Errorf("class %s: give %s", m[4], metricClasses)
	}
	d.Class = m[4]
	return d, nil
}

// checkMetricSize is checkPitch and checkNominal, which speak of inches, in millimetres.
func checkMetricSize(d Designation) error {
	mm := func(l Length) string { return Shortest(l.Millimetres(), 3) + " mm" }
	if checkPitch(d.Pitch) != nil {
		return &InputError{"pitch", mm(d.Pitch), mm(FinestPitch) + " to " + mm(CoarsestPitch)}
	}
	if checkNominal(d.Nominal, d.Pitch) != nil {
		return &InputError{"nominal diameter", mm(d.Nominal), mm(leastNominal(d.Pitch)) + " to " + mm(LargestNominal)}
	}
	return nil
}
