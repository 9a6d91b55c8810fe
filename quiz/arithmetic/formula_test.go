package arithmetic_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"scratchpass/quiz/arithmetic"
)

func TestFormula(t *testing.T) {
	numbers := map[string]float64{"P": 0.125, "a": 29.5, "L": 36, "s": 5, "d2": 0.5}
	names := []string{"P", "a", "L", "s", "d2"}
	for text, want := range map[string]float64{
		"L / s":                    7.2,
		"floor(L / s)":             7,
		"floor(0.3/0.1)":           3,
		"ceil(0.3/0.1)":            3,
		"depth(P)":                 0.613435 * 0.125,
		"travel(depth(P), a)":      0.613435 * 0.125 / math.Cos(29.5*math.Pi/180),
		"depth(P)/cos(a)":          0.613435 * 0.125 / math.Cos(29.5*math.Pi/180),
		"pitch(8)":                 0.125,
		"1/28":                     1.0 / 28,
		"2^10":                     1024,
		"d2 * 2":                   1,
		"99999999999 * 9999999999": 99999999999.0 * 9999999999,
		"round(L/7, 2)":            5.14,
		"min(L, s) + max(1, 2)":    7,
		"abs(-3)":                  3,
		"-s + 6":                   1,
		"rpm(100, 1)":              1200 / math.Pi,
		"rpmmm(30, 20)":            30000 / (math.Pi * 20),
		"leadangle(0.125, 0.9)":    math.Atan(0.125/(math.Pi*0.9)) * 180 / math.Pi,
		"minor(1, P)":              1 - 2*0.613435*0.125,
		"bore(1, P)":               1 - 1.082532*0.125,
		"pitchdia(1, P)":           1 - 0.649519*0.125,
	} {
		f, err := arithmetic.NewFormula(text, names)
		if err != nil {
			t.Errorf("%q: %v", text, err)
			continue
		}
		if got, err := f.Value(numbers); err != nil || math.Abs(got-want) > 1e-6*math.Max(1, math.Abs(want)) {
			t.Errorf("%q = %v, %v; want %v", text, got, err, want)
		}
	}
	for text, want := range map[string]string{
		"": "empty", "L +": "can't be worked out", "L + q": `"q" is not known`, "L % s": "the sign %", "L > s": "the sign >", "L > s ? 1 : 2": "",
		"len(L)": "", "L(s)": "brackets", "'a'": "", "[1]": "", "{}": "", "map([1], #)": "", "cos()": "", "cos(1, 2)": "", "depth": "", "L.x": "",
		"$env": "", "L | sqrt": "", "let x = 1; x": "", "now()": "", strings.Repeat("1+", 160) + "1": "more than", "L; s": "", "5..6": "",
	} {
		if f, err := arithmetic.NewFormula(text, names); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q is read as %v, %v; want %q", text, f, err, want)
		}
	}
	for _, text := range []string{"1/(s-5)", "sqrt(-L)", "depth(-P)", "acos(L)", "10^(L*100)"} {
		f, err := arithmetic.NewFormula(text, names)
		if err != nil {
			t.Errorf("%q: %v", text, err)
			continue
		}
		if x, err := f.Value(numbers); err == nil {
			t.Errorf("%q = %v, and has no value", text, x)
		}
	}
	f, _ := arithmetic.NewFormula("L*s+cos(a)*L", names)
	if !slices.Equal(f.Uses, []string{"L", "a", "s"}) || f.Shown() != "L x s+cos(a) x L" {
		t.Errorf("%v %q", f.Uses, f.Shown())
	}
}

