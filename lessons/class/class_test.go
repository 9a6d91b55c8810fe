package class_test

import (
	"context"
	"fmt"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"scratchpass/content"
	"scratchpass/lessons/class"
	"scratchpass/lessons/class/journal"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/set"
	"scratchpass/quiz/tasks"
)

// blueprint is a set of three questions, the second of which follows from the first, and the
// third is about what can hurt someone.
const blueprint = `set: lesson
title: A lesson
units: in
rules: {feedback: %s}
slots:
- {name: travel, tasks: [compound-travel]}
- {tasks: [infeed-left], takes: {total: travel}}
- {tasks: [no-cloth-on-turning-work]}
`

var roster = []class.Apprentice{{ID: "1", Name: "Ada Brink"}, {ID: "2", Name: "Ben Corrie"}, {ID: "3", Name: "Cy Dale"}}

var begin = time.Date(2026, 11, 26, 9, 0, 0, 0, time.UTC)

func makes() class.Maker {
	return class.MakerOf(set.Secret("a secret that stands in a test"), content.Shipped(), tasks.Set{}, func(string) (machine.Lathe, error) { return machine.InchLathe, nil })
}

// room is a room with one set, and what makes events for it.
type room struct {
	*class.Room
	t *testing.T
}

func newRoom(t *testing.T, feedback string, way class.Way) room {
	t.Helper()
	r := room{class.NewRoom(class.Head{Code: "AAAAAA", Title: "A lesson", Roster: roster}, makes()), t}
	r.do(class.Event{Kind: class.Asked, Text: fmt.Sprintf(blueprint, feedback), Name: string(way)})
	for i, a := range roster {
		r.do(class.Event{Kind: class.Joined, Who: a.ID, Text: fmt.Sprint("phone ", i)})
	}
	return r
}

func (r room) do(e class.Event) {
	r.t.Helper()
	e.Seq = r.Seq + 1
	if e.At.IsZero() {
		e.At = begin.Add(time.Duration(e.Seq) * time.Second)
	}
	if err := r.Apply(e); err != nil {
		r.t.Fatal(err)
	}
}

func (r room) answer(who string, place int, text string) {
	r.t.Helper()
	r.do(class.Event{Kind: class.Answered, Who: who, Place: place, Text: text})
}

// key is the right answer of someone's question, as a person would type it.
func (r room) key(who string, place int) string {
	r.t.Helper()
	it, err := r.Sets[0].Item(who, place)
	if err != nil {
		r.t.Fatal(err)
	}
	return it.Words.KeyNumber(it.Problem)
}

func (r room) points(who string) float64 {
	r.t.Helper()
	m, err := r.Marked(r.Person(who), 0)
	if err != nil {
		r.t.Fatal(err)
	}
	return m.Points
}

// Of two phones that want one name, the second waits until the instructor lets it in. The first
// is nobody's then, and the answers stay with the name.
func TestASecondPhone(t *testing.T) {
	r := newRoom(t, "end", class.Together)
	r.do(class.Event{Kind: class.Opened, Place: 0})
	r.answer("1", 0, "0.05")
	r.do(class.Event{Kind: class.Joined, Who: "1", Text: "another"})
	if p := r.Holder("another"); p != nil {
		t.Fatal("it was let in at once, as ", p.Name)
	}
	if p := r.Claimed("another"); p == nil || p.ID != "1" {
		t.Fatal("it waits for ", p)
	}
	r.do(class.Event{Kind: class.Let, Who: "1", Text: "a third one that never asked"})
	if r.Holder("a third one that never asked") != nil {
		t.Error("who never asked was let in")
	}
	r.do(class.Event{Kind: class.Let, Who: "1", Text: "another"})
	if p := r.Holder("another"); p == nil || p.ID != "1" || len(p.Answers) != 1 || len(p.Claims) != 0 {
		t.Fatal("after it was let in: ", p)
	}
	if p := r.Holder("phone 0"); p != nil {
		t.Error("the first phone is still ", p.Name)
	}
	r.do(class.Event{Kind: class.Joined, Who: "2", Text: "another"}) // it wants a name that another has
	r.do(class.Event{Kind: class.Refused, Who: "2", Text: "another"})
	if r.Claimed("another") != nil {
		t.Error("it still waits after it was refused")
	}
}

