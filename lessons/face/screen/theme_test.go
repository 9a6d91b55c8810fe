package screen

import (
	"math"
	"strconv"
	"testing"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"

	"scratchpass/lessons/face/text"
)

// linear are the three parts of a colour, in light.
func linear(t *testing.T, hex string) [3]float64 {
	t.Helper()
	n, err := strconv.ParseUint(hex[1:], 16, 24)
	if err != nil || len(hex) != 7 {
		t.Fatalf("%q is no colour", hex)
	}
	var c [3]float64
	for i := range c {
		x := float64(n>>(16-8*i)&0xff) / 255
		if c[i] = x / 12.92; x > 0.04045 {
			c[i] = math.Pow((x+0.055)/1.055, 2.4)
		}
	}
	return c
}

// contrast is by WCAG 2.2, success criterion 1.4.3.
func contrast(t *testing.T, a, b string) float64 {
	t.Helper()
	of := func(hex string) float64 { c := linear(t, hex); return 0.2126*c[0] + 0.7152*c[1] + 0.0722*c[2] }
	x, y := of(a), of(b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

// Every role can be read on the ground it is made for.
func TestContrast(t *testing.T) {
	for ground, p := range palettes {
		if ground == UnknownGround {
			continue
		}
		for _, paper := range papers[ground] {
			for name, c := range map[string]colour{"steel": p.steel, "right": p.right, "wrong": p.wrong, "faint": p.faint} {
				if got := contrast(t, c.hex, paper); got < 4.5 {
					t.Errorf("%v: %s on %s has %.1f to 1", ground, name, paper, got)
				}
			}
		}
		if got := contrast(t, p.caution.hex, p.cautionGround.hex); got < 7 {
			t.Errorf("%v: a caution has %.1f to 1", ground, got)
		}
	}
	if got := contrast(t, "#000000", "#FFFFFF"); math.Abs(got-21) > 1e-9 {
		t.Errorf("black on white has %v", got)
	}
}

// seen is a colour as someone sees it who lacks one kind of cone: matrices of Machado,
// Oliveira and Fernandes 2009, severity 1.
func seen(c [3]float64, m [3][3]float64) [3]float64 {
	var out [3]float64
	for i := range out {
		for j := range c {
			out[i] += m[i][j] * c[j]
		}
		out[i] = max(0, min(1, out[i]))
	}
	return out
}

var deficiencies = map[string][3][3]float64{
	"no red cones":   {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}},
	"no green cones": {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}},
	"no blue cones":  {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}},
}

// lab is CIE L*a*b* for D65.
func lab(c [3]float64) [3]float64 {
	x := (0.4124*c[0] + 0.3576*c[1] + 0.1805*c[2]) / 0.95047
	y := 0.2126*c[0] + 0.7152*c[1] + 0.0722*c[2]
	z := (0.0193*c[0] + 0.1192*c[1] + 0.9505*c[2]) / 1.08883
	f := func(v float64) float64 {
		if v > 216.0/24389 {
			return math.Cbrt(v)
		}
		return (24389.0/27*v + 16) / 116
	}
	return [3]float64{116*f(y) - 16, 500 * (f(x) - f(y)), 200 * (f(y) - f(z))}
}

// Right and not right stay apart for every common way of seeing colours. Each has a mark
// and a word besides.
func TestRightAndWrongStayApart(t *testing.T) {
	for ground, p := range palettes {
		if ground == UnknownGround {
			continue
		}
		for name, m := range deficiencies {
			a, b := lab(seen(linear(t, p.right.hex), m)), lab(seen(linear(t, p.wrong.hex), m))
			if apart := math.Hypot(math.Hypot(a[0]-b[0], a[1]-b[1]), a[2]-b[2]); apart < 20 {
				t.Errorf("%v, %s: right and wrong are %.0f apart", ground, name, apart)
			}
		}
	}
}

// Without colours a screen has none, and the same letters.
func TestNoColour(t *testing.T) {
	none := newTheme(Look{Profile: termenv.Ascii, Ground: Dark})
	for role, style := range none.roles {
		if got := style.Render("x"); got != "x" {
			t.Errorf("role %v: %q", role, got)
		}
	}
	if own := newTheme(Look{Profile: termenv.TrueColor}).roles[text.Good].GetForeground(); own != lipgloss.Color("6") {
		t.Errorf("on an unknown ground right is %v", own)
	}
}
