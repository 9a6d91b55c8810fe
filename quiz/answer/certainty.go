package answer

import "slices"

// Certainty is how sure someone was of an answer before hearing what it is worth. The
// text is that of JSON, of records and of answer files. It never changes a mark: it tells
// a wrong answer that would have been acted on from one that would have been asked about.
type Certainty string

// The certainties, the least sure first.
const (
	NotAsked Certainty = ""       // how sure was not asked, or not answered
	Guess    Certainty = "guess"  // no more than a guess
	Fairly   Certainty = "fairly" // fairly sure
	Bet      Certainty = "bet"    // would bet the part on it
)

// Certainties are those that someone may give, the least sure first: all but NotAsked.
var Certainties = []Certainty{Guess, Fairly, Bet}

// Known reports whether a certainty is one of these or NotAsked.
func (c Certainty) Known() bool { return c == NotAsked || slices.Contains(Certainties, c) }
