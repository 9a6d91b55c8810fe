package problem_test

import (
	"fmt"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// depthTask asks for the single depth of a thread.
var depthTask = &problem.Task{
	Name: "single-depth", Stage: problem.Shape, Kind: answer.Quantity, Tolerance: answer.Tolerance{Inch: 0.0005},
	Inputs: problem.ThreadInputs,
	Draw: func(d *problem.Draw) problem.Values {
		v := d.Values()
		v.Set("tpi", problem.Pick(d, 8.0, 10, 12, 16))
		return v
	},
	Work: func(v problem.Values) (problem.Working, error) {
		w := v.Working()
		problem.Step1(w, "h", calc.ExternalDepth, w.Pitch())
		return w.Quantity()
	},
	Errors: []problem.CommonError{{Name: "pitch", Work: func(v problem.Values) answer.Response { return answer.LengthResponse(v.Pitch()) }}},
}

// A code makes the same problem everywhere: the numbers, the working and what common
// errors give.
func ExampleNew() {
	code, err := problem.ParseCode("single-depth@1-7f3a")
	if err != nil {
		fmt.Println(err)
		return
	}
	p, err := problem.New(depthTask, code)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(p.Values.Givens())
	for i := range p.Working.Steps {
		fmt.Println(p.Working.Line(i))
	}
	for _, e := range p.Expected.Errors {
		fmt.Println(e.Name, p.Expected.Show(e.Response))
	}
	fmt.Println(p.Mark("0.0383").Verdict)
	// Output:
	// [{tpi n 16 TPI}]
	// P = 1 / n = 1 / 16 = 0.062500 in
	// h = 0.613435 x P = 0.613435 x 0.062500 = 0.0383 in
	// pitch 0.0625 in
	// right
}

// Someone's own numbers are worked out the same way; there is no code that remakes them.
func ExampleFromValues() {
	v := problem.NewValues(depthTask.Inputs, machine.Imperial)
	if err := v.Read("thread", "3/4-10 UNC-2A"); err != nil {
		fmt.Println(err)
		return
	}
	p, err := problem.FromValues(depthTask, v, machine.InchLathe)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(p.Expected.Text())
	// Output: 0.0613 in
}

// A code names task, level, units and seed, and the lathe where it is not the one that
// ships.
func ExampleNewCode() {
	own := machine.InchLathe
	own.LeadScrew = 4
	fmt.Println(problem.NewCode("infeed-left", problem.DeriveFirst, machine.Metric, 0x1a, machine.MetricLathe))
	fmt.Println(problem.NewCode("infeed-left", problem.OnTheJob, machine.Imperial, 0x1a, own))
	// Output:
	// infeed-left@2m-001a
	// infeed-left@3-001a+L4.32.8_C200.1d_T100.1a_s
}
