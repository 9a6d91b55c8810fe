package class_test

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"scratchpass/content"
	"scratchpass/lessons/class"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/set"
	"scratchpass/quiz/tasks"
)

// walk takes steps until there is none, and tells which they were.
func (r room) walk() []class.Step {
	r.t.Helper()
	var all []class.Step
	for {
		step, e, err := r.Next()
		if errors.Is(err, class.ErrNotNow) {
			return all
		}
		if err != nil || len(all) > 100 {
			r.t.Fatal(all, err)
		}
		all = append(all, step)
		r.do(e)
	}
}

// The steps go through each question: open, closed, what came, each line of the working. Where
// nothing is told, what came is left out.
func TestSteps(t *testing.T) {
	for feedback, want := range map[string]string{
		"end":   "first lock came line line line on lock came line line on lock came",
		"never": "first lock on lock on lock",
	} {
		r := newRoom(t, feedback, class.Together)
		var lines int
		for place := range 3 {
			it, err := r.Sets[0].Item(class.OnTheWall, place)
			if err != nil {
				t.Fatal(err)
			}
			lines += len(it.Problem.Working.Steps)
		}
		got := r.walk()
		said := strings.Trim(fmt.Sprint(got), "[]")
		if n := strings.Count(said, "line"); feedback == "end" && n != lines {
			t.Errorf("%d lines of %d: %s", n, lines, said)
		}
		squeeze := func(s string) string { return strings.Join(slices.Compact(strings.Fields(s)), " ") }
		if squeeze(said) != squeeze(want) {
			t.Errorf("%s: %s, not %s", feedback, said, want)
		}
	}
}

