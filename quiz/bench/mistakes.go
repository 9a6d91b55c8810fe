package bench

import (
	"scratchpass/content"
)

// MistakeName is the name of a mistake, as the words of the bench and JSON have it.
type MistakeName string

// The mistakes: with the set-up, with a turning lathe, on the way through the thread, and
// with the part.
const (
	ChuckKey            MistakeName = "chuck-key"
	NotDressed          MistakeName = "not-dressed"
	HandsInTurningLathe MistakeName = "hands-in-turning-lathe"
	FeedLeftIn          MistakeName = "feed-left-in"
	NotSquared          MistakeName = "not-squared"
	OffCentre           MistakeName = "off-centre"
	CompoundAngle       MistakeName = "compound-angle"
	SwungWrongWay       MistakeName = "swung-wrong-way"
	GibsLoose           MistakeName = "gibs-loose"
	NoOil               MistakeName = "no-oil"

	ChuckUnscrewed       MistakeName = "chuck-unscrewed"
	ReversedWhileRunning MistakeName = "reversed-while-running"
	ChipsWhileTurning    MistakeName = "chips-while-turning"
	ChipsByHand          MistakeName = "chips-by-hand"
	ClothOnTurningWork   MistakeName = "cloth-on-turning-work"
	MeasuredRunning      MistakeName = "measured-running"
	LeftRunning          MistakeName = "left-running"

	StoppedInCut   MistakeName = "stopped-in-cut"
	Plunged        MistakeName = "plunged"
	FedOverWork    MistakeName = "fed-over-work"
	ClosedBlind    MistakeName = "closed-blind"
	WrongWayOut    MistakeName = "wrong-way-out"
	Jammed         MistakeName = "jammed"
	Chatter        MistakeName = "chatter"
	Heavy          MistakeName = "heavy"
	TooHeavy       MistakeName = "too-heavy"
	FromWrongSide  MistakeName = "from-wrong-side"
	WrongLine      MistakeName = "wrong-line"
	WrongGroove    MistakeName = "wrong-groove"
	OpenedOnMetric MistakeName = "opened-on-metric"
	OpenedFirst    MistakeName = "opened-first"
	Short          MistakeName = "short"
	Dragged        MistakeName = "dragged"
	HitShoulder    MistakeName = "hit-shoulder"
	HitBottom      MistakeName = "hit-bottom"
	HitChuck       MistakeName = "hit-chuck"
	HitDog         MistakeName = "hit-dog"
	HitFarWall     MistakeName = "hit-far-wall"
	LostCount      MistakeName = "lost-count"
	BookWrong      MistakeName = "book-wrong"

	TestedDirty MistakeName = "tested-dirty"
	Unchucked   MistakeName = "unchucked"
	WrongLead   MistakeName = "wrong-lead"
	CutPastSize MistakeName = "cut-past-size"
)

// Mistake is something that was done wrong.
type Mistake struct {
	Name  MistakeName
	Event int // number of the event, from 1
	Pass  int // passes finished before
	Facts Facts
}

// Happening tells of the mistake, as it was told when it was made.
func (m Mistake) Happening() Happening { return Happening{tellsOf + string(m.Name), m.Facts} }

// Words are the words of the mistake.
func (m Mistake) Words(words content.BenchWords) content.MistakeWords {
	return words.Mistakes[string(m.Name)]
}

// tellsOf stands in front of a mistake's name in the name of the happening that tells of it.
const tellsOf = "mistake-"

// Mistake returns the mistake that a happening tells of; ok is false where it tells of
// none.
func (h Happening) Mistake() (name MistakeName, ok bool) {
	if len(h.Name) > len(tellsOf) && h.Name[:len(tellsOf)] == tellsOf {
		return MistakeName(h.Name[len(tellsOf):]), true
	}
	return "", false
}

// hits is the mistake of running into what lies behind the thread.
func (j Job) hits() MistakeName {
	switch {
	case j.End == Shoulder:
		return HitShoulder
	case j.End == Bottom:
		return HitBottom
	case j.Hold == Centres:
		return HitDog
	}
	return HitChuck
}

// Verdict is what became of the part.
type Verdict string

// The verdicts on the part.
const (
	Fits  Verdict = "fits"
	Binds Verdict = "binds"
	Scrap Verdict = "scrap"
)
