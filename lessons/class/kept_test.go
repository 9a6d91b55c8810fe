package class_test

import (
	"testing"

	"scratchpass/lessons/class"
)

// What no record can take is counted for each reason by itself.
func TestWhatNoRecordTakes(t *testing.T) {
	r := newRoom(t, "end", class.OwnPace)
	r.answer("1", 0, r.key("1", 0))
	r.answer("1", 1, "0.01")         // hangs on the first
	r.answer("2", 0, "abc, I think") // can't be read
	r.do(class.Event{Kind: class.Locked})
	r.answer("2", 2, r.key("2", 2)) // late
	version := func(string) string { return "" }
	if all, left := r.ForRecord(r.Person("1"), version); len(all) != 1 || left != (class.LeftOut{Hangs: 1}) {
		t.Errorf("%d, %+v", len(all), left)
	}
	if all, left := r.ForRecord(r.Person("2"), version); len(all) != 0 || left != (class.LeftOut{Late: 1, Unread: 1}) {
		t.Errorf("%d, %+v", len(all), left)
	}
}
