package problem

import (
	"math"
	"testing"
)

// Codes that follow one another give numbers that don't: the first three choices
// of neighbouring seeds are spread evenly, alone and in pairs.
func TestNeighbouringSeedsAreUnalike(t *testing.T) {
	const seeds, ways = 8192, 8
	var first [3][ways]float64
	var pairs [ways * ways]float64
	last := 0
	for seed := range seeds {
		d := &Draw{source: seeded(Code{Task: "compound-travel", Level: 1, Seed: uint32(seed)})}
		for i := range first {
			k := d.IntN(ways)
			first[i][k]++
			if i == 0 {
				pairs[last*ways+k]++
				last = k
			}
		}
	}
	chi := func(counts []float64) float64 {
		want, sum := seeds/float64(len(counts)), 0.0
		for _, c := range counts {
			sum += (c - want) * (c - want) / want
		}
		return sum
	}
	check := func(what string, counts []float64) {
		t.Helper()
		free := float64(len(counts) - 1)
		if got, most := chi(counts), free+5*math.Sqrt(2*free); got > most {
			t.Errorf("%s: chi-squared %.1f, at most %.1f expected", what, got, most)
		}
	}
	for i := range first {
		check("choice", first[i][:])
	}
	check("pairs of neighbours", pairs[:])
}

// The numbers behind a code are the same for ever and everywhere.
func TestDrawIsPinned(t *testing.T) {
	d := &Draw{source: seeded(Code{Task: "compound-travel", Level: 2, Seed: 0x7f3a})}
	var got [6]int
	for i := range got {
		got[i] = d.IntN(1000)
	}
	if want := [6]int{790, 868, 505, 595, 906, 286}; got != want {
		t.Errorf("drew %v, want %v", got, want)
	}
}