// A step back shows less, then the question before; it never opens one that was closed, and
// what was told takes no answer, whatever is done.
func TestStepsBack(t *testing.T) {
	r := newRoom(t, "end", class.Together)
	r.walk()
	for range 100 {
		e, err := r.Back()
		if errors.Is(err, class.ErrNotNow) {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		r.do(e)
		a := r.Asking()
		if !a.Locked || r.Takes(r.Person("1"), class.Question{Place: a.Open}, begin) {
			t.Fatalf("a step back opened question %d", a.Open+1)
		}
	}
	if a := r.Asking(); a.Open != 0 || a.Shown(0) != 0 {
		t.Error("the steps back end at ", a.Open, a.Shown(0))
	}
	r.do(class.Event{Kind: class.Opened, Place: 0})
	if r.Takes(r.Person("1"), class.Question{Place: 0}, begin) {
		t.Error("a question takes answers after what came was told")
	}
	r.do(class.Event{Kind: class.Paused})
	if _, _, err := r.Next(); !errors.Is(err, class.ErrNotNow) {
		t.Error("a step in a pause: ", err)
	}
}

// An open question that was left for the one before is as it was after a step on.
func TestAnOpenQuestionIsLeft(t *testing.T) {
	r := newRoom(t, "never", class.Together)
	for range 3 { // first, lock, on
		_, e, err := r.Next()
		if err != nil {
			t.Fatal(err)
		}
		r.do(e)
	}
	back, err := r.Back()
	if err != nil {
		t.Fatal(err)
	}
	r.do(back)
	if a := r.Asking(); a.Open != 0 || !a.Locked {
		t.Fatal("a step back is at ", a.Open, a.Locked)
	}
	_, on, err := r.Next()
	if err != nil {
		t.Fatal(err)
	}
	r.do(on)
	if a := r.Asking(); a.Open != 1 || a.Locked {
		t.Error("the question that was open is closed after a look at the one before")
	}
}

// Who needs the instructor stands first, with all that they need; what was seen to is needed
// no more.
func TestWhoNeedsWhom(t *testing.T) {
	r := newRoom(t, "end", class.Together)
	r.do(class.Event{Kind: class.Opened, Place: 2})
	r.do(class.Event{Kind: class.Called, Who: "3"})
	r.do(class.Event{Kind: class.Joined, Who: "3", Text: "another"})
	now := begin.Add(time.Minute)
	stands := func() string {
		t.Helper()
		s, err := r.Standing(0, now, func(d string) bool { return d == "phone 0" })
		if err != nil {
			t.Fatal(err)
		}
		var all []string
		for _, row := range s.Rows {
			all = append(all, fmt.Sprint(row.ID, row.Why))
		}
		return strings.Join(all, " ")
	}
	it, err := r.Sets[0].Item("2", 2)
	if err != nil {
		t.Fatal(err)
	}
	wrong := "1"
	if it.Words.KeyNumber(it.Problem) == wrong {
		wrong = "2"
	}
	r.do(class.Event{Kind: class.Answered, Who: "2", Place: 2, Text: wrong, Certainty: "bet"})
	if got := stands(); got != "3[in help] 2[care] 1[phone]" {
		t.Error(got)
	}
	r.do(class.Event{Kind: class.Seen, Who: "2"})
	r.do(class.Event{Kind: class.Seen, Who: "3"})
	r.do(class.Event{Kind: class.Refused, Who: "3", Text: "another"})
	r.do(class.Event{Kind: class.Locked})
	r.do(class.Event{Kind: class.Answered, Who: "3", Place: 2, Text: wrong})
	if got := stands(); got != "3[late] 2[none] 1[phone]" {
		t.Error(got)
	}
	now = begin.Add(10 * time.Minute)
	r.do(class.Event{Kind: class.Opened, Place: 0})
	if got := stands(); got != "3[late time] 2[time] 1[phone]" {
		t.Error(got)
	}
}

// Of fewer than five answers the wall shows nothing but how many they are; no wall has a name.
func TestTheWallNamesNobody(t *testing.T) {
	r := newRoom(t, "end", class.Together)
	r.do(class.Event{Kind: class.Opened, Place: 0})
	r.answer("1", 0, "9")
	r.do(class.Event{Kind: class.Locked})
	r.do(class.Event{Kind: class.Showed, Place: 0, N: 1})
	w, err := r.Wall()
	if err != nil || !w.Few() || w.Answered != 1 {
		t.Fatal(w, err)
	}
	if text := fmt.Sprintf("%+v", w.Head); strings.Contains(text, "Ada") || w.Head.Key != "" {
		t.Error("the wall has names or the key: ", text)
	}
}

func lathes(string) (machine.Lathe, error) { return machine.InchLathe, nil }

// One more question can be of every task, at every level, in a set in inches and one in
// millimetres; what is no task and no level is refused with words.
func TestOneMore(t *testing.T) {
	for _, units := range []string{"in", "mm"} {
		r := room{class.NewRoom(class.Head{Code: "AAAAAA", Roster: roster}, makes()), t}
		r.do(class.Event{Kind: class.Asked, Text: "set: one-with-a-name-as-long-as-may-be-abcdef\ntitle: One\nunits: " + units + "\nslots: [{tasks: [compound-travel]}]\n", Name: "together"})
		for _, name := range (tasks.Set{}).Names() {
			for level := 1; level <= 3; level++ {
				text, err := r.OneMore(tasks.Set{}, name, level)
				if err != nil {
					t.Fatal(name, level, err)
				}
				if _, err := set.ParseBlueprint("more", []byte(text), tasks.Set{}, lathes); err != nil {
					t.Errorf("%s, level %d: %v\n%s", name, level, err, text)
				}
			}
		}
		for _, c := range []struct {
			task  string
			level int
			wants string
		}{{"", 1, "no task was given"}, {"compound-travl", 1, `"compound-travl"`}, {"compound-travel", 0, "level 0"}, {"compound-travel", 4, "level 4"}} {
			if _, err := r.OneMore(tasks.Set{}, c.task, c.level); err == nil || !strings.Contains(err.Error(), c.wants) {
				t.Errorf("%q, level %d: %v", c.task, c.level, err)
			}
		}
	}
}

// A question of any slot can be asked again: of the same task, with other numbers.
func TestAgain(t *testing.T) {
	const text = `set: all
title: All kinds of slots
units: in
slots:
- {name: travel, tasks: [compound-travel], points: 2, level: 2}
- {tasks: [infeed-left], takes: {total: travel}}
- {stage: safety, count: 3}
- {tasks: [radius-dial-plunge, diameter-dial-plunge], mix: true, count: 2}
- {tasks: [compound-travel], units: mm}
`
	r := room{class.NewRoom(class.Head{Code: "AAAAAA", Roster: roster}, makes()), t}
	r.do(class.Event{Kind: class.Asked, Text: text, Name: "together"})
	makes := class.MakerOf(set.Secret("a secret that stands in a test"), content.Shipped(), tasks.Set{}, lathes)
	for place := range r.Sets[0].Places() {
		repeat, err := r.Again(0, place)
		if err != nil {
			t.Fatal(err)
		}
		again, err := repeat.Blueprint()
		if err != nil {
			t.Fatal(err)
		}
		q, err := makes(again, nil)
		if err != nil {
			t.Fatalf("place %d: %v\n%s", place, err, again)
		}
		was, err := r.Sets[0].Item("1", place)
		if err != nil {
			t.Fatal(err)
		}
		is, err := q.Item("1", 0)
		if err != nil {
			t.Fatal(err)
		}
		if of := r.Sets[0].Maker.TasksAt(place); !slices.Contains(of, is.Problem.Task.Name) || q.Places() != 1 || is.Points != was.Points {
			t.Errorf("place %d asks again %s for %g points, not one of %v for %g", place, is.Problem.Task.Name, is.Points, of, was.Points)
		}
		if is.Problem.Code == was.Problem.Code {
			t.Errorf("place %d: the same numbers again", place)
		}
	}
	for _, c := range [][2]int{{-1, 0}, {1, 0}, {0, -1}, {0, 8}} {
		if _, err := r.Again(c[0], c[1]); err == nil {
			t.Errorf("set %d, place %d can be asked again", c[0], c[1])
		}
	}
}
