package bench

import "slices"

// Consequence is how bad what a mistake leads to is. The least is the worst: in this order a
// machinist minds them, and in this order a debrief tells them.
type Consequence int

// The consequences, the worst first.
const (
	Hurts  Consequence = iota // someone can be hurt, whatever becomes of the part
	Breaks                    // something of tool or lathe breaks, and the job ends there
	Scraps                    // the part is scrap, and no pass mends it
	Spoils                    // size, finish or tool suffer; going on well may still mend it
	Costs                     // nothing is hurt but time, or it was luck
)

// consequences ranks the mistakes. What hurts comes before what breaks: a crash of a turning
// chuck hurts as well, and is told with what breaks, for there the job ends.
var consequences = map[Consequence][]MistakeName{
	Hurts: {mistakeChuckUnscrewed, mistakeChuckKey, mistakeNotDressed, mistakeHandsInTurningLathe, mistakeClothOnTurningWork, mistakeChipsWhileTurning,
		mistakeMeasuredRunning, mistakeReversedWhileRunning, mistakeChipsByHand, mistakeLeftRunning},
	Breaks: {mistakeHitChuck, mistakeHitDog, mistakeHitShoulder, mistakeHitBottom, mistakeJammed, mistakeTooHeavy, mistakeFedOverWork,
		mistakeHitTailstock, mistakeNoGroove},
	Scraps: {mistakeHitFarWall, mistakeWrongLine, mistakeWrongGroove, mistakeWrongLead, mistakeUnchucked, mistakeDragged, mistakePlunged, mistakeOpenedFirst,
		mistakeCutPastSize, mistakeNotSquared, mistakeSquaredToCone, mistakeTaperNotSet, mistakeOffCentre,
		mistakeWrongHand, mistakeWrongLever, mistakePitchForLead, mistakeDepthByLead, mistakeWrongIndex, mistakeBackOfTool},
	Spoils: {mistakeWrongWayOut, mistakeStoppedInCut, mistakeHeavy, mistakeChatter, mistakeLostCount, mistakeFromWrongSide, mistakeGibsLoose, mistakeNoOil,
		mistakeSwungWrongWay, mistakeCompoundAngle, mistakeOpenedOnMetric, mistakeFirstOnNoMark, mistakeOiledCastIron, mistakeNotIndexed},
	Costs: {mistakeShort, mistakeClosedBlind, mistakeTestedDirty, mistakeBookWrong, mistakeFeedLeftIn},
}

// Consequence is how bad what the mistake leads to is.
func (name MistakeName) Consequence() Consequence {
	for kind := Hurts; kind < Costs; kind++ {
		if slices.Contains(consequences[kind], name) {
			return kind
		}
	}
	return Costs
}

// cause is the mistake of a move that made the part scrap: the worst for a part that it made,
// not the last. Groaning does not part a groove in two.
func (s *step) cause() (cause MistakeName) {
	for _, h := range s.happened {
		name, is := h.Mistake()
		if kind := name.Consequence(); is && kind >= Breaks && (cause == "" || kind < cause.Consequence()) {
			cause = name
		}
	}
	return cause
}

// figures are the mistakes whose "how much" comes of published figures and of chosen ones
// together, with the name of the sentence that keeps the two apart.
var figures = map[MistakeName]string{
	mistakeChatter: "figures-chatter", mistakeHeavy: "figures-force", mistakeTooHeavy: "figures-force",
}

// Figures is the name of the text that says what of a mistake's figures is worked out from
// published ones and what is chosen; empty where geometry alone decides.
func (name MistakeName) Figures() string { return figures[name] }

// sayFigures keeps apart what is worked out and what is chosen, once in a rehearsal.
func (s *step) sayFigures(name string) {
	if !s.saidBefore(name) {
		s.say(name)
	}
}
