package arithmetic_test

import (
	"math"
	"strings"
	"testing"

	"scratchpass/quiz/arithmetic"
)

func TestValue(t *testing.T) {
	for text, want := range map[string]float64{
		"0.614 x 0.05":                 0.0307,
		"(0.0682)/cos(29.5)":           0.0682 / math.Cos(29.5*math.Pi/180),
		"1/28":                         1.0 / 28,
		"7/8":                          0.875,
		"1 - 2*3":                      -5,
		"-0.5 + 1":                     0.5,
		"2^10":                         1024,
		"2 ^ 3 ^ 2":                    512,
		"sqrt(2)*sqrt(2)":              2,
		"3x4x5":                        60,
		"2 x (3+4)":                    14,
		"2 x -3":                       -6,
		"pi/4":                         math.Pi / 4,
		"0.1 ÷ COS(29.5°)":             0.1 / math.Cos(29.5*math.Pi/180),
		"atan(0.1/(3.14159265*0.935))": math.Atan(0.1/(3.14159265*0.935)) * 180 / math.Pi,
		".5*.5":                        0.25,
		"cos(60)":                      0.5,
		"99999999999999999999*2":       2e20,
	} {
		if got, err := arithmetic.Value(text); err != nil || math.Abs(got-want) > 1e-9*math.Max(1, math.Abs(want)) {
			t.Errorf("%q = %v, %v; want %v", text, got, err, want)
		}
	}
	for _, text := range []string{"", "abc", "1..9", "1/0", "0/0", "sqrt(-1)", "acos(2)", "cos 30", "2(3)", "(3)(4)", "1 1/2", "1e5*2", "2**3", "(1+2", "1+", "len(1)", "map(1)", "1;2", "a=1", "'a'+'b'", "[1]", "{}", "1?2:3", "1 > 2", "pi pi", "$env", "x", strings.Repeat("1+", 100) + "1", strings.Repeat("(", 200)} {
		if got, err := arithmetic.Value(text); err == nil {
			t.Errorf("%q = %v", text, got)
		}
	}
}

func TestIs(t *testing.T) {
	for text, want := range map[string]bool{
		"0.614 x 0.05": true, "1/28": true, "cos(30)": true, "0.1-0.05": true, "(1)*2": true, "3 - -2": true,
		"0.05": false, "-0.05": false, "+3": false, "1.2.3": false, "5 mm": false, "hint": false, "(5)": false, "": false, "1 1/2": true,
	} {
		if arithmetic.Is(text) != want {
			t.Errorf("%q is arithmetic: %v", text, !want)
		}
	}
}

// Whatever is typed, it is worked out or refused: no panic, no endless work, a number that
// is one.
func FuzzValue(f *testing.F) {
	for _, seed := range []string{"0.614 x 0.05", "(0.0682)/cos(29.5)", "1/28", "2^2^2^2^2^2", "((((1))))", "1..2", "sqrt(sqrt(2))"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		x, err := arithmetic.Value(text)
		if err == nil && (math.IsNaN(x) || math.IsInf(x, 0)) {
			t.Errorf("%q = %v", text, x)
		}
		if err != nil && err.Error() == "" {
			t.Errorf("%q is refused without a word", text)
		}
	})
}
