// Package machine describes a lathe as far as problems depend on it: lead screw, dials,
// gears, speeds, and the units that its numbers are shown in.
package machine

import (
	"fmt"
	"regexp"
	"strings"
	"sync"

	"scratchpass/calc"
)

// Lathe is what a problem needs to know of a learner's machine.
type Lathe struct {
	Name      string
	Metric    bool    // the lead screw and the dials are metric
	LeadScrew float64 // threads per inch, or the pitch in mm

	DialTeeth int // teeth of the thread dial's worm gear; 0 when there is no thread dial
	DialMarks int

	Cross        Dial
	CrossReads   calc.DialReads
	Compound     Dial
	CompoundZero calc.CompoundZero
	ScrewedNose  bool

	Gears  []int // change gears on hand, teeth
	Speeds []int // spindle speeds, rpm
}

// Dial is the dial of a slide.
type Dial struct {
	Turn     calc.Length // one turn
	Division calc.Length // one line
}

// The two lathes that ship. They are invented.
var (
	InchLathe = Lathe{
		Name: "the inch bench lathe at Marrow Ford", LeadScrew: 8, DialTeeth: 32, DialMarks: 8,
		Cross: Dial{0.200, 0.001}, CrossReads: calc.ReadsDiameter,
		Compound: Dial{0.100, 0.001}, CompoundZero: calc.ZeroAcross, ScrewedNose: true,
		Gears:  []int{20, 24, 30, 32, 36, 40, 44, 46, 48, 52, 54, 56, 60, 63, 64, 72, 80},
		Speeds: []int{45, 70, 110, 180, 290, 460, 740},
	}
	MetricLathe = Lathe{
		Name: "the metric bench lathe at Marrow Ford", Metric: true, LeadScrew: 3, DialTeeth: 20, DialMarks: 10,
		Cross: Dial{calc.Millimetres(4), calc.Millimetres(0.02)}, CrossReads: calc.ReadsDiameter,
		Compound: Dial{calc.Millimetres(2), calc.Millimetres(0.02)}, CompoundZero: calc.ZeroAlong,
		Gears:  []int{20, 24, 28, 30, 32, 36, 40, 45, 48, 50, 55, 60, 63, 70, 75, 80, 127},
		Speeds: []int{50, 80, 125, 200, 315, 500, 800},
	}
)

// DefaultLathe is the lathe that ships for a system of units.
func DefaultLathe(s System) Lathe {
	if s == Metric {
		return MetricLathe
	}
	return InchLathe
}

// System is the system of units that the lathe's dials are in.
func (l Lathe) System() System {
	if l.Metric {
		return Metric
	}
	return Imperial
}

// ThreadDial returns the lathe's thread dial. ok is false when it has none.
func (l Lathe) ThreadDial() (d calc.ThreadDial, ok bool) {
	screw := calc.ThreadsPerInch(l.LeadScrew)
	if l.Metric {
		screw = calc.ThreadsPerInch(calc.MillimetresPerInch / l.LeadScrew)
	}
	return calc.ThreadDial{LeadScrew: screw, Teeth: l.DialTeeth, Marks: l.DialMarks}, l.DialTeeth > 0 && l.DialMarks > 0
}

// LeadScrewText says what the lead screw is: "8 TPI" or "3 mm".
func (l Lathe) LeadScrewText() string {
	if l.Metric {
		return calc.Shortest(l.LeadScrew, 3) + " mm"
	}
	return calc.Shortest(l.LeadScrew, 3) + " TPI"
}

// Code returns the lathe as far as problems depend on it, in a form that a problem's
// code can carry: L8.32.8_C200.1d_T100.1a_s. Dials are in thousandths, or in
// hundredths of a millimetre for a metric lathe. Name, gears and speeds are not in it.
func (l Lathe) Code() string {
	screw, unit := calc.Shortest(l.LeadScrew, 3), calc.Thou
	if l.Metric {
		screw, unit = screw+"mm", calc.Millimetres(0.01)
	}
	number := func(x float64) string { return strings.ReplaceAll(calc.Shortest(x, 3), ".", "p") }
	dial := func(d Dial) string { return number(d.Turn.Over(unit)) + "." + number(d.Division.Over(unit)) }
	letter := func(b bool, yes, no string) string {
		if b {
			return yes
		}
		return no
	}
	return fmt.Sprintf("L%s.%d.%d_C%s%s_T%s%s_%s", strings.ReplaceAll(screw, ".", "p"), l.DialTeeth, l.DialMarks,
		dial(l.Cross), letter(l.CrossReads == calc.ReadsDiameter, "d", "r"),
		dial(l.Compound), letter(l.CompoundZero == calc.ZeroAlong, "b", "a"), letter(l.ScrewedNose, "s", "k"))
}

