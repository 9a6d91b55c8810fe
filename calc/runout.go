package calc

// What turns of nut and spindle make along the thread. k is a number of turns, 0 to 1000.
var (
	// NutTravel is how far a nut goes in so many turns. l is the lead, 0.2 mm to 12 in.
	NutTravel = Formula[func(lead Length, turns float64) (Length, error)]{"k x l", nutTravel}

	// DrawOutRoom is how far before a shoulder the tool must begin to be drawn out, where k
	// turns go by meanwhile and it must stay o clear of the shoulder, 0 to 12 in. The last
	// k turns of the thread are incomplete. P is the pitch of a thread of one start.
	DrawOutRoom = Formula[func(clear, pitch Length, turns float64) (Length, error)]{"o + k x P", drawOutRoom}
)

func nutTravel(lead Length, turns float64) (Length, error) {
	if err := firstError(between("lead", lead, FinestPitch, LargestNominal), inRange("turns", turns, 0, 1000)); err != nil {
		return 0, err
	}
	return lead.Times(turns), nil
}

func drawOutRoom(clear, pitch Length, turns float64) (Length, error) {
	way, err := nutTravel(pitch, turns)
	if err := firstError(between("clearance", clear, 0, LargestNominal), err); err != nil {
		return 0, err
	}
	return clear + way, nil
}
