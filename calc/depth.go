package calc

import "math"

// Side tells an external thread (screw) from an internal thread (nut).
type Side int

// The two sides.
const (
	Outside Side = iota
	Inside
)

// String returns "outside" or "inside": the names that files, flags and JSON had first.
func (s Side) String() string {
	if s == Inside {
		return "inside"
	}
	return "outside"
}

// Word returns the word of the trade for the side, as people read it.
func (s Side) Word() string {
	if s == Inside {
		return "internal"
	}
	return "external"
}

// ParseSide reads a side by either of its names.
func ParseSide(text string) (s Side, ok bool) {
	for _, s := range []Side{Outside, Inside} {
		if text == s.String() || text == s.Word() {
			return s, true
		}
	}
	return Outside, false
}

// TipPastPitchLine returns how far the tip of the tool stands past the pitch line
// when its groove is half a pitch wide there, which is what makes a thread of
// the right pitch diameter:
//
//	y = (P/2 - f) x 0.866025
//
// f is the flat on the tip, 0 to P/2. Source: geometry of the 60-degree form.
func TipPastPitchLine(pitch, flat Length) (Length, error) {
	if err := checkPitch(pitch); err != nil {
		return 0, err
	}
	if err := between("tool flat", flat, 0, pitch.Times(0.5)); err != nil {
		return 0, err
	}
	return (pitch.Times(0.5) - flat).Times(HeightOfSharpV), nil
}

// WidestFlat returns the widest tip that still makes a thread of this pitch:
//
//	P/4   outside: the flat of the basic root
//	P/8   inside: a wider tip reaches the pitch diameter before the groove is deep
//	      enough for the crests of the screw
//
// The pitch is 0.2 mm to 1 in. Source: basic profile, ASME B1.1 and ISO 68-1.
func WidestFlat(side Side, pitch Length) (Length, error) {
	if err := checkPitch(pitch); err != nil {
		return 0, err
	}
	if side == Inside {
		return pitch.Times(1.0 / 8), nil
	}
	return pitch.Times(1.0 / 4), nil
}

// checkFlat refuses a tip that is too wide, with a slack of half a thousandth: no
// one measures a flat closer than that.
func checkFlat(side Side, pitch, flat Length) error {
	widest, err := WidestFlat(side, pitch)
	if err != nil {
		return err
	}
	if flat >= 0 && flat <= widest+Thou.Times(0.5) {
		return nil
	}
	return badLength("tool flat", flat, LengthText(0)+" to "+LengthText(widest)+" for an "+side.Word()+" thread of this pitch; a wider tip can't make it")
}

// RadialDepth returns how far the tool goes in, straight, from first touch to a
// thread of pitch diameter E, for the tool you really have. It is the one depth
// formula; every factor in a book is a case of it:
//
//	h = (d - E)/2 + (P/2 - f) x 0.866025   outside, d the blank
//	h = (E - d)/2 + (P/2 - f) x 0.866025   inside, d the bore
//
// From a nominal blank to the basic pitch diameter, flats of 0, P/8, P/6 and P/4
// give 0.758, 0.650, 0.613 and 0.541 P.
//
// start is the diameter of the blank or bore, pitchDiameter the one wanted; both
// above 0 and at most 12 in. An error says so where the tool would have to go
// backwards. Source: geometry of the 60-degree form; the three published factors
// (US Navy training manual p. 6-49) come out of it.
func RadialDepth(side Side, start, pitchDiameter, pitch, flat Length) (Length, error) {
	if err := checkFlat(side, pitch, flat); err != nil {
		return 0, err
	}
	y, err := TipPastPitchLine(pitch, flat)
	if err != nil {
		return 0, err
	}
	err = firstError(
		between("starting diameter", start, Thou, LargestNominal),
		between("pitch diameter", pitchDiameter, Thou, LargestNominal))
	if err != nil {
		return 0, err
	}
	wall := (start - pitchDiameter).Times(0.5)
	if side == Inside {
		wall = -wall
	}
	if h := wall + y; h > 0 {
		return h, nil
	}
	return 0, badLength("starting diameter", start,
		"a size from which the tool must still go in to reach the pitch diameter "+LengthText(pitchDiameter))
}

