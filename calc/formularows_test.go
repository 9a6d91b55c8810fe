package calc_test

import (
	"math"
	"math/rand/v2"

	"scratchpass/calc"
)

// Values to put in, as they come up in a shop.
func from(r *rand.Rand, low, high float64) float64       { return low + (high-low)*r.Float64() }
func inches(r *rand.Rand, low, high float64) calc.Length { return calc.Inches(from(r, low, high)) }
func thousandths(r *rand.Rand, low, high int) calc.Length {
	return calc.Inches(float64(low+r.IntN(high-low)) / 1000)
}
func degrees(r *rand.Rand, low, high float64) calc.Angle      { return calc.Angle(from(r, low, high)) }
func pitchOf(r *rand.Rand) calc.Length                        { return inches(r, 0.02, 0.5) }
func rpmOf(r *rand.Rand) calc.SpindleSpeed                    { return calc.SpindleSpeed(from(r, 20, 800)) }
func tpiOf(r *rand.Rand) calc.ThreadsPerInch                  { return calc.ThreadsPerInch(from(r, 2, 80)) }
func nominalOver(r *rand.Rand, pitch calc.Length) calc.Length { return pitch.Times(from(r, 2, 20)) }

type symbols = map[string]any

const (
	both = "in mm"
	inch = "in"
	mm   = "mm"
)

func underPlating(r *rand.Rand) ([]any, map[string]any) {
	e, t := inches(r, 0.1, 3), inches(r, 0, 0.005)
	return []any{e, t}, symbols{"E": e, "t": t}
}

func readOutAndDepth(r *rand.Rand) ([]any, map[string]any) {
	set, h := inches(r, 0.2, 3), inches(r, 0.01, 0.15)
	return []any{set, h}, symbols{"r0": set, "h": h}
}

