package figures

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"

	"scratchpass/calc"
)

// formulas are the texts of calc's formulas by name: that of the value in calc, in small
// letters with hyphens. A test reads calc's source and wants every one here.
var formulas = map[string]string{
	"acme-allowance-2g":         calc.AcmeAllowance2G.Text,
	"acme-allowance-3g":         calc.AcmeAllowance3G.Text,
	"acme-allowance-4g":         calc.AcmeAllowance4G.Text,
	"acme-full-depth":           calc.AcmeFullDepth.Text,
	"acme-full-depth-fine":      calc.AcmeFullDepthFine.Text,
	"acme-nut-bore":             calc.AcmeNutBore.Text,
	"acme-pitch-line":           calc.AcmePitchLine.Text,
	"acme-tip":                  calc.AcmeTip.Text,
	"acme-tip-fine":             calc.AcmeTipFine.Text,
	"angle-of-scale":            calc.AngleOfScale.Text,
	"basic-bore":                calc.BasicBore.Text,
	"before-plating":            calc.BeforePlating.Text,
	"before-plating-inside":     calc.BeforePlatingInside.Text,
	"best-wire":                 calc.BestWire.Text,
	"carriage-speed":            calc.CarriageSpeed.Text,
	"carriage-speed-one-start":  calc.CarriageSpeedOneStart.Text,
	"chip-straight-in":          calc.ChipStraightIn.Text,
	"depth-from-bore":           calc.DepthFromBore.Text,
	"depth-from-nominal":        calc.DepthFromNominal.Text,
	"depth-of-travel":           calc.DepthOfTravel.Text,
	"diameter-over-wires":       calc.DiameterOverWires.Text,
	"draw-out-room":             calc.DrawOutRoom.Text,
	"even-load":                 calc.EvenLoad.Text,
	"external-depth":            calc.ExternalDepth.Text,
	"fastest-speed":             calc.FastestSpeed.Text,
	"fed-by-cuts":               calc.FedByCuts.Text,
	"finest-pitch-inside":       calc.FinestPitchInside.Text,
	"finest-pitch-outside":      calc.FinestPitchOutside.Text,
	"fit-inside":                calc.FitInside.Text,
	"fit-inside-on-travel":      calc.FitInsideOnTravel.Text,
	"flank-width":               calc.FlankWidth.Text,
	"gears-by-pitch":            calc.GearsByPitch.Text,
	"gears-inch":                calc.GearsInch.Text,
	"gears-metric":              calc.GearsMetric.Text,
	"inches-of-mm":              calc.InchesOfMM.Text,
	"lead-of-starts":            calc.LeadOfStarts.Text,
	"largest-nose-inside":       calc.LargestNoseInside.Text,
	"largest-nose-outside":      calc.LargestNoseOutside.Text,
	"leading-clearance":         calc.LeadingClearance.Text,
	"mark-spacing":              calc.MarkSpacing.Text,
	"mark-spacing-mm":           calc.MarkSpacingMM.Text,
	"middle-of-limits":          calc.MiddleOfLimits.Text,
	"minor-diameter":            calc.MinorDiameter.Text,
	"move-on-diameter-dial":     calc.MoveOnDiameterDial.Text,
	"move-on-travel-dial":       calc.MoveOnTravelDial.Text,
	"national-flat":             calc.NationalFlat.Text,
	"nose-depth-from-bore":      calc.NoseDepthFromBore.Text,
	"nose-depth-from-nominal":   calc.NoseDepthFromNominal.Text,
	"numbered-size":             calc.NumberedSize.Text,
	"pipe-along":                calc.PipeAlong.Text,
	"pipe-depth-for-along":      calc.PipeDepthForAlong.Text,
	"pipe-height":               calc.PipeHeight.Text,
	"nut-travel":                calc.NutTravel.Text,
	"pipe-set-over":             calc.PipeSetOver.Text,
	"pipe-small-end":            calc.PipeSmallEnd.Text,
	"pitch-diameter":            calc.PitchDiameter.Text,
	"pitch-of-crests":           calc.PitchOfCrests.Text,
	"pitch-of-starts":           calc.PitchOfStarts.Text,
	"pitch-of-tpi":              calc.PitchOfTPI.Text,
	"pitch-of-tpi-mm":           calc.PitchOfTPIMM.Text,
	"read-out-diameter":         calc.ReadOutDiameter.Text,
	"read-out-diameter-inside":  calc.ReadOutDiameterInside.Text,
	"read-out-radius":           calc.ReadOutRadius.Text,
	"read-out-radius-inside":    calc.ReadOutRadiusInside.Text,
	"reading-over-wires":        calc.ReadingOverWires.Text,
	"reading-past-zero":         calc.ReadingPastZero.Text,
	"room-to-stop":              calc.RoomToStop.Text,
	"rule-of-thumb":             calc.RuleOfThumb.Text,
	"scale-along-bed":           calc.ScaleAlongBed.Text,
	"scratch-lines":             calc.ScratchLines.Text,
	"scratch-lines-by-pitch":    calc.ScratchLinesByPitch.Text,
	"shift-for-depth":           calc.ShiftForDepth.Text,
	"thread-percent":            calc.ThreadPercent.Text,
	"thread-percent-old":        calc.ThreadPercentOld.Text,
	"thread-slope":              calc.ThreadSlope.Text,
	"threading-speed":           calc.ThreadingSpeed.Text,
	"threads-per-mark":          calc.ThreadsPerMark.Text,
	"threads-per-mark-by-pitch": calc.ThreadsPerMarkByPitch.Text,
	"threads-per-turn":          calc.ThreadsPerTurn.Text,
	"time-for-gap":              calc.TimeForGap.Text,
	"times-stiffer":             calc.TimesStiffer.Text,
	"tpi-of-crests":             calc.TPIOfCrests.Text,
	"tpi-of-crests-mm":          calc.TPIOfCrestsMM.Text,
	"tpi-of-pitch-mm":           calc.TPIOfPitchMM.Text,
	"travel-for-depth":          calc.TravelForDepth.Text,
	"turning-speed":             calc.TurningSpeed.Text,
	"turning-speed-mm":          calc.TurningSpeedMM.Text,
	"whitworth-depth":           calc.WhitworthDepth.Text,
}

