package served

import (
	"time"

	"scratchpass/lessons/class"
)

// deskRow is a row of the table, with what the instructor reads of it.
type deskRow struct {
	class.Row
	Asks  []claim
	Lates []lateAnswer
	Reads []string // what can't be read, in lines
}

// Says reports whether a need is said for itself: what came late or can't be read stands there as
// it was typed, as long as something can be done about it.
func (d deskRow) Says(n class.Need, ended bool) bool {
	return n != class.NeedsNone && (ended || n != class.NeedsLate && n != class.NeedsRead)
}

// claim is a phone that wants a name.
type claim struct {
	Device string
	Says   string // which phone was seen when; empty where no other has the name
}

// lateAnswer is an answer that came late, and waits to be let.
type lateAnswer struct {
	Place, Number int
	Says          string
}

// rowOf adds to a row what is read beside it.
func (s *Server) rowOf(row class.Row) deskRow {
	d := deskRow{Row: row}
	for _, device := range row.Claims {
		one := claim{Device: device}
		if row.Device != "" {
			one.Says = s.say("class-claim", "has", s.seen(row.Device), "wants", s.seen(device))
		}
		d.Asks = append(d.Asks, one)
	}
	for place, c := range row.Cells {
		switch {
		case c.Seen:
		case c.Late:
			d.Lates = append(d.Lates, lateAnswer{place, place + 1, s.lateOf(place, c)})
		case c.State == class.IsUnread:
			d.Reads = append(d.Reads, s.say("class-unread-line", "n", place+1, "given", c.Given))
		}
	}
	return d
}

// lateOf is a late answer in a line: how late it came, and what it is.
func (s *Server) lateOf(place int, c class.Cell) string {
	if c.By == 0 {
		return s.say("class-late-line", "n", place+1, "given", c.Given)
	}
	by := s.say("class-by-minutes", "n", int(c.By.Minutes()))
	if c.By < 2*time.Minute {
		by = s.say("class-by-seconds", "n", max(1, int(c.By.Seconds())))
	}
	return s.say("class-late-line-by", "n", place+1, "by", by, "given", c.Given)
}

// seen says when a phone was seen.
func (s *Server) seen(device string) string {
	at, open := s.presence.seen(device)
	switch {
	case open:
		return s.say("class-seen-now")
	case at.IsZero():
		return s.say("class-seen-not")
	}
	return s.say("class-seen-at", "time", at.In(time.Local).Format("15:04:05"))
}

// gone are those who are not here.
type gone struct {
	Rows           []deskRow
	Roster, Phones int // who did not come, whose phone is away
}

// group parts the rows: those not here stand last, under a count of theirs.
func (d *deskData) group(all []deskRow) {
	for _, row := range all {
		switch {
		case !row.Gone():
			d.Rows = append(d.Rows, row)
			continue
		case row.Needs == class.NeedsRoster:
			d.Gone.Roster++
		default:
			d.Gone.Phones++
		}
		d.Gone.Rows = append(d.Gone.Rows, row)
	}
}
