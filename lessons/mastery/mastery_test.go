package mastery_test

import (
	"testing"

	"scratchpass/lessons/mastery"
)

// answers are written as letters: r right, w wrong, h right with a hint, and
// figures for how many other items come between; | begins another day.
func answers(text string) []mastery.Answer {
	var all []mastery.Answer
	item, day := 0, 0
	for _, c := range text {
		switch {
		case c >= '0' && c <= '9':
			item += int(c - '0')
		case c == '|':
			day++
		case c == 'a' || c == 'b': // right, in a form of that name
			item++
			all = append(all, mastery.Answer{Item: item, Day: day, Right: true, Form: string(c)})
		default:
			item++
			all = append(all, mastery.Answer{Item: item, Day: day, Right: c != 'w', Hint: c == 'h'})
		}
	}
	return all
}

func TestMastered(t *testing.T) {
	typed, choice := mastery.Rule{}, mastery.Rule{Choice: true}
	gate, forms := mastery.Rule{Gate: true}, mastery.Rule{Forms: []string{"a", "b"}}
	test := func(r mastery.Rule, text string, want bool) {
		t.Helper()
		if got := mastery.Of(r, answers(text)).Mastered; got != want {
			t.Errorf("%+v %q: %v", r, text, got)
		}
	}
	test(typed, "", false)
	test(typed, "rrr", false)  // no other items in between
	test(typed, "rr5r", true)  // the third five items later
	test(typed, "rr4r", false) // four are not enough
	test(typed, "rrw5rr", false)
	test(typed, "rh5r", false) // a hint is not mastery
	test(typed, "wwwrr5r", true)
	test(typed, "rr5rw", true) // once shown, it was shown
	test(choice, "rr5r", false)
	test(choice, "rrrr5r", true)
	test(gate, "rr5r", false)
	test(gate, "rr5rrr5r", false) // twice on one day
	test(gate, "rr5r|rr5r", true)
	test(typed, "rr|r", true) // a night between them is pause enough
	test(gate, "rr5|r", false)
	test(gate, "rr5r|rw", false)
	test(forms, "aa5a", false)
	test(forms, "ab5a", true)
	test(forms, "aa5ab5a", true)
	if !mastery.Of(typed, answers("wrwrwrwrwr")).Stuck() || mastery.Of(typed, answers("wwwwwww")).Stuck() || mastery.Of(typed, answers("wwwwwwwwrr5r")).Stuck() {
		t.Error("stuck")
	}
}
