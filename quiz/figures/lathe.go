package figures

import "scratchpass/calc"

var latheFigures = []figure{
	{"compound-travel THREAD ANGLE", "compound travel, external thread, in", "compound-travel 1.75mm 29.5", inInches,
		func(a *arguments) (float64, error) {
			h, err := calc.ExternalDepth.Of(a.pitch(0))
			if err != nil {
				return 0, err
			}
			return inches(calc.TravelForDepth.Of(h, a.angle(1)))
		}},
	{"scale-along-bed ANGLE", "a scale with its zero along the bed, degrees", "scale-along-bed 29.5", plainly,
		func(a *arguments) (float64, error) { return degrees(calc.ScaleAlongBed.Of(a.angle(0))) }},
	{"carriage-speed RPM THREAD", "carriage speed, in a second", "carriage-speed 90 10", inInches,
		func(a *arguments) (float64, error) {
			return inches(calc.CarriageSpeed.Of(calc.SpindleSpeed(a.number(0)), a.pitch(1)))
		}},
	{"time-for-gap GAP RPM THREAD", "time for a gap, seconds", "time-for-gap 0.2 90 10", inSeconds,
		func(a *arguments) (float64, error) {
			return calc.TimeForGap.Of(a.length(0), calc.SpindleSpeed(a.number(1)), a.pitch(2))
		}},
	{"mark-spacing SCREW TEETH MARKS", "carriage travel from mark to mark, in", "mark-spacing 8 16 8", inInches,
		func(a *arguments) (float64, error) { return inches(calc.MarkSpacing.Of(a.dial(0))) }},
	{"marks-that-fit THREAD SCREW TEETH MARKS", "marks that fit a thread or lead", "marks-that-fit 0.5in 8 16 8", plainly,
		func(a *arguments) (float64, error) {
			safe, err := a.dial(1).SafeMarks(a.pitch(0))
			return float64(len(safe)), err
		}},
	{"other-starts THREAD SCREW TEETH MARKS STARTS", "marks that meet another start", "other-starts 10 8 32 8 2", plainly,
		func(a *arguments) (float64, error) {
			marks, err := a.dial(1).OtherStarts(a.pitch(0), a.count(4, 1))
			return float64(len(marks)), err
		}},
	{"threads-between THREAD SCREW TEETH MARKS K", "threads to the K-th mark on", "threads-between 13 8 32 8 2", plainly,
		func(a *arguments) (float64, error) { return a.dial(1).ThreadsBetween(a.pitch(0), a.count(4, 1)) }},
	{"driver-on-127 THREAD SCREW", "teeth of the driver to a driven gear of 127", "driver-on-127 1.5mm 8", plainly,
		func(a *arguments) (float64, error) {
			screw, err := calc.ThreadsPerInch(a.number(1)).Pitch()
			if err != nil {
				return 0, err
			}
			ratio, err := calc.GearsMetric.Of(a.pitch(0), screw)
			return ratio * 127, err
		}},
	{"slow-speed METAL", "slow end of the turning speeds for high-speed steel, ft/min", "slow-speed mild-steel", plainly,
		func(a *arguments) (float64, error) { low, _ := a.metal(0).TurningSpeeds(); return low.InFeet(), nil }},
	{"fast-speed METAL", "their fast end, ft/min", "fast-speed brass", plainly,
		func(a *arguments) (float64, error) { _, high := a.metal(0).TurningSpeeds(); return high.InFeet(), nil }},
	{"passes TOTAL FIRST", "passes of even load that a first cut calls for", "passes 0.0600 0.0150", plainly,
		func(a *arguments) (float64, error) {
			n, err := calc.PassesForFirstCut(a.length(0), a.length(1))
			return float64(n), err
		}},
	{"even-load TOTAL PASS PASSES", "infeed after a pass, even load, in", "even-load 0.0600 4 16", inInches,
		func(a *arguments) (float64, error) {
			return inches(calc.EvenLoad.Of(a.length(0), a.count(1, 1), a.count(2, 1)))
		}},
	{"equal-feeds TOTAL PASS PASSES", "infeed after a pass, equal feeds, in", "equal-feeds 0.0600 4 16", inInches,
		func(a *arguments) (float64, error) {
			totals, err := calc.EqualSteps(a.length(0), a.count(2, 1))
			if err != nil {
				return 0, err
			}
			if pass := a.count(1, 1); pass >= 1 && pass <= len(totals) {
				return inches(totals[pass-1], nil)
			}
			return 0, &calc.InputError{What: "pass", Got: calc.Quoted(a.words[1]), Want: "1 to " + a.words[2]}
		}},
	{"left-on CUT SHARE SPRINGS", "what a cut and its spring passes leave on, in", "left-on 0.0050 0.3 0", inInches,
		func(a *arguments) (float64, error) {
			return inches(calc.LeftAfter(a.count(2, 0)).Of(a.length(0), a.number(1)))
		}},
}

