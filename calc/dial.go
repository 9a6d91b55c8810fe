package calc

// DialReads says what the numbers on a cross-slide dial mean.
type DialReads int

// A dial of 0.001 may move the tool 0.001 or 0.0005.
const (
	ReadsRadius   DialReads = iota // the number is the travel of the slide
	ReadsDiameter                  // the number is what comes off the diameter: twice the travel
)

// PerRadial returns how much the dial moves for one unit of radial depth: 1 or 2.
func (r DialReads) PerRadial() float64 {
	if r == ReadsDiameter {
		return 2
	}
	return 1
}

// dialMove returns the change of the dial that feeds the tool in by a radial
// amount:
//
//	move = h       the dial reads travel (radius)
//	move = 2 h     the dial reads diameter
//
// h is -1 to 1 in. Source: definition of the two ways of marking a dial.
func dialMove(radial Length, reads DialReads) (Length, error) {
	if err := between("depth", radial, -1, 1); err != nil {
		return 0, err
	}
	return radial.Times(reads.PerRadial()), nil
}

// DialReading returns what the dial shows and how many times it has passed its
// zero after moving in from a starting reading:
//
//	reading = (start + infeed) mod turn
//	turns   = (start + infeed) / turn, whole part
//
// turn is one turn of the dial, 0.01 to 1 in; start is 0 up to one turn; infeed
// is -5 to 5 in and may be negative (winding out). Moves must all be made up to
// the number from the same side, or backlash is in the reading.
func DialReading(start, infeed, turn Length) (reading Length, turns int, err error) {
	err = firstError(
		between("one turn of the dial", turn, 0.01, 1),
		between("starting reading", start, 0, turn),
		between("infeed", infeed, -5, 5))
	if err != nil {
		return 0, 0, err
	}
	total := start + infeed
	return total.Remainder(turn), total.Turns(turn), nil
}

// Cut is one pass: how far the slide was fed for it. A spring pass has Feed 0: it
// cuts at the old setting and adds nothing to the dial.
type Cut struct{ Feed Length }

// sumOfCuts returns the feed of all the cuts; spring passes add nothing.
func sumOfCuts(cuts []Cut) Length {
	var sum Length
	for _, c := range cuts {
		sum = sum.Plus(c.Feed)
	}
	return sum
}

// The change of the dial that feeds the tool in by a depth h, -1 to 1 in: on a dial that
// reads diameter, and on one that reads travel.
var (
	MoveOnDiameterDial = Formula[func(radial Length) (Length, error)]{"2 x h",
		func(radial Length) (Length, error) { return dialMove(radial, ReadsDiameter) }}
	MoveOnTravelDial = Formula[func(radial Length) (Length, error)]{"h",
		func(radial Length) (Length, error) { return dialMove(radial, ReadsRadius) }}
)

// FedByCuts is the feed of all the cuts; spring passes add nothing. cuts stands for the
// list of them, with a + between.
var FedByCuts = Formula[func(cuts []Cut) Length]{"cuts", sumOfCuts}

// ReadingPastZero is DialReading: t is the starting reading and the infeed together, k
// the whole turns in it and R one turn of the dial.
var ReadingPastZero = Formula[func(start, infeed, turn Length) (reading Length, turns int, err error)]{"t - k x R", DialReading}
