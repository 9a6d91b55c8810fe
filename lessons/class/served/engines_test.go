package served_test

import (
	"fmt"
	"testing"

	"scratchpass/lessons/class"
	"scratchpass/lessons/class/journal"
	"scratchpass/lessons/face/inspect"
	"scratchpass/lessons/postgres/postgrestest"
)

// onBoth runs a test on each engine that a room can be kept in: a file, and a database of a school.
//
// In a browser these tests do, for what they show hangs on what is kept, when, and when pages hear
// of it: a whole class with its comings in, killed programs and lost words; one's own pace with a
// changed clock and a line; networks that are down, with answers that are not sent yet; a program
// that is dead; moves of a bench round. The others look at pages, with a few events beneath them that
// were kept long before: how wide these are, what axe-core and a keyboard find, what stays under a
// pointer. None of that knows where a room is kept, so they run once, in a file.
func onBoth(t *testing.T, do func(t *testing.T, in journal.At)) {
	inspect.Needed(t)
	t.Run("file", func(t *testing.T) { do(t, inFile(t)) })
	t.Run("database", func(t *testing.T) { do(t, journal.At(postgrestest.Address(t))) })
}

// While the database is out of reach, what was typed stays on the phone, which says that it waits,
// and the instructor's page says why; once it is back, all goes out by itself and counts once, also
// what the database had kept without a word of it.
func TestTheDatabaseIsAwayInABrowser(t *testing.T) {
	browser := chromium(t)
	roster := people(3)
	way := postgrestest.Through(t, postgrestest.Address(t))
	s := openShopOn(t, journal.At(way.Address), class.Head{Roster: roster}, fmt.Sprintf(three, "rules: {feedback: end}"), class.Together)
	l := &lesson{shop: s, t: t, typed: map[string]string{}}
	desk := s.tab(browser, "desk")
	desk.goes("/desk/" + roomCode + "?key=" + privateKey)
	var phones []*tab
	for _, a := range roster {
		phones = append(phones, s.tab(browser, a.Name))
	}
	each(phones, func(_ int, p *tab) { p.comesIn(); p.scene("waits", "") })
	s.do("open", "place", "0")
	each(phones, func(_ int, p *tab) { p.scene("asks", "0") })
	way.LoseCommits(1)
	l.gives(phones[0], roster[0].ID, 0, "0.05")
	way.Cut()
	each(phones[1:], func(i int, p *tab) {
		l.gives(p, roster[i+1].ID, 0, fmt.Sprint("0.06", i))
		p.tells("waiting")
	})
	desk.until(`document.querySelector("[data-key=away]")`)
	way.Mend()
	each(phones, func(_ int, p *tab) {
		p.tells("saved")
		p.scene("kept", "0")
	})
	desk.until(`!document.querySelector("[data-key=away]")`)
	for _, a := range roster {
		if a, _ := s.kept(a.ID, 0, 0); a.Changed != 0 {
			t.Error("it counts ", a.Changed, " times more")
		}
	}
	s.mu.Lock()
	s.fails = nil // that it was away
	s.mu.Unlock()
	l.check(roster)
}
