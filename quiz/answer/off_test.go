package answer_test

import (
	"fmt"
	"strings"
	"testing"

	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
)

// What is right and not quite the printed key says by how much, at the printed decimals.
func TestOff(t *testing.T) {
	of := func(e answer.Expected) *answer.Expected { e.Tolerance = 0.01; return &e }
	depth := of(answer.Expected{Kind: answer.Quantity, Unit: machine.InchUnit, Key: answer.NumberResponse(0.061343)})
	sixteenth := of(answer.Expected{Kind: answer.Quantity, Unit: machine.InchUnit, Key: answer.NumberResponse(0.0625)})
	metric := of(answer.Expected{Kind: answer.Quantity, Unit: machine.MMUnit, Key: answer.NumberResponse(1.5581 / 25.4)})
	angle := of(answer.Expected{Kind: answer.Quantity, Unit: machine.DegreeUnit, Key: answer.NumberResponse(29.5)})
	angle.Tolerance = 0.3
	speed := of(answer.Expected{Kind: answer.Quantity, Unit: machine.RPMUnit, Key: answer.NumberResponse(120.4)})
	speed.Tolerance = 6
	limit := of(answer.Expected{Kind: answer.Quantity, Unit: machine.RPMUnit, Key: answer.NumberResponse(120.4), Safe: answer.Below})
	limit.Tolerance = 6
	count := of(answer.Expected{Kind: answer.Quantity, Unit: machine.CountUnit, Key: answer.NumberResponse(7)})
	count.Tolerance = 0.3
	rest := of(answer.Expected{Kind: answer.Quantity, Unit: machine.InchUnit, Key: answer.NumberResponse(0.00004)})
	row := of(answer.Expected{Kind: answer.Readings, Unit: machine.InchUnit, Key: answer.NumbersResponse(0.014, 0.017, 0.02)})
	size := of(answer.Expected{Kind: answer.Limits, Unit: machine.InchUnit, Key: answer.NumberResponse(0.4875), Low: 0.485, High: 0.49})
	for _, c := range []struct {
		e    *answer.Expected
		text string
		want string
		why  string
	}{
		{depth, "0.0613", "", "the printed key"},
		{depth, "0.061343", "", "the key with more places"},
		{depth, "61.3 thou", "", "the key in thousandths"},
		{depth, ".06130", "", "the key without its nought, and with another"},
		{depth, "0.06134999", "", "less than rounding above the key"},
		{depth, "0.06125", "", "and below it"},
		{depth, "0.06135", "1 0.0001 0.0001 in", "which rounds up"},
		{depth, "0.06124999", "1 -0.0001 0.0001 in", "which rounds down"},
		{depth, "0.0614", "1 0.0001 0.0001 in", "one in the last place high"},
		{depth, "0.0612", "1 -0.0001 0.0001 in", "one in the last place low"},
		{depth, "0.0622", "1 0.0009 0.0009 in", "nine"},
		{depth, "0.06", "1 -0.0013 0.0013 in", "fewer places than asked for"},
		{sixteenth, "1/16", "", "a fraction that is the key"},
		{sixteenth, "0.063", "1 0.0005 0.0005 in", "rounded too early"},
		{metric, "1.558", "", "the printed key in millimetres"},
		{metric, "1.5584", "", "less than rounding"},
		{metric, "1.56", "1 0.002 0.002 mm", "two thousandths of a millimetre"},
		{metric, "0.0613 in", "1 -0.001 0.001 mm", "told in the unit of the problem, whatever was typed"},
		{angle, "29.5", "", "the key"},
		{angle, "29°30'", "", "the key in minutes"},
		{angle, "29.7", "1 0.2 0.20 degrees", "an angle"},
		{speed, "120", "", "what is printed of 120.4"},
		{speed, "120.4", "", "and the key itself"},
		{speed, "121", "1 1 1 rpm", "a turn more"},
		{limit, "115", "1 -5 5 rpm", "below a limit"},
		{count, "7", "", "a count"},
		{count, "7.04", "", "one that differs less than it is printed"},
		{count, "7.2", "1 0.2 0.2", "one that is not whole"},
		{rest, "0", "", "nothing, where next to nothing is left"},
		{rest, "0.0001", "1 0.0001 0.0001 in", "the least"},
		{row, "0.014 0.017 0.020", "", "a row that is the key"},
		{row, "14 thou, 17 thou, 20 thou", "", "in thousandths"},
		{row, "0.014 0.0171 0.020", "2 0.0001 0.0001 in", "the second"},
		{row, "0.0138 0.017 0.0203", "1 -0.0002 0.0002 in, 3 0.0003 0.0003 in", "the first and the third"},
		{size, "0.486", "", "a size has limits of its own"},
	} {
		m := c.e.Mark(c.text)
		if m.Verdict != answer.Right {
			t.Errorf("%q: %s", c.text, m.Verdict)
			continue
		}
		var got []string
		for _, off := range c.e.Off(m.Response) {
			got = append(got, fmt.Sprintf("%d %v %s", off.Number, off.By, off.Text))
		}
		if strings.Join(got, ", ") != c.want {
			t.Errorf("%q: off by %q, want %q: %s", c.text, strings.Join(got, ", "), c.want, c.why)
		}
	}
	if row.Off(answer.Response{}) != nil {
		t.Error("nothing was given")
	}
}
