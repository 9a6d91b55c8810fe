package record_test

import (
	"testing"

	"scratchpass/lessons/record"
)

func TestPlaces(t *testing.T) {
	r := fresh(t, 0)
	want := func(part int, there bool, why string) {
		t.Helper()
		if got, ok, err := r.Place("dial-book"); got != part || ok != there || err != nil {
			t.Errorf("part %d, %v, %v: %s", got, ok, err, why)
		}
	}
	set := func(lesson string, part int) {
		t.Helper()
		if err := r.SetPlace(lesson, part); err != nil {
			t.Fatal(err)
		}
	}
	want(0, false, "not begun")
	set("dial-book", 0)
	want(0, true, "the first part is a place")
	set("dial-book", 3)
	set("thread-shape", 1)
	want(3, true, "the newest counts, and that of this lesson")
	set("dial-book", 3)
	if all, err := r.Places(); len(all) != 2 || all[0] != (record.Left{Lesson: "dial-book", Part: 3}) || err != nil {
		t.Errorf("%v, %v: both lessons, the latest first", all, err)
	}
	r.Learner = "Ben"
	want(0, false, "another learner")
	r.Learner = "Ada"
	set("dial-book", -1)
	want(0, false, "finished")
	set("dial-book", -1)
	want(0, false, "finished twice is no error")
}
