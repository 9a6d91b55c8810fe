package calc

// exception is a published limit that the formulas do not give.
type exception struct {
	thread string // designation without hand and starts
	set    func(*Limits)
}

// exceptions are the rows of the published tables that differ from the formulas;
// the table governs. Source of each: Unified screw threads, standard series,
// tabulated after ASME B1.1, or the one-page table named in the tests.
var exceptions = []exception{
	{"5/8-11 UNC-2A", func(l *Limits) { setExternalTop(l, 0.0016, 0.6234, 0.6113) }}, // the formula gives allowance 0.0017
	{"1-8 UNC-2A", func(l *Limits) { l.Pitch.Min = 0.9100 }},                         // the formula gives 0.9101
	{"10-24 UNC-2B", func(l *Limits) { l.Minor.Max = 0.156 }},                        // the formula gives 0.155
	{"1-3/4-5 UNC-2B", func(l *Limits) { l.Minor = span(1.568, 1.534) }},             // the formula gives 1.567 and 1.533
	{"1-64 UNC-2A", func(l *Limits) { l.Major.Min = 0.0686 }},                        // the formula gives 0.0687
	{"2-64 UNF-2A", func(l *Limits) { l.Major.Min = 0.0816 }},                        // the formula gives 0.0817
}

// setExternalTop moves the largest sizes of an outside thread with its allowance;
// the tolerances stay.
func setExternalTop(l *Limits, allowance, majorMax, majorMin Length) {
	tolerance := l.Pitch.Max - l.Pitch.Min
	l.Pitch.Max += l.Allowance - allowance
	l.Pitch.Min = l.Pitch.Max - tolerance
	l.Allowance, l.Major = allowance, span(majorMax, majorMin)
}

// except applies the exceptions of a thread.
func except(d Designation, l *Limits) {
	d.Hand, d.Starts = RightHand, 1
	name := d.String()
	for _, e := range exceptions {
		if e.thread == name {
			e.set(l)
		}
	}
}

// toleranceDiameter is the diameter that the tolerance of the pitch diameter is
// worked out with: three sizes of the table carry that of the next primary size.
// Source: the published rows of 15/16-12 and 15/16-20.
func toleranceDiameter(nominal float64) float64 {
	for _, s := range []struct{ size, as float64 }{{0.9375, 1}, {2.375, 2.5}, {5.75, 6}} {
		if Within(nominal, s.size, 1e-6) {
			return s.as
		}
	}
	return nominal
}
