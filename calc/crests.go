package calc

// pitchFromCrests returns the pitch of a thread whose crests have been counted along a
// rule. There is one thread less than there are crests:
//
//	P = span / (crests - 1)
//
// span reaches from the first crest to the last, 0.01 to 100 in; crests are 2 to 1000,
// the pitch comes to 0.2 mm to 1 in. Source: counting.
func pitchFromCrests(span Length, crests int) (Length, error) {
	if err := firstError(between("span of the crests", span, FinestPitch.Times(1-1e-9), 100), inRange("crests", float64(crests), 2, 1000)); err != nil {
		return 0, err
	}
	pitch := span.Times(1 / float64(crests-1))
	return pitch, checkPitch(pitch)
}

// linesOver returns how many lines of a scratch pass stand over a length that begins and
// ends on one:
//
//	lines = length / P + 1
//
// length is 0 to 100 in, the pitch 0.2 mm to 1 in. It is whole where a line does stand at
// both ends. Source: counting.
func linesOver(length, pitch Length) (float64, error) {
	if err := firstError(between("length", length, 0, 100), checkPitch(pitch)); err != nil {
		return 0, err
	}
	return length.Over(pitch) + 1, nil
}

// The formulas of counting along a rule: L is the length between the first and the last,
// 0.01 to 100 in of crests and 0 to 100 in of lines, c the crests, 2 to 1000, n the threads
// per inch and P the pitch, 0.2 mm to 1 in. With MM in the name L is in millimetres; beside n
// it is otherwise in inches. Lines are those of a scratch pass over a length that begins
// and ends on one: their number is whole where a line does stand at both ends.
var (
	PitchOfCrests       = Formula[func(span Length, crests int) (Length, error)]{"L / (c - 1)", pitchFromCrests}
	TPIOfCrests         = Formula[func(span Length, crests int) (ThreadsPerInch, error)]{"(c - 1) / L", tpiFromCrests}
	TPIOfCrestsMM       = Formula[func(span Length, crests int) (ThreadsPerInch, error)]{"25.4 x (c - 1) / L", tpiFromCrests}
	ScratchLines        = Formula[func(length, pitch Length) (float64, error)]{"n x L + 1", linesOver}
	ScratchLinesByPitch = Formula[func(length, pitch Length) (float64, error)]{"L / P + 1", linesOver}
)

func tpiFromCrests(span Length, crests int) (ThreadsPerInch, error) {
	pitch, err := pitchFromCrests(span, crests)
	if err != nil {
		return 0, err
	}
	return TPI(pitch)
}