var feedFigures = []figure{
	{"shift INFEED ANGLE", "shift along the bed that keeps one flank, in", "shift 0.0100 30", inInches,
		func(a *arguments) (float64, error) { return inches(calc.ShiftForDepth.Of(a.length(0), a.angle(1))) }},
}

// formsFigures are of plating and of other forms than the 60-degree one.
var formsFigures = []figure{
	{"plating-growth THICKNESS", "what plating adds to a pitch diameter, in", "plating-growth 0.0003", inInches,
		func(a *arguments) (float64, error) { return inches(calc.PitchDiameterGrowth(a.length(0))) }},
	{"nut-travel LEAD TURNS", "how far a nut goes, in", "nut-travel 0.25 3", inInches,
		func(a *arguments) (float64, error) { return inches(calc.NutTravel.Of(a.length(0), a.number(1))) }},
	{"draw-out-room GAP THREAD TURNS", "where to begin drawing out, in", "draw-out-room 0.05 10 1.5", inInches,
		func(a *arguments) (float64, error) {
			return inches(calc.DrawOutRoom.Of(a.length(0), a.pitch(1), a.number(2)))
		}},
	{"engagement-over NAME", "normal length of engagement, over so many mm", "engagement-over M12x1.75", plainly,
		func(a *arguments) (float64, error) {
			over, _, err := engagement(a.named(0))
			return millimetres(over, err)
		}},
	{"engagement-to NAME", "normal length of engagement, up to so many mm", "engagement-to M12x1.75", plainly,
		func(a *arguments) (float64, error) { _, to, err := engagement(a.named(0)); return millimetres(to, err) }},
	{"whitworth-angle", "angle between the flanks of a Whitworth thread, degrees", "whitworth-angle", plainly,
		func(*arguments) (float64, error) { return degrees(calc.WhitworthAngle, nil) }},
	{"whitworth-depth THREAD", "single depth of a Whitworth thread, in", "whitworth-depth 14", inInches,
		func(a *arguments) (float64, error) { return inches(calc.WhitworthDepth.Of(a.pitch(0))) }},
	{"read-out SET DEPTH", "read-out in diameter at full depth, external, in", "read-out 0.75 0.0613", inInches,
		func(a *arguments) (float64, error) { return inches(calc.ReadOutDiameter.Of(a.length(0), a.length(1))) }},
}

func engagement(t calc.Designation) (over, to calc.Length, err error) {
	over, to, ok := calc.NormalEngagement(t.Nominal, t.Pitch)
	if !ok {
		err = &calc.InputError{What: "thread", Got: t.String(), Want: "one that the table of engagement has"}
	}
	return over, to, err
}

