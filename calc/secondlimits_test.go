package calc_test

import (
	"fmt"
	"math/big"
	"strings"
	"testing"

	"scratchpass/calc"
)

// A second computation of the limits of size of inch threads. Nothing of calc is in it: its
// numbers are fractions and floats of 300 bits, its roots are Newton's, each size is rounded
// once from its exact value (calc rounds the pitch and what lies between first, as ASME
// B1.30 has it), and sizes and series are a list of its own. What it shares with calc are
// the formulas of ASME B1.1 alone. Designations are the only thing handed over.

// secondThread is an inch thread in the test's own terms.
type secondThread struct {
	size, series string
	diameter     *big.Rat
	tpi          *big.Rat
}

// float is a fraction as a number.
func float(r *big.Rat) *big.Float { return new(big.Float).SetPrec(secondBits).SetRat(r) }

// sizeOf reads 10, 1/4 or 1-3/4; numbers are those of screws.
func sizeOf(size string, screw bool) *big.Rat {
	if screw {
		r, _ := new(big.Rat).SetString(size)
		return r.Add(r.Mul(r, big.NewRat(13, 1000)), big.NewRat(60, 1000))
	}
	total := new(big.Rat)
	for _, part := range strings.Split(size, "-") {
		r, _ := new(big.Rat).SetString(part)
		total.Add(total, r)
	}
	return total
}

// secondLists are the series: sizes with their threads per inch.
var secondLists = map[string]string{
	"UNC": "#1-64 #2-56 #3-48 #4-40 #5-40 #6-32 #8-32 #10-24 #12-24 1/4-20 5/16-18 3/8-16 7/16-14 1/2-13 9/16-12 5/8-11 3/4-10 7/8-9 1-8 " +
		"1-1/8-7 1-1/4-7 1-3/8-6 1-1/2-6 1-3/4-5 2-4.5 2-1/4-4.5 2-1/2-4 2-3/4-4 3-4 3-1/4-4 3-1/2-4 3-3/4-4 4-4",
	"UNF": "#0-80 #1-72 #2-64 #3-56 #4-48 #5-44 #6-40 #8-36 #10-32 #12-28 1/4-28 5/16-24 3/8-24 7/16-20 1/2-20 9/16-18 5/8-18 3/4-16 " +
		"7/8-14 1-12 1-1/8-12 1-1/4-12 1-3/8-12 1-1/2-12",
	"UNEF": "#12-32 1/4-32 5/16-32 3/8-32 7/16-28 1/2-28 9/16-24 5/8-24 11/16-24 3/4-20 13/16-20 7/8-20 15/16-20 1-20 1-1/16-18 " +
		"1-1/8-18 1-3/16-18 1-1/4-18 1-5/16-18 1-3/8-18 1-7/16-18 1-1/2-18 1-9/16-18 1-5/8-18 1-11/16-18",
	"UNS": "1/4-24 1/4-27 5/16-27 5/16-36 5/16-40 3/8-18 3/8-27 3/8-36 3/8-40 7/16-18 7/16-24 7/16-27 1/2-14 1/2-18 1/2-24 1/2-27 9/16-14 " +
		"9/16-27 5/8-14 5/8-27 3/4-14 3/4-18 3/4-24 3/4-27 7/8-10 7/8-18 7/8-24 7/8-27 1-10 1-14 1-18 1-24 1-27 1-1/8-10 1-1/8-14 1-1/8-24 " +
		"1-1/4-10 1-1/4-14 1-1/4-24 1-3/8-10 1-3/8-14 1-3/8-24 1-1/2-10 1-1/2-14 1-1/2-24 1-3/4-10 1-3/4-14 1-3/4-18 2-10 2-14 2-18",
}

// secondSizes are sixteenths to 2 in and eighths to 6, as they are written.
func secondSizes() []string {
	var all []string
	for i := int64(4); i <= 96; i++ {
		if i > 32 && i%2 == 1 {
			continue
		}
		whole, rest := i/16, new(big.Rat).SetFrac64(i%16, 16)
		switch {
		case i%16 == 0:
			all = append(all, fmt.Sprint(whole))
		case whole == 0:
			all = append(all, rest.String())
		default:
			all = append(all, fmt.Sprintf("%d-%s", whole, rest))
		}
	}
	return all
}

