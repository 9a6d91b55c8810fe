package mastery

import (
	"math"
	"slices"
)

// Missing is what a task still wants before it is shown.
type Missing struct {
	Right      int      // right answers in a row still to come, the last after other items, where each gives its chance to every common error
	Situations []string // that must still come up
	Errors     []string // common errors that a problem still to come must give a chance to
	OtherKey   bool     // another answer must be right once
	Days       int      // further days on which a run must be shown, after the one at hand
	LaterRun   bool     // the run that comes must be of a later day
	Later      Moment   // than this
	Rest       int      // so many dates lie between two days on which a run is shown
}

// mostAhead is more right answers than any rule asks for.
const mostAhead = 40

// Missing tells what is missing until a task is shown, or shown again after a mistake
// took that back. ok is false when nothing is.
func (r Rule) Missing(s State) (m Missing, ok bool) {
	asked := r.days(s.Mistakes)
	if s.Days >= asked {
		return m, false
	}
	m.Days = asked - s.Days - 1
	if asked > 1 {
		m.Rest = r.rest(s.Mistakes)
	}
	if s.Days > 0 {
		m.Later, m.LaterRun = s.Shown, true
	}
	for _, situation := range r.Situations {
		if !slices.Contains(s.Run.Situations, situation) {
			m.Situations = append(m.Situations, situation)
		}
	}
	m.OtherKey = !r.OneKey && !s.Run.Varied && s.Run.Key != ""
	m.Right = max(1, r.length()-s.Run.Length, len(m.Situations)) // one at least: the last must come after a pause
	for r.odds(s)*math.Ldexp(1, -m.Right) > r.shownOdds() && m.Right < mostAhead {
		m.Right++
	}
	if m.Errors = r.untried(s); len(m.Errors) == 0 && r.odds(s) > r.shownOdds() {
		m.Errors = r.behind(s)
	}
	return m, true
}

// behind are the common errors that had the fewest chances of what they need.
func (r Rule) behind(s State) []string {
	most, least := 0.0, math.Inf(1)
	for _, name := range r.Errors {
		most, least = max(most, r.times(s, name)), min(least, r.times(s, name))
	}
	if most == least {
		return nil // each had its chances: it takes more answers of any kind
	}
	var names []string
	for _, name := range r.Errors {
		if r.times(s, name) == most {
			names = append(names, name)
		}
	}
	return names
}
