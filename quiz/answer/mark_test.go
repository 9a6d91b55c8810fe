package answer_test

import (
	"math"
	"testing"

	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
)

// said is a mark as these tests write it.
func said(m answer.Mark) string {
	if m.Error != "" {
		return string(m.Verdict) + " " + m.Error
	}
	return string(m.Verdict)
}

// One step inside each limit and one step outside. Metal that is gone is the side of an
// infeed that is too high.
func TestMarkAtItsLimits(t *testing.T) {
	e := with(inches(0.05), 0.07)
	e.Scrap = answer.ScrapHigh
	low := with(inches(0.05), 0.07)
	low.Scrap = answer.ScrapLow
	upper := with(inches(0.05), 0.07)
	upper.Safe = answer.Below
	lower := with(inches(0.05), 0.07)
	lower.Safe, lower.Scrap = answer.Above, answer.ScrapLow
	turn := with(inches(0), 0.07)
	turn.Alike = []float64{0.1}
	near := with(inches(0.05), 0.07)
	near.Errors = append(near.Errors, answer.Known{Name: "angle", Convention: true, Near: true, Response: answer.NumberResponse(0.0502)})
	none := with(inches(0.05))
	for _, c := range []struct {
		e    *answer.Expected
		name string
		want map[string]string
	}{
		{e, "too much in is scrap", map[string]string{
			"0.05099": "right", "0.05101": "scrap-side", "0.04901": "right", "0.04899": "safe-side", "0.0708": "slip a", "0.0709": "scrap-side", "0.0692": "slip a", "0.0691": "scrap-side",
			"0.2999": "scrap-side", "0.3001": "wrong", "0.00834": "safe-side", "0.00833": "wrong", // six times too much or too little
			"-0.05": "wrong", "0": "wrong", "50.9": "unit", "51.1": "wrong", "1.27": "unit", "1.2953": "unit", "1.297": "wrong", // 0.051 in are 1.2954 mm
		}},
		{low, "too much out is scrap", map[string]string{"0.06": "safe-side", "0.04": "scrap-side"}},
		{upper, "a limit", map[string]string{"0.0491": "right", "0.0489": "wrong", "0.05": "right", "0.05001": "wrong"}},
		{upper, "a highest value in another unit", map[string]string{"50": "unit", "50.1": "wrong", "49.1": "unit", "0.050000001": "right"}},
		{lower, "a least value", map[string]string{"0.05": "right", "0.0509": "right", "0.0511": "safe-side", "0.04999": "scrap-side", "0.0499": "scrap-side", "49.9": "wrong", "50.1": "unit"}},
		{turn, "a whole turn is zero", map[string]string{"0": "right", "0.1": "right", "0.1009": "right", "0.1011": "wrong", "0.05": "wrong", "0.07": "slip a"}},
		{near, "another way, as near as can be set", map[string]string{"0.0502": "convention angle", "0.0501": "right", "0.0503": "right", "0.05": "right"}},
		{none, "neither side", map[string]string{"0.06": "wrong", "0.04": "wrong"}},
	} {
		for text, want := range c.want {
			m := c.e.Mark(text)
			if got := said(m); got != want || c.e.Right(m.Response) != (want == "right" || want == "convention angle") {
				t.Errorf("%s: %s is %s, want %s", c.name, text, got, want)
			}
		}
	}
}

