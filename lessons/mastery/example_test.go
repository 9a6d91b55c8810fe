package mastery_test

import (
	"fmt"

	"scratchpass/lessons/mastery"
)

// A task that can hurt someone is shown by three right answers in a row on each of two
// days.
func ExampleState_Add() {
	rule := mastery.Rule{SafetyCritical: true}
	var s mastery.State
	item := 0
	practise := func(day int, answers ...bool) {
		for _, right := range answers {
			item += 1 + mastery.Apart // other tasks come between
			s = s.Add(rule, mastery.Answer{Item: item, Day: day, Right: right})
		}
		fmt.Printf("day %d: %d right in a row, shown on %d days, mastered %v\n", day, len(s.Run), len(s.Days), s.Mastered)
	}
	practise(1, true, true, false)
	practise(1, true, true, true)
	practise(2, true, true)
	practise(3, true)
	// Output:
	// day 1: 0 right in a row, shown on 0 days, mastered false
	// day 1: 0 right in a row, shown on 1 days, mastered false
	// day 2: 2 right in a row, shown on 1 days, mastered false
	// day 3: 0 right in a row, shown on 2 days, mastered true
}
