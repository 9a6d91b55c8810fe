package mastery_test

import (
	"testing"
	"time"

	"scratchpass/lessons/mastery"
)

func TestMomentOf(t *testing.T) {
	east, west := time.FixedZone("", 14*3600), time.FixedZone("", -11*3600)
	half := time.FixedZone("", 5*3600+1800)
	day := mastery.MomentOf(time.Date(2026, 3, 1, 12, 0, 0, 0, time.UTC)).Day
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
		{time.Date(1970, 1, 1, 0, 0, 0, 0, time.UTC), -20513, "the first day of all"},
		{time.Date(1969, 12, 31, 23, 59, 59, 0, time.UTC), -20514, "a second before it"},
		{time.Date(1969, 12, 31, 0, 0, 0, 0, time.UTC), -20514, "and the whole of that day"},
	} {
		got := mastery.MomentOf(row.at)
		if got.Day-day != row.want || got.Unix != row.at.Unix() {
			t.Errorf("%v is day %d: %s", row.at, got.Day-day, row.why)
		}
	}
}

func TestLater(t *testing.T) {
	zone := func(hours int) *time.Location { return time.FixedZone("", hours*3600) }
	at := func(day, hour, minute, zoneHours int) time.Time {
		return time.Date(2026, 3, day, hour, minute, 0, 0, zone(zoneHours))
	}
	for _, row := range []struct {
		one, other time.Time
		dates      int
		want       bool
		why        string
	}{
		{at(1, 18, 0, 0), at(2, 18, 0, 0), 1, true, "the next evening"},
		{at(1, 23, 58, 0), at(2, 0, 2, 0), 1, false, "four minutes with a midnight in them"},
		{at(1, 23, 58, 0), at(2, 7, 57, 0), 1, false, "a minute less than eight hours"},
		{at(1, 23, 58, 0), at(2, 7, 58, 0), 1, true, "eight hours"},
		{at(1, 8, 0, 0), at(1, 23, 59, 0), 1, false, "morning and night of one date"},
		{at(1, 14, 0, 0), at(2, 4, 0, 14), 1, false, "the same moment, far in the east"},
		{at(1, 18, 0, 0), at(2, 1, 0, 1), 1, false, "six hours, and another zone"},
		{at(2, 1, 0, 10), at(1, 23, 0, 0), 1, false, "eight hours later, on the date before"},
		{at(1, 18, 0, 0), at(2, 18, 0, 0), 2, false, "one date, where two are asked for"},
		{at(1, 18, 0, 0), at(3, 18, 0, 0), 2, true, "two dates"},
		{at(2, 18, 0, 0), at(1, 18, 0, 0), 1, false, "the day before"},
	} {
		if got := mastery.MomentOf(row.other).Later(mastery.MomentOf(row.one), row.dates); got != row.want {
			t.Errorf("%v after %v: %v: %s", row.other, row.one, got, row.why)
		}
	}
}

func TestFrom(t *testing.T) {
	place := time.FixedZone("", 3600)
	for _, row := range []struct {
		shown time.Time
		dates int
		want  string
		why   string
	}{
		{time.Date(2026, 11, 26, 18, 0, 0, 0, place), 1, "2026-11-27 02:00", "a night after the evening"},
		{time.Date(2026, 11, 26, 9, 0, 0, 0, place), 1, "2026-11-27 00:00", "from midnight on"},
		{time.Date(2026, 11, 26, 16, 0, 0, 0, place), 1, "2026-11-27 00:00", "eight hours before it"},
		{time.Date(2026, 11, 26, 18, 0, 0, 0, place), 3, "2026-11-29 00:00", "three dates on"},
		{time.Date(2026, 12, 31, 23, 59, 0, 0, place), 1, "2027-01-01 07:59", "another year"},
	} {
		m := mastery.MomentOf(row.shown)
		got := m.From(row.dates, place)
		if got.Format("2006-01-02 15:04") != row.want {
			t.Errorf("%v and %d dates: %v, want %s: %s", row.shown, row.dates, got, row.want, row.why)
		}
		if !mastery.MomentOf(got).Later(m, row.dates) || mastery.MomentOf(got.Add(-time.Second)).Later(m, row.dates) {
			t.Errorf("%v is not the first moment of a later day", got)
		}
	}
}