// RadialDepthFromNominal returns the depth to the basic pitch diameter from a
// blank of exactly nominal size:
//
//	h = 0.75777 P - 0.86603 f
//
// It is RadialDepth with d - E = 0.649519 P; f is 0 to P/4.
func RadialDepthFromNominal(pitch, flat Length) (Length, error) {
	if err := checkFlat(Outside, pitch, flat); err != nil {
		return 0, err
	}
	y, err := TipPastPitchLine(pitch, flat)
	if err != nil {
		return 0, err
	}
	return pitch.Times(HeightOfSharpV*3/8) + y, nil
}

// RadialDepthFromBasicBore returns the depth of an inside thread to the basic
// pitch diameter from a bore of exactly D1:
//
//	h = 0.64952 P - 0.86603 f
//
// It is RadialDepth with E - d = 0.433013 P; f is 0 to P/8.
func RadialDepthFromBasicBore(pitch, flat Length) (Length, error) {
	if err := checkFlat(Inside, pitch, flat); err != nil {
		return 0, err
	}
	y, err := TipPastPitchLine(pitch, flat)
	if err != nil {
		return 0, err
	}
	return pitch.Times(HeightOfSharpV/4) + y, nil
}

// DepthFactors returns the two numbers of the depth formula from a nominal blank,
// h = a P - b f, so that a page that prints them cannot disagree with it.
func DepthFactors() (a, b float64) { return HeightOfSharpV * 7 / 8, HeightOfSharpV }

// RuleOfThumbTravel returns the compound travel that a shop estimate gives:
//
//	c = P / 1.5
//
// It is an estimate to stop short of, never a target: common practice, no source.
func RuleOfThumbTravel(pitch Length) (Length, error) {
	if err := checkPitch(pitch); err != nil {
		return 0, err
	}
	return pitch.Times(1 / 1.5), nil
}

// percentOfThread returns how much of the full thread height a bore leaves:
//
//	percent = (D - bore) / (2 factor P) x 100
//
// full is the form whose height counts as 100 %.
func percentOfThread(nominal, bore, pitch Length, full Form) (float64, error) {
	err := firstError(checkPitch(pitch), checkNominal(nominal, pitch),
		between("bore", bore, Thou, nominal))
	if err != nil {
		return 0, err
	}
	return (nominal - bore).Over(pitch.Times(2*full.Factor())) * 100, nil
}

// flankLength is FlankWidth.
func flankLength(radial Length) (Length, error) {
	if err := between("depth", radial, 0, 1); err != nil {
		return 0, err
	}
	return radial.Times(2 / math.Sqrt(3)), nil
}

// The formulas of a depth for the tool you have, straight in: from a blank of nominal
// size, and from a bore of basic size. P is the pitch, f the flat on the tip.
var (
	DepthFromNominal = Formula[func(pitch, flat Length) (Length, error)]{"0.757772 x P - 0.866025 x f", RadialDepthFromNominal}
	DepthFromBore    = Formula[func(pitch, flat Length) (Length, error)]{"0.649519 x P - 0.866025 x f", RadialDepthFromBasicBore}
)

// RuleOfThumb is RuleOfThumbTravel: an estimate of the compound travel to stop short of.
var RuleOfThumb = Formula[func(pitch Length) (Length, error)]{"P / 1.5", RuleOfThumbTravel}

// How much of the full height of an inside thread a bore leaves, in percent: 0 to 100 in
// the usual cases, above 100 when the bore is smaller than the basic one. D is the nominal
// diameter, above the pitch and at most 12 in, B the bore, 0.001 in to D, and P the pitch,
// 0.2 mm to 1 in. Name the convention wherever the figure is shown.
var (
	// ThreadPercent takes the basic height as 100 %: ASME B1.1 and ISO 68-1.
	ThreadPercent = Formula[func(nominal, bore, pitch Length) (float64, error)]{"100 x (D - B) / (1.082532 x P)",
		func(nominal, bore, pitch Length) (float64, error) {
			return percentOfThread(nominal, bore, pitch, BasicInternal)
		}}

	// ThreadPercentOld takes the American National height, as one published table does.
	ThreadPercentOld = Formula[func(nominal, bore, pitch Length) (float64, error)]{"100 x (D - B) / (1.299038 x P)",
		func(nominal, bore, pitch Length) (float64, error) {
			return percentOfThread(nominal, bore, pitch, AmericanNational)
		}}
)

// FlankWidth is the width of the chip on one flank, measured along it, when the tool
// stands h deep, 0 to 1 in. Cutting on both flanks doubles it.
var FlankWidth = Formula[func(radial Length) (Length, error)]{"h / cos(30)", flankLength}
