package answer_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
)

// inches expects a length in inches.
func inches(key float64) answer.Expected {
	return answer.Expected{Kind: answer.Quantity, Key: answer.NumberResponse(key), Unit: machine.InchUnit, Tolerance: 0.001, ErrorTolerance: 0.0008}
}

func in(u machine.Unit) *answer.Expected { return &answer.Expected{Kind: answer.Quantity, Unit: u} }

// understood is a response as this test writes it: number, row, options or fields, with
// the unit that was written, or else the phrase of what would be understood.
func understood(e *answer.Expected, text string) string {
	r, err := e.Read(text)
	if err != nil {
		var u *answer.UnreadError
		if !errors.As(err, &u) {
			return fmt.Sprintf("an error of another type, %T", err)
		}
		said := u.Want.Phrase
		for _, v := range u.Want.Values {
			said += " " + v[0] + "=" + v[1]
		}
		return said
	}
	said := fmt.Sprintf("%.6g", r.X)
	switch {
	case r.Xs != nil:
		said = strings.Trim(fmt.Sprintf("%.6g", r.Xs), "[]")
	case r.Fields != nil:
		said = ""
		for _, f := range r.Fields {
			said += f[1] + " "
		}
	case !e.Kind.Numeric():
		said = "options " + strings.Join(r.Keys, " ")
	}
	return strings.TrimSpace(said + " " + r.Unit)
}

var (
	secondUnit  = machine.Unit{Name: "s", Factor: 1, Places: 2}
	percentUnit = machine.Unit{Name: "percent", Factor: 1, Places: 1}
	passesUnit  = machine.Unit{Name: "passes", One: "pass", Factor: 1, Places: 1, Count: true}
	speedUnit   = machine.Unit{Name: "mm/s", Factor: 25.4, Places: 2}
)

