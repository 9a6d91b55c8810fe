package calc

import "slices"

// ThreadDial is the dial on the apron that shows when the half-nut may be closed:
// a worm gear of so many teeth runs on the lead screw and turns a face with
// evenly spaced marks.
type ThreadDial struct {
	LeadScrew ThreadsPerInch // threads per inch of the lead screw, 1 to 20
	Teeth     int            // teeth of the worm gear, 8 to 96
	Marks     int            // marks on the face, numbered or not, 1 to 32
}

func (d ThreadDial) check() error {
	return firstError(
		inRange("lead screw threads per inch", d.LeadScrew.Number(), 1, 20),
		inRange("thread-dial gear teeth", float64(d.Teeth), 8, 96),
		inRange("thread-dial marks", float64(d.Marks), 1, 32))
}

// Spacing returns the carriage travel from one mark to the next:
//
//	spacing = T / (N L)
//
// Source: F. D. Jones, Turning and Boring, 1914 (a 24-tooth wheel on a 6 TPI
// screw turns once in 4 in).
func (d ThreadDial) Spacing() (Length, error) {
	if err := d.check(); err != nil {
		return 0, err
	}
	return Inch.Times(float64(d.Teeth) / (float64(d.Marks) * d.LeadScrew.Number())), nil
}

// ThreadsBetween returns how many threads of the given lead pass the tool while
// the dial goes from the first cut's mark to the k-th mark after it:
//
//	T k / (N L) / lead
//
// A whole number means that the tool falls into the same groove.
func (d ThreadDial) ThreadsBetween(lead Length, k int) (float64, error) {
	spacing, err := d.Spacing()
	if err != nil {
		return 0, err
	}
	if err := between("lead", lead, FinestPitch.Times(1-1e-9), 12); err != nil {
		return 0, err
	}
	return spacing.Times(float64(clamp(k, -1000, 1000))).Over(lead), nil
}

// SafeMarks returns the marks that put the tool back in its groove, counted from
// the mark of the first cut (0) round the face (1, 2, ... N-1):
//
//	mark k is safe when T k / (N L) / lead is a whole number,
//	and so is a whole turn of the dial, T / L / lead
//
// The second condition is there because a mark comes round again: where a turn of
// the dial is not a whole number of leads (a metric thread on an inch lead screw)
// not even the first cut's own mark is safe, and the result is empty.
// The lead, not the pitch, counts for several starts. There is no rule to
// remember: the same thread has other lines on another dial.
// Source: the geometry of the drive; checked against F. D. Jones, 1914.
func (d ThreadDial) SafeMarks(lead Length) ([]int, error) {
	turn, err := d.ThreadsBetween(lead, d.Marks)
	if err != nil || !isWhole(turn) {
		return nil, err
	}
	var safe []int
	for k := range d.Marks {
		if threads, _ := d.ThreadsBetween(lead, k); isWhole(threads) {
			safe = append(safe, k)
		}
	}
	return safe, nil
}

// OtherStarts returns the marks that put the tool into another start of a thread than the
// one that was cut on the first cut's mark (0), counted from it as in SafeMarks:
//
//	mark k is one where T k / (N L) / pitch is a whole number,
//	and T k / (N L) / lead is not
//
// Empty where a mark means another groove each time it comes round, because a turn of the
// dial is no whole number of leads, and where every mark that meets a groove meets the same
// one. starts is 1 to 12, pitch is that from groove to groove.
// Source: the geometry of the drive; TM 1-420, 1940, names the dial as a way to the next start.
func (d ThreadDial) OtherStarts(pitch Length, starts int) ([]int, error) {
	if err := inRange("starts", float64(starts), 1, 12); err != nil {
		return nil, err
	}
	same, err := d.SafeMarks(pitch.Times(float64(starts)))
	if err != nil || len(same) == 0 {
		return nil, err
	}
	grooves, err := d.SafeMarks(pitch)
	if err != nil {
		return nil, err
	}
	return slices.DeleteFunc(grooves, func(k int) bool { return slices.Contains(same, k) }), nil
}

// AnyMoment reports whether the half-nut may be closed without looking at the
// dial: every thread of the lead screw is also a whole number of threads.
//
//	(1/L) / lead is whole
//
// Source: F. D. Jones, Turning and Boring, 1914.
func (d ThreadDial) AnyMoment(lead Length) (bool, error) {
	if _, err := d.ThreadsBetween(lead, 0); err != nil {
		return false, err
	}
	return AnyMoment(Inch.Times(1/d.LeadScrew.Number()), lead), nil
}

// AnyMoment is ThreadDial.AnyMoment for a lead screw of which only its lead is known; both
// leads above 0.
//
//	screw / lead is whole
func AnyMoment(screw, lead Length) bool {
	return lead > 0 && screw > lead.Times(0.5) && isWhole(screw.Over(lead))
}

// The formulas of the way from mark to mark. T is the teeth of the gear, M the marks on
// the face and N the lead screw: its threads per inch, or its pitch in millimetres where
// MM stands in the name.
var (
	MarkSpacing   = Formula[func(d ThreadDial) (Length, error)]{"T / (M x N)", ThreadDial.Spacing}
	MarkSpacingMM = Formula[func(d ThreadDial) (Length, error)]{"T x N / M", ThreadDial.Spacing}
)

// The formulas of ThreadsBetween: from one mark to the next, and over a whole turn. u is
// the way by MarkSpacing, in inches with n threads per inch, P the lead, M the marks and
// y the threads from one mark to the next.
var (
	ThreadsPerMark        = Formula[func(d ThreadDial, lead Length) (float64, error)]{"u x n", threadsPerMark}
	ThreadsPerMarkByPitch = Formula[func(d ThreadDial, lead Length) (float64, error)]{"u / P", threadsPerMark}
	ThreadsPerTurn        = Formula[func(d ThreadDial, lead Length) (float64, error)]{"M x y",
		func(d ThreadDial, lead Length) (float64, error) { return d.ThreadsBetween(lead, d.Marks) }}
)

func threadsPerMark(d ThreadDial, lead Length) (float64, error) { return d.ThreadsBetween(lead, 1) }
