package machine_test

import (
	"strings"
	"testing"

	"scratchpass/calc"
	"scratchpass/quiz/machine"
)

// One step inside each limit of a description and one step outside.
func TestCheckAtItsLimits(t *testing.T) {
	inch := func(change func(l *machine.Lathe)) machine.Lathe {
		l := machine.InchLathe
		change(&l)
		return l
	}
	metric := func(screw float64) machine.Lathe {
		l := machine.MetricLathe
		l.LeadScrew = screw
		return l
	}
	turn := func(turn calc.Length, lines float64) machine.Lathe {
		return inch(func(l *machine.Lathe) { l.Compound = machine.Dial{Turn: turn, Division: turn.Times(1 / lines)} })
	}
	for _, c := range []struct {
		name string
		l    machine.Lathe
		want string // part of the error; empty where there is none
	}{
		{"screw 2 TPI", inch(func(l *machine.Lathe) { l.LeadScrew = 2 }), ""},
		{"screw 1.9 TPI", inch(func(l *machine.Lathe) { l.LeadScrew = 1.9 }), "lead screw 1.9 TPI: give 2 to 20 TPI"},
		{"screw 20 TPI", inch(func(l *machine.Lathe) { l.LeadScrew = 20 }), ""},
		{"screw 20.5 TPI", inch(func(l *machine.Lathe) { l.LeadScrew = 20.5 }), "lead screw 20.5 TPI"},
		{"screw 1 mm", metric(1), ""}, {"screw 0.9 mm", metric(0.9), "lead screw 0.9 mm"}, {"screw 12 mm", metric(12), ""}, {"screw 12.1 mm", metric(12.1), "1 to 12 mm"},
		{"no thread dial", inch(func(l *machine.Lathe) { l.DialTeeth, l.DialMarks = 0, 0 }), ""},
		{"8 teeth", inch(func(l *machine.Lathe) { l.DialTeeth = 8 }), ""},
		{"7 teeth", inch(func(l *machine.Lathe) { l.DialTeeth = 7 }), "thread-dial gear 7: give 8 to 96 teeth, or 0"},
		{"96 teeth", inch(func(l *machine.Lathe) { l.DialTeeth = 96 }), ""},
		{"97 teeth", inch(func(l *machine.Lathe) { l.DialTeeth = 97 }), "thread-dial gear 97"},
		{"fewer than none", inch(func(l *machine.Lathe) { l.DialTeeth = -8 }), "thread-dial gear -8"},
		{"1 mark", inch(func(l *machine.Lathe) { l.DialMarks = 1 }), ""},
		{"no mark", inch(func(l *machine.Lathe) { l.DialMarks = 0 }), "thread-dial marks 0: give 1 to 32"},
		{"32 marks", inch(func(l *machine.Lathe) { l.DialMarks = 32 }), ""},
		{"33 marks", inch(func(l *machine.Lathe) { l.DialMarks = 33 }), "thread-dial marks 33"},
		{"least turn", turn(calc.Millimetres(1), 40), ""}, {"less", turn(calc.Millimetres(0.999), 40), "compound dial, one turn 0.0393 in: give 0.0394"},
		{"largest turn", turn(0.5, 500), ""}, {"more", turn(0.5001, 500), "compound dial, one turn 0.5001 in"},
		{"20 lines", turn(0.1, 20), ""}, {"19 lines", turn(0.1, 19), "compound dial, one line"},
		{"1000 lines", turn(0.25, 1000), ""}, {"1001 lines", turn(0.25, 1001), "compound dial, one line"},
		{"no lines", inch(func(l *machine.Lathe) { l.Cross.Division = 0 }), "cross-slide dial, one line 0.0000 in"},
		{"backward lines", inch(func(l *machine.Lathe) { l.Cross.Division = -0.001 }), "cross-slide dial, one line"},
		{"the cross slide first", inch(func(l *machine.Lathe) { l.Cross.Turn, l.Compound.Turn = 0, 0 }), "cross-slide dial, one turn 0.0000 in"},
	} {
		err := c.l.Check()
		if (err == nil) != (c.want == "") || err != nil && !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
		if err == nil && strings.Contains(c.l.Code(), "L") { // what passes goes through a code, as far as three decimals hold it
			if back, err := machine.LatheOfCode(c.l.Code()); err != nil || back.Code() != c.l.Code() {
				t.Errorf("%s: %s reads %s, %v", c.name, c.l.Code(), back.Code(), err)
			}
		}
	}
}

