package class_test

import (
	"fmt"
	"reflect"
	"testing"

	"scratchpass/lessons/class"
	"scratchpass/quiz/set"
)

// crowd is a room of so many people at one question.
func crowd(t *testing.T, task string, people int) room {
	t.Helper()
	head := class.Head{Code: "AAAAAA", Title: "A lesson"}
	for i := range people {
		head.Roster = append(head.Roster, class.Apprentice{ID: fmt.Sprint(i), Name: fmt.Sprint("Name ", i)})
	}
	r := room{class.NewRoom(head, makes()), t}
	r.do(class.Event{Kind: class.Asked, Text: "set: crowd\ntitle: Many\nunits: in\nslots:\n- {tasks: [" + task + "]}\n", Name: string(class.Together)})
	for i, a := range head.Roster {
		r.do(class.Event{Kind: class.Joined, Who: a.ID, Text: fmt.Sprint("phone ", i)})
	}
	r.do(class.Event{Kind: class.Opened})
	return r
}

// The wall shows numbers that nobody in the room has, and says so only where that is true. Made
// again, it shows the same.
func TestTheExampleIsNobodys(t *testing.T) {
	other, short := false, false
	for _, task := range []string{"compound-travel", "single-depth", "thread-dial-line", "infeed-left", "no-cloth-on-turning-work"} {
		for _, people := range []int{1, 12, 40} {
			r := crowd(t, task, people)
			w, err := r.Wall()
			if err != nil {
				t.Fatal(err)
			}
			has := func(it set.Item) bool {
				for _, p := range r.Came() {
					if own, err := r.Sets[0].Item(p.ID, 0); err != nil || reflect.DeepEqual(own.Problem.Values.Givens(), it.Problem.Values.Givens()) {
						return true
					}
				}
				return false
			}
			if has(w.Item) == w.Own {
				t.Errorf("%s, %d people: that nobody has it is said: %v", task, people, w.Own)
			}
			first, err := r.Sets[0].Item(class.OnTheWall, 0)
			if err != nil {
				t.Fatal(err)
			}
			other = other || has(first) && w.Own
			short = short || !w.Own
			again, err := crowd(t, task, people).Wall()
			if err != nil || again.Item.Problem.Code != w.Item.Problem.Code {
				t.Error("made again it is another: ", err)
			}
			r.do(class.Event{Kind: class.Joined, Who: "visitor-x", Text: "v", Name: "Zoe"}) // who comes later changes no number
			if later, err := r.Wall(); err != nil || later.Item.Problem.Code != w.Item.Problem.Code {
				t.Error("a visitor changed it: ", err)
			}
		}
	}
	if !other || !short {
		t.Error("none was drawn again, or there were numbers enough for all: ", other, short)
	}
}

// What follows from another question goes on with its example.
func TestTheExampleOfAChain(t *testing.T) {
	r := newRoom(t, "end", class.Together)
	r.do(class.Event{Kind: class.Opened, Place: 0})
	first, err := r.Wall()
	if err != nil {
		t.Fatal(err)
	}
	r.do(class.Event{Kind: class.Joined, Who: "visitor-x", Text: "v", Name: "Zoe"})
	r.do(class.Event{Kind: class.Opened, Place: 1})
	second, err := r.Wall()
	if err != nil || len(second.Before) != 1 || second.Before[0].Key != first.Item.Words.KeyNumber(first.Item.Problem) {
		t.Error(second.Before, err)
	}
}
