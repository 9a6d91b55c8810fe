package calc

import (
	"math"
	"slices"
	"strconv"
	"strings"
)

// Train is a set of change gears. Drivers sit on the spindle's side: the stud gear
// first. Driven[i] is turned by Drivers[i]. An idler between two gears changes the
// direction and not the ratio, so it is not listed.
type Train struct {
	Drivers, Driven []int
	PPM             float64 // error of the lead in parts per million; 0 when exact
}

// Exact reports whether the train cuts just the lead that was wanted.
func (t Train) Exact() bool { return t.PPM == 0 }

// String writes the pairs of a train, driver over driven: 20/40 x 50/100.
func (t Train) String() string {
	pairs := make([]string, 0, len(t.Drivers))
	for i, driver := range t.Drivers {
		pairs = append(pairs, strconv.Itoa(driver)+"/"+strconv.Itoa(t.Driven[i]))
	}
	return strings.Join(pairs, " x ")
}

// ErrorOver returns how far the thread is off after a length of it:
//
//	error = length x ppm / 1000000
func (t Train) ErrorOver(length Length) Length { return length.Times(t.PPM / 1e6) }

// GearRatio returns the ratio driver / driven that cuts a lead with a lead screw:
//
//	ratio = lead / lead of the screw
//
// That is L / n for threads per inch on an inch lead screw, 5 P L / 127 for P
// millimetres on an inch lead screw, with the stud turning at spindle speed.
// Both leads are 0.01 to 12 in. Source: F. D. Jones, Turning and Boring, 1914.
func GearRatio(lead, screwLead Length) (float64, error) {
	low := FinestPitch.Times(1 - 1e-9)
	if err := firstError(between("lead", lead, low, 12), between("lead of the lead screw", screwLead, low, 12)); err != nil {
		return 0, err
	}
	return lead.Over(screwLead), nil
}

// LeadOfTrain returns the lead that a train cuts with a lead screw.
func LeadOfTrain(drivers, driven []int, screwLead Length) (Length, error) {
	ratio := 1.0
	for _, teeth := range [][]int{drivers, driven} {
		for _, n := range teeth {
			if err := checkTeeth(n); err != nil {
				return 0, err
			}
		}
	}
	if len(drivers) == 0 || len(drivers) != len(driven) || len(drivers) > 4 {
		return 0, &InputError{"train of", Shortest(float64(len(drivers)), 0) + " drivers and " + Shortest(float64(len(driven)), 0) + " driven gears", "one to four of each, as many drivers as driven"}
	}
	for i := range drivers {
		ratio *= float64(drivers[i]) / float64(driven[i])
	}
	return screwLead.Times(ratio), nil
}

func checkTeeth(n int) error { return inRange("gear teeth", float64(n), 12, 240) }

// meshClearance is how many teeth the gears of a compound train must leave free for
// the studs and hubs beside them.
const meshClearance = 15

// canMesh reports whether a compound train a/b x c/d can be put together: the
// outer gears must not run into the neighbouring stud.
//
//	a + b >= c + 15,  c + d >= b + 15
//
// Source: common practice, no source for the 15; lathes with long studs need less.
func canMesh(a, b, c, d int) bool { return a+b >= c+meshClearance && c+d >= b+meshClearance }

// FindTrains looks for change gears among those a lathe has (2 to 40 gears of 12 to
// 240 teeth; one listed twice may be used twice) and returns up to most trains, the
// best first: by error, then simple before compound, then by the fewest teeth.
// Trains whose error is above 5000 ppm are left out.
//
// ratio is driver / driven, 0.01 to 100, from GearRatio. Idlers are not counted.
func FindTrains(gears []int, ratio float64, most int) ([]Train, error) {
	if err := inRange("gear ratio", ratio, 0.01, 100); err != nil {
		return nil, err
	}
	if err := inRange("number of gears", float64(len(gears)), 2, 40); err != nil {
		return nil, err
	}
	for _, n := range gears {
		if err := checkTeeth(n); err != nil {
			return nil, err
		}
	}
	s := gearSearch{ratio: ratio, most: clamp(most, 1, 100)}
	have := slices.Sorted(slices.Values(gears))
	s.simple(have)
	s.compound(have)
	trains := make([]Train, len(s.best))
	for i, f := range s.best {
		trains[i] = Train{Drivers: []int{f.a}, Driven: []int{f.b}, PPM: f.ppm}
		if f.c > 0 {
			trains[i] = Train{Drivers: []int{f.a, f.c}, Driven: []int{f.b, f.d}, PPM: f.ppm}
		}
	}
	return trains, nil
}