// secondThreads are all threads of the lists and of the constant-pitch series.
func secondThreads() []secondThread {
	var all []secondThread
	taken := map[string]bool{}
	add := func(text, series string) {
		text, screw := strings.CutPrefix(text, "#")
		cut := strings.LastIndex(text, "-")
		if taken[text] {
			return
		}
		taken[text] = true
		n, _ := new(big.Rat).SetString(text[cut+1:])
		all = append(all, secondThread{text, series, sizeOf(text[:cut], screw), n})
	}
	for _, series := range []string{"UNC", "UNF", "UNEF", "UNS"} {
		for _, text := range strings.Fields(secondLists[series]) {
			add(text, series)
		}
	}
	for _, s := range []struct{ tpi, from, to int64 }{{4, 40, 96}, {6, 23, 96}, {8, 17, 96}, {12, 9, 96}, {16, 6, 96}, {20, 4, 48}, {28, 4, 24}, {32, 4, 16}} {
		for _, size := range secondSizes() {
			at := sizeOf(size, false)
			if at.Cmp(big.NewRat(s.from, 16)) >= 0 && at.Cmp(big.NewRat(s.to, 16)) <= 0 {
				add(fmt.Sprintf("%s-%d", size, s.tpi), "UN")
			}
		}
	}
	return all
}

// toleranceAs are the sizes whose published pitch-diameter tolerance is that of another
// size. The table governs; only one of them is outside the constant-pitch series alone.
func (s secondThread) toleranceAs() *big.Float {
	for _, other := range []struct{ size, as string }{{"15/16", "1"}, {"2-3/8", "2-1/2"}, {"5-3/4", "6"}} {
		if s.diameter.Cmp(sizeOf(other.size, false)) == 0 {
			return float(sizeOf(other.as, false))
		}
	}
	if s.diameter.Cmp(big.NewRat(9, 16)) == 0 && (s.series == "UN" || s.series == "UNEF") {
		return exact(1, 2)
	}
	return float(s.diameter)
}

// limits are the limits of a class in units of 0.0001 in, by name; on demand with Td2
// rounded to six places first.
func (s secondThread) limits(class string, six bool) map[string]int64 {
	d, p := float(s.diameter), float(new(big.Rat).Inv(s.tpi))
	as := s.toleranceAs()
	engagement := product(exact(9, 1), p)
	if s.series == "UNC" || s.series == "UNF" || s.series == "UN" && s.tpi.Cmp(big.NewRat(8, 1)) <= 0 {
		engagement = as
	}
	td2 := product(decimal("0.0015"), sum(cubeRoot(as), new(big.Float).SetPrec(secondBits).Sqrt(engagement), product(exact(10, 1), twoThirds(p))))
	if six {
		td2 = exact(units(td2, 6), 1_000_000)
	}
	root3 := new(big.Float).SetPrec(secondBits).Sqrt(exact(3, 1))
	factor := map[string]string{"1A": "1.5", "2A": "1", "3A": "0.75", "1B": "1.95", "2B": "1.3", "3B": "0.975"}[class]
	tolerance := units(product(decimal(factor), td2), 4)
	pitch := units(less(d, product(exact(3, 8), root3, p)), 4)
	if class[1] == 'B' {
		least, most := s.minor(d, p, root3, class)
		return map[string]int64{"pitch_min": pitch, "pitch_max": pitch + tolerance, "minor_min": least, "minor_max": most}
	}
	allowance, width := int64(0), decimal("0.060")
	if class != "3A" {
		allowance = units(product(decimal("0.3"), td2), 4)
	}
	if class == "1A" {
		width = decimal("0.090")
	}
	major := units(d, 4) - allowance
	root := units(less(exact(major, 10000), product(exact(11, 16), root3, p)), 4)
	return map[string]int64{
		"allowance": allowance, "major_max": major, "major_min": major - units(product(width, twoThirds(p)), 4),
		"pitch_max": pitch - allowance, "pitch_min": pitch - allowance - tolerance, "minor_max": root,
	}
}

