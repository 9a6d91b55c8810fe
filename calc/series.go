package calc

import (
	"strings"
	"sync"
)

// The standard unified series: one line a size, "size coarse fine extra-fine", a
// dash where the series has no such size.
// Source: ASME B1.1, standard series threads (coarse, fine, extra-fine).
const unifiedSeries = `
0 - 80 -
1 64 72 -
2 56 64 -
3 48 56 -
4 40 48 -
5 40 44 -
6 32 40 -
8 32 36 -
10 24 32 -
12 24 28 32
1/4 20 28 32
5/16 18 24 32
3/8 16 24 32
7/16 14 20 28
1/2 13 20 28
9/16 12 18 24
5/8 11 18 24
11/16 - - 24
3/4 10 16 20
13/16 - - 20
7/8 9 14 20
15/16 - - 20
1 8 12 20
1-1/16 - - 18
1-1/8 7 12 18
1-3/16 - - 18
1-1/4 7 12 18
1-5/16 - - 18
1-3/8 6 12 18
1-7/16 - - 18
1-1/2 6 12 18
1-9/16 - - 18
1-5/8 - - 18
1-11/16 - - 18
1-3/4 5 - -
2 4.5 - -
2-1/4 4.5 - -
2-1/2 4 - -
2-3/4 4 - -
3 4 - -
3-1/4 4 - -
3-1/2 4 - -
3-3/4 4 - -
4 4 - -
`

// Series names a family of unified threads.
type Series string

// The families. UN is a constant-pitch series, UNS any other combination.
const (
	UNC  Series = "UNC"
	UNF  Series = "UNF"
	UNEF Series = "UNEF"
	UN   Series = "UN"
	UNS  Series = "UNS"
)

// constantPitch are the threads per inch of the UN series.
var constantPitch = []ThreadsPerInch{4, 6, 8, 12, 16, 20, 28, 32}

// UnifiedSize is one line of the standard series.
type UnifiedSize struct {
	Size    string // as called out: "10", "3/4", "1-1/8"
	Nominal Length
	TPI     map[Series]ThreadsPerInch // by UNC, UNF, UNEF; absent where the series has none
}

// UnifiedSizes returns the standard sizes, smallest first. The result is shared:
// do not change it.
var UnifiedSizes = sync.OnceValue(func() []UnifiedSize {
	var sizes []UnifiedSize
	for _, line := range strings.Split(strings.TrimSpace(unifiedSeries), "\n") {
		f := strings.Fields(line)
		size := UnifiedSize{Size: f[0], TPI: map[Series]ThreadsPerInch{}}
		for i, s := range []Series{UNC, UNF, UNEF} {
			if f[i+1] == "-" {
				continue
			}
			n, err := ParseNumber(f[i+1])
			if err == nil {
				size.TPI[s] = ThreadsPerInch(n)
				size.Nominal, err = nominalOf(f[0], size.TPI[s])
			}
			if err != nil {
				panic(err) // the table above is part of the program; its test reads every line
			}
		}
		sizes = append(sizes, size)
	}
	return sizes
})

// NumberSize returns the nominal diameter of a numbered screw size:
//
//	D = 0.060 + 0.013 x N
//
// N is 0 to 12 in the standard series. Source: ASME B1.1, numbered sizes.
func NumberSize(number int) (Length, error) {
	if err := inRange("screw number", float64(number), 0, 12); err != nil {
		return 0, err
	}
	return (60 * Thou).Plus((13 * Thou).Times(float64(number))), nil
}

// NumberedSize is NumberSize of the screw number N, in inches.
var NumberedSize = Formula[func(number int) (Length, error)]{"0.060 + 0.013 x N", NumberSize}

// metricCoarse are the pitches in millimetres of the ISO coarse series, every choice
// from 1 to 68 mm. Source: ISO 261 / ISO 262; DIN 13-1 goes as far.
var metricCoarse = []struct{ Diameter, Pitch float64 }{
	{1, 0.25}, {1.1, 0.25}, {1.2, 0.25}, {1.4, 0.3}, {1.6, 0.35}, {1.8, 0.35}, {2, 0.4}, {2.2, 0.45}, {2.5, 0.45},
	{3, 0.5}, {3.5, 0.6}, {4, 0.7}, {4.5, 0.75}, {5, 0.8}, {6, 1}, {7, 1}, {8, 1.25}, {9, 1.25},
	{10, 1.5}, {11, 1.5}, {12, 1.75}, {14, 2}, {16, 2}, {18, 2.5}, {20, 2.5}, {22, 2.5}, {24, 3}, {27, 3},
	{30, 3.5}, {33, 3.5}, {36, 4}, {39, 4}, {42, 4.5}, {45, 4.5}, {48, 5}, {52, 5}, {56, 5.5}, {60, 5.5}, {64, 6}, {68, 6},
}

// MetricCoarsePitch returns the pitch of the ISO coarse series for a diameter.
// ok is false where the series has no such diameter.
func MetricCoarsePitch(nominal Length) (pitch Length, ok bool) {
	for _, m := range metricCoarse {
		if Within(nominal.Millimetres(), m.Diameter, 1e-6) {
			return Millimetres(m.Pitch), true
		}
	}
	return 0, false
}
