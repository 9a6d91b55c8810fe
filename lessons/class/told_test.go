package class_test

import (
	"testing"
	"time"

	"scratchpass/lessons/class"
)

// What was told is not answered again: an answer that came late and was told at once stays as it
// was, also if the instructor lets it; after the end nothing counts.
func TestWhatWasToldIsNotAnsweredAgain(t *testing.T) {
	r := newRoom(t, "at-once", class.OwnPace)
	r.do(class.Event{Kind: class.Until, Text: begin.Add(time.Second).Format(time.RFC3339)})
	r.answer("1", 0, "9")
	r.answer("1", 0, r.key("1", 0))
	r.do(class.Event{Kind: class.Counted, Who: "1"})
	if a := r.Person("1").Answers[class.Question{}]; a.Text != "9" || r.points("1") != 0 {
		t.Error("a second try counts after a late one was told: ", a)
	}
	end := newRoom(t, "end", class.OwnPace)
	end.answer("1", 0, "9")
	end.do(class.Event{Kind: class.Ended})
	at, err := end.At(end.Person("1"), -1, begin.Add(time.Hour))
	if err != nil || at.Scene != class.Over || len(at.Came) != 1 || len(at.Came[0].Lines) != 3 {
		t.Error("at the end: ", at.Scene, at.Came, err)
	}
	end.answer("1", 0, end.key("1", 0))
	end.answer("2", 0, end.key("2", 0))
	if end.points("1") != 0 || end.points("2") != 0 {
		t.Error("an answer counts after the end")
	}
}

// Where all go together the end tells of the questions that were asked, and of no others.
func TestTheEndTellsWhatWasAsked(t *testing.T) {
	r := newRoom(t, "end", class.Together)
	r.do(class.Event{Kind: class.Opened, Place: 1})
	r.answer("1", 1, "9")
	r.do(class.Event{Kind: class.Ended})
	at, err := r.At(r.Person("1"), -1, begin.Add(time.Hour))
	if err != nil || len(at.Came) != 1 || len(at.Came[0].Lines) != 1 || at.Came[0].Lines[0].Place != 1 {
		t.Error(at.Came, err)
	}
	never := newRoom(t, "never", class.OwnPace)
	never.answer("1", 0, "9")
	never.do(class.Event{Kind: class.Ended})
	if at, err = never.At(never.Person("1"), 0, begin.Add(time.Hour)); err != nil || at.Marks || len(at.Came) > 0 {
		t.Error("what is never told is told at the end: ", at.Came, err)
	}
}

// A phone that goes to someone else leaves the name free, and the answers with it. The phone is
// told when the time is up.
func TestAPhoneGoesToSomeoneElse(t *testing.T) {
	r := newRoom(t, "end", class.OwnPace)
	r.answer("1", 0, "9")
	r.do(class.Event{Kind: class.Left, Who: "1", Text: "phone 1"}) // not its own
	if r.Holder("phone 0") == nil || r.Holder("phone 1") == nil {
		t.Error("a phone can leave for another")
	}
	r.do(class.Event{Kind: class.Left, Who: "1", Text: "phone 0"})
	if r.Holder("phone 0") != nil {
		t.Error("it did not leave")
	}
	r.do(class.Event{Kind: class.Joined, Who: "1", Text: "phone 9"})
	if p := r.Holder("phone 9"); p == nil || len(p.Answers) != 1 {
		t.Error("who comes back is not where they were: ", p)
	}
	r.do(class.Event{Kind: class.Until, Text: begin.Add(time.Hour).Format(time.RFC3339)})
	if p := r.Person("1"); r.Version(p, begin) == r.Version(p, begin.Add(2*time.Hour)) {
		t.Error("nothing tells that the time is up")
	}
}
