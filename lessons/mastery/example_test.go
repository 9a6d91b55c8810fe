package mastery_test

import (
	"fmt"
	"math"

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
			s = s.Add(rule, mastery.Answer{Item: item, Moment: mastery.Moment{Unix: int64(day) * 24 * 3600, Day: day}, Right: right})
		}
		fmt.Printf("day %d: %d right in a row, shown on %d days, mastered %v\n", day, s.Run.Length, s.Days, s.Mastered)
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

// Wald, Sequential Tests of Statistical Hypotheses (1945), from memory: a hypothesis is
// accepted when the likelihood ratio is at most B = beta / (1 - alpha). Here a right answer
// has the likelihood 1 of someone who knows and 1/2 of someone who holds an error half of
// the time, so after m of them the ratio is (1/2)^m; no one is rejected, so alpha is 0;
// and beta is the odds allowed at the end over those at the start.
func ExampleRule_Missing_wald() {
	for errors := 1; errors <= 6; errors++ {
		b := (1.0 / 9) / min(float64(errors)/4, 1)
		m := math.Ceil(math.Log(b) / math.Log(0.5))
		var rule mastery.Rule
		for i := range errors {
			rule.Errors = append(rule.Errors, fmt.Sprint(i))
		}
		missing, _ := rule.Missing(mastery.State{})
		fmt.Printf("%d common errors: B %.3f, %.0f right answers; the rule asks for %d\n", errors, b, m, missing.Right)
	}
	// Output:
	// 1 common errors: B 0.444, 2 right answers; the rule asks for 3
	// 2 common errors: B 0.222, 3 right answers; the rule asks for 3
	// 3 common errors: B 0.148, 3 right answers; the rule asks for 3
	// 4 common errors: B 0.111, 4 right answers; the rule asks for 4
	// 5 common errors: B 0.111, 4 right answers; the rule asks for 4
	// 6 common errors: B 0.111, 4 right answers; the rule asks for 4
}
