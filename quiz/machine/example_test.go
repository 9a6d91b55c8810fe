package machine_test

import (
	"fmt"

	"scratchpass/quiz/machine"
)

// A lathe goes into the code of a problem by what problems depend on.
func ExampleLathe_Code() {
	own := machine.InchLathe
	own.LeadScrew, own.DialTeeth = 4, 16
	fmt.Println(own.Code())
	same, err := machine.LatheOfCode(own.Code())
	fmt.Println(same.LeadScrewText(), same.DialTeeth, same.DialMarks, err)
	// Output:
	// L4.16.8_C200.1d_T100.1a_s
	// 4 TPI 16 8 <nil>
}

// A description that can't be is refused with what would be taken.
func ExampleLathe_Check() {
	l := machine.MetricLathe
	l.LeadScrew = 25
	fmt.Println(l.Check())
	// Output: lead screw 25 mm: give 2 to 20 TPI, or 1 to 12 mm
}

// An answer has four places in inches and three in millimetres; a step has two more.
func ExampleUnit() {
	held := 1.0 / 12 // inches
	for _, s := range []machine.System{machine.Imperial, machine.Metric} {
		u := s.Length()
		fmt.Println(u.Text(held), u.Step(held))
	}
	// Output:
	// 0.0833 in 0.083333
	// 2.117 mm 2.11667
}
