package set

import (
	"math"

	"gonum.org/v1/gonum/stat"
)

// leastForStatistics is how many sheets an item's statistics want. Below it they say
// more of chance than of the question.
const leastForStatistics = 30

// z95 is the normal deviate of a 95 % interval.
const z95 = 1.959963984540054

// Wilson returns the 95 % interval of a share of right answers:
//
//	(p + z^2/2n -+ z sqrt(p (1-p)/n + z^2/4n^2)) / (1 + z^2/n)
//
// right is 0 to n; n of 0 gives the whole range. Source: E. B. Wilson, 1927 (known from
// textbooks, from memory); tested against the exact interval.
func Wilson(right, n int) (low, high float64) {
	if n <= 0 {
		return 0, 1
	}
	p, m := float64(right)/float64(n), float64(n)
	mid := p + z95*z95/(2*m)
	half := z95 * math.Sqrt(p*(1-p)/m+z95*z95/(4*m*m))
	all := 1 + z95*z95/m
	return math.Max(0, (mid-half)/all), math.Min(1, (mid+half)/all)
}

// discrimination is how well one question goes with the rest of the sheet: the
// correlation of its points with the points of all others. ok is false where it says
// nothing: too few sheets, or everyone had the same.
func discrimination(item, total []float64) (r float64, ok bool) {
	if len(item) < leastForStatistics || len(item) != len(total) {
		return 0, false
	}
	rest := make([]float64, len(item))
	for i := range item {
		rest[i] = total[i] - item[i]
	}
	r = stat.Correlation(item, rest, nil)
	return r, !math.IsNaN(r)
}

// alpha is how well the questions of a sheet hang together, Cronbach's alpha:
//
//	k / (k - 1) x (1 - sum of the items' variances / variance of the totals)
//
// With whole points it is KR-20. Variances are of the population. ok is false where it
// says nothing.
func alpha(items [][]float64, total []float64) (a float64, ok bool) {
	k := float64(len(items))
	if len(total) < leastForStatistics || k < 2 {
		return 0, false
	}
	all := stat.PopVariance(total, nil)
	if all == 0 {
		return 0, false
	}
	sum := 0.0
	for _, item := range items {
		sum += stat.PopVariance(item, nil)
	}
	return k / (k - 1) * (1 - sum/all), true
}
