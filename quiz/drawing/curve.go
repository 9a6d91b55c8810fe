package drawing

import "scratchpass/calc"

// Measures of a curve, in dots of a terminal at its full width.
const (
	curveWide = 96
	curveHigh = 26
	curveLeft = 16 // the numbers of the scale stand left of it
	curveFoot = 6  // the title stands below it
)

// Curve draws values one after the other over a scale from 0 to most, which is the
// largest of them where it is 0. The title stands below, the ends of the scale at its left
// with so many decimals. What it shows is told in words by whoever draws it.
func Curve(title string, values []float64, most float64, places int) Drawing {
	for _, v := range values {
		most = max(most, v)
	}
	d := Drawing{Title: title, Width: curveLeft + curveWide, Height: curveHigh + curveFoot, Most: (curveLeft + curveWide) / 2}
	d.draw(Thin, Measure, Point{curveLeft, curveFoot + curveHigh}, Point{curveLeft, curveFoot}, Point{curveLeft + curveWide, curveFoot})
	d.labelFrom(0, curveFoot+curveHigh-1, calc.Fixed(most, places))
	d.labelFrom(0, curveFoot+1, calc.Fixed(0, places))
	d.label(curveLeft+curveWide/2, 1.5, shortened(title, curveWide/2))
	at := func(i int) Point {
		along, up := 0.5, 0.0
		if len(values) > 1 {
			along = float64(i) / float64(len(values)-1)
		}
		if most > 0 {
			up = max(values[i], 0) / most
		}
		return Point{curveLeft + 2 + along*(curveWide-4), curveFoot + 1 + up*(curveHigh-2)}
	}
	points := make([]Point, len(values))
	for i := range values {
		points[i] = at(i)
	}
	d.draw(Outline, Work, points...)
	return d
}
