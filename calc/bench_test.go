package calc_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"scratchpass/calc"
)

// E. Isakov, Boring: calculating deflection, 2019: half the overhang is eight times as
// stiff, twice the diameter sixteen times.
func ExampleBarStiffness() {
	k, _ := calc.BarStiffness(4, 1)
	shorter, _ := calc.BarStiffness(2, 1)
	thicker, _ := calc.BarStiffness(4, 2)
	fmt.Println(calc.Fixed(shorter/k, 3), calc.Fixed(thicker/k, 3))
	// Output: 8.000 16.000
}

// F. D. Jones, Turning and Boring, 1914: a 24-tooth wheel on a 6 TPI screw turns once
// in 4 in; with 8 marks that is half an inch from mark to mark.
func ExampleThreadDial_UnderIndex() {
	d := calc.ThreadDial{LeadScrew: 6, Teeth: 24, Marks: 8}
	for _, run := range []calc.Length{0, 0.5, 3.75, 4, -0.5} {
		mark, _ := d.UnderIndex(run)
		fmt.Print(calc.Shortest(mark, 3), " ")
	}
	// Output: 0 1 7.5 0 7
}

// A slide and its dial agree within the play, whatever is wound; after winding in, to
// the last digit.
func TestSlideAgreesWithItsDialWithinThePlay(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		s := calc.Slide{Play: calc.Inches(r.Float64() * 0.02)}
		for range 30 {
			by := calc.Inches(r.NormFloat64() * 0.01)
			s, _ = s.Wound(by)
			if l := s.Loose(); l < -1e-12 || l > s.Play+1e-12 {
				t.Fatalf("loose by %v of %v", l, s.Play)
			}
			if by > s.Play && math.Abs(s.Loose().Inches()) > 1e-12 {
				t.Fatalf("wound in %v and still loose by %v", by, s.Loose())
			}
		}
	}
	if _, err := (calc.Slide{}).Wound(7); err == nil {
		t.Error("wound in 7 in")
	}
}

// What a cut and s spring passes leave on is the closed form.
func TestSpringPassesReachTheClosedForm(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 2000 {
		before, cut, lag := calc.Inches(r.Float64()*0.06), calc.Inches(0.0005+r.Float64()*0.02), r.Float64()*0.95
		at := before
		for s := range 12 {
			at, _ = calc.DepthAfterPass(at, before+cut, lag)
			left, err := calc.LeftOnAfterSprings(cut, lag, s)
			if err != nil || math.Abs((before+cut-at-left).Inches()) > 1e-12 {
				t.Fatalf("after %d spring passes %v is left, the closed form says %v (%v)", s, before+cut-at, left, err)
			}
		}
	}
	if at, _ := calc.DepthAfterPass(0.02, 0.01, 0.3); at != 0.02 {
		t.Errorf("a setting that is not deeper cut to %v", at)
	}
}

// The half-nut falls into the next thread of the screw, or drops back into the one
// just gone; then the screw stands on a whole thread.
func TestHalfNutFallsIntoAWholeThread(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 5000 {
		run, lead := calc.Inches(r.Float64()*40), calc.Inch/calc.Length(1+r.IntN(20))
		on, err := calc.RunToNut(run, lead, 0.12)
		if err != nil {
			t.Fatal(err)
		}
		if left := (run + on).Remainder(lead); math.Min(left.Over(lead), 1-left.Over(lead)) > 1e-6 || on > lead || on < -lead.Times(0.1200001) {
			t.Fatalf("run %v, lead %v: on by %v", run, lead, on)
		}
	}
}

// From any place the run to a mark brings just that mark under the index.
func TestRunToMarkBringsTheMark(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for range 5000 {
		d := calc.ThreadDial{LeadScrew: calc.ThreadsPerInch(1 + r.IntN(12)), Teeth: 16 + r.IntN(40), Marks: 1 + r.IntN(16)}
		run, mark := calc.Inches(r.Float64()*50-10), r.IntN(d.Marks)
		on, err := d.RunToMark(run, mark)
		if err != nil {
			t.Fatal(err)
		}
		at, _ := d.UnderIndex(run + on)
		if off := math.Abs(at - float64(mark)); math.Min(off, float64(d.Marks)-off) > 1e-6 {
			t.Fatalf("%+v: run %v on by %v stands at %v, want %d", d, run, on, at, mark)
		}
	}
}

// A chip too thin to count in full counts in proportion, and the limit grows with
// stiffness and damping.
func TestWidestQuietChip(t *testing.T) {
	for _, c := range []struct {
		width, thickness, want calc.Length
	}{{0.1, 0.005, 0.1}, {0.1, 0.01, 0.1}, {0.1, 0.001, 0.02}, {0.1, 0, 0}} {
		if got, err := calc.CountedWidth(c.width, c.thickness, 0.005); err != nil || !calc.Within(got.Inches(), c.want.Inches(), 1e-12) {
			t.Errorf("%+v: %v %v", c, got, err)
		}
	}
	soft, _ := calc.WidestQuietChip(calc.MildSteel, 2000, 0.05)
	stiff, _ := calc.WidestQuietChip(calc.MildSteel, 4000, 0.05)
	damped, _ := calc.WidestQuietChip(calc.MildSteel, 2000, 0.1)
	if !calc.Within(stiff.Over(soft), 2, 1e-9) || damped <= soft {
		t.Error(soft, stiff, damped)
	}
}
