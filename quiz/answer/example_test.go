package answer_test

import (
	"fmt"

	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
)

// A travel of 0.0556 in is asked for; who leaves the angle out gets 0.0484 in.
func ExampleExpected_Mark() {
	e := &answer.Expected{
		Kind: answer.Quantity, Key: answer.NumberResponse(0.0556), Unit: machine.InchUnit, Scrap: answer.ScrapHigh,
		Errors: []answer.Known{{Name: "no-angle", Response: answer.NumberResponse(0.0484)}},
	}
	if !e.Kind.Settle(e, answer.Tolerance{Inch: 0.001}) {
		fmt.Println("right and wrong are too near each other")
	}
	for _, typed := range []string{"0.0556", "1.412 mm", "55.6 thou", "0.0484", "55.6", "0.0600", "fifty"} {
		m := e.Mark(typed)
		fmt.Println(typed, "->", m.Verdict, m.Error, m.Points)
	}
	// Output:
	// 0.0556 -> right  1
	// 1.412 mm -> right  1
	// 55.6 thou -> right  1
	// 0.0484 -> slip no-angle 0
	// 55.6 -> unit  0.5
	// 0.0600 -> scrap-side  0
	// fifty -> unread  0
}

// What was typed is read before it is marked; an error says what would have been read.
func ExampleExpected_Read() {
	e := &answer.Expected{Kind: answer.Several, Options: []string{"1", "2", "3", "4"}, Key: answer.OptionsResponse("1", "3")}
	for _, typed := range []string{"1, 3", "13", "1 and 3", "all", "5"} {
		r, err := e.Read(typed)
		fmt.Println(typed, "->", r.Keys, err)
	}
	// Output:
	// 1, 3 -> [1 3] <nil>
	// 13 -> [1 3] <nil>
	// 1 and 3 -> [1 3] <nil>
	// all -> [1 2 3 4] <nil>
	// 5 -> [] can't read "5" (want-several)
}

// The bands of a number are what other programs mark by.
func ExampleExpected_Bands() {
	e := &answer.Expected{Kind: answer.Quantity, Key: answer.NumberResponse(12), Unit: machine.Unit{Name: "passes", Factor: 1, Count: true}, Tolerance: 0.1}
	for _, b := range e.Bands() {
		fmt.Printf("%.4g to %.4g: %s\n", b.Low, b.High, b.Mark.Verdict)
	}
	// Output:
	// 11.9 to 12.1: right
	// 2 to 12: wrong
	// 12 to 72: wrong
	// -72 to -2: wrong
	// -Inf to +Inf: wrong
}