// formulaRows are all formulas.
var formulaRows = append(append([]formulaRow{
	row("AcmeTip", calc.AcmeTip, inch, func(r *rand.Rand) ([]any, map[string]any) {
		p := inches(r, 0.1, 1)
		return []any{p}, symbols{"P": p}
	}),
	row("AcmeTipFine", calc.AcmeTipFine, inch, func(r *rand.Rand) ([]any, map[string]any) {
		p := inches(r, 0.05, 0.0999)
		return []any{p}, symbols{"P": p}
	}),
	row("AcmePitchLine", calc.AcmePitchLine, both, func(r *rand.Rand) ([]any, map[string]any) {
		p := inches(r, 0.05, 0.5)
		d := nominalOver(r, p)
		return []any{d, p}, symbols{"D": d, "P": p}
	}),
	row("AcmeFullDepth", calc.AcmeFullDepth, inch, func(r *rand.Rand) ([]any, map[string]any) {
		p := inches(r, 0.1, 1)
		return []any{p}, symbols{"P": p}
	}),
	row("AcmeFullDepthFine", calc.AcmeFullDepthFine, inch, func(r *rand.Rand) ([]any, map[string]any) {
		p := inches(r, 0.05, 0.0999)
		return []any{p}, symbols{"P": p}
	}),
	row("AcmeNutBore", calc.AcmeNutBore, both, func(r *rand.Rand) ([]any, map[string]any) {
		p := inches(r, 0.05, 0.5)
		d := nominalOver(r, p)
		return []any{d, p}, symbols{"D": d, "P": p}
	}),
	row("AcmeAllowance2G", calc.AcmeAllowance2G, inch, onlyNominal),
	row("AcmeAllowance3G", calc.AcmeAllowance3G, inch, onlyNominal),
	row("AcmeAllowance4G", calc.AcmeAllowance4G, inch, onlyNominal),
	row("BeforePlating", calc.BeforePlating, both, underPlating),
	row("BeforePlatingInside", calc.BeforePlatingInside, both, underPlating),
	row("WhitworthDepth", calc.WhitworthDepth, both, onlyPitch),
	row("NutTravel", calc.NutTravel, both, func(r *rand.Rand) ([]any, map[string]any) {
		l, k := pitchOf(r), from(r, 0.5, 12)
		return []any{l, k}, symbols{"l": l, "k": k}
	}),
	row("DrawOutRoom", calc.DrawOutRoom, both, func(r *rand.Rand) ([]any, map[string]any) {
		o, p, k := inches(r, 0, 0.3), pitchOf(r), from(r, 0.25, 3)
		return []any{o, p, k}, symbols{"o": o, "P": p, "k": k}
	}),
	row("ReadOutDiameter", calc.ReadOutDiameter, both, readOutAndDepth),
	row("ReadOutDiameterInside", calc.ReadOutDiameterInside, both, readOutAndDepth),
	row("ReadOutRadius", calc.ReadOutRadius, both, readOutAndDepth),
	row("ReadOutRadiusInside", calc.ReadOutRadiusInside, both, readOutAndDepth),
	row("TimesStiffer", calc.TimesStiffer, both, func(r *rand.Rand) ([]any, map[string]any) {
		long, short := inches(r, 1, 10), inches(r, 1, 10)
		return []any{long, short}, symbols{"r": float64(long / short)}
	}),
	row("ChipStraightIn", calc.ChipStraightIn, both, func(r *rand.Rand) ([]any, map[string]any) {
		h, f := inches(r, 0, 0.3), inches(r, 0, 0.2)
		return []any{h, f}, symbols{"b": h / calc.Length(math.Sqrt(0.75)), "f": f} // cos 30 is the root of 3/4
	}),
	row("TravelForDepth", calc.TravelForDepth, both, depthAndAngle("h")),
	row("DepthOfTravel", calc.DepthOfTravel, both, depthAndAngle("g")),
	row("ShiftForDepth", calc.ShiftForDepth, both, depthAndAngle("h")),
	row("ScaleAlongBed", calc.ScaleAlongBed, both, func(r *rand.Rand) ([]any, map[string]any) {
		a := degrees(r, 0, 90)
		return []any{a}, symbols{"a": a}
	}),
	row("AngleOfScale", calc.AngleOfScale, both, func(r *rand.Rand) ([]any, map[string]any) {
		s := degrees(r, 0, 90)
		return []any{s}, symbols{"s": s}
	}),
	row("PitchOfCrests", calc.PitchOfCrests, both, spanAndCrests),
	row("TPIOfCrests", calc.TPIOfCrests, inch, spanAndCrests),
	row("TPIOfCrestsMM", calc.TPIOfCrestsMM, mm, spanAndCrests),
	row("ScratchLines", calc.ScratchLines, inch, func(r *rand.Rand) ([]any, map[string]any) {
		l, p := inches(r, 0.1, 6), pitchOf(r)
		return []any{l, p}, symbols{"L": l, "n": 1 / p.Inches()}
	}),
	row("ScratchLinesByPitch", calc.ScratchLinesByPitch, both, func(r *rand.Rand) ([]any, map[string]any) {
		l, p := inches(r, 0.1, 6), pitchOf(r)
		return []any{l, p}, symbols{"L": l, "P": p}
	}),
	row("DepthFromNominal", calc.DepthFromNominal, both, pitchAndFlat(0.25)),
	row("DepthFromBore", calc.DepthFromBore, both, pitchAndFlat(0.125)),
	row("RuleOfThumb", calc.RuleOfThumb, both, onlyPitch),
	row("ThreadPercent", calc.ThreadPercent, both, boredThread),
	row("ThreadPercentOld", calc.ThreadPercentOld, both, boredThread),
	row("FlankWidth", calc.FlankWidth, both, onlyDepth),
	row("MoveOnDiameterDial", calc.MoveOnDiameterDial, both, onlyDepth),
	row("MoveOnTravelDial", calc.MoveOnTravelDial, both, onlyDepth),
	row("FedByCuts", calc.FedByCuts, both, func(r *rand.Rand) ([]any, map[string]any) {
		cuts, sum := make([]calc.Cut, 1+r.IntN(8)), 0.0
		for i := range cuts {
			if r.IntN(3) > 0 { // else a spring pass
				cuts[i].Feed = thousandths(r, 1, 12)
			}
			sum += cuts[i].Feed.Inches()
		}
		return []any{cuts}, symbols{"cuts": calc.Inches(sum)}
	}),
	row("ReadingPastZero", calc.ReadingPastZero, both, func(r *rand.Rand) ([]any, map[string]any) {
		turn := []calc.Length{0.1, 0.125, 0.2}[r.IntN(3)]
		start, infeed := thousandths(r, 0, 100), thousandths(r, 0, 500)
		total := start + infeed
		return []any{start, infeed, turn}, symbols{"t": total, "k": math.Floor(float64(total/turn) + 1e-9), "R": turn}
	}),
	row("ExternalDepth", calc.ExternalDepth, both, onlyPitch),
	row("PitchDiameter", calc.PitchDiameter, both, nominalAndPitch),
	row("BasicBore", calc.BasicBore, both, nominalAndPitch),
	row("MinorDiameter", calc.MinorDiameter, both, func(r *rand.Rand) ([]any, map[string]any) {
		args, s := nominalAndPitch(r)
		h := args[1].(calc.Length).Times(17.0 / 24 * math.Sqrt(3) / 2)
		return args, symbols{"D": s["D"], "h": h}
	}),
	row("NationalFlat", calc.NationalFlat, both, onlyPitch),
	row("GearsInch", calc.GearsInch, inch, func(r *rand.Rand) ([]any, map[string]any) {
		n, screw := from(r, 2, 60), from(r, 2, 20)
		return []any{calc.Inches(1 / n), calc.Inches(1 / screw)}, symbols{"n": n, "N": screw}
	}),
	row("GearsByPitch", calc.GearsByPitch, inch, func(r *rand.Rand) ([]any, map[string]any) {
		p, screw := pitchOf(r), from(r, 2, 20)
		return []any{p, calc.Inches(1 / screw)}, symbols{"P": p, "N": screw}
	}),
	row("GearsMetric", calc.GearsMetric, mm, func(r *rand.Rand) ([]any, map[string]any) {
		p, screw := pitchOf(r), from(r, 2, 20)
		return []any{p, calc.Inches(1 / screw)}, symbols{"P": p, "N": screw}
	}),
}, formulaRowsOfSizes...), append(formulaRowsOfSpeed, formulaRowsOfNose...)...)

