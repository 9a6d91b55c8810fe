package class_test

import (
	"fmt"
	"strings"
	"testing"

	"scratchpass/content"
	"scratchpass/lessons/class"
	"scratchpass/lessons/face/text"
	"scratchpass/lessons/internal/scripted"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/machine"
)

// A question that follows from another one names what was asked there, and what was answered.
func TestAQuestionThatFollows(t *testing.T) {
	s, err := sitting.NewSession(&scripted.Face{}, content.Shipped(), machine.Imperial, machine.InchLathe, nil)
	if err != nil {
		t.Fatal(err)
	}
	r := newRoom(t, "end", class.OwnPace)
	title := func(place int) string {
		it, err := r.Sets[0].Item("1", place)
		if err != nil {
			t.Fatal(err)
		}
		return it.Words.Task.Title
	}
	for _, c := range []struct{ given, says string }{
		{"", "Question 1, " + title(0) + ": you gave no answer"},
		{"pass", "Question 1, " + title(0) + ": you gave no answer"},
		{"0.051", "Question 1, " + title(0) + ": you answered 0.051."},
	} {
		if c.given != "" {
			r.answer("1", 0, c.given)
		}
		at, err := r.At(r.Person("1"), 1, begin)
		if err != nil {
			t.Fatal(err)
		}
		said := fmt.Sprint(text.Lines(at.Seat(s).Body, false))
		if !strings.Contains(said, c.says) || !strings.Contains(said, "[your answer to question 1]") {
			t.Errorf("after %q: no %q in %s", c.given, c.says, said)
		}
	}
}