// A code says all that problems depend on, in one letter or number each.
func TestCodeOfALathe(t *testing.T) {
	other := machine.InchLathe
	other.LeadScrew, other.CrossReads, other.CompoundZero, other.ScrewedNose = 11.5, calc.ReadsRadius, calc.ZeroAlong, false
	other.Compound = machine.Dial{Turn: 0.0625, Division: 0.0005}
	for code, l := range map[string]machine.Lathe{
		"L8.32.8_C200.1d_T100.1a_s": machine.InchLathe, "L3mm.20.10_C400.2d_T200.2b_k": machine.MetricLathe, "L11p5.32.8_C200.1r_T62p5.0p5b_k": other,
	} {
		if got := l.Code(); got != code {
			t.Errorf("%s, want %s", got, code)
		}
		back, err := machine.LatheOfCode(code)
		if err != nil {
			t.Error(err)
		}
		if back.Metric != l.Metric || back.LeadScrew != l.LeadScrew || back.CrossReads != l.CrossReads || back.CompoundZero != l.CompoundZero || back.ScrewedNose != l.ScrewedNose ||
			!calc.Within(back.Compound.Turn.Inches(), l.Compound.Turn.Inches(), 1e-12) || back.DialTeeth != l.DialTeeth || back.DialMarks != l.DialMarks {
			t.Errorf("%s reads %+v", code, back)
		}
	}
	for code, want := range map[string]string{
		"": "give one such as L8.32.8", "L8.32.8_C200.1d_T100.1a": "give one such as", "L8.32.8_C200.1x_T100.1a_s": "give one such as", "xL8.32.8_C200.1d_T100.1a_s": "give one such as",
		"L8.32.8_C200.1d_T100.1a_s ": "give one such as", "L8.32.8_C200.0d_T100.1a_s": "cross-slide dial, one line", "L8.5.8_C200.1d_T100.1a_s": "thread-dial gear 5", "L99mm.32.8_C200.1d_T100.1a_s": "lead screw 99 mm",
	} {
		if _, err := machine.LatheOfCode(code); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", code, err, want)
		}
	}
}

// The lathes that ship can be used, and each is the one of its system.
func TestLathesThatShip(t *testing.T) {
	for s, want := range map[machine.System]string{machine.Imperial: "8 TPI", machine.Metric: "3 mm"} {
		l := machine.DefaultLathe(s)
		if err := l.Check(); err != nil {
			t.Error(err)
		}
		if l.Metric != (s == machine.Metric) || l.LeadScrewText() != want {
			t.Errorf("%s: metric %v, lead screw %s", s, l.Metric, l.LeadScrewText())
		}
		dial, ok := l.ThreadDial()
		if spacing, err := dial.Spacing(); !ok || err != nil || spacing <= 0 {
			t.Errorf("%s: thread dial %+v, %v: %v", s, dial, ok, err)
		}
	}
	metric, _ := machine.MetricLathe.ThreadDial()
	if spacing, _ := metric.Spacing(); !calc.Within(spacing.Millimetres(), 6, 1e-9) { // 20 teeth x 3 mm on 10 marks
		t.Errorf("from mark to mark %v mm", spacing.Millimetres())
	}
	half := machine.InchLathe
	half.LeadScrew = 4.5
	if got := half.LeadScrewText(); got != "4.5 TPI" {
		t.Errorf("lead screw %s", got)
	}
	for _, without := range [][2]int{{0, 8}, {32, 0}, {0, 0}} {
		l := machine.InchLathe
		l.DialTeeth, l.DialMarks = without[0], without[1]
		if _, ok := l.ThreadDial(); ok {
			t.Errorf("%d teeth and %d marks make a thread dial", without[0], without[1])
		}
	}
}
