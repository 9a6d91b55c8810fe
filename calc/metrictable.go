package calc

import (
	"strconv"
	"strings"
	"sync"
)

// The tolerances of the pitch diameter in micrometres, one line for a step of diameters
// and a pitch: over, up to and with, pitch, then Td2 of grades 3 to 9 outside and TD2 of
// grades 4 to 8 inside. A dash stands where the standard gives no such grade.
// They are tables and not formulas: the formulas of ISO 965-1 with their rounding miss
// several cells. Source: ISO 965-1 (DIN 13-14), by the tables in testdata/published.
const pitchTolerances = `
0.99 1.4 0.2 24 30 38 48 - - - 40 - - - -
0.99 1.4 0.25 26 34 42 53 - - - 45 56 - - -
0.99 1.4 0.3 28 36 45 56 - - - 48 60 75 - -
1.4 2.8 0.2 25 32 40 50 - - - 42 - - - -
1.4 2.8 0.25 28 36 45 56 - - - 48 60 - - -
1.4 2.8 0.35 32 40 50 63 80 - - 53 67 85 - -
1.4 2.8 0.4 34 42 53 67 85 - - 56 71 90 - -
1.4 2.8 0.45 36 45 56 71 90 - - 60 75 95 - -
2.8 5.6 0.35 34 42 53 67 85 - - 56 71 90 - -
2.8 5.6 0.5 38 48 60 75 95 - - 63 80 100 125 -
2.8 5.6 0.6 42 53 67 85 106 - - 71 90 112 140 -
2.8 5.6 0.7 45 56 71 90 112 - - 75 95 118 150 -
2.8 5.6 0.75 45 56 71 90 112 - - 75 95 118 150 -
2.8 5.6 0.8 48 60 75 95 118 150 190 80 100 125 160 200
5.6 11.2 0.75 50 63 80 100 125 - - 85 106 132 170 -
5.6 11.2 1 56 71 90 112 140 180 224 95 118 150 190 236
5.6 11.2 1.25 60 75 95 118 150 190 236 100 125 160 200 250
5.6 11.2 1.5 67 85 106 132 170 212 265 112 140 180 224 280
11.2 22.4 1 60 75 95 118 150 190 236 100 125 160 200 250
11.2 22.4 1.25 67 85 106 132 170 212 265 112 140 180 224 280
11.2 22.4 1.5 71 90 112 140 180 224 280 118 150 190 236 300
11.2 22.4 1.75 75 95 118 150 190 236 300 125 160 200 250 315
11.2 22.4 2 80 100 125 160 200 250 315 132 170 212 265 335
11.2 22.4 2.5 85 106 132 170 212 265 335 140 180 224 280 355
22.4 45 1 63 80 100 125 160 200 250 106 132 170 212 -
22.4 45 1.5 75 95 118 150 190 236 300 125 160 200 250 315
22.4 45 2 85 106 132 170 212 265 335 140 180 224 280 355
22.4 45 3 100 125 160 200 250 315 400 170 212 265 335 425
22.4 45 3.5 106 132 170 212 265 335 425 180 224 280 355 450
22.4 45 4 112 140 180 224 280 355 450 190 236 300 375 475
22.4 45 4.5 118 150 190 236 300 375 475 200 250 315 400 500
45 90 1.5 80 100 125 160 200 250 315 132 170 212 265 335
45 90 2 90 112 140 180 224 280 355 150 190 236 300 375
45 90 3 106 132 170 212 265 335 425 180 224 280 355 450
45 90 4 118 150 190 236 300 375 475 200 250 315 400 500
45 90 5 125 160 200 250 315 400 500 212 265 335 425 530
45 90 5.5 132 170 212 265 335 425 530 224 280 355 450 560
45 90 6 140 180 224 280 355 450 560 236 300 375 475 600
90 180 2 95 118 150 190 236 300 375 160 200 250 315 400
90 180 3 112 140 180 224 280 355 450 190 236 300 375 475
90 180 4 125 160 200 250 315 400 500 212 265 335 425 530
90 180 6 150 190 236 300 375 475 600 250 315 400 500 630
90 180 8 170 212 265 335 425 530 670 280 355 450 560 710
`

