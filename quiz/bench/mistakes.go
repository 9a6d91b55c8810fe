package bench

import (
	"cmp"

	"scratchpass/calc"
	"scratchpass/content"
)

// MistakeName is the name of a mistake, as the words of the bench and JSON have it.
type MistakeName string

// The mistakes: with the set-up, with a turning lathe, on the way through the thread, and
// with the part.
const (
	mistakeChuckKey            MistakeName = "chuck-key"
	mistakeNotDressed          MistakeName = "not-dressed"
	mistakeHandsInTurningLathe MistakeName = "hands-in-turning-lathe"
	mistakeFeedLeftIn          MistakeName = "feed-left-in"
	mistakeNotSquared          MistakeName = "not-squared"
	mistakeOffCentre           MistakeName = "off-centre"
	mistakeCompoundAngle       MistakeName = "compound-angle"
	mistakeSwungWrongWay       MistakeName = "swung-wrong-way"
	mistakeGibsLoose           MistakeName = "gibs-loose"
	mistakeNoOil               MistakeName = "no-oil"
	mistakeSquaredToCone       MistakeName = "squared-to-cone"
	mistakeTaperNotSet         MistakeName = "taper-not-set"
	mistakeOiledCastIron       MistakeName = "oiled-cast-iron"

	mistakeChuckUnscrewed       MistakeName = "chuck-unscrewed"
	mistakeReversedWhileRunning MistakeName = "reversed-while-running"
	mistakeChipsWhileTurning    MistakeName = "chips-while-turning"
	mistakeChipsByHand          MistakeName = "chips-by-hand"
	mistakeClothOnTurningWork   MistakeName = "cloth-on-turning-work"
	mistakeMeasuredRunning      MistakeName = "measured-running"
	mistakeLeftRunning          MistakeName = "left-running"

	mistakeStoppedInCut   MistakeName = "stopped-in-cut"
	mistakePlunged        MistakeName = "plunged"
	mistakeFedOverWork    MistakeName = "fed-over-work"
	mistakeClosedBlind    MistakeName = "closed-blind"
	mistakeFirstOnNoMark  MistakeName = "first-on-no-mark"
	mistakeWrongWayOut    MistakeName = "wrong-way-out"
	mistakeJammed         MistakeName = "jammed"
	mistakeChatter        MistakeName = "chatter"
	mistakeHeavy          MistakeName = "heavy"
	mistakeTooHeavy       MistakeName = "too-heavy"
	mistakeFromWrongSide  MistakeName = "from-wrong-side"
	mistakeWrongLine      MistakeName = "wrong-line"
	mistakeWrongGroove    MistakeName = "wrong-groove"
	mistakeOpenedOnMetric MistakeName = "opened-on-metric"
	mistakeOpenedFirst    MistakeName = "opened-first"
	mistakeShort          MistakeName = "short"
	mistakeDragged        MistakeName = "dragged"
	mistakeHitShoulder    MistakeName = "hit-shoulder"
	mistakeHitBottom      MistakeName = "hit-bottom"
	mistakeHitChuck       MistakeName = "hit-chuck"
	mistakeHitDog         MistakeName = "hit-dog"
	mistakeHitFarWall     MistakeName = "hit-far-wall"
	mistakeHitTailstock   MistakeName = "hit-tailstock"
	mistakeBackOfTool     MistakeName = "back-of-tool"
	mistakeNoGroove       MistakeName = "no-groove"
	mistakeLostCount      MistakeName = "lost-count"
	mistakeBookWrong      MistakeName = "book-wrong"

	mistakeTestedDirty  MistakeName = "tested-dirty"
	mistakeUnchucked    MistakeName = "unchucked"
	mistakeWrongLead    MistakeName = "wrong-lead"
	mistakeWrongHand    MistakeName = "wrong-hand"
	mistakeWrongLever   MistakeName = "wrong-lever"
	mistakePitchForLead MistakeName = "pitch-for-lead"
	mistakeDepthByLead  MistakeName = "depth-by-lead"
	mistakeNotIndexed   MistakeName = "not-indexed"
	mistakeWrongIndex   MistakeName = "wrong-index"
	mistakeCutPastSize  MistakeName = "cut-past-size"
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

// WordsOf are the words of a mistake at this job: some are other ones in a bore.
func (j Job) WordsOf(m Mistake, words content.BenchWords) content.MistakeWords {
	w := m.Words(words)
	if j.Side == calc.Inside {
		w.Part, w.You = cmp.Or(w.Inside.Part, w.Part), cmp.Or(w.Inside.You, w.You)
	}
	return w
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
		return mistakeHitShoulder
	case j.End == Bottom:
		return mistakeHitBottom
	case j.Hold == Centres:
		return mistakeHitDog
	}
	return mistakeHitChuck
}

// Verdict is what became of the part.
type Verdict string

// The verdicts on the part.
const (
	Fits  Verdict = "fits"
	Binds Verdict = "binds"
	Scrap Verdict = "scrap"
)