var lathePattern = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^L(\d{1,2}(?:p\d{1,3})?)(mm)?\.(\d{1,2})\.(\d{1,2})_C(\d{1,4}(?:p\d{1,3})?)\.(\d{1,3}(?:p\d{1,3})?)([dr])_T(\d{1,4}(?:p\d{1,3})?)\.(\d{1,3}(?:p\d{1,3})?)([ab])_([sk])$`)
})

// LatheOfCode reads what Code returns. The error says what a code looks like, or what is
// wrong with the lathe that it describes.
func LatheOfCode(key string) (Lathe, error) {
	m := lathePattern().FindStringSubmatch(key)
	if m == nil {
		return Lathe{}, &calc.InputError{What: "lathe in the code", Got: calc.Quoted(key), Want: "one such as " + InchLathe.Code()}
	}
	num := func(s string) float64 {
		x, _ := calc.ParseNumber(strings.ReplaceAll(s, "p", ".")) // the pattern lets only numbers through
		return x
	}
	unit := calc.Thou
	if m[2] != "" {
		unit = calc.Millimetres(0.01)
	}
	l := Lathe{
		Metric: m[2] != "", LeadScrew: num(m[1]), DialTeeth: int(num(m[3])), DialMarks: int(num(m[4])),
		Cross:    Dial{unit.Times(num(m[5])), unit.Times(num(m[6]))},
		Compound: Dial{unit.Times(num(m[8])), unit.Times(num(m[9]))},
	}
	if m[7] == "d" {
		l.CrossReads = calc.ReadsDiameter
	}
	if m[10] == "b" {
		l.CompoundZero = calc.ZeroAlong
	}
	l.ScrewedNose = m[11] == "s"
	return l, l.Check()
}

// One turn of the dial of a slide: small lathes have 1 mm.
const (
	LeastTurn   = calc.Length(1 / calc.MillimetresPerInch)
	LargestTurn = calc.Length(0.5)
)

// What a size at its limit may be off by.
const (
	codeHolds = calc.Length(1e-6) // a code has three decimals of a thousandth
	divided   = 1e-6              // of a number of lines: the last bits of a division
)

// Check returns an error that says what is wrong with the description: a lead screw of 2
// to 20 threads per inch or 1 to 12 mm, no thread dial or one of 8 to 96 teeth and 1 to 32
// marks, dials of LeastTurn to LargestTurn with 20 to 1000 lines.
func (l Lathe) Check() error {
	screwLow, screwHigh := 2.0, 20.0
	if l.Metric {
		screwLow, screwHigh = 1, 12
	}
	switch {
	case l.LeadScrew < screwLow || l.LeadScrew > screwHigh:
		return &calc.InputError{What: "lead screw", Got: l.LeadScrewText(), Want: "2 to 20 TPI, or 1 to 12 mm"}
	case l.DialTeeth != 0 && (l.DialTeeth < 8 || l.DialTeeth > 96):
		return &calc.InputError{What: "thread-dial gear", Got: fmt.Sprint(l.DialTeeth), Want: "8 to 96 teeth, or 0 when there is no thread dial"}
	case l.DialTeeth != 0 && (l.DialMarks < 1 || l.DialMarks > 32):
		return &calc.InputError{What: "thread-dial marks", Got: fmt.Sprint(l.DialMarks), Want: "1 to 32"}
	}
	for _, d := range []struct {
		name string
		dial Dial
	}{{"cross-slide", l.Cross}, {"compound", l.Compound}} {
		if d.dial.Turn < LeastTurn-codeHolds || d.dial.Turn > LargestTurn+codeHolds {
			return &calc.InputError{What: d.name + " dial, one turn", Got: calc.LengthText(d.dial.Turn), Want: "0.0394 to 0.5000 in (1 to 12.7 mm)"}
		}
		lines := d.dial.Turn.Over(d.dial.Division)
		if d.dial.Division <= 0 || lines < 20-divided || lines > 1000+divided {
			return &calc.InputError{What: d.name + " dial, one line", Got: calc.LengthText(d.dial.Division), Want: "a line that goes 20 to 1000 times into a turn"}
		}
	}
	return nil
}
