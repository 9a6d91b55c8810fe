package calc_test

import (
	"fmt"
	"math"
	"strconv"
	"testing"

	"scratchpass/calc"
)

func number(t *testing.T, text string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

func metal(t *testing.T, name string) calc.Material {
	t.Helper()
	return must[calc.Material](t)(calc.ParseMaterial(name))
}

// Forces by published tables: a pair as it is printed, or rows by feed, which a pair from
// memory meets to 6 %.
func TestForcesAgainstPublishedRows(t *testing.T) {
	seen := map[calc.Material]bool{}
	for _, row := range publishedRows(t, "forces.csv") {
		m, want := metal(t, row["material"]), number(t, row["force"])
		seen[m] = true
		if row["feed"] == "" {
			one := must[float64](t)(calc.CuttingForce(m, calc.Millimetres(1), calc.Millimetres(1)))
			tenth := must[float64](t)(calc.CuttingForce(m, calc.Millimetres(1), calc.Millimetres(0.1)))
			compare(t, row["material"]+" force", row["force"], one)
			compare(t, row["material"]+" power", row["power"], 1-math.Log10(one/tenth))
			continue
		}
		h := number(t, row["feed"]) * math.Sin(math.Pi/4)
		got := must[float64](t)(calc.CuttingForce(m, calc.Millimetres(1), calc.Millimetres(h))) / h
		if math.Abs(got-want) > 0.06*want {
			t.Errorf("%s at a feed of %s: %.0f, published %.0f", row["material"], row["feed"], got, want)
		}
	}
	if len(seen) != len(calc.Metals) {
		t.Errorf("only %d metals have rows", len(seen))
	}
}

// Moduli within 3 % of every published row.
func TestModuliAgainstPublishedRows(t *testing.T) {
	for _, row := range publishedRows(t, "moduli.csv") {
		want := 0.0
		if row["gpa"] != "" {
			want = number(t, row["gpa"]) * 1000
		} else {
			want = number(t, row["mpsi"]) * 6894.76
		}
		if got := metal(t, row["material"]).Modulus(); math.Abs(got-want) > 0.03*want {
			t.Errorf("%s: %.0f, published %.0f", row["material"], got, want)
		}
	}
}

// At the chips of a thread, a few thousandths, the metals stand in the order that everyone who
// has cut them knows.
func TestTheOrderOfTheMetals(t *testing.T) {
	for _, chip := range []calc.Length{0.001, 0.002, 0.005, 0.015} {
		before := math.Inf(1)
		for _, name := range []string{"alloy-steel", "stainless", "mild-steel", "cast-iron", "aluminium", "brass"} {
			force := must[float64](t)(calc.CuttingForce(metal(t, name), 0.05, chip))
			if force >= before {
				t.Errorf("a chip of %v in %s: %.0f N", chip, name, force)
			}
			before = force
		}
	}
	if got := calc.MildSteel.ThreadingSpeed().InFeet(); got != 25 {
		t.Errorf("mild steel is threaded at %v feet a minute", got)
	}
	if calc.Material(99).SpecificForce() != calc.SpecificForce || calc.Material(-1).String() != "mild-steel" {
		t.Error("a metal that is none is not taken for mild steel")
	}
	if _, err := calc.ParseMaterial("titanium"); err == nil {
		t.Error("titanium has figures")
	}
}

// Rohm prints 2.60 kN/mm^2 for St 42 at a feed of 0.16 mm and a tool at 45 degrees: here the
// force on a chip one millimetre wide.
func ExampleCuttingForce() {
	thickness := 0.16 * math.Sin(math.Pi/4)
	force, err := calc.CuttingForce(calc.MildSteel, calc.Millimetres(1), calc.Millimetres(thickness))
	fmt.Printf("%.1f kN/mm^2 %v\n", force/thickness/1000, err)
	// Output: 2.6 kN/mm^2 <nil>
}

// Held at both ends a bar is 16 times as stiff in its middle, 48 E I / L^3, and brass half as
// stiff as steel.
func TestStiffnessOfWork(t *testing.T) {
	one := must[float64](t)(calc.BarStiffness(4, 0.75))
	held := must[float64](t)(calc.BetweenCentresStiffness(calc.MildSteel, 4, 0.75))
	i := must[float64](t)(calc.SecondMomentRound(0.75))
	if !calc.Within(held/(48*calc.SteelModulus*i/math.Pow(4*25.4, 3)), 1, 1e-12) || !calc.Within(held/one, 16, 1e-12) {
		t.Error(held, one)
	}
	if brass := must[float64](t)(calc.WorkStiffness(calc.Brass, 4, 0.75)); !calc.Within(brass/one, 104.0/206, 1e-12) {
		t.Error(brass, one)
	}
}
