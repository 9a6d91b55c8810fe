package calc

// The lead in turns of nut and spindle. l is the lead, 0.2 mm to 12 in, and k a number of
// turns, 0 to 1000.
var (
	// NutTravel is how far a nut goes in so many turns.
	NutTravel = Formula[func(lead Length, turns float64) (Length, error)]{"k x l", nutTravel}

	// DrawOutRoom is how far before a shoulder the tool must begin to be drawn out, where k
	// turns go by meanwhile and it must stay o clear of the shoulder, 0 to 12 in. The last
	// k turns of the thread are incomplete.
	DrawOutRoom = Formula[func(clear, lead Length, turns float64) (Length, error)]{"o + k x l", drawOutRoom}
)

func nutTravel(lead Length, turns float64) (Length, error) {
	if err := firstError(between("lead", lead, FinestPitch, LargestNominal), inRange("turns", turns, 0, 1000)); err != nil {
		return 0, err
	}
	return lead.Times(turns), nil
}

func drawOutRoom(clear, lead Length, turns float64) (Length, error) {
	way, err := nutTravel(lead, turns)
	if err := firstError(between("clearance", clear, 0, LargestNominal), err); err != nil {
		return 0, err
	}
	return clear + way, nil
}
