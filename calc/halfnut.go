package calc

import "math"

// UnderIndex returns which mark of the dial stands under its index, from 0 up to but
// not including the number of marks, after the lead screw has run on by a length
// under the standing carriage. 2.25 is a quarter of the way from mark 2 to mark 3.
//
//	mark = (run / spacing) mod N
//
// run is -10000 to 10000 in.
func (d ThreadDial) UnderIndex(run Length) (float64, error) {
	spacing, err := d.Spacing()
	if err := firstError(err, between("run of the lead screw", run, -10000, 10000)); err != nil {
		return 0, err
	}
	mark := run.Remainder(spacing.Times(float64(d.Marks))).Over(spacing)
	if near := math.Round(mark); isWhole(mark) {
		mark = math.Mod(near, float64(d.Marks))
	}
	return mark, nil
}

// RunToMark returns how far the lead screw still runs under the standing carriage
// until a mark (0 to N-1) stands under the index; 0 when it stands there now.
func (d ThreadDial) RunToMark(run Length, mark int) (Length, error) {
	at, err := d.UnderIndex(run)
	if err := firstError(err, inRange("mark", float64(mark), 0, float64(d.Marks-1))); err != nil {
		return 0, err
	}
	spacing, _ := d.Spacing() // checked above
	turn := spacing.Times(float64(d.Marks))
	return spacing.Times(float64(mark) - at).Plus(turn).Remainder(turn), nil
}

// RunToNut returns how far the lead screw runs on until a half-nut that is pressed
// falls into its thread: up to the next whole thread of the screw. Just behind one it
// still drops back into that thread, which is a run below 0.
//
//	run on = lead of the screw - run mod lead of the screw
//
// slack is the share of a thread behind which it still drops back, 0 to 0.5.
// Source: the fit of a nut on its screw; the slack is invented.
func RunToNut(run, screwLead Length, slack float64) (Length, error) {
	if err := firstError(between("run of the lead screw", run, -10000, 10000),
		between("lead of the lead screw", screwLead, FinestPitch.Times(1-1e-9), 12), inRange("slack of the half-nut", slack, 0, 0.5)); err != nil {
		return 0, err
	}
	past := run.Remainder(screwLead)
	if past <= screwLead.Times(slack) {
		return -past, nil
	}
	return screwLead - past, nil
}
