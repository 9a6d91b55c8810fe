package bench

import "scratchpass/calc"

// Every figure of the bench that no one has published for the lathe in front of a learner.
// Each is chosen, with its reason: that the usual good practice comes out well and the usual
// bad practice does not. What they decide is rough in how much, and not in what makes it
// worse: TestWhatMakesItWorse holds them to that.

// Chosen: how the set-up shakes and gives.
const (
	bedStiffness = 40000.0 // newtons a millimetre: chosen, headstock, carriage and slides together, so that thick short work is limited by the lathe
	damping      = 0.055   // chosen, of a snug, oiled set-up at threading speed: a first thread of usual cuts is quiet
	looseShare   = 0.4     // of the damping that loose gibs leave: chosen, worse than running dry
	dryShare     = 0.7     // of the damping that is left where a cut runs dry that wants oil: chosen, less bad than loose gibs
	tooFast      = 1.1     // times the usual speed: chosen, from here on speed is named as what makes it chatter
	calmLeast    = 0.2     // of the damping is left however fast it turns: chosen
	calmMost     = 1.6     // times the damping at most, however slowly it turns: chosen
	mostLag      = 0.9     // of a cut that stays on at most: chosen, for a set-up that hardly cuts at all
)

// Chosen: what a chip does.
const (
	fullChip = calc.Length(.005)  // chosen: from here on a chip's width counts in full
	seenChip = calc.Length(.0001) // chosen: a chip that one sees come off
	least    = calc.Length(1e-7)  // chosen: less than that is no chip
	noForce  = calc.Length(1e-5)  // chosen: a chip thinner than that pushes nothing
)

// Chosen: what breaks, in newtons. As a cut grows it first chatters, then the belt slips, and
// the tip breaks last.
const (
	breaksAt = 2000.0 // chosen: the tip of a 60-degree tool breaks
	groansAt = 900.0  // chosen: everything groans
	acmeTip  = 1.6    // times that: chosen, the tip of an Acme tool is near three times as wide
)

// Chosen: the slides, the nut and the hands.
const (
	handSeconds   = 0.35               // chosen: one practised move of the hand
	nutSlack      = 0.12               // chosen: share of a thread of the screw
	crossPlay     = calc.Length(.006)  // chosen: backlash of a slide that has seen some years
	looseMatters  = calc.Length(.0003) // chosen: a slide that stands so far beside its reading has come from the wrong side
	besideGroove  = 0.02               // of the pitch: chosen, from here on a cut runs beside its groove
	straightIn    = calc.Length(.0002) // chosen: the cross slide has gone on by more than the compound alone takes it
	oneFlankShare = 2.0 / 3            // of half the angle of the thread: chosen, a compound that is swung less cuts both flanks
	clearOf       = calc.Length(.287)  // chosen: how far the tool stands off the work at the start, no round figure of a dial
	startRoom     = 4.0                // leads of room before the thread begins: chosen
	besideBore    = 0.5                // of the room in a bore, at the start: chosen
)

// Chosen: what spoils a part, and what does not.
const (
	scratchDepth = calc.Length(.004) // chosen: how deep a scratch may be that does no harm
	quietDepth   = calc.Length(.001) // chosen: how much must come off without chatter before ripples are gone
	farFromSize  = 0.08              // of the pitch: chosen, a mate that is so far off does not start
	farTurns     = 4.0               // chosen: a taper gauge that would stand off by so many turns more than its limit does not start
	touchPitches = 3.0               // chosen: the tool touches off so many threads in
	firstThread  = 0.25              // of the length, or a pitch: chosen, where the first threads are measured
	lastThread   = 0.75              // of a pitch before the end: chosen, the last thread that must be full
	behindBore   = calc.Length(.060) // chosen: behind a bore that goes through there is only air so far past the full depth: there are the jaws
	relief       = calc.Length(.025) // chosen: how far past the full depth a relief groove goes
)

// coastSeconds is how long a spindle that is switched off would have turned on at full
// speed for the turns that it still makes: longer, the faster it was. Chosen.
func coastSeconds(rpm float64) float64 { return 0.3 + rpm/500 }