// formulaText writes a formula, with words in place of symbols where the sentence wants
// them (v=rpm, an underscore for a space) and its constants to so many places.
func formulaText(words []string, places int) (string, error) {
	if len(words) == 0 {
		return "", fmt.Errorf("write the formula's name behind it; the formulas are %s", strings.Join(sortedKeys(formulas), ", "))
	}
	text, ok := formulas[words[0]]
	if !ok {
		return "", fmt.Errorf("no formula is called %s; they are %s", calc.Quoted(words[0]), strings.Join(sortedKeys(formulas), ", "))
	}
	tokens := tokensOf(text)
	put := map[string]string{}
	for _, w := range words[1:] {
		symbol, word, ok := strings.Cut(w, "=")
		if !ok || word == "" {
			return "", fmt.Errorf("can't read %s: write the symbol, =, and the word for it, such as P=pitch", calc.Quoted(w))
		}
		if !strings.Contains("\n"+strings.Join(tokens, "\n")+"\n", "\n"+symbol+"\n") {
			return "", fmt.Errorf("no %s stands in %s", calc.Quoted(symbol), text)
		}
		put[symbol] = strings.ReplaceAll(word, "_", " ")
	}
	for i, token := range tokens {
		if word, ok := put[token]; ok {
			tokens[i] = word
			continue
		}
		if _, decimals, _ := strings.Cut(token, "."); places >= 0 && len(decimals) > places {
			if x, err := strconv.ParseFloat(token, 64); err == nil {
				tokens[i] = calc.Fixed(x, places)
			}
		}
	}
	return strings.Join(tokens, ""), nil
}

// tokensOf parts a formula into its symbols and constants and what stands between.
func tokensOf(text string) []string {
	inWord := func(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) || r == '.' }
	var tokens []string
	for text != "" {
		end := strings.IndexFunc(text, func(r rune) bool { return inWord(r) != inWord(rune(text[0])) })
		if end < 0 {
			end = len(text)
		}
		tokens = append(tokens, text[:end])
		text = text[end:]
	}
	return tokens
}
