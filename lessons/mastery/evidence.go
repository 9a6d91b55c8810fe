package mastery

import (
	"maps"
	"math"
	"math/bits"
	"slices"
)

// The figures of the test. A right answer of someone who makes an error half of the time
// is half as likely as one of someone who knows: that halves the odds of the error. Made
// once, it is some sixty times as likely of someone who holds it as of someone whose pen
// slipped, since a number that slips hardly ever falls on a common error; an option that
// slips always does, so there it is some eight times. Source: this project, by simulated
// learners (lessons/schedule); no study gives these figures.
const (
	priorOdds  = 1.0 / 4 // of each common error before the first answer, all of them together 1 at most
	shownOdds  = 1.0 / 9 // that anything is left, when a run is shown: a chance of one in ten
	namedBits  = 6       // a common error was made: how often that doubles its odds
	optionBits = 3       // the same where there are options to choose from
	namedMost  = 9       // and how often they are doubled at most: it can always be learned
	otherBits  = 1       // a mistake without a name was made
	otherMost  = 5
)

// The least that a run must have. A typed number is right by chance hardly ever, an
// option often. Source: the teaching rules of this project; no study gives these figures.
const (
	typedRun     = 3
	choiceRun    = 5
	leastChances = 1 // of each common error that often shows
)

// What keeps a state small, whatever a record holds.
const (
	mostMistakes = 32 // mistakes that are told apart; no task has so many
	mostTimes    = 99 // how often one is counted
	mostRest     = 3  // dates until the later run, at most
)

// shownOdds are the odds at which a whole run is shown. Options that have to be chosen on
// one day only are held to half of them.
func (r Rule) shownOdds() float64 {
	if r.Choice && !r.SafetyCritical {
		return shownOdds / 2
	}
	return shownOdds
}

// length is the least that a run must have.
func (r Rule) length() int {
	if r.Choice {
		return choiceRun
	}
	return typedRun
}

// alike is how often the mistake with a name that was made most often was made.
func alike(mistakes map[string]int) int {
	most := 0
	for name, times := range mistakes {
		if name != "" {
			most = max(most, times)
		}
	}
	return most
}

// days is on how many real days a whole run is asked for.
func (r Rule) days(mistakes map[string]int) int {
	if r.SafetyCritical || alike(mistakes) > 1 {
		return 2
	}
	return 1
}

// rest is how many dates later the second run is to be: the more alike the mistakes
// were, the later.
func (r Rule) rest(mistakes map[string]int) int {
	return min(max(1, alike(mistakes)/2), mostRest)
}

// odds are the odds that something is left that a run of right answers has not shown to
// be gone: any common error, or not knowing the task at all. Both sums are of powers of
// two, so they come to the same in whatever order they are added.
func (r Rule) odds(s State) float64 {
	usual, other := 0.0, 0.0
	for _, name := range r.Errors {
		if slices.Contains(r.Seldom, name) {
			usual += r.times(s, name) / 2
			continue
		}
		usual += r.times(s, name)
	}
	for name := range s.Mistakes {
		if !slices.Contains(r.Errors, name) {
			other += r.times(s, name)
		}
	}
	prior := priorOdds
	if n := len(r.Errors); n > 0 {
		prior = min(priorOdds, 1/float64(n))
	}
	return prior*usual + priorOdds*other
}

// times is by how much the odds of one common error, or under no name those that the task
// is not known, were multiplied since the first answer. An error that seldom shows is
// judged by all right answers: its own chances would be waited for too long.
func (r Rule) times(s State, name string) float64 {
	chances := s.Run.Length
	if slices.Contains(r.Errors, name) {
		chances = s.Run.Chances[name]
	}
	return math.Ldexp(1, r.raised(name, s)-chances)
}

// raised is how often the odds of a mistake were doubled by making it. A whole run that
// was shown since has taken that away from a common error.
func (r Rule) raised(name string, s State) int {
	switch {
	case name == "":
		return min(otherBits*s.Mistakes[name], otherMost)
	case s.Days > 0:
		return 0
	}
	bits := namedBits
	if r.Choice {
		bits = optionBits
	}
	return min(bits*s.Mistakes[name], namedMost)
}

// untried are the common errors that had too few chances yet in the run at hand, whatever
// the odds: who holds one always is never shown.
func (r Rule) untried(s State) []string {
	var names []string
	for _, name := range r.Errors {
		if s.Run.Chances[name] < leastChances {
			names = append(names, name)
		}
	}
	return names
}

// add returns the run with one more right answer.
func (u Run) add(r Rule, a Answer) Run {
	u.Pause = u.Length > 0 && (a.Item-u.Item > Apart || a.Moment.Later(u.Last, 1))
	if u.Length == 0 {
		u.Key = a.Key
	}
	u.Varied = u.Varied || a.Key != u.Key
	u.Item, u.Last = a.Item, a.Moment
	u.Length++
	chances := make(map[string]int, len(r.Errors))
	maps.Copy(chances, u.Chances)
	for _, name := range a.Errors {
		if slices.Contains(r.Errors, name) {
			chances[name]++
		}
	}
	if u.Chances = nil; len(chances) > 0 {
		u.Chances = chances
	}
	if slices.Contains(r.Situations, a.Situation) && !slices.Contains(u.Situations, a.Situation) {
		u.Situations = append(slices.Clone(u.Situations), a.Situation)
	}
	return u
}

// whole reports whether the run at hand is long and varied enough.
func (r Rule) whole(s State) bool {
	u := s.Run
	if u.Length < r.length() || !u.Pause || r.odds(s) > r.shownOdds() || len(r.untried(s)) > 0 {
		return false
	}
	// Records from before keys were kept have none: they are not held against anyone.
	if !r.OneKey && !u.Varied && u.Key != "" {
		return false
	}
	return !slices.ContainsFunc(r.Situations, func(situation string) bool { return !slices.Contains(u.Situations, situation) })
}

// Stuck reports whether a learner has tried so often since anything was shown, was so
// often wrong of late, and is so far from showing it, that trying again is no help: a
// worked example, what the task rests on, and the instructor are. Someone on the long run
// that is asked for after mistakes is not.
func (s State) Stuck() bool {
	return !s.Mastered && s.Since >= stuckAt && bits.OnesCount16(s.Missed) >= stuckMissed && s.Run.Length < typedRun
}