// Chosen: the cuts that a card chooses from, on the compound. Makers of inserts print first
// cuts of 0.010 in at 20 threads per inch to 0.016 at 8, and smaller ones in bores
// (insert-passes); the line through them, and its share in a bore, are chosen.
const (
	firstFrom   = calc.Length(.005) // chosen: the first cut is this and a tenth of the pitch,
	firstShare  = 0.1               // chosen
	heaviest    = calc.Length(.016) // chosen: at most
	insideShare = 0.7               // of that in a bore: chosen
	lightShare  = 0.5               // of it in the light schedule, for whoever is new to it: chosen
	lightest    = calc.Length(.004) // chosen: a set-up that does not bear this as its first cut is too weak
	timid       = 0.6               // of the heaviest first cut: chosen, before less is taken, a slower speed is tried
	softShare   = 1.25              // of the first cut at most, in a metal that is easier to cut than mild steel: chosen
	hardShare   = 0.8               // of it at least, in one that is harder: chosen
	leastShare  = 0.03              // of the pitch: chosen, the last cuts on the compound, where the set-up bears them
)

// Chosen: timesPrinted is how many times the most passes of the table a card may have, with
// the scratch and without what is fed straight in: the table is for carbide on a stiff machine.
const timesPrinted = 2

// Chosen: where the compound is left, at a share of the full travel, or later where what is
// left of it then would be more than most of the tolerance and a thousandth.
const (
	leaveShare     = 0.92
	leaveTolerance = 0.75
	leaveRoom      = calc.Length(.001)
	mostSpring     = 4
)

// Chosen: how long a beginner should have at the end of a pass, in seconds: to take the tool
// out and open the half-nut, or where it stays closed to take the tool out, stop, and let the
// spindle run out. Common practice, no source. Everyone should take their own time.
const (
	handTime = 2.0
	stopTime = 4.0
)

// Chosen: how far work may stand out of a chuck, in diameters: common practice, no source.
const (
	supportFrom = 3.0
	mostSlender = 6.0
)

// Chosen: how a bar and its tool are fitted to a bore: common practice, no source.
const (
	leastBar      = calc.Length(.1) // chosen: the thinnest bar that is taken for one
	mostBarShare  = 0.7             // of the bore: chosen; about 0.65 is usual
	tightShare    = 0.8             // chosen: where no stock bar is as thin as that
	shortestReach = 0.7             // of the pitch: chosen, the thread's depth and a little more
	roomToClear   = 0.85            // of the pitch: chosen
	roomOnCone    = 1.3             // of the pitch, for a taper pipe thread, which is higher: chosen
)

// Chosen: what a job that does not say it gets.
const (
	usualAhead = calc.Length(.050) // chosen: how far a tool stands ahead of its tip when it is ground towards the headstock's side
	nutLength  = 0.9               // diameters of thread in a nut: common practice
	veeFlat    = 1.0 / 8           // of the pitch: chosen, the tip of a tool for a 60-degree thread
)

// How the compound stands. Half a degree less than the flank is published for 60-degree
// threads, and so are 29, 29.5 and 30 (compound-feeds). Chosen: how much less still cuts well.
const (
	halfDegree = calc.Angle(0.5) // common practice
	underFlank = calc.Angle(2.0) // chosen
)

// farOff is the error of gears, in parts per million, from which a long thread will not go
// into its mate: common practice, no source. Chosen.
const farOff = 500

// Chosen: other ways of cutting: in reverse, from a groove, several starts.
const (
	ringBreaks    = calc.Length(.010) // chosen: how deep a threading tool is fed straight into plain metal before it breaks
	leastRelief   = calc.Length(.001) // chosen: how deep a groove must be to be one at all
	reverseShare  = 0.7               // chosen: how much of the first cut is taken with the tool upside down
	straightTimes = 1.5               // chosen: how many times as many passes straight in may take: each cuts both flanks and is half as heavy
	slideTravel   = calc.Length(1.2)  // chosen: how far a slide goes either way from where it is found
	bothShare     = 0.5               // chosen: what of a cut along one flank is taken where both flanks cut at once: the chip is twice as wide
)
