package thread_test

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"scratchpass/calc"
	"scratchpass/quiz/thread"
)

func of(t *testing.T, text string) thread.Document {
	t.Helper()
	d, err := calc.ParseDesignation(text)
	if err != nil {
		t.Fatal(err)
	}
	doc, err := thread.Of(d)
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

// pairText is a pair of limits as a table prints it, - where the standard gives none.
func pairText(p thread.LimitPair) string {
	side := func(x *float64) string {
		if x == nil {
			return "-"
		}
		return calc.Shortest(*x, 4)
	}
	return side(p.Min) + " to " + side(p.Max)
}

// Limits as tables print them. What has no limit in the standard stays open.
func TestLimitsOfAThread(t *testing.T) {
	for _, c := range []struct {
		thread, major, pitch, minor, allowance string // source
	}{
		{"1/2-13 UNC-2A", "0.4876 to 0.4985", "0.4435 to 0.4485", "- to -", "0.0015"}, // Machinery's Handbook, ASME B1.1
		{"1/2-13 UNC-2B", "0.5 to -", "0.45 to 0.4565", "0.417 to 0.434", ""},         // the same
		{"M12x1.75-6g", "11.701 to 11.966", "10.679 to 10.829", "- to -", "0.034"},    // ISO 965-4
		{"M10x1.5-6H", "10 to -", "9.026 to 9.206", "8.376 to 8.676", ""},             // ISO 965-4
		{"3/4-10 UNC", "- to -", "- to -", "- to -", ""},                              // without a class
		{"M100x6-6g", "99.32 to 99.92", "95.723 to 96.023", "- to -", "0.08"},         // threadlib's table, 99.32, 99.92, 95.72, 96.02
		{"M10x1.5-4g6g", "9.732 to 9.968", "8.909 to 8.994", "- to -", "0.032"},       // metric pitch diameter table after ASME B1.13M
		{"M200x3-6g", "- to -", "- to -", "- to -", ""},                               // beyond the tables
	} {
		doc := of(t, c.thread)
		if doc.Limits == nil {
			doc.Limits = &thread.ThreadLimits{}
			if doc.NoLimits == nil || !strings.HasPrefix(*doc.NoLimits, calc.Quoted(c.thread)) || c.major != "- to -" {
				t.Errorf("%s has no limits and no reason", c.thread)
			}
		} else if doc.NoLimits != nil {
			t.Errorf("%s has limits and a reason for none: %s", c.thread, *doc.NoLimits)
		}
		allowance := ""
		if doc.Allowance != nil {
			allowance = calc.Shortest(*doc.Allowance, 4)
		}
		got := [4]string{pairText(doc.Limits.Major), pairText(doc.Limits.Pitch), pairText(doc.Limits.Minor), allowance}
		if want := [4]string{c.major, c.pitch, c.minor, c.allowance}; got != want {
			t.Errorf("%s: %q, want %q", c.thread, got, want)
		}
	}
}

// Sizes, hand, starts and unit are those of the designation.
func TestSizesOfAThread(t *testing.T) {
	for name, want := range map[string]string{
		"1/2-13 UNC-2A-LH":       "0.5 0.076923 0.076923 1 left outside 2A in",
		"3/4-16 UNF-2A 2 STARTS": "0.75 0.0625 0.125 2 right outside 2A in",
		"M16xPh3P1.5":            "16 1.5 3 2 right - - mm",
		"M10x1.5-6H":             "10 1.5 1.5 1 right inside 6H mm",
	} {
		doc := of(t, name)
		said := func(text *string) string {
			if text == nil {
				return "-"
			}
			return *text
		}
		got := fmt.Sprintf("%v %v %v %d %s %s %s %s", doc.Major, doc.Pitch, doc.Lead, doc.Starts, doc.Hand, said(doc.Side), said(doc.Class), doc.Unit)
		if got != want || doc.Designation != name {
			t.Errorf("%s is %q: %s, want %s", name, doc.Designation, got, want)
		}
	}
}

// The depths of 3/4-10 as the US Navy training manual and the geometry have them: a
// factor of the pitch for each tool, from a nominal blank or from the basic bore.
func TestDepthsOfAThread(t *testing.T) {
	for _, c := range []struct {
		thread string
		want   map[string]float64
	}{
		{"3/4-10 UNC-2A", map[string]float64{"book": 0.061343, "sharp_tool": 0.075777, "flat_p8": 0.064952, "flat_p6": 0.061343, "flat_p4": 0.054127}},
		{"3/4-10 UNC-2B", map[string]float64{"book": 0.054127, "sharp_tool": 0.064952, "flat_p16": 0.059539, "flat_p8": 0.054127}},
		{"3/4-10 UNC", map[string]float64{"book": 0.061343, "sharp_tool": 0.075777, "flat_p8": 0.064952, "flat_p6": 0.061343, "flat_p4": 0.054127}}, // without a side as outside
	} {
		if got := of(t, c.thread).Depths; !maps.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.thread, got, c.want)
		}
	}
}