// How numbers are typed, and what is made of them; lengths are held in inches.
func TestReadNumbers(t *testing.T) {
	for _, c := range []struct {
		unit machine.Unit
		want map[string]string
	}{
		{machine.InchUnit, map[string]string{
			"0.0556": "0.0556", ".0556": "0.0556", "0,0556": "0.0556", "+0.05": "0.05", "-0.05": "-0.05", "3/64": "0.046875", "1 1/2": "1.5", "1-1/2": "1.5", "½": "0.5",
			"0.0556 in": "0.0556 in", `0.0556"`: "0.0556 in", "0.0556 INCHES.": "0.0556 in", "55.6 thou": "0.0556 thou", "2.54 mm": "0.1 mm", "2.54millimetres": "0.1 mm",
			"P = 0.0556": "0.0556", "P = 1/18 = 0.0556 in": "0.0556 in", "about 0.05": "0.05", "Approx. 0.05": "0.05", "approx 0.05": "0.05", "ca. 0.05": "0.05", "~0.05": "0.05",
			"minus 0.05": "-0.05", "- 0.05": "-0.05", "\u2212 0.05": "-0.05", "\u2013 0.05": "-0.05", "about minus 0.05": "-0.05",
			"": "want-in", "five": "want-in", "0.05 0.06": "want-in", "1,500": "want-in", "0.05 furlongs": "want-in", "0.05 deg": "want-in", "= 0.05": "0.05", "2 = 0.05": "want-in",
			"h = 2, P = 0.05": "want-in", "1/0": "want-in", "about": "want-in", "minus": "want-in",
		}},
		{machine.MMUnit, map[string]string{ // 1.27 mm are 0.05 in
			"1.27": "0.05", "1,27 mm": "0.05 mm", "0.05 in": "0.05 in", "50 thou": "0.05 thou", "": "want-mm", "1.27 rpm": "want-mm",
		}},
		{machine.DegreeUnit, map[string]string{
			"29.5": "29.5", "29 1/2": "29.5", "29.5 deg": "29.5", "29.5°": "29.5", "29°30'": "29.5", "29 degrees 30 min": "29.5", "29°60'": "want-deg", "0.5 rad": "want-deg", "30 in": "want-deg",
		}},
		{machine.PlainUnit, map[string]string{ // a ratio of gears
			"0.5": "0.5", "1/2": "0.5", "1:2": "0.5", "20:40": "0.5", "1.5 to 3": "0.5", "20 : 40": "0.5", "r = 1:2": "0.5",
			"0:40": "want-plain", "20:0": "want-plain", "-20:40": "want-plain", "20:40:60": "want-plain", "20:x": "want-plain", "0.5 in": "want-plain", "": "want-plain",
		}},
		{machine.TPIUnit, map[string]string{
			"12": "12", "11.5": "11.5", "11 1/2 TPI": "11.5 TPI", "12 tpi": "12 TPI", "12 in": "want-number unit=TPI", "TPI": "want-number unit=TPI",
		}},
		{machine.RPMUnit, map[string]string{
			"95": "95", "95 rpm": "95 rpm", "95RPM": "95 rpm", "95 rev/min": "95 rpm", "95 revs": "95 rpm", "95 r/min": "95 rpm", "95/min": "95 rpm",
			"951/min": "951 rpm", "fast": "want-whole unit=rpm",
		}},
		{percentUnit, map[string]string{"85": "85", "85%": "85 percent", "85 %": "85 percent", "85 percent": "85 percent", "%": "want-number unit=percent"}},
		{passesUnit, map[string]string{
			"7": "7", "7 passes": "7 passes", "1 pass": "1 passes", "7 cuts": "7 passes", "7.5": "7.5", "seven": "want-whole unit=passes",
		}},
		{secondUnit, map[string]string{"1.24": "1.24", "1.24 s": "1.24 s", "1.24s": "1.24 s", "1.24 min": "want-number unit=s"}},
		{speedUnit, map[string]string{"25.4": "1", "25.4 mm/s": "1 mm/s", "25.4 mm/sec": "1 mm/s", "25.4 mm per second": "1 mm/s", "25.4 in/s": "want-number unit=mm/s"}},
	} {
		for text, want := range c.want {
			if got := understood(in(c.unit), text); got != want {
				t.Errorf("%q in %q is %s, want %s", text, c.unit.Name, got, want)
			}
		}
	}
	limits := answer.Expected{Kind: answer.Limits, Unit: machine.InchUnit}
	for text, want := range map[string]string{"0.49": "0.49", "490 thou": "0.49 thou", "0.49 to 0.5": "want-in"} {
		if got := understood(&limits, text); got != want {
			t.Errorf("%q for limits is %s, want %s", text, got, want)
		}
	}
}

// How a row of two readings is typed. One unit may stand behind the last or behind each.
func TestReadReadings(t *testing.T) {
	two := &answer.Expected{Kind: answer.Readings, Unit: machine.InchUnit, Key: answer.NumbersResponse(0.004, 0.005)}
	const refused = "want-readings n=2 example=0.0030 0.0030"
	for text, want := range map[string]string{
		"0.004 0.005": "0.004 0.005", "0.004, 0.005": "0.004 0.005", "0.004,0.005": "0.004 0.005", "0.004; 0.005": "0.004 0.005", "0.004 then 0.005": "0.004 0.005",
		"0.004 and 0.005": "0.004 0.005", "0.004 & 0.005": "0.004 0.005", "0.004 0.005 in": "0.004 0.005", "4 thou, 5 thou": "0.004 0.005 thou", "4 and 5 thou": "0.004 0.005 thou",
		"4 thou then 5": "0.004 0.005 thou", "0.1016 mm, 0.127 mm": "0.004 0.005 mm", "-0.004 0.005": "-0.004 0.005",
		"0 and 5 thou":                         "0 0.005 thou", // nothing is of every size
		"0.004":                                refused,
		"":                                     refused,
		"0.004 0.005 0.006":                    refused,
		"0.004 then five":                      refused,
		"0.004 in then 5 thou":                 refused, // two units
		"5 then 600 thou":                      refused, // the unit was not meant for both
		"5 then 400 thou":                      "0.005 0.4 thou",
		"0.001, 0.4 in":                        "0.001 0.4 in", // it is the unit of both anyway
		"0.001 0.4":                            "0.001 0.4",    // without a unit any two
		"0.004 then 0.005 bolts":               refused,
		strings.Repeat("0.004 ", 40) + "0.005": refused,
	} {
		if got := understood(two, text); got != want {
			t.Errorf("%.30q is %s, want %s", text, got, want)
		}
	}
	one := &answer.Expected{Kind: answer.Readings, Unit: machine.MMUnit, Key: answer.NumbersResponse(0.1)}
	for text, want := range map[string]string{"2.54": "0.1", "": "want-readings n=1 example=0.076"} {
		if got := understood(one, text); got != want {
			t.Errorf("%q is %s, want %s", text, got, want)
		}
	}
}

// How options are chosen and put in order.
func TestReadOptions(t *testing.T) {
	choice := &answer.Expected{Kind: answer.Choice, Options: []string{"back-and-up", "leave", "log-it"}}
	marks := &answer.Expected{Kind: answer.Several, Options: []string{"1", "2", "3", "4", "5", "6"}}
	many := &answer.Expected{Kind: answer.Several, Options: strings.Fields("1 2 3 4 5 6 7 8 9 10 11 12")}
	named := &answer.Expected{Kind: answer.Several, Options: []string{"guard-shut", "key-out", "speed-low"}}
	order := &answer.Expected{Kind: answer.Order, Options: []string{"open", "stop", "close"}}
	for _, c := range []struct {
		e    *answer.Expected
		want map[string]string
	}{
		{choice, map[string]string{
			"1": "options back-and-up", "3": "options log-it", " 2. ": "options leave", "(2)": "options leave", "#2": "options leave", "log-it": "options log-it", "LEAVE": "options leave",
			"0": "want-choice n=3", "4": "want-choice n=3", "-1": "want-choice n=3", "1.5": "want-choice n=3", "1 2": "want-choice n=3", "": "want-choice n=3", "leave it": "want-choice n=3",
		}},
		{marks, map[string]string{
			"1, 3": "options 1 3", "3 1": "options 3 1", "1 and 3": "options 1 3", "1;3": "options 1 3", "135": "options 1 3 5", "1/3/5": "options 1 3 5", "1+3": "options 1 3", "(1) (3)": "options 1 3",
			"1-3": "options 1 2 3", "1 to 3, 5": "options 1 2 3 5", "2 \u2013 4": "options 2 3 4", "1, 3, 5 (odd)": "options 1 3 5",
			"all": "options 1 2 3 4 5 6", "All marks.": "options 1 2 3 4 5 6", "any": "options 1 2 3 4 5 6", "none": "options", "No mark": "options", "none of them.": "options",
			"": "want-several", "7": "want-several", "1-7": "want-several", "3-1": "want-several", "2-2": "want-several", "1-": "want-several", "-3": "want-several", "1-6 (odd)": "want-several", "every second": "want-several", "17": "want-several",
			strings.Repeat("1 ", 101): "want-several",
		}},
		{many, map[string]string{"12": "options 12", "13": "want-several", "1-12": "options 1 2 3 4 5 6 7 8 9 10 11 12"}}, // two figures may be one mark
		{named, map[string]string{"guard-shut": "options guard-shut", "guard-shut, key-out": "options guard-shut key-out", "1-2": "options guard-shut key-out", "guard-open": "want-several"}},
		{order, map[string]string{
			"3 1 2": "options close open stop", "312": "options close open stop", "3-1-2": "options close open stop", "3 > 1 > 2": "options close open stop", "3 -> 1 -> 2": "options close open stop",
			"3 then 1 then 2": "options close open stop", "3) 1) 2)": "options close open stop", "3, 1 and 2": "options close open stop", "close open stop": "options close open stop",
			"3 1": "want-order example=2 1 3", "3 1 1": "want-order example=2 1 3", "3 1 4": "want-order example=2 1 3", "": "want-order example=2 1 3", "31": "want-order example=2 1 3",
		}},
	} {
		for text, want := range c.want {
			if got := understood(c.e, text); got != want {
				t.Errorf("%.30q for %s is %s, want %s", text, c.e.Kind.Name(), got, want)
			}
		}
	}
	one := &answer.Expected{Kind: answer.Order, Options: []string{"stop"}}
	if got := understood(one, "x"); got != "want-order example=2" {
		t.Errorf("of one step: %s", got)
	}
}

