package drawing

import "math"

// cog is a gear of a train.
type cog struct {
	radius float64
	teeth  int
	to     float64 // where the next one lies from it, in radians
	key    string  // its letter; none where another gear hides it
}

const cogTooth = 2.2

// gearTrain shows a simple train and a compound one, from the stud to the lead screw.
func gearTrain(s *sheet) {
	s.paper(112, 62)
	s.number("stud", "A", 32, 0)
	s.number("idler", "i", 60, 0)
	s.number("screw", "B", 48, 0)
	s.mesh(Point{11, 38}, 0, 1, cog{8, 16, -0.5, "A"}, cog{10, 20, 0.4, "i"}, cog{9, 18, 0, "B"})
	s.name(12, 52, "stud")
	s.name(26, 15, "idler")
	s.name(44, 52, "screw")
	s.name(27, 3, "simple")
	// Two gears of the compound train sit on one shaft: the smaller one stands nearer.
	middle, turn := s.mesh(Point{67, 40}, 0, 1, cog{7, 14, -0.5, "a"}, cog{11, 22, 0, ""})
	s.mesh(middle, turn, -1, cog{6, 12, 0.45, "c"}, cog{10, 20, 0, "d"})
	s.leader(Point{66, 23}, middle.away(11, math.Pi+0.5))
	s.name(65, 22, "b")
	s.name(67, 52, "first")
	s.name(94, 52, "last")
	s.name(82, 12, "shaft")
	s.name(82, 3, "compound")
}

// mesh draws gears that run on each other, the later ones first, with arrows for how they
// turn; it returns where the last one is and how it stands.
func (s *sheet) mesh(at Point, turn, way float64, cogs ...cog) (Point, float64) {
	places, turns := []Point{at}, []float64{turn}
	for i := 1; i < len(cogs); i++ {
		last, next := cogs[i-1], cogs[i]
		at = at.away(last.radius+next.radius, last.to)
		// Where they touch, a tooth of one stands in a gap of the other.
		share := (last.to - turn) * float64(last.teeth) / (2 * math.Pi)
		turn = last.to + math.Pi + (share-0.5)*2*math.Pi/float64(next.teeth)
		places, turns = append(places, at), append(turns, turn)
	}
	for i := len(cogs) - 1; i >= 0; i-- {
		s.wheel(Machine, places[i], cogs[i].radius, cogTooth, cogs[i].teeth, turns[i])
		if cogs[i].key == "" { // another one on its shaft will hide its middle
			continue
		}
		s.label(places[i].X, places[i].Y-1, s.word(cogs[i].key))
		sense := way * float64(1-2*(i%2))
		from := up - sense*0.7
		r := cogs[i].radius - 2.6
		s.arc(Outline, Marked, places[i], r, from, from+sense*1.6)
		s.head(places[i].away(r, from+sense*1.6), from+sense*(1.6+up-0.4), Marked)
	}
	return at, turn
}