// Bore, wires and lead angle: the bore to aim for is the middle of an inside thread's
// limits, and without them there is the basic one alone. Wires are read at the middle of
// the limits that there are; over an inside thread nobody lays wires.
func TestBoreAndWiresOfAThread(t *testing.T) {
	for _, c := range []struct {
		thread, bore, wires string
		basic, lead         float64
	}{
		{"3/4-10 UNC", "-", "0.057735 0.056 0.09 0.7717", 0.6417, 2.66},    // 0.6850 + 0.0866
		{"3/4-10 UNC-2A", "-", "0.057735 0.056 0.09 0.7669", 0.6417, 2.66}, // the middle of 0.6773 and 0.6832
		{"M10x1.5-6H", "8.526", "- - - -", 8.376, 3.03},
		{"3/4-16 UNF 2 STARTS", "-", "0.036084 0.035 0.05625 0.7635", 0.6823, 3.21}, // by the lead, not the pitch
		{"M48x1-6H", "-", "- - - -", 46.917, 0.39},                                  // no limits
	} {
		doc := of(t, c.thread)
		said := func(xs ...*float64) string {
			var words []string
			for _, x := range xs {
				if x == nil {
					words = append(words, "-")
				} else {
					words = append(words, calc.Shortest(*x, 6))
				}
			}
			return strings.Join(words, " ")
		}
		bore, wires := said(doc.Bore), said(doc.Wires.Best, doc.Wires.Least, doc.Wires.Largest, doc.Wires.OverBest)
		if bore != c.bore || doc.BasicBore != c.basic || wires != c.wires || doc.LeadAngle != c.lead {
			t.Errorf("%s: bore %s, basic %v, wires %s, lead angle %v, want %+v", c.thread, bore, doc.BasicBore, wires, doc.LeadAngle, c)
		}
	}
}

// Others read this JSON: each key is there, and what is not known is null.
func TestThreadAsJSON(t *testing.T) {
	text, err := json.Marshal(of(t, "10-32 UNF"))
	if err != nil {
		t.Fatal(err)
	}
	var doc map[string]any
	if err := json.Unmarshal(text, &doc); err != nil {
		t.Fatal(err)
	}
	if got := strings.Join(slices.Sorted(maps.Keys(doc)), " "); got != "allowance basic_bore bore class depths designation hand lead lead_angle limits major no_limits pitch side sources starts unit wires" {
		t.Error("keys:", got)
	}
	for _, key := range []string{"side", "class", "allowance", "limits", "bore"} {
		if doc[key] != nil {
			t.Errorf("%s is %v without a class", key, doc[key])
		}
	}
	if why, _ := doc["no_limits"].(string); !strings.Contains(why, "the class is missing") {
		t.Errorf("no_limits: %v", doc["no_limits"])
	}
	inside, err := json.Marshal(of(t, "1/2-13 UNC-2B"))
	for _, want := range []string{
		`"limits":{"major":{"max":null,"min":0.5},"pitch":{"max":0.4565,"min":0.45},"minor":{"max":0.434,"min":0.417}},"no_limits":null`,
		`"wires":{"best":null,"least":null,"largest":null,"over_best":null}`,
	} {
		if err != nil || !strings.Contains(string(inside), want) {
			t.Errorf("%s is not in %s (%v)", want, inside, err)
		}
	}
	for name, want := range map[string]string{"1/2-13 UNC": "b1-1 navy geometry", "M12x1.75": "iso-261 iso-965 navy geometry"} {
		if got := strings.Join(of(t, name).Sources, " "); got != want {
			t.Errorf("%s: sources %s, want %s", name, got, want)
		}
	}
}

// Sizes that no thread has are errors, not half a document.
func TestThreadsThatCanNotBe(t *testing.T) {
	for name, d := range map[string]calc.Designation{
		"no pitch": {Nominal: 0.5, Starts: 1}, "too fine": {Nominal: 0.5, Pitch: 0.001, Starts: 1}, "no metal left": {Nominal: 0.1, Pitch: 0.1, Starts: 1},
		"too large": {Nominal: 99, Pitch: 0.1, Starts: 1}, "no lead": {Nominal: 0.5, Pitch: 0.1},
	} {
		if doc, err := thread.Of(d); err == nil {
			t.Errorf("%s: %+v", name, doc)
		}
	}
}
