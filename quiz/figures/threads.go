package figures

import (
	"maps"
	"slices"
	"strconv"

	"scratchpass/calc"
)

// What a calc function gives, as the number that is shown.
func inches(l calc.Length, err error) (float64, error)          { return l.Inches(), err }
func millimetres(l calc.Length, err error) (float64, error)     { return l.Millimetres(), err }
func degrees(a calc.Angle, err error) (float64, error)          { return a.Degrees(), err }
func perInch(n calc.ThreadsPerInch, err error) (float64, error) { return n.Number(), err }

// figures are all that can be asked for, but for the formulas. Formula.Of works each out
// where there is one, so that the number and the formula beside it are of one piece.
var figures = slices.Concat(threadFigures, formFigures, latheFigures, feedFigures, formsFigures, acmeFigures, pipeFigures)

var threadFigures = []figure{
	{"pitch THREAD", "pitch, in", "pitch 8", inInches,
		func(a *arguments) (float64, error) { return inches(a.pitch(0), nil) }},
	{"tpi THREAD", "threads per inch", "tpi 2mm", plainly,
		func(a *arguments) (float64, error) { return perInch(calc.TPIOfPitchMM.Of(a.pitch(0))) }},
	{"nominal NAME", "nominal diameter, in", "nominal 1-8", inInches,
		func(a *arguments) (float64, error) { return inches(a.named(0).Nominal, nil) }},
	{"starts NAME", "starts", "starts M33xL6-P2", plainly,
		func(a *arguments) (float64, error) { return float64(a.named(0).Starts), nil }},
	{"lead THREAD STARTS", "lead, in", "lead 8 2", inInches,
		func(a *arguments) (float64, error) { return inches(calc.LeadOfStarts.Of(a.pitch(0), a.count(1, 1))) }},
	{"pitch-of-lead LEAD STARTS", "pitch, in", "pitch-of-lead 0.5 2", inInches,
		func(a *arguments) (float64, error) { return inches(calc.PitchOfStarts.Of(a.length(0), a.count(1, 1))) }},
	{"inches LENGTH", "the length, in", "inches 1.75mm", inInches,
		func(a *arguments) (float64, error) { return inches(a.length(0), nil) }},
	{"mm LENGTH", "the length, mm", "mm 4in", inMillimetres,
		func(a *arguments) (float64, error) { return millimetres(a.length(0), nil) }},
	{"threads-in LENGTH THREAD", "threads in a length", "threads-in 4in 1.5mm", plainly,
		func(a *arguments) (float64, error) { return a.length(0).Over(a.pitch(1)), nil }},
	{"number-size N", "diameter of a numbered screw, in", "number-size 4", inThousandths,
		func(a *arguments) (float64, error) { return inches(calc.NumberedSize.Of(a.count(0, 0))) }},
	{"number-adds N", "what N numbers add to number 0, in", "number-adds 4", inThousandths,
		func(a *arguments) (float64, error) {
			size, err := calc.NumberedSize.Of(a.count(0, 0))
			zero, _ := calc.NumberedSize.Of(0) // number 0 is a size
			return (size - zero).Inches(), err
		}},
}

var formFigures = []figure{
	{"factor NAME", "share of the pitch, see below", "factor external", asFactor,
		func(a *arguments) (float64, error) { return a.factor(0), nil }},
	{"depth THREAD", "single depth of an external thread, in", "depth 1-8", inInches,
		func(a *arguments) (float64, error) { return inches(calc.ExternalDepth.Of(a.pitch(0))) }},
	{"pitch-diameter-over THREAD PART", "left on by 0.6134 P, flat P/PART, in", "pitch-diameter-over 10 8", inInches,
		func(a *arguments) (float64, error) { return inches(leftByBookDepth(a.pitch(0), a.count(1, 0))) }},
	{"minor NAME", "minor diameter of an external thread, in", "minor 1-8", inInches,
		func(a *arguments) (float64, error) {
			d := a.named(0)
			return inches(calc.MinorDiameter.Of(d.Nominal, d.Pitch))
		}},
	{"bore NAME", "basic bore of an internal thread, in", "bore 1-8", inInches,
		func(a *arguments) (float64, error) {
			d := a.named(0)
			return inches(calc.BasicBore.Of(d.Nominal, d.Pitch))
		}},
	{"lead-angle NAME [STARTS]", "lead angle at the basic pitch diameter, degrees", "lead-angle 1-8 2", plainly,
		func(a *arguments) (float64, error) { return degrees(leadAngle(a)) }},
	{"wire-lead NAME [STARTS]", "what the lead adds to the reading over best wires, in", "wire-lead 1-8 2", inInches,
		func(a *arguments) (float64, error) {
			angle, err := leadAngle(a)
			wire, err2 := calc.BestWire.Of(a.named(0).Pitch)
			if err == nil {
				err = err2
			}
			if err != nil {
				return 0, err
			}
			return inches(calc.WireLeadCorrection(wire, angle))
		}},
}

// leftByBookDepth is how far the pitch diameter stays above the basic one when the tool
// goes from a nominal blank to the depth of a book that meant another flat.
func leftByBookDepth(pitch calc.Length, part int) (calc.Length, error) {
	if part < 4 || part > 100 {
		return 0, &calc.InputError{What: "part of the pitch", Got: strconv.Itoa(part), Want: "4 to 100"}
	}
	book, err := calc.ExternalDepth.Of(pitch)
	if err != nil {
		return 0, err
	}
	needed, err := calc.DepthFromNominal.Of(pitch, pitch.Times(1/float64(part)))
	return (needed - book).Times(2), err
}

// leadAngle is the slope of a thread by name, with the starts that stand behind it or
// that its name has.
func leadAngle(a *arguments) (calc.Angle, error) {
	d := a.named(0)
	e, err := calc.PitchDiameter.Of(d.Nominal, d.Pitch)
	if err != nil {
		return 0, err
	}
	return calc.ThreadSlope.Of(d.Pitch.Times(float64(a.count(1, d.Starts))), e)
}

// factors are shares of the pitch by name: what calc gives for a pitch of an inch.
func factors() map[string]float64 {
	const nominal, pitch = 2 * calc.Inch, calc.Inch // any thread would do
	less := func(f calc.Formula[func(nominal, pitch calc.Length) (calc.Length, error)]) float64 {
		diameter, _ := f.Of(nominal, pitch)
		return (nominal - diameter).Over(pitch)
	}
	full := func(f calc.Formula[func(nominal, bore, pitch calc.Length) (float64, error)]) float64 {
		percent, _ := f.Of(nominal, nominal-pitch, pitch)
		return 100 / percent
	}
	depth, flat := calc.DepthFactors()
	wires, _ := calc.WiresFor(pitch)
	return map[string]float64{
		"external":       calc.UnifiedExternal.Factor(),
		"national":       calc.AmericanNational.Factor(),
		"internal":       calc.BasicInternal.Factor(),
		"sharp-v":        calc.SharpV.Factor(),
		"pitch-diameter": less(calc.PitchDiameter),
		"bore":           less(calc.BasicBore),
		"percent":        full(calc.ThreadPercent),
		"percent-old":    full(calc.ThreadPercentOld),
		"sharp-tool":     depth,
		"tool-flat":      flat,
		"least-wire":     wires.Least.Over(pitch),
		"largest-wire":   wires.Largest.Over(pitch),
	}
}

func sortedKeys[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }
