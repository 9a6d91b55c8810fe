package calc

// exception is a published limit that the formulas do not give.
type exception struct {
	thread string // designation without hand and starts
	source string
	set    func(*Limits)
}

const (
	standardSeries = "Unified screw threads, standard series, tabulated after ASME B1.1"
	libraryTable   = "FreeCAD, Mod/CAM Data/Threads, after ASME B1.1"
)

// exceptions are the rows of the published tables that differ from the formulas; the
// table governs. The rows stand in testdata/published/unified-limits.csv.
var exceptions = []exception{
	// Td2 is 0.005501 and 0.3 of it 0.00165: the formula gives allowance 0.0017.
	{"5/8-11 UNC-1A", standardSeries, func(l *Limits) { setExternalTop(l, 0.0016, 0.6234, 0.6052) }},
	{"5/8-11 UNC-2A", standardSeries, func(l *Limits) { setExternalTop(l, 0.0016, 0.6234, 0.6113) }},
	// 0.975 of Td2 is 0.002750: the formula gives tolerance 0.0028 and 0.1205.
	{"6-32 UNC-3B", libraryTable, func(l *Limits) { l.Pitch.Max = 0.1204 }},
	// The formula gives 0.8792, with the tolerance of 15/16 and with that of 1.
	{"15/16-12 UN-3A", standardSeries, func(l *Limits) { l.Pitch.Min = 0.8793 }},
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

// toleranceDiameter is the diameter in inches that the tolerance of the pitch diameter is
// worked out with: three sizes of the table carry that of the next primary size, and 9/16
// outside the coarse and fine series that of 1/2. Source: the published rows of 15/16-12,
// 15/16-20, 2-3/8-20, 5-3/4-12 and of 9/16-20, 9/16-24, 9/16-32.
func toleranceDiameter(d Designation) float64 {
	nominal := d.Nominal.Inches()
	for _, s := range []struct{ size, as float64 }{{0.9375, 1}, {2.375, 2.5}, {5.75, 6}} {
		if Within(nominal, s.size, 1e-6) {
			return s.as
		}
	}
	if Within(nominal, 0.5625, 1e-6) && (d.Series == UN || d.Series == UNEF) {
		return 0.5
	}
	return nominal
}
