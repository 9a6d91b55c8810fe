package calc_test

import (
	"strings"
	"testing"

	"scratchpass/calc"
)

// The callouts are in the forms of ASME B1.5, as handbooks quote them.
func TestParseAcme(t *testing.T) {
	for text, want := range map[string]string{
		"1-5 ACME-2G":             "1-5 ACME-2G",
		"1-1/2-4 acme - 3g - lh":  "1-1/2-4 ACME-3G-LH",
		"1.750-4-ACME-2G":         "1-3/4-4 ACME-2G",
		"2.875-0.4P-0.8L-ACME-3G": "2-7/8-2.5 ACME-3G 2 STARTS",
		"5/8-8 ACME (2 STARTS)":   "5/8-8 ACME 2 STARTS",
		"1-5 ACME-4C":             "1-5 ACME-4C",
	} {
		d, err := calc.ParseAcme(text)
		if err != nil || d.String() != want {
			t.Errorf("%q is %q (%v), want %q", text, d.String(), err, want)
		}
		if again, err := calc.ParseAcme(d.String()); err != nil || again != d {
			t.Errorf("%q read again is %v (%v), not %v", d.String(), again, err, d)
		}
	}
	for text, want := range map[string]string{
		"1-5 STUB ACME":                    "a stub Acme thread is less deep",
		"1-5 ACME-2A":                      "not an Acme thread: give",
		"ACME":                             "not an Acme thread: give",
		"1-40 ACME-2G":                     "Acme pitch",
		"1/16-5 ACME-2G":                   "nominal diameter",
		"1-5 ACME-2G 13 STARTS":            "starts 13: give 1 to 12",
		"2.875-.4P-.8L-ACME-2G (3 STARTS)": "contradict each other",
		"2.875-.4P-.5L-ACME-2G":            "not a whole number of pitches",
	} {
		if d, err := calc.ParseAcme(text); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q gives %v and %v, want an error with %q", text, d, err, want)
		}
	}
}

// FuzzAcme: whatever is typed, there is an error that quotes it, or a thread whose own
// text never reads as another thread.
func FuzzAcme(f *testing.F) {
	for _, s := range []string{"1-5 ACME-2G", "2.875-0.4P-0.8L-ACME-3G", "1-1/2-4 ACME-2G-LH 2 STARTS", "1-5 STUB ACME", "\x1b[2J ACME"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		d, err := calc.ParseAcme(text)
		if err != nil {
			if !strings.HasPrefix(err.Error(), calc.Quoted(text)+": ") {
				t.Errorf("%q: %v does not quote what was typed", text, err)
			}
			return
		}
		if again, err := calc.ParseAcme(d.String()); err == nil && again.String() != d.String() {
			t.Errorf("%q is %q, which reads as %q (%v)", text, d, again, err)
		}
	})
}