// worstPPM is the largest error that is offered: half a per cent, 0.005 in an inch.
const worstPPM = 5000

// found is a train a/b, or a/b x c/d.
type found struct {
	a, b, c, d int
	ppm        float64
}

type gearSearch struct {
	ratio float64
	most  int
	best  []found // sorted, at most most
}

// ppm is the error of a ratio in parts per million; rounding noise counts as exact.
func (s *gearSearch) ppm(ratio float64) float64 {
	if ppm := (ratio/s.ratio - 1) * 1e6; math.Abs(ppm) > 1e-6 {
		return ppm
	}
	return 0
}

func (s *gearSearch) offer(f found) {
	worse := func(x, y found) int {
		switch ex, ey := math.Abs(x.ppm), math.Abs(y.ppm); {
		case math.Abs(ex-ey) > 1e-6 && ex < ey:
			return -1
		case math.Abs(ex-ey) > 1e-6:
			return 1
		case x.c == 0 && y.c != 0:
			return -1
		case x.c != 0 && y.c == 0:
			return 1
		}
		if d := x.a + x.b + x.c + x.d - y.a - y.b - y.c - y.d; d != 0 {
			return d
		}
		return slices.Compare([]int{x.a, x.c, x.b, x.d}, []int{y.a, y.c, y.b, y.d})
	}
	if len(s.best) == s.most && worse(s.best[len(s.best)-1], f) <= 0 {
		return
	}
	i, _ := slices.BinarySearchFunc(s.best, f, worse)
	s.best = slices.Insert(s.best, i, f)
	if len(s.best) > s.most {
		s.best = s.best[:s.most]
	}
}

func (s *gearSearch) simple(have []int) {
	for i, a := range have {
		for j, b := range have {
			if i == j || j > 0 && j-1 != i && have[j] == have[j-1] || i > 0 && have[i] == have[i-1] {
				continue // the same gear, or one of as many teeth that has been tried
			}
			if ppm := s.ppm(float64(a) / float64(b)); math.Abs(ppm) <= worstPPM {
				s.offer(found{a: a, b: b, ppm: ppm})
			}
		}
	}
}

// compound tries every two drivers with every two driven gears. For given drivers
// and one driven gear the other must be about a c / (ratio b): only gears near that
// are looked at.
func (s *gearSearch) compound(have []int) {
	n := len(have)
	for i := range n {
		for k := i + 1; k < n; k++ {
			for j := range n {
				if j == i || j == k {
					continue
				}
				want := float64(have[i]*have[k]) / (s.ratio * float64(have[j]))
				low, high := want*(1-2*worstPPM/1e6), want*(1+2*worstPPM/1e6)
				for l := j + 1; l < n && float64(have[l]) <= high; l++ {
					if l == i || l == k || float64(have[l]) < low {
						continue
					}
					s.pair(have[i], have[k], have[j], have[l])
				}
			}
		}
	}
}

// pair offers the drivers x, y and the driven u, v in an arrangement that meshes.
func (s *gearSearch) pair(x, y, u, v int) {
	if x == u || x == v || y == u || y == v { // two equal gears only carry the turn on
		return
	}
	ppm := s.ppm(float64(x*y) / float64(u*v))
	if math.Abs(ppm) > worstPPM {
		return
	}
	for _, t := range [4]found{{x, u, y, v, ppm}, {x, v, y, u, ppm}, {y, u, x, v, ppm}, {y, v, x, u, ppm}} {
		if canMesh(t.a, t.b, t.c, t.d) {
			for _, f := range s.best {
				if f == t {
					return // the same train from another gear of as many teeth
				}
			}
			s.offer(t)
			return
		}
	}
}

// The formulas of GearRatio on a lead screw of N threads per inch: for n threads per
// inch, for a pitch of P inches, and for a pitch of P millimetres.
var (
	GearsInch    = Formula[func(lead, screwLead Length) (float64, error)]{"N / n", GearRatio}
	GearsByPitch = Formula[func(lead, screwLead Length) (float64, error)]{"P x N", GearRatio}
	GearsMetric  = Formula[func(lead, screwLead Length) (float64, error)]{"5 x P x N / 127", GearRatio}
)