// The number of the key behind another unit than was meant earns half, in inches and in
// millimetres alike.
func TestTheRightNumberInAnotherUnit(t *testing.T) {
	key := 1.411 / 25.4 // held in inches
	metric := with(inches(key), key*1.5)
	metric.Unit = machine.MMUnit
	inch := with(inches(0.0556), 0.08)
	plain := with(inches(0.5), 0.8)
	plain.Unit = machine.PlainUnit
	for _, c := range []struct {
		e    *answer.Expected
		want map[string]string
	}{
		{metric, map[string]string{
			"1.411": "right", "1.411 mm": "right", "0.0556 in": "right", "55.6 thou": "right",
			"1.411 in": "unit", "1.411 thou": "unit", "0.0556": "unit", "55.6": "unit", "0.0556 mm": "wrong", "55.6 in": "wrong",
		}},
		{inch, map[string]string{
			"0.0556": "right", "1.412 mm": "right", "55.6 thou": "right",
			"0.0556 mm": "unit", "0.0556 thou": "unit", "1.412": "unit", "55.6": "unit", "1.412 in": "wrong", "55.6 in": "wrong",
		}},
		{plain, map[string]string{"0.5": "right", "500": "wrong"}}, // has no other unit
	} {
		for text, want := range c.want {
			if m := c.e.Mark(text); said(m) != want || (m.Points == 0.5) != (want == "unit") {
				t.Errorf("%s: %s is %s for %v points, want %s", c.e.Unit.Name, text, said(m), m.Points, want)
			}
		}
	}
	nothing := with(inches(0), 0.8)
	if got := said(nothing.Mark("0 mm")); got != "right" {
		t.Errorf("0 in another unit is %s", got)
	}
	if got := said(nothing.Mark("0.1 mm")); got != "wrong" {
		t.Errorf("0.1 mm for 0 is %s", got)
	}
	for unit, want := range map[machine.Unit][]float64{
		machine.InchUnit: {0.0556, 2.1889764}, machine.MMUnit: {1412.24, 1.41224}, percentUnit: {5560}, machine.DegreeUnit: nil,
	} {
		got := answer.MeantIn(unit, 55.6)
		for i := range want {
			if len(got) != len(want) || math.Abs(got[i]-want[i]) > 1e-6 {
				t.Errorf("55.6 in %s may mean %v, want %v", unit.Name, got, want)
				break
			}
		}
	}
}

// A row is right in another unit only if all of it is.
func TestRowsInAnotherUnit(t *testing.T) {
	row := &answer.Expected{Kind: answer.Readings, Unit: machine.InchUnit, Key: answer.NumbersResponse(0.004, 0.005), Tolerance: 0.0002, ErrorTolerance: 0.0002,
		Errors: []answer.Known{{Name: "zero", Response: answer.NumbersResponse(0, 0.001)}}}
	for text, want := range map[string]string{
		"0.004 0.005": "right", "0.0042 0.0052": "right", "0.0043 0.005": "wrong", "4 5": "unit", "4 6": "wrong", "0.1016 0.127": "unit", "4 in, 5 in": "wrong", "4 in 5 in": "unread",
		"0 0.001": "slip zero", "0 0.0013": "wrong", "4 thou, 5 thou": "right",
	} {
		if got := said(row.Mark(text)); got != want {
			t.Errorf("%s is %s, want %s", text, got, want)
		}
	}
}

// Another book's way counts as right, before the errors at the same place.
func TestConventionsEarnCredit(t *testing.T) {
	e := with(inches(0.05), 0.07, 0.0705)
	e.Errors[1].Convention = true
	for text, want := range map[string]string{"0.0705": "convention b", "0.0710": "convention b", "0.0698": "convention b", "0.0696": "slip a"} {
		m := e.Mark(text)
		if said(m) != want || m.Correct() != (m.Error == "b") || m.Correct() != (m.Points == 1) {
			t.Errorf("%s is %s for %v points, want %s", text, said(m), m.Points, want)
		}
	}
	choice := answer.Expected{Kind: answer.Choice, Key: answer.OptionsResponse("a"), Options: []string{"a", "b", "c"}, Errors: []answer.Known{
		{Name: "b", Response: answer.OptionsResponse("b")}, {Name: "other-book", Convention: true, Response: answer.OptionsResponse("b")}}}
	for text, want := range map[string]string{"1": "right", "2": "convention other-book", "3": "wrong"} {
		if got := said(choice.Mark(text)); got != want {
			t.Errorf("option %s is %s, want %s", text, got, want)
		}
	}
}

