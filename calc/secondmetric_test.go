package calc_test

import (
	"fmt"
	"math/big"
	"strconv"
	"strings"
	"testing"

	"scratchpass/calc"
)

// A second computation of the limits of metric threads: whole micrometres and nothing else,
// from the tables as their sources print them (testdata/published) and not from those that
// are part of calc. Diameters and pitches are read from texts; the form's factors are whole
// numbers of twelve digits. What it shares with calc is the rule that the tables give all
// tolerances.

// micrometres reads a length in mm.
func micrometres(text string) int64 {
	r, ok := new(big.Rat).SetString(text)
	if !ok {
		panic(text)
	}
	r.Mul(r, big.NewRat(1000, 1))
	return r.Num().Int64() // no length of a table has a part of a micrometre
}

// share is a share of the pitch, given in 10^-12, in whole micrometres.
func share(pitch, factor int64) int64 {
	const one = 1_000_000_000_000
	return (pitch*factor + one/2) / one
}

// The form's factors in 10^-12: 3/4, 5/4 and 17/12 of the sharp height.
const (
	pitchLineShare = 649_519_052_838
	boreShare      = 1_082_531_754_731
	rootShare      = 1_226_869_322_028
)

// secondTable is what the sources print: quantity, grade and pitch, by steps of diameters.
type secondTable map[string][]secondStep

type secondStep struct{ over, to, value int64 }

func (s secondTable) add(quantity, grade, pitch, over, to, value string) {
	if value == "" || value == "-" {
		return
	}
	step := secondStep{over: 0, to: 1 << 40}
	if to != "" {
		step.over, step.to = micrometres(over), micrometres(to)
	}
	micro, _ := strconv.ParseFloat(value, 64)
	step.value = int64(max(micro, -micro))
	key := fmt.Sprint(quantity, grade, " ", micrometres(pitch))
	s[key] = append(s[key], step)
}

func (s secondTable) at(quantity, grade string, diameter, pitch int64) (int64, bool) {
	if quantity == "es" {
		grade = "6"
	}
	for _, step := range s[fmt.Sprint(quantity, grade, " ", pitch)] {
		if diameter > step.over && diameter <= step.to {
			return step.value, true
		}
	}
	return 0, false
}

func secondTables(t *testing.T) secondTable {
	s := secondTable{}
	for _, row := range publishedRows(t, "metric-grades.csv") {
		if row["quantity"] == "es" {
			s.add("es", "6", row["pitch"], row["over"], row["to"], row["g6"])
			continue
		}
		for _, grade := range []string{"3", "4", "5", "6", "7", "8", "9"} {
			s.add(row["quantity"], grade, row["pitch"], row["over"], row["to"], row["g"+grade])
		}
	}
	for _, row := range publishedRows(t, "metric-tolerances.csv") {
		s.add(strings.TrimSuffix(row["quantity"], "_g"), "6", row["pitch"], row["over"], row["to"], row["value"])
	}
	// The data print 18 here; both published tables of threads with limits come from 17.
	s.add("es", "6", "0.2", "", "", "-17")
	return s
}

// limits are the limits in micrometres; ok is false where the sources print no tolerance.
func (s secondTable) limits(diameter, pitch int64, class string) (all map[string]int64, ok bool) {
	flank, crest := class[:1], class[:1]
	if len(class) == 4 {
		crest = class[2:3]
	}
	position := class[len(class)-1]
	external := position == 'g' || position == 'h'
	quantities := [2]string{"TD2", "TD1"}
	if external {
		quantities = [2]string{"Td2", "Td"}
	}
	flankTolerance, ok1 := s.at(quantities[0], flank, diameter, pitch)
	crestTolerance, ok2 := s.at(quantities[1], crest, diameter, pitch)
	deviation, ok3 := int64(0), true
	if position == 'g' || position == 'G' {
		deviation, ok3 = s.at("es", "6", diameter, pitch)
	}
	flankAt := diameter - share(pitch, pitchLineShare)
	if external {
		major := diameter - deviation
		return map[string]int64{
			"major_max": major, "major_min": major - crestTolerance, "pitch_max": flankAt - deviation,
			"pitch_min": flankAt - deviation - flankTolerance, "minor_max": major - share(pitch, rootShare),
		}, ok1 && ok2 && ok3
	}
	bore := diameter - share(pitch, boreShare) + deviation
	return map[string]int64{
		"major_min": diameter + deviation, "pitch_min": flankAt + deviation, "pitch_max": flankAt + deviation + flankTolerance,
		"minor_min": bore, "minor_max": bore + crestTolerance,
	}, ok1 && ok2 && ok3
}

// Every thread of the tables in every class comes out the same, and where the sources have
// no tolerance there is an error.
func TestSecondComputationOfMetricLimits(t *testing.T) {
	s := secondTables(t)
	diameters := strings.Fields("1 1.2 1.4 1.6 1.8 2 2.5 3 3.5 4 5 6 7 8 10 12 14 16 18 20 22 24 27 30 33 36 39 42 45 48 52 56 60 64 68 72 80 90 100 125 160 180")
	pitches := strings.Fields("0.2 0.25 0.3 0.35 0.4 0.45 0.5 0.6 0.7 0.75 0.8 1 1.25 1.5 1.75 2 2.5 3 3.5 4 4.5 5 5.5 6 8")
	classes := strings.Fields("4h 5g6g 6g 6h 4g6g 7g6g 8g 9g8g 4H 5H 6H 6G 7H 7G 8H 8G 3h4h 5h6h 4H5H")
	threads, none := 0, 0
	for _, diameter := range diameters {
		for _, pitch := range pitches {
			for _, class := range classes {
				d, err := calc.ParseDesignation("M" + diameter + "x" + pitch + "-" + class)
				if err != nil {
					continue // too coarse for the diameter
				}
				want, ok := s.limits(micrometres(diameter), micrometres(pitch), class)
				l, err := calc.LimitsOf(d)
				if (err == nil) != ok {
					t.Errorf("%s: %v; the sources have it: %v", d, err, ok)
					continue
				}
				if err != nil {
					none++
					continue
				}
				threads++
				got := map[string]calc.Length{
					"major_max": l.Major.Max, "major_min": l.Major.Min, "pitch_max": l.Pitch.Max, "pitch_min": l.Pitch.Min,
					"minor_max": l.Minor.Max, "minor_min": l.Minor.Min,
				}
				for what, x := range want {
					printed, ours := calc.Fixed(got[what].Millimetres(), 3), fmt.Sprintf("%d.%03d", x/1000, x%1000)
					if printed != ours {
						t.Errorf("%s %s: %s, by the second computation %s", d, what, printed, ours)
					}
				}
			}
		}
	}
	if threads < 1000 {
		t.Errorf("only %d threads and classes", threads)
	}
	t.Logf("%d threads and classes, %d without a tolerance", threads, none)
}