// Workings print x for times, and whoever copies one may write it so.
func TestTimes(t *testing.T) {
	numbers := map[string]float64{"r": 2, "W": 3, "s": 4, "x": 5}
	for text, want := range map[string]float64{
		"r x W / s": 1.5, "r × W": 6, "r·W": 6, "2 x r x W x s": 48, "2x3": 6, "(r)x(W)": 6, "r X W": 6, "2 x (r + W)": 10,
		"sqrt(s) x r": 4, "s ÷ r": 2, "s − r": 2, "2 x -r": -4, "max(r, W) x s": 12, "2 x 3 x 4 x 5": 120,
	} {
		f, err := arithmetic.NewFormula(text, []string{"r", "W", "s"})
		if err != nil {
			t.Errorf("%q: %v", text, err)
			continue
		}
		if got, err := f.Value(numbers); err != nil || math.Abs(got-want) > 1e-9 {
			t.Errorf("%q = %v, %v; want %v", text, got, err, want)
		}
		if strings.ContainsAny(f.Shown(), "*×·÷") {
			t.Errorf("%q is shown as %q", text, f.Shown())
		}
	}
	for text, want := range map[string]float64{"x * r": 10, "max(x, r)": 5, "r * x / s": 2.5} { // an x that is a number
		f, err := arithmetic.NewFormula(text, []string{"r", "s", "x"})
		if err != nil {
			t.Errorf("%q: %v", text, err)
			continue
		}
		if got, err := f.Value(numbers); err != nil || got != want || !slices.Contains(f.Uses, "x") {
			t.Errorf("%q = %v, %v; want %v", text, got, err, want)
		}
	}
	for text, want := range map[string]string{"m = r * W": "leave m = out", "m= r": "leave m= out", "r W": "times is written *", "2 r": "times is written *", "2r": "times is written *", "r (W)": "times is written *"} {
		if _, err := arithmetic.NewFormula(text, []string{"r", "W"}); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
	if _, err := arithmetic.NewFormula("r x W", []string{"r", "W", "x"}); err == nil || !strings.Contains(err.Error(), "times is written *, for x is a number") {
		t.Errorf("with an input called x: %v", err)
	}
}

// A working spells out what no calculator has, and what it prints is worth the same.
func TestShown(t *testing.T) {
	numbers := map[string]float64{"P": 0.125, "a": 29.5, "h": 0.07, "D": 1, "n": 8}
	names := []string{"P", "a", "h", "D", "n"}
	for text, want := range map[string]string{
		"depth(P)":                "0.613435 x P",
		"travel(depth(P), a)":     "(0.613435 x P) / cos(a)",
		"2*depth(pitch(n)) + h":   "2 x (0.613435 x (1 / n)) + h",
		"cos(a) * travel(h, a)":   "cos(a) x (h / cos(a))",
		"travel((h+P)*2, a)":      "",
		"minor(D, P)":             "D - 2 x (0.613435 x P)",
		"min(depth(P), h)":        "min((0.613435 x P), h)",
		"rpm(100, D)":             "12 x 100 / (3.14159265 x D)",
		"leadangle(P, D)":         "atan(P / (3.14159265 x D))",
		"percent(D, 0.9, P)":      "100 x (D - 0.9) / (1.082532 x P)",
		"overwires(D, h, P)":      "D + 3 x h - 0.866025 x P",
		"bore(D,P)-pitchdia(D,P)": "(D - 1.082532 x P)-(D - 0.649519 x P)",
	} {
		f, err := arithmetic.NewFormula(text, names)
		if err != nil {
			t.Fatal(err)
		}
		if f.Shown() != want && want != "" {
			t.Errorf("%q is shown as %q, want %q", text, f.Shown(), want)
		}
		again, err := arithmetic.NewFormula(strings.ReplaceAll(f.Shown(), " x ", "*"), names)
		if err != nil {
			t.Errorf("%q: %v", f.Shown(), err)
			continue
		}
		x, _ := f.Value(numbers)
		if y, err := again.Value(numbers); err != nil || math.Abs(x-y) > 2e-5*math.Abs(x) {
			t.Errorf("%q is %v, and as it is shown %v", text, x, y)
		}
	}
}

func TestCheckSymbol(t *testing.T) {
	for name, ok := range map[string]bool{"P": true, "d2": true, "speed": true, "": false, "2d": false, "a-b": false, "cos": false, "pi": false, "depth": false, "in": false, "muchtoolong": false, "é": false} {
		if err := arithmetic.CheckSymbol(name); (err == nil) != ok {
			t.Errorf("%q: %v", name, err)
		}
	}
}

// Whatever a formula is, it is refused or has a number as its value.
func FuzzFormula(f *testing.F) {
	for _, seed := range []string{"L/(s+w)", "depth(P)/cos(29.5)", "2^2^2^2^2", "((((1))))", "L..2", "let x = 1; x", "L ?? s", "\"a\" in [1]"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		formula, err := arithmetic.NewFormula(text, []string{"L", "s", "P"})
		if err != nil {
			return
		}
		if formula.Shown() == "" {
			t.Errorf("%q is shown as nothing", text)
		}
		x, err := formula.Value(map[string]float64{"L": 3, "s": 0, "P": -1})
		if err == nil && (math.IsNaN(x) || math.IsInf(x, 0)) {
			t.Errorf("%q = %v", text, x)
		}
	})
}
