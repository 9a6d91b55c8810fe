package mastery

import "time"

// Moment is when an answer was given: the time, and the date on the wall where it was
// given, as a number of days counted from anywhere.
type Moment struct {
	Unix int64 `json:"t"` // seconds since 1970
	Day  int   `json:"d"`
	Zone int   `json:"z,omitempty"` // seconds east of Greenwich
}

// MomentOf is the moment of a time, on the date of the place that the time carries.
func MomentOf(t time.Time) Moment {
	_, offset := t.Zone()
	m := Moment{Unix: t.Unix(), Zone: offset}
	m.Day = m.dayIn(offset)
	return m
}

// dayIn is the number of the date in a zone.
func (m Moment) dayIn(zone int) int {
	local := m.Unix + int64(zone)
	day := local / 86400
	if local%86400 < 0 {
		day--
	}
	return int(day)
}

// nightHours is how long after an answer a later day begins at the earliest: neither
// midnight nor a change of the time zone makes two days of one sitting.
const nightHours = 8

// Later reports whether a moment is of a later real day than another: so many dates on, at
// either place, and at least a night after it.
func (m Moment) Later(than Moment, dates int) bool {
	apart := m.Day - than.Day
	if m.Zone != than.Zone {
		apart = min(m.Day-than.dayIn(m.Zone), m.dayIn(than.Zone)-than.Day)
	}
	return apart >= dates && m.Unix-than.Unix >= nightHours*3600
}

// From is when at the earliest a later day begins, so many dates on, at a place: midnight
// of its date, or when the night is over.
func (m Moment) From(dates int, place *time.Location) time.Time {
	date := time.Unix(int64(m.Day+dates)*86400, 0).UTC()
	from := time.Date(date.Year(), date.Month(), date.Day(), 0, 0, 0, 0, place)
	if over := time.Unix(m.Unix, 0).Add(nightHours * time.Hour).In(place); over.After(from) {
		from = over
	}
	return from
}
