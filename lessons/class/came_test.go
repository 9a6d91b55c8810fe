package class_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"scratchpass/content"
	"scratchpass/lessons/class"
	"scratchpass/lessons/internal/scripted"
	"scratchpass/lessons/page"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/set"
	"scratchpass/quiz/tasks"
)

// session has the words.
func session(t *testing.T) *sitting.Session {
	t.Helper()
	s, err := sitting.NewSession(&scripted.Face{}, content.Shipped(), machine.Imperial, machine.InchLathe, nil)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// At the end each question has its text in short and a word for what came of it; no two sets are
// headed alike, also if one is a question of another that was asked again.
func TestTheEndSaysWhatCame(t *testing.T) {
	r := newRoom(t, "end", class.OwnPace)
	r.answer("1", 0, r.key("1", 0))
	r.answer("1", 1, "abc")
	r.answer("1", 2, "pass")
	for try := range 2 {
		again := fmt.Sprintf("set: more-%d\ntitle: A lesson\nunits: in\nrules: {feedback: end}\nslots: [{tasks: [compound-travel]}]\n", try)
		r.do(class.Event{Kind: class.Asked, Text: again, Name: "together"})
		r.do(class.Event{Kind: class.Opened, Set: try + 1})
		r.do(class.Event{Kind: class.Answered, Who: "1", Set: try + 1, Text: "9"})
	}
	r.do(class.Event{Kind: class.Locked, Set: 2})
	r.do(class.Event{Kind: class.Asked, Text: "set: last\ntitle: Last\nunits: in\nslots: [{tasks: [single-depth], count: 2}]\n", Name: "own-pace"})
	r.do(class.Event{Kind: class.Locked, Set: 3})
	r.do(class.Event{Kind: class.Answered, Who: "1", Set: 3, Text: "9"})
	r.do(class.Event{Kind: class.Ended})
	at, err := r.At(r.Person("1"), -1, begin.Add(time.Hour))
	if err != nil || at.Scene != class.Over {
		t.Fatal(at.Scene, err)
	}
	var heads, lines []string
	for _, b := range at.Seat(session(t)).Body {
		switch b := b.(type) {
		case page.Heading:
			heads = append(heads, b.Text)
		case page.Paragraph:
			heads = append(heads, b.Text)
		case page.Table:
			for _, row := range b.Rows {
				lines = append(lines, strings.Join(row[:2], " | "))
			}
		}
	}
	if got, want := strings.Join(heads, "; "), "1. A lesson; Right: 1 of 3.; 2. Compound travel for the depth; Right: 0 of 1.; 3. Compound travel for the depth; Right: 0 of 1.; 4. Last; Right: 0 of 2."; got != want {
		t.Errorf("headed %s\nnot    %s", got, want)
	}
	want := []string{"1. Compound travel for the depth | " + r.key("1", 0) + ": right", "2. Infeed left after several passes | abc: your instructor decides", "3. No cloth on turning work | no answer",
		"1. Compound travel for the depth | 9: wrong", "1. Compound travel for the depth | 9: wrong", "1. Single depth by the book | your instructor decides", "2. Single depth by the book | no answer"}
	if got := strings.Join(lines, "\n"); got != strings.Join(want, "\n") {
		t.Errorf("it says\n%s\nnot\n%s", got, strings.Join(want, "\n"))
	}
}

// On a phone the next question is offered as long as one has no answer; after the last it is the
// list of all.
func TestNoNextAfterTheLast(t *testing.T) {
	r := newRoom(t, "end", class.OwnPace)
	for place := range 3 {
		r.answer("1", place, "1")
		at, err := r.At(r.Person("1"), place, begin.Add(time.Minute))
		if err != nil {
			t.Fatal(err)
		}
		if seat := at.Seat(session(t)); seat.Next != (place < 2) || seat.All != (place == 2) {
			t.Errorf("after question %d: next %v, all %v", place+1, seat.Next, seat.All)
		}
	}
}

// A few questions that ask how sure someone is are for the end of a lesson; others are run as the
// first set is.
func TestWayOfAFurtherSet(t *testing.T) {
	for text, want := range map[string]class.Way{"sure: true\nslots: [{tasks: [single-depth], count: 5}]": class.Ticket, "sure: true\nslots: [{tasks: [single-depth], count: 6}]": class.OwnPace, "slots: [{tasks: [single-depth]}]": class.OwnPace} {
		b, err := set.ParseBlueprint("further", []byte("set: further\ntitle: Further\nunits: in\n"+text+"\n"), tasks.Set{}, lathes)
		if err != nil {
			t.Fatal(err)
		}
		if got := class.WayOf(b, class.OwnPace); got != want {
			t.Errorf("%s: %s", text, got)
		}
	}
}