// minor is the minor diameter of an internal thread in units of 0.0001 in: thousandths from
// size 6 up, but for the largest of class 3B.
func (s secondThread) minor(d, p, root3 *big.Float, class string) (least, most int64) {
	small := less(sum(product(decimal("0.05"), twoThirds(p)), quotient(product(decimal("0.03"), p), d)), decimal("0.002"))
	small = smaller(small, product(decimal("0.394"), p))
	usual := less(product(exact(1, 4), p), product(decimal("0.40"), p, p))
	if s.tpi.Cmp(big.NewRat(4, 1)) < 0 {
		usual = product(decimal("0.15"), p)
	}
	tolerance := usual
	switch {
	case class == "3B" && s.tpi.Cmp(big.NewRat(13, 1)) >= 0:
		tolerance = larger(small, less(product(decimal("0.23"), p), product(decimal("1.5"), p, p)))
	case class == "3B":
		tolerance = larger(small, product(decimal("0.120"), p))
	case s.diameter.Cmp(big.NewRat(1, 4)) < 0:
		tolerance = larger(small, usual)
	}
	least = units(less(d, product(exact(5, 8), root3, p)), 4)
	most = least + units(tolerance, 4)
	if s.diameter.Cmp(big.NewRat(138, 1000)) < 0 {
		return least, most
	}
	thousandths := func(x int64) int64 { return 10 * units(exact(x, 10000), 3) }
	if class != "3B" {
		most = thousandths(most)
	}
	return thousandths(least), most
}

// Why the two computations print a size differently.
const (
	published = "the published table differs from the formula, and calc goes by the table"
	sixFirst  = "Td2 lies so near to an edge that rounding it to six places first, as ASME B1.30 does, moves the last digit"
)

// secondDiffers are the sizes that the two computations print differently, and why.
var secondDiffers = map[string]string{
	"6-32 UNC-3B pitch_max": published, "15/16-12 UN-3A pitch_min": published,
	"5/8-11 UNC-1A allowance": published, "5/8-11 UNC-1A major_max": published, "5/8-11 UNC-1A major_min": published,
	"5/8-11 UNC-1A pitch_max": published, "5/8-11 UNC-1A pitch_min": published,
	"5/8-11 UNC-2A allowance": published, "5/8-11 UNC-2A major_max": published, "5/8-11 UNC-2A major_min": published,
	"5/8-11 UNC-2A pitch_max": published, "5/8-11 UNC-2A pitch_min": published,
	"12-24 UNC-3A pitch_min": sixFirst, "1/4-20 UNC-2B pitch_max": sixFirst, "1-1/8-7 UNC-2A pitch_min": sixFirst,
	"1-7/8-8 UN-2B pitch_max": sixFirst, "3-20 UN-1B pitch_max": sixFirst, "4-3/4-6 UN-3A pitch_min": sixFirst,
	"4-3/4-6 UN-1B pitch_max": sixFirst, "5-3/4-8 UN-2A pitch_min": sixFirst, "6-8 UN-2A pitch_min": sixFirst,
}

// inPlaces prints units of 0.0001.
func inPlaces(x int64) string { return fmt.Sprintf("%d.%04d", x/10000, x%10000) }

// More than 2,000 threads and classes come out the same at the decimals printed.
func TestSecondComputationOfInchLimits(t *testing.T) {
	threads, sizes := 0, 0
	seen := map[string]bool{}
	for _, s := range secondThreads() {
		for _, class := range []string{"1A", "2A", "3A", "1B", "2B", "3B"} {
			name := s.size + " " + s.series + "-" + class
			d, err := calc.ParseDesignation(name)
			if err != nil {
				t.Errorf("%s: %v", name, err)
				continue
			}
			l, err := calc.LimitsOf(d)
			if err != nil {
				t.Logf("%s: %v", name, err)
				continue
			}
			threads++
			got := map[string]calc.Length{
				"pitch_min": l.Pitch.Min, "pitch_max": l.Pitch.Max, "minor_min": l.Minor.Min, "minor_max": l.Minor.Max,
				"allowance": l.Allowance, "major_max": l.Major.Max, "major_min": l.Major.Min,
			}
			for what, want := range s.limits(class, false) {
				sizes++
				printed := calc.Fixed(got[what].Inches(), 4)
				why, known := secondDiffers[name+" "+what]
				seen[name+" "+what] = true
				switch {
				case printed == inPlaces(want) && known:
					t.Errorf("%s %s: named as an exception, and it is none", name, what)
				case printed != inPlaces(want) && !known:
					t.Errorf("%s %s: %s, by the second computation %s", name, what, printed, inPlaces(want))
				case why == sixFirst:
					if six := s.limits(class, true)[what]; printed != inPlaces(six) {
						t.Errorf("%s %s: %s, rounded first %s", name, what, printed, inPlaces(six))
					}
				}
			}
		}
	}
	for name := range secondDiffers {
		if !seen[name] {
			t.Errorf("%s is named as an exception and was not compared", name)
		}
	}
	if threads < 2000 {
		t.Errorf("only %d threads and classes", threads)
	}
	t.Logf("%d threads and classes, %d sizes", threads, sizes)
}