var acmeFigures = []figure{
	{"acme-angle", "angle between the flanks of an Acme thread, degrees", "acme-angle", plainly,
		func(*arguments) (float64, error) { return degrees(calc.AcmeAngle, nil) }},
	{"acme-compound", "angle of the compound for it, degrees", "acme-compound", plainly,
		func(*arguments) (float64, error) { return degrees(calc.AcmeAngle/2, nil) }},
	{"acme-depth THREAD", "single depth of an Acme thread, in", "acme-depth 5", inInches,
		func(a *arguments) (float64, error) { return inches(calc.AcmeDepth(a.pitch(0))) }},
	{"acme-clearance THREAD", "what of it is clearance, in", "acme-clearance 5", inInches,
		func(a *arguments) (float64, error) {
			h, err := calc.AcmeDepth(a.pitch(0))
			return (h - a.pitch(0).Times(0.5)).Inches(), err
		}},
	{"acme-tip THREAD", "width of the tip of an Acme tool, in", "acme-tip 5", inInches,
		func(a *arguments) (float64, error) { return inches(calc.AcmeTip.Of(a.pitch(0))) }},
	{"acme-crest THREAD", "width of the crest of an Acme thread, in", "acme-crest 5", inInches,
		func(a *arguments) (float64, error) { return inches(calc.AcmeCrestFlat(a.pitch(0))) }},
	{"acme-tip-less THREAD", "how much less wide than the crest the tip is, in", "acme-tip-less 5", inInches,
		func(a *arguments) (float64, error) {
			tip, err := calc.AcmeTip.Of(a.pitch(0))
			crest, _ := calc.AcmeCrestFlat(a.pitch(0)) // of the same range
			return (crest - tip).Inches(), err
		}},
	{"acme-nut-bore NOMINAL THREAD", "basic bore of an Acme nut, in", "acme-nut-bore 1 5", inInches,
		func(a *arguments) (float64, error) { return inches(calc.AcmeNutBore.Of(a.length(0), a.pitch(1))) }},
	{"acme-allowance NOMINAL", "allowance of an Acme screw of class 2G, in", "acme-allowance 1", inInches,
		func(a *arguments) (float64, error) { return inches(calc.AcmeAllowance2G.Of(a.length(0))) }},
	{"acme-pitch-diameter NOMINAL THREAD", "pitch diameter of an Acme thread, in", "acme-pitch-diameter 1 5", inInches,
		func(a *arguments) (float64, error) { return inches(calc.AcmePitchLine.Of(a.length(0), a.pitch(1))) }},
}

var pipeFigures = []figure{
	{"pipe-tpi SIZE", "threads per inch of taper pipe thread", "pipe-tpi 1/2", plainly,
		func(a *arguments) (float64, error) { return perInch(a.pipe(0).TPI, nil) }},
	{"pipe-outside SIZE", "outside diameter of the pipe, in", "pipe-outside 1/2", inThousandths,
		func(a *arguments) (float64, error) { return inches(a.pipe(0).Outside, nil) }},
	{"pipe-hand-tight SIZE", "length of engagement by hand, in", "pipe-hand-tight 1/2", inThousandths,
		func(a *arguments) (float64, error) { return inches(a.pipe(0).L1, nil) }},
	{"pipe-e0 SIZE", "pitch diameter at the small end, in", "pipe-e0 1/2", inInches,
		func(a *arguments) (float64, error) {
			s := a.pipe(0)
			return inches(calc.PipeSmallEnd.Of(s.Outside, s.TPI))
		}},
	{"pipe-e1 SIZE", "pitch diameter where hand-tight ends, in", "pipe-e1 1/2", inInches,
		func(a *arguments) (float64, error) {
			s := a.pipe(0)
			p, err := calc.PipeThread(s.Outside, s.TPI, s.L1)
			return p.E1.Inches(), err
		}},
	{"pipe-height SIZE", "height of the thread, in", "pipe-height 1/2", inInches,
		func(a *arguments) (float64, error) { return inches(calc.PipeHeight.Of(a.pipe(0).TPI)) }},
	{"pipe-turn SIZE", "one turn of a gauge along the pipe, in", "pipe-turn 1/2", inInches,
		func(a *arguments) (float64, error) { return inches(calc.PipeAlong.Of(1, a.pipe(0).TPI)) }},
	{"pipe-turn-depth SIZE", "depth straight in that is one turn of a gauge, in", "pipe-turn-depth 1/2", inInches,
		func(a *arguments) (float64, error) {
			along, err := calc.PipeAlong.Of(1, a.pipe(0).TPI)
			depth, _ := calc.PipeDepthForAlong.Of(along) // of the same range
			return depth.Inches(), err
		}},
	{"pipe-taper", "length for a taper of 1 on the diameter", "pipe-taper", plainly,
		func(*arguments) (float64, error) { return 1 / calc.PipeTaper, nil }},
	{"pipe-slope", "length for a slope of 1 on each side", "pipe-slope", plainly,
		func(*arguments) (float64, error) { return 2 / calc.PipeTaper, nil }},
	{"pipe-angle", "angle of each side to the axis, degrees", "pipe-angle", plainly,
		func(*arguments) (float64, error) {
			return degrees(calc.AngleOfSlope(calc.Inch.Times(calc.PipeTaper/2), calc.Inch), nil)
		}},
	{"set-over LENGTH", "set-over of the tailstock for a pipe taper, in", "set-over 16", inInches,
		func(a *arguments) (float64, error) { return inches(calc.PipeSetOver.Of(a.length(0))) }},
}