// A visitor is never taken for someone on the roster, and can be made one by the instructor.
func TestVisitors(t *testing.T) {
	r := newRoom(t, "end", class.Together)
	for _, name := range []string{"Ada Brink", " ada  BRINK", "1"} {
		if r.NickName(name) != "" {
			t.Errorf("a visitor may be called %q", name)
		}
	}
	if p, _ := r.Named(" ada  BRINK"); p == nil || p.ID != "1" {
		t.Error("Ada is not known by her name: ", p)
	}
	if p, _ := r.Named("1"); p != nil {
		t.Error("who counts up the list learns who is on it: ", p.Name)
	}
	if p, _ := r.Named("Zoe"); r.NickName("Zoe") != "Zoe" || p != nil {
		t.Error("a visitor may not be called Zoe")
	}
	r.do(class.Event{Kind: class.Joined, Who: "visitor-x", Text: "v", Name: "ada brink"})
	if r.Holder("v") != nil {
		t.Error("a visitor has a name of the roster")
	}
	r.do(class.Event{Kind: class.Joined, Who: "visitor-x", Text: "v", Name: "Zoe"})
	if p := r.Holder("v"); p == nil || !p.Visitor {
		t.Fatal("no visitor came in")
	}
	r.do(class.Event{Kind: class.Removed, Who: "3"})
	r.do(class.Event{Kind: class.Merged, Who: "visitor-x", Text: "3"})
	if p := r.Holder("v"); p == nil || p.ID != "3" {
		t.Error("the visitor's phone is not Cy's now: ", p)
	}
	code := r.Sets[0].Maker.Code("2")
	if p, _ := r.Named(code); p == nil || p.ID != "2" {
		t.Error("the code of a paper strip is not known: ", code)
	}
}

// Together, an answer may be changed until the question is locked; what comes later waits for
// the instructor.
func TestTogether(t *testing.T) {
	r := newRoom(t, "end", class.Together)
	r.answer("1", 0, r.key("1", 0)) // before it was opened
	if r.points("1") != 0 {
		t.Error("an answer to a question that is not open counts")
	}
	r.do(class.Event{Kind: class.Opened, Place: 0})
	r.answer("2", 0, "9")
	r.answer("2", 0, r.key("2", 0))
	if a := r.Person("2").Answers[class.Question{}]; a.Changed != 1 || r.points("2") != 1 {
		t.Error("the last answer does not count: ", a, r.points("2"))
	}
	r.do(class.Event{Kind: class.Locked})
	r.answer("2", 0, "9")
	r.answer("3", 0, r.key("3", 0))
	if r.points("2") != 1 {
		t.Error("an answer that came late took the place of one that came in time")
	}
	if a := r.Person("3").Answers[class.Question{}]; !a.Late || r.points("3") != 0 {
		t.Error("an answer that came late counts: ", a)
	}
	r.do(class.Event{Kind: class.Counted, Who: "3"})
	if r.points("3") != 1 {
		t.Error("an answer that was let does not count")
	}
	r.do(class.Event{Kind: class.Opened, Place: 0}) // open again
	r.answer("1", 0, r.key("1", 0))
	if r.points("1") != 1 {
		t.Error("an answer after opening again does not count")
	}
	r.do(class.Event{Kind: class.Showed, Place: 0, N: 1})
	r.do(class.Event{Kind: class.Opened, Place: 0})
	r.answer("2", 0, "8")
	if r.points("2") != 1 {
		t.Error("an answer counts after the working was shown")
	}
}

// Where what came is told at once the first answer counts.
func TestAtOnceTheFirstCounts(t *testing.T) {
	r := newRoom(t, "at-once", class.OwnPace)
	r.answer("1", 0, "9")
	r.answer("1", 0, r.key("1", 0))
	if r.points("1") != 0 {
		t.Error("a second try counts after the first was told")
	}
	end := newRoom(t, "end", class.OwnPace)
	end.answer("1", 0, "9")
	end.answer("1", 0, end.key("1", 0))
	if end.points("1") != 1 {
		t.Error("an answer can't be changed although nothing was told")
	}
}

// Time is up for all but who has more of it, and never for what can hurt someone.
func TestTheWindow(t *testing.T) {
	r := newRoom(t, "end", class.OwnPace)
	r.do(class.Event{Kind: class.Until, Text: begin.Add(time.Minute).Format(time.RFC3339)})
	r.do(class.Event{Kind: class.Longer, Who: "2", N: 5})
	late := begin.Add(2 * time.Minute)
	for _, c := range []struct {
		who   string
		place int
		takes bool
	}{{"1", 0, false}, {"2", 0, true}, {"1", 2, true}, {"2", 2, true}} {
		if got := r.Takes(r.Person(c.who), class.Question{Place: c.place}, late); got != c.takes {
			t.Errorf("after the end %s's question %d takes an answer: %v", c.who, c.place, got)
		}
	}
	if !r.Takes(r.Person("1"), class.Question{}, begin.Add(time.Minute)) {
		t.Error("the last moment is not in the window")
	}
	r.do(class.Event{Kind: class.Until})
	if !r.Takes(r.Person("1"), class.Question{}, late) {
		t.Error("the window can't be opened again")
	}
}

// The marks of a room are those of set mark: of the same answers, question by question, also
// where one follows from another.
func TestMarksAreThoseOfTheSet(t *testing.T) {
	r := newRoom(t, "end", class.OwnPace)
	answers := [][]string{{r.key("1", 0), r.key("1", 1), "1"}, {"0.5", "0.3", "2"}, {"pass", "nonsense", "3"}}
	for i, a := range roster {
		for place, text := range answers[i] {
			r.answer(a.ID, place, text)
		}
	}
	q := r.Sets[0]
	k, err := set.NewMarker(t.Context(), q.Maker, roster, class.Given(r.Room, 0, false))
	if err != nil {
		t.Fatal(err)
	}
	i := 0
	if err := k.Each(func(want set.Result) error {
		got, err := r.Marked(r.Person(roster[i].ID), 0)
		for n := range got.Items {
			x, y := got.Items[n], want.Items[n]
			if x.Verdict != y.Verdict || x.Points != y.Points || x.Slip != y.Slip || x.Given != y.Given {
				t.Errorf("%s, question %d: in the room %+v, in the set %+v", want.Name, n+1, x, y)
			}
		}
		i++
		return err
	}); err != nil || i != len(roster) {
		t.Fatal(i, err)
	}
}