// The deviation of positions g and G and the tolerances of the crest in micrometres, one
// line a pitch: how far g is below basic (G is as far above), Td of grades 4, 6 and 8
// outside, TD1 of grades 4 to 8 inside.
// Source: ISO 965-1 (DIN 13-14), by the tables in testdata/published.
const crestTolerances = `
0.2 17 36 56 - 38 - - - -
0.25 18 42 67 - 45 56 - - -
0.3 18 48 75 - 53 67 85 - -
0.35 19 53 85 - 63 80 100 - -
0.4 19 60 95 - 71 90 112 - -
0.45 20 63 100 - 80 100 125 - -
0.5 20 67 106 - 90 112 140 180 -
0.6 21 80 125 - 100 125 160 200 -
0.7 22 90 140 - 112 140 180 224 -
0.75 22 90 140 - 118 150 190 236 -
0.8 24 95 150 236 125 160 200 250 315
1 26 112 180 280 150 190 236 300 375
1.25 28 132 212 335 170 212 265 335 425
1.5 32 150 236 375 190 236 300 375 475
1.75 34 170 265 425 212 265 335 425 530
2 38 180 280 450 236 300 375 475 600
2.5 42 212 335 530 280 355 450 560 710
3 48 236 375 600 315 400 500 630 800
3.5 53 265 425 670 355 450 560 710 900
4 60 300 475 750 375 475 600 750 950
4.5 63 315 500 800 425 530 670 850 1060
5 71 335 530 850 450 560 710 900 1120
5.5 75 355 560 900 475 600 750 950 1180
6 80 375 600 950 500 630 800 1000 1250
8 100 450 710 1180 630 800 1000 1250 1600
`

// quantity names what a tolerance of the metric tables is for.
type quantity string

const (
	toleranceTd2 quantity = "Td2" // pitch diameter, outside
	toleranceTD2 quantity = "TD2" // pitch diameter, inside
	toleranceTd  quantity = "Td"  // major diameter, outside
	toleranceTD1 quantity = "TD1" // minor diameter, inside
	deviationG   quantity = "es"  // how far position g is below basic, G above
)

// metricRow is the values of one quantity for one pitch and one step of diameters.
type metricRow struct {
	quantity quantity
	pitch    float64         // mm
	over, to float64         // nominal diameter, mm; 0 and 0 for every diameter
	values   map[int]float64 // micrometres by grade; a deviation under 0
}

// metricRows is the two tables above, read once.
var metricRows = sync.OnceValue(func() []metricRow {
	var rows []metricRow
	add := func(q quantity, over, to, pitch string, cells []string, grades ...int) {
		row := metricRow{q, number(pitch), number(over), number(to), map[int]float64{}}
		for i, cell := range cells {
			if cell != "-" {
				row.values[grades[i]] = number(cell)
			}
		}
		rows = append(rows, row)
	}
	for _, line := range strings.Split(strings.TrimSpace(pitchTolerances), "\n") {
		f := strings.Fields(line)
		add(toleranceTd2, f[0], f[1], f[2], f[3:10], 3, 4, 5, 6, 7, 8, 9)
		add(toleranceTD2, f[0], f[1], f[2], f[10:15], 4, 5, 6, 7, 8)
	}
	for _, line := range strings.Split(strings.TrimSpace(crestTolerances), "\n") {
		f := strings.Fields(line)
		add(deviationG, "0", "0", f[0], f[1:2], 0)
		add(toleranceTd, "0", "0", f[0], f[2:5], 4, 6, 8)
		add(toleranceTD1, "0", "0", f[0], f[5:10], 4, 5, 6, 7, 8)
	}
	return rows
})

// number reads a cell of a table that is part of the program; its test reads them all.
func number(cell string) float64 {
	x, err := strconv.ParseFloat(cell, 64)
	if err != nil {
		panic(err)
	}
	return x
}

// metricRowOf finds the row for a quantity, a diameter and a pitch in millimetres.
func metricRowOf(q quantity, diameter, pitch float64) (metricRow, bool) {
	for _, r := range metricRows() {
		if r.quantity == q && Within(r.pitch, pitch, 1e-6) && (r.to == 0 || diameter > r.over && diameter <= r.to) {
			return r, true
		}
	}
	return metricRow{}, false
}
