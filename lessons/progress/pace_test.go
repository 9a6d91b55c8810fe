package progress

import "testing"

// The pace is told from enough answers only, rounded up, with an evening on which what was
// shown last must hold.
func TestPace(t *testing.T) {
	for name, c := range map[string]struct {
		answers, days, shown, missing, notHeld int
		known                                  bool
		evenings                               int
	}{
		"nothing":            {0, 0, 0, 50, 0, false, 0},
		"too few answers":    {29, 3, 3, 50, 0, false, 0},
		"too few days":       {30, 2, 3, 50, 0, false, 0},
		"too few shown":      {30, 3, 2, 50, 0, false, 0},
		"just enough":        {30, 3, 3, 50, 0, true, 51},
		"three a day":        {200, 4, 12, 27, 5, true, 10},
		"rounded up":         {200, 4, 12, 28, 0, true, 11},
		"only to be held":    {200, 4, 12, 0, 1, true, 1},
		"nothing is missing": {200, 4, 12, 0, 0, true, 0},
	} {
		if p := pace(c.answers, c.days, c.shown, c.missing, c.notHeld); p.Known != c.known || p.Evenings != c.evenings {
			t.Errorf("%s: %+v", name, p)
		}
	}
}
