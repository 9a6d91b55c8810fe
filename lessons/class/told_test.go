package class_test

import (
	"slices"
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

// What the end of a lesson told stays told when it is opened again; what was not asked by then
// goes on. So it is with a set that was closed and told.
func TestWhatTheEndToldStaysTold(t *testing.T) {
	takes := func(r room, place int) bool {
		return r.Takes(r.Person("1"), class.Question{Place: place}, begin.Add(time.Hour))
	}
	r := newRoom(t, "end", class.Together)
	r.do(class.Event{Kind: class.Opened, Place: 0})
	r.do(class.Event{Kind: class.Ended})
	r.do(class.Event{Kind: class.Goes})
	if r.do(class.Event{Kind: class.Opened, Place: 0}); takes(r, 0) {
		t.Error("a question that the end has told takes answers again")
	}
	if r.do(class.Event{Kind: class.Opened, Place: 1}); !takes(r, 1) {
		t.Error("a question that was never asked takes no answers after the lesson was opened again")
	}
	for _, kinds := range [][2]class.Kind{{class.Ended, class.Goes}, {class.Locked, class.Freed}} {
		own, never := newRoom(t, "end", class.OwnPace), newRoom(t, "never", class.OwnPace)
		for _, kind := range kinds {
			own.do(class.Event{Kind: kind})
			never.do(class.Event{Kind: kind})
		}
		own.answer("1", 0, own.key("1", 0))
		if own.points("1") != 0 || takes(own, 1) {
			t.Error("after", kinds, "what was told is answered again")
		}
		at, err := own.At(own.Person("2"), 2, begin.Add(time.Hour))
		if err != nil || at.Scene != class.Tells || !at.Marks {
			t.Error("after", kinds, "what was told is hidden: ", at.Scene, err)
		}
		if !takes(never, 0) {
			t.Error("after", kinds, "a set that tells nothing takes no answers")
		}
	}
}

// A late answer says how late it came: after its question was closed or left, the time was up or
// the lesson was over, whichever was first.
func TestHowLate(t *testing.T) {
	at := func(seconds int) time.Time { return begin.Add(time.Duration(seconds) * time.Second) }
	for name, c := range map[string]struct {
		way  class.Way
		does []class.Event
		by   time.Duration
	}{
		"closed":           {class.Together, []class.Event{{Kind: class.Opened, At: at(10)}, {Kind: class.Locked, At: at(60)}, {Kind: class.Showed, N: 1, At: at(70)}}, 40 * time.Second},
		"left":             {class.Together, []class.Event{{Kind: class.Opened, At: at(10)}, {Kind: class.Opened, Place: 1, At: at(50)}}, 50 * time.Second},
		"opened again":     {class.Together, []class.Event{{Kind: class.Opened, At: at(10)}, {Kind: class.Locked, At: at(20)}, {Kind: class.Opened, At: at(30)}, {Kind: class.Locked, At: at(90)}}, 10 * time.Second},
		"looked at":        {class.Together, []class.Event{{Kind: class.Opened, At: at(10)}, {Kind: class.Locked, At: at(20)}, {Kind: class.Opened, N: 1, At: at(30)}}, 80 * time.Second},
		"never open":       {class.Together, nil, 0},
		"the end":          {class.Together, []class.Event{{Kind: class.Opened, At: at(10)}, {Kind: class.Ended, At: at(75)}, {Kind: class.Locked, At: at(80)}}, 25 * time.Second},
		"the time":         {class.OwnPace, []class.Event{{Kind: class.Until, Text: at(30).Format(time.RFC3339)}, {Kind: class.Longer, Who: "1", N: 1}, {Kind: class.Locked, At: at(98)}}, 10 * time.Second},
		"the set":          {class.OwnPace, []class.Event{{Kind: class.Locked, At: at(97)}}, 3 * time.Second},
		"in another way":   {class.OwnPace, []class.Event{{Kind: class.Ran, Text: "together", At: at(40)}}, 60 * time.Second},
		"in time, changed": {class.OwnPace, []class.Event{{Kind: class.Answered, Who: "1", Text: "1"}}, 0},
	} {
		r := newRoom(t, "end", c.way)
		for _, e := range c.does {
			r.do(e)
		}
		r.do(class.Event{Kind: class.Answered, Who: "1", Text: "9", At: at(100)})
		a := r.Person("1").Answers[class.Question{}]
		if a.Late == (name == "in time, changed") || a.By != c.by {
			t.Errorf("%s: late %v by %s, not %s", name, a.Late, a.By, c.by)
		}
	}
}

// What can't be read is told apart from what the instructor decides, with what was typed, until
// the instructor has seen to it.
func TestWhatCanNotBeReadIsShown(t *testing.T) {
	r := newRoom(t, "end", class.OwnPace)
	r.answer("2", 0, "abc")
	row := func() class.Row {
		t.Helper()
		s, err := r.Standing(0, begin.Add(time.Minute), func(string) bool { return false })
		if err != nil || s.Rows[0].ID != "2" && s.Rows[0].Needs != class.NeedsNone {
			t.Fatal(s.Rows, err)
		}
		return s.Rows[slices.IndexFunc(s.Rows, func(r class.Row) bool { return r.ID == "2" })]
	}
	if got := row(); got.Needs != class.NeedsRead || !got.Seeable() || got.Cells[0].State != class.IsUnread || got.Cells[0].Given != "abc" {
		t.Errorf("%+v", got)
	}
	r.do(class.Event{Kind: class.Seen, Who: "2"})
	if got := row(); got.Needs != class.NeedsNone || got.Cells[0].Given != "abc" {
		t.Errorf("after it was seen: %+v", got)
	}
}

// One count of those in the room is on all pages: who gave the phone back after an answer is
// still in it.
func TestOneCountOfTheRoom(t *testing.T) {
	r := newRoom(t, "end", class.Together)
	r.do(class.Event{Kind: class.Opened})
	r.answer("1", 0, "9")
	r.do(class.Event{Kind: class.Left, Who: "1", Text: "phone 0"})
	r.do(class.Event{Kind: class.Left, Who: "2", Text: "phone 1"})
	w, err := r.Wall()
	if err != nil {
		t.Fatal(err)
	}
	s, err := r.Standing(0, begin, func(string) bool { return false })
	if err != nil || w.Came != 2 || w.Answered != 1 || s.Places[0].Spread.Asked != w.Came || s.Places[0].Spread.Answered != w.Answered {
		t.Errorf("the wall has %d of %d, the table %d of %d: %v", w.Answered, w.Came, s.Places[0].Spread.Answered, s.Places[0].Spread.Asked, err)
	}
}