func onlyNominal(r *rand.Rand) ([]any, map[string]any) {
	d := inches(r, 0.1, 5)
	return []any{d}, symbols{"D": d}
}

func onlyPitch(r *rand.Rand) ([]any, map[string]any) {
	p := pitchOf(r)
	return []any{p}, symbols{"P": p}
}

func onlyDepth(r *rand.Rand) ([]any, map[string]any) {
	h := inches(r, 0, 0.5)
	return []any{h}, symbols{"h": h}
}

func nominalAndPitch(r *rand.Rand) ([]any, map[string]any) {
	p := pitchOf(r)
	d := nominalOver(r, p)
	return []any{d, p}, symbols{"D": d, "P": p}
}

func boredThread(r *rand.Rand) ([]any, map[string]any) {
	p := pitchOf(r)
	d := nominalOver(r, p)
	bore := d - p.Times(from(r, 0.5, 1.2))
	return []any{d, bore, p}, symbols{"D": d, "B": bore, "P": p}
}

func depthAndAngle(depth string) func(*rand.Rand) ([]any, map[string]any) {
	return func(r *rand.Rand) ([]any, map[string]any) {
		h, a := inches(r, 0, 0.5), degrees(r, 0, 60)
		return []any{h, a}, symbols{depth: h, "a": a}
	}
}

func spanAndCrests(r *rand.Rand) ([]any, map[string]any) {
	c := 2 + r.IntN(40)
	span := pitchOf(r).Times(float64(c - 1))
	return []any{span, c}, symbols{"L": span, "c": c}
}

func pitchAndFlat(share float64) func(*rand.Rand) ([]any, map[string]any) {
	return func(r *rand.Rand) ([]any, map[string]any) {
		p := pitchOf(r)
		f := p.Times(from(r, 0, share))
		return []any{p, f}, symbols{"P": p, "f": f}
	}
}