// A room that is opened again is the same, with the same code, key, people and answers.
func TestARoomGoesOn(t *testing.T) {
	path := filepath.Join(t.TempDir(), "lesson.class")
	var want []class.Event
	for round := range 3 {
		j, err := journal.Open(path)
		if err != nil {
			t.Fatal(err)
		}
		hall := class.NewHall(j, func(class.Head) class.Maker { return makes() }, time.Now, func(err error) { t.Error(err) })
		ctx := context.Background()
		var live *class.Live
		if round == 0 {
			live, err = hall.Begin(ctx, class.Head{Code: "AAAAAA", Title: "A lesson", Key: "k", Roster: roster}, fmt.Sprintf(blueprint, "end"), class.Together)
		} else {
			live, err = hall.Room(ctx, "AAAAAA")
		}
		if err != nil {
			t.Fatal(err)
		}
		live.See(func(r *class.Room) {
			if len(r.Person("1").Answers) != min(round, 1) || r.Head.Key != "k" || len(r.Sets) != 1 {
				t.Errorf("round %d: %+v", round, r.Person("1"))
			}
		})
		for _, e := range []class.Event{{Kind: class.Opened, Place: 0, Key: "opened"}, {Kind: class.Joined, Who: "1", Text: "p", Key: "joined"}, {Kind: class.Answered, Who: "1", Text: "0.05", Key: "a"}} {
			if err := live.Do(ctx, e); err != nil {
				t.Fatal(err)
			}
		}
		events, err := j.After(ctx, "AAAAAA", 0)
		if err != nil {
			t.Fatal(err)
		}
		if round == 0 {
			want = events
		}
		if !slices.Equal(events, want) { // each has its key: nothing happened twice
			t.Errorf("round %d: %v, not %v", round, events, want)
		}
		if err := j.Close(); err != nil {
			t.Fatal(err)
		}
	}
}

// What was told is not answered again when the set is run another way, and a time that was up
// does not go on in it.
func TestAnotherWayOpensNothingThatWasTold(t *testing.T) {
	r := newRoom(t, "at-once", class.OwnPace)
	r.answer("1", 0, "9")
	r.do(class.Event{Kind: class.Until, Text: begin.Format(time.RFC3339)})
	r.do(class.Event{Kind: class.Ran, Text: "together"})
	r.do(class.Event{Kind: class.Opened, Place: 0})
	r.answer("1", 0, r.key("1", 0))
	r.answer("2", 0, r.key("2", 0))
	if r.points("1") != 0 || r.points("2") != 1 || !r.Sets[0].Until.IsZero() {
		t.Error(r.points("1"), r.points("2"), r.Sets[0].Until)
	}
	r = newRoom(t, "end", class.OwnPace)
	r.do(class.Event{Kind: class.Locked})
	r.do(class.Event{Kind: class.Ran, Text: "together"})
	r.do(class.Event{Kind: class.Opened, Place: 0})
	r.answer("1", 0, r.key("1", 0))
	if r.points("1") != 0 {
		t.Error("all was told, and an answer counts")
	}
}

// A question that is asked again has other numbers for everyone, where there are enough.
func TestAgainInOtherNumbers(t *testing.T) {
	r := newRoom(t, "end", class.Together)
	again, err := r.Again(0, 0)
	if err != nil {
		t.Fatal(err)
	}
	text, err := again.Blueprint()
	if err != nil {
		t.Fatal(err)
	}
	r.do(class.Event{Kind: class.Asked, Text: text, Name: "together"})
	for _, a := range roster {
		before, err := r.Sets[0].Item(a.ID, 0)
		if err != nil {
			t.Fatal(err)
		}
		after, err := r.Sets[1].Item(a.ID, 0)
		if err != nil || before.Problem.Expected.Text() == after.Problem.Expected.Text() {
			t.Errorf("%s: %s again, %v", a.Name, before.Problem.Expected.Text(), err)
		}
	}
}

// What a person is given of themselves has no token of a phone in it, whatever phones came and
// went under their name.
func TestNoTokensAreGivenOut(t *testing.T) {
	var events []class.Event
	for _, kind := range []class.Kind{class.Joined, class.Let, class.Refused, class.Left, class.Answered} {
		events = append(events, class.Event{Kind: kind, Who: "1", Text: "token"}, class.Event{Kind: kind, Who: "2", Text: "another's"})
	}
	for _, e := range class.Of(events, map[string]bool{"1": true}) {
		if e.Who != "1" || (e.Text != "") != (e.Kind == class.Answered) {
			t.Errorf("%+v", e)
		}
	}
}
