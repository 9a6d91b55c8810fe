package tasks_test

import (
	"math/big"
)

// number is a big.Float with the operators written out.
type number struct{ *big.Float }

const precision = 120

func n(x float64) number { return number{new(big.Float).SetPrec(precision).SetFloat64(x)} }

// dec is a decimal as written, exact to the precision.
func dec(text string) number {
	f, ok := new(big.Float).SetPrec(precision).SetString(text)
	if !ok {
		panic("not a decimal: " + text)
	}
	return number{f}
}

func fresh() *big.Float { return new(big.Float).SetPrec(precision) }

func (a number) plus(b number) number { return number{fresh().Add(a.Float, b.Float)} }

func (a number) minus(b number) number { return number{fresh().Sub(a.Float, b.Float)} }

func (a number) times(b number) number { return number{fresh().Mul(a.Float, b.Float)} }

func (a number) over(b number) number { return number{fresh().Quo(a.Float, b.Float)} }

func (a number) sqrt() number { return number{fresh().Sqrt(a.Float)} }

func (a number) less(b number) bool { return a.Cmp(b.Float) < 0 }

// pi to forty places.
var pi = dec("3.1415926535897932384626433832795028841972")

// root3 is the square root of three: H = root3/2 P.
var root3 = n(3).sqrt()

// sincos are the series, for an angle in degrees.
func sincos(degrees number) (sin, cos number) {
	x := degrees.times(pi).over(n(180))
	sin, cos = n(0), n(0)
	term := n(1)
	for k := range 60 {
		switch k % 4 {
		case 0:
			cos = cos.plus(term)
		case 1:
			sin = sin.plus(term)
		case 2:
			cos = cos.minus(term)
		case 3:
			sin = sin.minus(term)
		}
		term = term.times(x).over(n(float64(k + 1)))
	}
	return sin, cos
}

func cosOf(degrees number) number { _, c := sincos(degrees); return c }

func tanOf(degrees number) number { s, c := sincos(degrees); return s.over(c) }

// atanOf is the angle in degrees whose tangent is x, by Newton's method.
func atanOf(x number) number {
	a := n(0)
	for range 60 {
		s, c := sincos(a)
		// tan a - x = 0, derivative 1 / cos^2
		a = a.minus(s.over(c).minus(x).times(c).times(c).times(n(180)).over(pi))
	}
	return a
}

// floor is the whole part of a number that is not below 0.
func (a number) floor() number {
	i, _ := a.Float.Int(nil)
	return number{fresh().SetInt(i)}
}

// ceil is the next whole number up.
func (a number) ceil() number {
	if f := a.floor(); f.less(a) {
		return f.plus(n(1))
	}
	return a
}

func least(a, b number) number {
	if a.less(b) {
		return a
	}
	return b
}

// mod is a modulo m, both not below 0. A decimal has no exact binary form, so a whole
// number of turns may lie a hair below: the floor is taken a hair above.
func (a number) mod(m number) number {
	hair := dec("0.000000000000000000000001")
	return a.minus(a.over(m).plus(hair).floor().times(m))
}
