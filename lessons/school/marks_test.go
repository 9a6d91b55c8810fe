package school_test

import (
	"fmt"
	"reflect"
	"testing"
	"time"

	"scratchpass/lessons/school"
)

// A room is behind until what came of it is kept, and again when more happens in it. Of settled ones
// nothing is read, however many there are: not the head, nor, where they are old, the last event.
func TestRoomsThatAreBehind(t *testing.T) {
	db := database(t)
	now := time.Date(2026, 11, 27, 9, 0, 0, 0, time.UTC)
	do := func(statement string, values ...any) {
		t.Helper()
		if _, err := db.ExecContext(t.Context(), statement, values...); err != nil {
			t.Fatal(err)
		}
	}
	room := func(code, head string, age time.Duration) {
		t.Helper()
		do("INSERT INTO rooms (code, began_ms, head, of_group) VALUES ($1, $2, $3, 'turning-1')", code, now.Add(-age).UnixMilli(), head)
	}
	happens := func(code string, seq int64, age time.Duration) {
		t.Helper()
		do("INSERT INTO events (room, seq, at_ms, kind, who, in_set, place, n, body, name, certainty, once) VALUES ($1, $2, $3, '', '', 0, 0, 0, '', '', '', $4)", code, seq, now.Add(-age).UnixMilli(), fmt.Sprint(seq))
	}
	marks := school.Marks{DB: db}
	behind := func(want ...string) {
		t.Helper()
		got, err := marks.Behind(t.Context(), school.Wanted{Groups: []string{"turning-1"}, Draws: 3, Before: now.Add(-time.Minute), Most: 9})
		if err != nil || !reflect.DeepEqual(got, want) {
			t.Errorf("%v, %v; want %v", got, err, want)
		}
	}
	const day = 24 * time.Hour
	for i, age := range []time.Duration{90 * day, day} {
		code := fmt.Sprint("SETTLED", i)
		room(code, "no head that can be read", age)
		happens(code, 1, age)
		if err := marks.Keep(t.Context(), code, 1, school.CameOf{}); err != nil {
			t.Fatal(err)
		}
	}
	behind()
	room("OTHER", `{"draws": 2}`, day)
	happens("OTHER", 1, day)
	room("OLD", `{"draws": 3}`, 91*day)
	happens("OLD", 1, 91*day)
	room("NEW", `{"draws": 3}`, time.Hour)
	happens("NEW", 1, 2*time.Minute)
	room("NOW", `{"draws": 3}`, time.Hour)
	happens("NOW", 1, time.Second)
	behind("OLD", "NEW")
	for _, code := range []string{"OLD", "NEW"} {
		if err := marks.Keep(t.Context(), code, 1, school.CameOf{}); err != nil {
			t.Fatal(err)
		}
	}
	behind()
	happens("NEW", 2, 2*time.Minute)
	behind("NEW")
}
