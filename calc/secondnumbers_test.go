package calc_test

import "math/big"

// Numbers of the second computation: 300 bits, and no function of calc or of package math.
const secondBits = 300

func exact(num, den int64) *big.Float {
	return new(big.Float).SetPrec(secondBits).SetRat(big.NewRat(num, den))
}

func decimal(text string) *big.Float {
	r, ok := new(big.Rat).SetString(text)
	if !ok {
		panic(text)
	}
	return new(big.Float).SetPrec(secondBits).SetRat(r)
}

func sum(xs ...*big.Float) *big.Float {
	total := exact(0, 1)
	for _, x := range xs {
		total.Add(total, x)
	}
	return total
}

func product(xs ...*big.Float) *big.Float {
	total := exact(1, 1)
	for _, x := range xs {
		total.Mul(total, x)
	}
	return total
}

func less(x, y *big.Float) *big.Float { return new(big.Float).SetPrec(secondBits).Sub(x, y) }

func quotient(x, y *big.Float) *big.Float { return new(big.Float).SetPrec(secondBits).Quo(x, y) }

func smaller(x, y *big.Float) *big.Float {
	if x.Cmp(y) < 0 {
		return x
	}
	return y
}

func larger(x, y *big.Float) *big.Float {
	if x.Cmp(y) < 0 {
		return y
	}
	return x
}

// cubeRoot is Newton's: r - (r^3 - x) / 3 r^2.
func cubeRoot(x *big.Float) *big.Float {
	r := exact(1, 1)
	for range 40 { // far more than it takes
		step := quotient(less(product(r, r, r), x), product(exact(3, 1), r, r))
		r = less(r, step)
	}
	return r
}

// twoThirds is x to the power 2/3.
func twoThirds(x *big.Float) *big.Float { r := cubeRoot(x); return product(r, r) }

// units is a positive number in whole units of its last place, halves to the even one.
func units(x *big.Float, places int) int64 {
	scaled := product(x, new(big.Float).SetPrec(secondBits).SetInt(new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(places)), nil)))
	nearest, _ := sum(scaled, exact(1, 1<<62)).Int64() // a tie in decimals is none in binary
	if less(scaled, exact(2*nearest+1, 2)).MantExp(nil) < -100 {
		return nearest + nearest%2
	}
	whole, _ := scaled.Int64()
	switch rest := less(scaled, exact(whole, 1)); rest.Cmp(exact(1, 2)) {
	case 1:
		whole++
	case 0:
		whole += whole % 2
	}
	return whole
}
