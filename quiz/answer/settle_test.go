package answer_test

import (
	"math"
	"testing"

	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
)

// with is an expectation with common errors that give these numbers.
func with(e answer.Expected, xs ...float64) *answer.Expected {
	for i, x := range xs {
		e.Errors = append(e.Errors, answer.Known{Name: string(rune('a' + i)), Response: answer.NumberResponse(x)})
	}
	return &e
}

// A tolerance takes up at most 0.4 of the gap to what an error gives, and is never less
// than 0.3 of what the task allows, nor than 0.6 of the last place: nearer is ambiguous.
func TestSettleAtItsLimits(t *testing.T) {
	length := answer.Tolerance{Inch: 0.001, MM: 0.02, Other: 0.25}
	percent, metric := inches(80), inches(0.05)
	percent.Unit, metric.Unit = percentUnit, machine.MMUnit
	for _, c := range []struct {
		name           string
		e              *answer.Expected
		t              answer.Tolerance
		ok             bool
		tolerance, err float64
	}{
		{"far apart", with(inches(0.05), 0.07), length, true, 0.001, 0.0008},
		{"no known error", with(inches(0.05)), length, true, 0.001, 0.0008},
		{"narrowed by the gap", with(inches(0.05), 0.0515), length, true, 0.0006, 0.0006},
		{"just far enough", with(inches(0.05), 0.05075001), length, true, 0.0003, 0.0003},
		{"just too near", with(inches(0.05), 0.05074), length, false, 0.000296, 0.000296},
		{"on the key", with(inches(0.05), 0.05), length, false, 0.00006, 0.00006}, // never under what is printed
		{"two errors narrow naming alone", with(inches(0.05), 0.07, 0.0715), length, true, 0.001, 0.0006},
		{"two errors too near each other", with(inches(0.05), 0.07, 0.0707), length, false, 0.001, 0.00028},
		{"of three the nearest two", with(inches(0.05), 0.07, 0.09, 0.0715), length, true, 0.001, 0.0006},
		{"a last place too coarse", with(inches(0.05), 0.0501), answer.Tolerance{Inch: 0.0001}, false, 0.00006, 0.00006},
		{"millimetres", with(metric, 0.08), length, true, 0.02 / 25.4, 0.8 * 0.02 / 25.4},
		{"millimetres by the inch figure", with(metric, 0.08), answer.Tolerance{Inch: 0.001}, true, 0.001, 0.0008},
		{"another unit", with(percent, 60), length, true, 0.25, 0.2},
		{"a share of the key", with(percent, 60), answer.Tolerance{Relative: 0.05, Other: 1}, true, 4, 3.2},
	} {
		if ok := c.e.Kind.Settle(c.e, c.t); ok != c.ok || math.Abs(c.e.Tolerance-c.tolerance) > 1e-7 || math.Abs(c.e.ErrorTolerance-c.err) > 1e-7 {
			t.Errorf("%s: %v, tolerances %.6g and %.6g, want %v, %.6g and %.6g", c.name, ok, c.e.Tolerance, c.e.ErrorTolerance, c.ok, c.tolerance, c.err)
		}
	}
}

// Errors that give one result by their nature do not stand in each other's way.
func TestSettleOfErrorsThatShareAResult(t *testing.T) {
	tolerance := answer.Tolerance{Inch: 0.001}
	alike := with(inches(0.05), 0.07, 0.0701)
	if alike.Kind.Settle(alike, tolerance) {
		t.Error("two errors at one place are told apart")
	}
	for _, of := range []int{0, 1} {
		alike := with(inches(0.05), 0.07, 0.0701)
		alike.Errors[of].SameResultAs = alike.Errors[1-of].Name
		if !alike.Kind.Settle(alike, tolerance) {
			t.Errorf("%s shares the result of %s and the draw is thrown away", alike.Errors[of].Name, alike.Errors[1-of].Name)
		}
	}
}

// Rows are as far apart as the reading that tells them apart best; limits by their ends.
func TestSettleOfRowsAndLimits(t *testing.T) {
	row := answer.Expected{Kind: answer.Readings, Unit: machine.InchUnit, Key: answer.NumbersResponse(0.004, 0.005),
		Errors: []answer.Known{{Name: "a", Response: answer.NumbersResponse(0.004, 0.0055)}, {Name: "b", Response: answer.NumbersResponse(0.014, 0.015)}}}
	if ok := row.Kind.Settle(&row, answer.Tolerance{Inch: 0.001}); ok || math.Abs(row.Tolerance-0.0002) > 1e-9 { // 0.4 of half a thousandth
		t.Errorf("row: %v, tolerance %v", ok, row.Tolerance)
	}
	limits := answer.Expected{Kind: answer.Limits, Unit: machine.InchUnit, Key: answer.NumberResponse(0.4875), Low: 0.485, High: 0.49,
		Errors: []answer.Known{{Name: "over", Response: answer.NumberResponse(0.4915)}, {Name: "under", Response: answer.NumberResponse(0.48)}}}
	if ok := limits.Kind.Settle(&limits, answer.Tolerance{Inch: 0.001}); !ok || math.Abs(limits.ErrorTolerance-0.0006) > 1e-9 { // 0.4 of the way to the upper limit
		t.Errorf("limits: %v, tolerance %v", ok, limits.ErrorTolerance)
	}
	limits.Errors[1].Response.X = 0.4855 // inside: right
	if limits.Kind.Settle(&limits, answer.Tolerance{Inch: 0.001}) {
		t.Error("an error inside the limits is told from what is right")
	}
}

// Options are themselves: an error may choose neither the key nor what another chooses.
func TestSettleOfOptions(t *testing.T) {
	choice := func(key string, errors ...string) *answer.Expected {
		e := &answer.Expected{Kind: answer.Choice, Key: answer.OptionsResponse(key)}
		for i, option := range errors {
			e.Errors = append(e.Errors, answer.Known{Name: string(rune('a' + i)), Response: answer.OptionsResponse(option)})
		}
		return e
	}
	alike := choice("x", "y", "y")
	alike.Errors[0].SameResultAs = "b"
	for name, c := range map[string]struct {
		e    *answer.Expected
		want bool
	}{
		"each its own": {choice("x", "y", "z"), true}, "the key": {choice("x", "y", "x"), false}, "two alike": {choice("x", "y", "y"), false}, "two that share": {alike, true}, "no error": {choice("x"), false},
	} {
		if got := c.e.Kind.Settle(c.e, answer.Tolerance{}); got != c.want {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
}

// With someone's own numbers an error may come out right: it is none then.
func TestErrorsThatComeOutRightAreDropped(t *testing.T) {
	e := with(inches(0.05), 0.0503, 0.0507)
	e.DropCoinciding(answer.Tolerance{Inch: 0.001}) // half of it counts
	if len(e.Errors) != 1 || e.Errors[0].Name != "b" || e.Tolerance != 0.0005 {
		t.Errorf("left %+v with tolerance %v", e.Errors, e.Tolerance)
	}
}