// How a designation is taken apart: numbers in order, words anywhere.
func TestReadDesignations(t *testing.T) {
	fields := func(names ...string) answer.Response {
		var r answer.Response
		for _, n := range names {
			r.Fields = append(r.Fields, [2]string{n})
		}
		return r
	}
	inch := &answer.Expected{Kind: answer.Designation, Unit: machine.InchUnit, Key: fields("diameter", "tpi", "starts", "side", "hand")}
	metric := &answer.Expected{Kind: answer.Designation, Unit: machine.MMUnit, Key: fields("diameter", "pitch", "side")}
	const refused = "want-reading example=0.25, 20, 1, external, right"
	for text, want := range map[string]string{
		"0.5, 13, 1, outside, right": "0.5 13 1 outside right", "1/2 13 1 outside right": "0.5 13 1 outside right", "outside 0.5 right 13 1": "0.5 13 1 outside right",
		"0.5 in, 13 tpi, 1 start, internal, LH": "0.5 13 1 inside left", "0.5in 13tpi 2 starts nut left-hand": "0.5 13 2 inside left", "0.50000, 13.0, 1, ext, rh thread": "0.5 13 1 outside right",
		"0.5, 13, 1, screw, right hand": "0.5 13 1 outside right",
		"0.5, 13, 1, outside":           refused,
		"0.5, 13, outside, right":       refused,
		"0.5, 13, 1, 2, outside, right": refused,
		"0.5, 13, 1, outwards, right":   refused,
		"":                              refused,
		strings.Repeat("0.5 ", 60):      refused,
	} {
		if got := understood(inch, text); got != want {
			t.Errorf("%.30q is %s, want %s", text, got, want)
		}
	}
	for text, want := range map[string]string{"10mm, 1.5, outside": "10 1.5 outside", "10": "want-reading example=10, 1.5, external"} {
		if got := understood(metric, text); got != want {
			t.Errorf("%q is %s, want %s", text, got, want)
		}
	}
	for field, want := range map[string]string{"side": "[outside inside]", "hand": "[right left]", "pitch": "[]"} {
		if got := fmt.Sprint(answer.FieldWords(field)); got != want {
			t.Errorf("%s may be %s, want %s", field, got, want)
		}
	}
}

// A refusal names what was typed and never more of it than a line.
func TestUnreadErrors(t *testing.T) {
	e := inches(0.05)
	for text, want := range map[string]string{
		"": "nothing was typed (want-in)", "  ": "nothing was typed (want-in)", "five": `can't read "five" (want-in)`,
	} {
		m := e.Mark(text)
		if m.Verdict != answer.Unread || m.Unread == nil || m.Unread.Error() != want || m.Points != 0 {
			t.Errorf("%q: %v, want %q", text, m.Unread, want)
		}
	}
	u := &answer.UnreadError{Want: answer.Want{Phrase: "want-choice", Values: [][2]string{{"n", "3"}}}}
	if n, ok := u.Want.Value("n"); n != "3" || !ok {
		t.Errorf("n is %q, %v", n, ok)
	}
	if x, ok := u.Want.Value("x"); ok {
		t.Errorf("x is %q", x)
	}
}
