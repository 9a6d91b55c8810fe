package class_test

import (
	"testing"
	"time"

	"scratchpass/lessons/class"
	"scratchpass/lessons/page"
)

// As many lines of the working as the wall has are on all phones, the moment it has them, whoever
// answered what: right, wrong, or nothing.
func TestPhonesWorkAlongWithTheWall(t *testing.T) {
	r, s := newRoom(t, "end", class.Together), session(t)
	now := begin.Add(time.Hour)
	r.do(class.Event{Kind: class.Opened})
	r.answer("1", 0, r.key("1", 0))
	r.answer("2", 0, "9")
	r.do(class.Event{Kind: class.Locked})
	lines := func(p page.Page) (n int) {
		for _, b := range p {
			if w, ok := b.(page.Working); ok {
				n += len(w)
			}
		}
		return n
	}
	first, err := r.Sets[0].Item(class.OnTheWall, 0)
	if err != nil || len(first.Problem.Working.Steps) < 2 {
		t.Fatal("a working of several lines is needed: ", first.Problem, err)
	}
	versions := map[string]bool{}
	for n := 1; n <= len(first.Problem.Working.Steps)+1; n++ {
		r.do(class.Event{Kind: class.Showed, N: n})
		w, err := r.Wall()
		if err != nil {
			t.Fatal(err)
		}
		for i, who := range []string{"1", "2", "3"} {
			at, err := r.At(r.Person(who), -1, now)
			if err != nil || at.Scene != class.Tells {
				t.Fatal(at.Scene, err)
			}
			if got, want := lines(at.Seat(s).Came), lines(w.Working(s)); got != want || want != n-1 {
				t.Errorf("step %d: %d lines on phone %s, %d on the wall", n, got, who, want)
			}
			v := r.Version(r.Person(who), now)
			if versions[v] {
				t.Errorf("step %d: phone %d is not told of it", n, i)
			}
			versions[v] = true
		}
	}
	r.do(class.Event{Kind: class.Ended}) // then all of it, with what is given
	at, err := r.At(r.Person("2"), 0, now)
	if err != nil || lines(at.Seat(s).Came) <= len(first.Problem.Working.Steps)-1 {
		t.Error("after the lesson the working is not whole: ", err)
	}
}
