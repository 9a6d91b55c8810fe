package drawing

// figures are the figures of lessons and tasks by name. Each is drawn from the facts of a
// problem, or from its example.
var figures = map[string]figure{
	"thread-profile":          threadProfile,
	"external-thread":         externalThread,
	"internal-thread":         internalThread,
	"three-depths":            threeDepths,
	"compound-triangle":       compoundTriangle,
	"both-flanks":             bothFlanks,
	"dial-face":               dialBefore,
	"dial-face-turned":        dialAfter,
	"two-dials":               twoDials,
	"blank-and-groove":        blankAndGroove,
	"wires":                   wires,
	"thread-micrometer":       threadMicrometer,
	"gauges":                  gauges,
	"relief-angles":           reliefAngles,
	"inserts":                 inserts,
	"lead-angle":              leadAngle,
	"left-hand":               leftHand,
	"acme-form":               acmeForm,
	"taper-pipe":              taperPipe,
	"five-forms":              fiveForms,
	"callout":                 callout,
	"screw-pitch-gauge":       screwPitchGauge,
	"dial-after-pass":         dialAfterPass,
	"spring":                  spring,
	"limits":                  limits,
	"read-out":                readOut,
	"thread-away":             threadAway,
	"multi-start":             multiStart,
	"next-start":              nextStart,
	"plating":                 platingOnFlank,
	"rake-and-form":           rakeAndForm,
	"pipe-thread-height":      pipeThreadHeight,
	"callout-metric":          calloutMetric,
	"gauges-inside":           gaugesInside,
	"blank-and-groove-inside": boreWithGroove,
	"rule-on-thread":          ruleOnThread,
	"whitworth-form":          whitworthForm,
	"blunt-start":             bluntStart,

	// The machine and how it is set up.
	"lathe":                      lathe,
	"compound-swung":             compoundSwung,
	"compound-swung-left":        compoundSwungLeft,
	"compound-swung-inside":      compoundSwungInside,
	"compound-swung-inside-left": compoundSwungInsideLeft,
	"compound-unswung":           compoundUnswung,
	"compound-unswung-inside":    compoundUnswungInside,
	"compound-scale":             compoundScale,
	"thread-chasing-dial":        threadChasingDial,
	"safe-marks":                 safeMarks,
	"boring-bar":                 boringBar,
	"centre-gauge":               centreGauge,
	"centre-gauge-inside":        centreGaugeInside,
	"tool-height":                toolHeight,
	"stop-the-spindle":           stopTheSpindle,
	"gear-train":                 gearTrain,
	"between-centres":            betweenCentres,
	"centre-hole":                centreHole,
	"steady-and-follow-rest":     rests,
	"stick-out":                  stickOut,
	"set-over":                   setOver,
	"gap-to-shoulder":            gapToShoulder,
	"room-to-start":              roomToStart,
	"cross-slide-stop":           crossSlideStop,

	// How a pass goes.
	"one-pass":        onePass,
	"wrong-line":      wrongLine,
	"run-out":         runOut,
	"infeed-ways":     infeedWays,
	"pass-chart":      passChart,
	"alternate-flank": alternateFlank,
	"surface-speed":   surfaceSpeed,
}

// The sheet of most figures: as wide as the half of a wide terminal, so that a question
// stands beside it, and low enough for both on a low one.
const (
	sheetWide = 96.0
	sheetHigh = 56.0
)