// Two errors at one place: neither is named, unless they share their result.
func TestErrorsAtOnePlace(t *testing.T) {
	e := with(inches(0.05), 0.07, 0.071)
	e.Scrap = answer.ScrapHigh
	for text, want := range map[string]string{"0.0705": "scrap-side", "0.0695": "slip a", "0.0715": "slip b"} {
		if got := said(e.Mark(text)); got != want {
			t.Errorf("%s is %s, want %s", text, got, want)
		}
	}
	e.Errors[1].SameResultAs = "a"
	if got := said(e.Mark("0.0705")); got != "slip a" {
		t.Errorf("a result that is shared is %s", got)
	}
	limits := with(answer.Expected{Kind: answer.Limits, Unit: machine.InchUnit, Key: answer.NumberResponse(0.4875), Low: 0.485, High: 0.49, ErrorTolerance: 0.0008}, 0.5, 0.501)
	for text, want := range map[string]string{"0.485": "right", "0.49": "right", "0.4849": "wrong", "0.4901": "wrong", "0.4995": "slip a", "0.5005": "wrong", "0.5015": "slip b"} {
		if got := said(limits.Mark(text)); got != want {
			t.Errorf("of limits %s is %s, want %s", text, got, want)
		}
	}
	several := answer.Expected{Kind: answer.Several, Key: answer.OptionsResponse("1", "3"), Options: []string{"1", "2", "3"}, Errors: []answer.Known{
		{Name: "a", Response: answer.OptionsResponse("1", "2")}, {Name: "b", Response: answer.OptionsResponse("2", "1")},
		{Name: "part", Response: answer.OptionsResponse("1"), Partial: func(_, given answer.Response) bool { return len(given.Keys) == 1 && given.Keys[0] != "2" }}}}
	for text, want := range map[string]string{"3, 1": "right", "1 2": "wrong", "1": "safe-side part", "3": "safe-side part", "2": "wrong"} {
		m := several.Mark(text)
		if said(m) != want || (m.Points == 0.5) != (m.Error == "part") {
			t.Errorf("marks %s are %s for %v points, want %s", text, said(m), m.Points, want)
		}
	}
}

// One decimal fewer than asked for is enough, where it is not a line of a dial.
func TestOneDecimalFewer(t *testing.T) {
	times := with(inches(1.64), 2.68, 1.28)
	times.Unit, times.Tolerance, times.ErrorTolerance = machine.Unit{Name: "times", Factor: 1, Places: 2}, 0.03, 0.03
	for text, want := range map[string]string{"1.64": "right", "1.6": "right", "1.60": "wrong", "1.7": "wrong", "2": "wrong"} {
		if got := said(times.Mark(text)); got != want {
			t.Errorf("%s times is %s, want %s", text, got, want)
		}
	}
	near := with(inches(1.64), 1.55)
	near.Unit, near.Tolerance, near.ErrorTolerance = times.Unit, 0.03, 0.03
	if got := said(near.Mark("1.6")); got != "wrong" {
		t.Errorf("1.6 half-way to an error is %s", got)
	}
	length := with(inches(0.0564), 0.09)
	length.Tolerance = 0.0003
	if got := said(length.Mark("0.056")); got == "right" {
		t.Error("a length with a decimal fewer than the tolerance allows is right")
	}
}

// Far off means that a place was lost: more than six times, of one exact number alone.
func TestFar(t *testing.T) {
	e := inches(0.05)
	for x, want := range map[float64]bool{0.05: false, 0.3: false, 0.3001: true, 0.00834: false, 0.0083: true, -0.3001: true, 0: true} {
		if got := e.Far(answer.NumberResponse(x)); got != want {
			t.Errorf("%v is far: %v", x, got)
		}
	}
	zero, limits := inches(0), inches(0.05)
	limits.Kind = answer.Limits
	if zero.Far(answer.NumberResponse(9)) || limits.Far(answer.NumberResponse(9)) {
		t.Error("far from nothing, or from limits")
	}
}

// The bands of a key of 0 reach to both sides.
func TestBandsOfNothing(t *testing.T) {
	e := with(inches(0), 0.02)
	e.Scrap = answer.ScrapHigh
	for text, want := range map[string]string{"0.0005": "right", "-0.0005": "right", "0.01": "scrap-side", "-0.01": "safe-side", "0.02": "slip a"} {
		if got := said(e.Mark(text)); got != want {
			t.Errorf("%s is %s, want %s", text, got, want)
		}
	}
	if n := len(e.Bands()); n != 4 {
		t.Errorf("%d bands: %+v", n, e.Bands())
	}
	row := answer.Expected{Kind: answer.Readings, Key: answer.NumbersResponse(1)}
	if row.Bands() != nil {
		t.Error("a row of readings has bands")
	}
}
