package calc_test

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"scratchpass/calc"
)

var formulaRowsOfNose = []formulaRow{
	row("NoseDepthFromNominal", calc.NoseDepthFromNominal, both, pitchAndNose(0.144)),
	row("NoseDepthFromBore", calc.NoseDepthFromBore, both, pitchAndNose(0.072)),
	row("LargestNoseOutside", calc.LargestNoseOutside, both, onlyPitch),
	row("LargestNoseInside", calc.LargestNoseInside, both, onlyPitch),
	row("FinestPitchOutside", calc.FinestPitchOutside, both, onlyNose),
	row("FinestPitchInside", calc.FinestPitchInside, both, onlyNose),
}

func pitchAndNose(share float64) func(*rand.Rand) ([]any, map[string]any) {
	return func(r *rand.Rand) ([]any, map[string]any) {
		p := pitchOf(r)
		nose := p.Times(from(r, 0, share))
		return []any{p, nose}, symbols{"P": p, "r": nose}
	}
}

func onlyNose(r *rand.Rand) ([]any, map[string]any) {
	nose := inches(r, 0.0015, 0.07)
	return []any{nose}, symbols{"r": nose}
}

// An insert maker's total infeeds for internal threads with noses of three sizes.
func TestNoseDepthAgainstPublishedRows(t *testing.T) {
	for _, row := range publishedRows(t, "nose-depths.csv") {
		pitch, err := strconv.ParseFloat(row["pitch"], 64)
		if err != nil {
			t.Fatal(err)
		}
		nose, err := strconv.ParseFloat(row["nose"], 64)
		if err != nil {
			t.Fatal(err)
		}
		depth, err := calc.NoseDepthFromBore.Of(calc.Millimetres(pitch), calc.Millimetres(nose))
		if err != nil {
			t.Error(err)
			continue
		}
		compare(t, "pitch "+row["pitch"]+" nose "+row["nose"], row["depth"], depth.Millimetres())
	}
}

// A nose of radius r and the flat that cuts as deep give one depth, by two formulas.
func TestNoseAndItsFlatGoEquallyDeep(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 1000 {
		p := pitchOf(r)
		nose := p.Times(from(r, 0, 0.07))
		flat, err := calc.FlatOfNose(nose)
		if err != nil {
			t.Fatal(err)
		}
		for _, pair := range [][2]calc.Formula[func(calc.Length, calc.Length) (calc.Length, error)]{
			{calc.NoseDepthFromNominal, calc.DepthFromNominal}, {calc.NoseDepthFromBore, calc.DepthFromBore},
		} {
			round, err1 := pair[0].Of(p, nose)
			flatOne, err2 := pair[1].Of(p, flat)
			if err1 != nil || err2 != nil || !calc.Within(float64(round), float64(flatOne), 1e-12) {
				t.Fatalf("pitch %v nose %v: %v and %v, %v %v", p, nose, round, flatOne, err1, err2)
			}
		}
	}
}

// The largest nose by the distance from a circle's centre to a flank, found by halving: the
// flank is straight from where the circle touches it.
func TestLargestNoseTouchesTheMate(t *testing.T) {
	for side, height := range map[calc.Side]float64{calc.Outside: 1.0 / 4, calc.Inside: 1.0 / 8} {
		low, high := 0.0, 1.0
		for range 60 {
			r := (low + high) / 2
			centre := r / math.Sin(math.Pi/6) // above the sharp root, so that the circle touches both flanks
			if touches := centre - r*math.Sin(math.Pi/6); touches > height*math.Sqrt(3)/2 {
				high = r
			} else {
				low = r
			}
		}
		f := calc.LargestNoseOutside
		if side == calc.Inside {
			f = calc.LargestNoseInside
		}
		if got, err := f.Of(0.1); err != nil || !calc.Within(got.Inches()*10, low, 1e-9) {
			t.Errorf("%v: %v, by halving %v (%v)", side, got.Inches()*10, low, err)
		}
	}
	if got, _ := calc.LargestNoseOutside.Of(calc.Millimetres(1)); calc.Fixed(got.Millimetres(), 4) != "0.1443" {
		t.Error("printed as 0.1443 P for ISO metric threads:", got)
	}
}

// The range of a material holds every published row, and each of its ends is one's.
func TestTurningSpeedsAgainstPublishedRows(t *testing.T) {
	least, most := map[string]float64{}, map[string]float64{}
	for _, row := range publishedRows(t, "speeds.csv") {
		low, err1 := strconv.ParseFloat(row["low"], 64)
		high, err2 := strconv.ParseFloat(row["high"], 64)
		if err1 != nil || err2 != nil {
			t.Fatal(row)
		}
		name := row["material"]
		if x, ok := least[name]; !ok || low < x {
			least[name] = low
		}
		most[name] = max(most[name], high)
	}
	for _, m := range calc.Metals {
		name := m.String()
		low, high := m.TurningSpeeds()
		if low.InFeet() != least[name] || high.InFeet() != most[name] {
			t.Errorf("%s: %v to %v, published %v to %v", name, low, high, least[name], most[name])
		}
	}
	if len(least) != len(calc.Metals) {
		t.Error("rows of other metals:", least)
	}
	if low, high := calc.Material(9).TurningSpeeds(); low != 0 || high != 0 {
		t.Error("a material that is none has a speed")
	}
	if got := calc.MetresPerMinute(30).InMetres(); !calc.Within(got, 30, 1e-9) {
		t.Error("30 metres a minute:", got)
	}
}
