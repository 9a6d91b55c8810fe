package schedule

import (
	"testing"
	"time"
)

func TestDayOf(t *testing.T) {
	east, west := time.FixedZone("", 14*3600), time.FixedZone("", -11*3600)
	half := time.FixedZone("", 5*3600+1800)
	day := dayOf(time.Date(2026, 3, 1, 12, 0, 0, 0, time.UTC))
	if day != 20513 {
		t.Errorf("the first of March 2026 is day %d since 1970", day)
	}
	for _, row := range []struct {
		at   time.Time
		want int // from the first of March
		why  string
	}{
		{time.Date(2026, 3, 1, 0, 0, 0, 0, time.UTC), 0, "midnight belongs to the day it begins"},
		{time.Date(2026, 2, 28, 23, 59, 59, 999_999_999, time.UTC), -1, "a moment before it is the day before"},
		{time.Date(2026, 3, 1, 23, 59, 59, 999_999_999, time.UTC), 0, "the last moment of the day"},
		{time.Date(2026, 3, 1, 0, 0, 0, 0, east), 0, "midnight far in the east, where it is still yesterday in Greenwich"},
		{time.Date(2026, 3, 1, 23, 59, 0, 0, west), 0, "late far in the west, where it is tomorrow in Greenwich"},
		{time.Date(2026, 3, 2, 0, 0, 0, 0, west), 1, "midnight far in the west"},
		{time.Date(2026, 3, 1, 0, 10, 0, 0, half), 0, "a zone that is no whole hour off"},
		{time.Date(2026, 2, 28, 23, 50, 0, 0, half), -1, "and before its midnight"},
	} {
		if got := dayOf(row.at) - day; got != row.want {
			t.Errorf("%v is day %d: %s", row.at, got, row.why)
		}
	}
}
