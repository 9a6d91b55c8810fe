package arithmetic

import (
	"regexp"
	"slices"
	"strings"

	"scratchpass/calc"
)

// spelled is the text of a function of calc, and the letters in it that its arguments
// replace, in their order.
type spelled struct {
	text    string
	letters []string
}

// spelt are the functions that no calculator has: a working prints what they work out.
var spelt = map[string]spelled{
	"pitch":     {calc.PitchOfTPI.Text, []string{"n"}},
	"depth":     {calc.ExternalDepth.Text, []string{"P"}},
	"whitworth": {calc.WhitworthDepth.Text, []string{"P"}},
	"minor":     {replaced(calc.MinorDiameter.Text, []string{"h"}, []string{calc.ExternalDepth.Text}), []string{"D", "P"}},
	"bore":      {calc.BasicBore.Text, []string{"D", "P"}},
	"pitchdia":  {calc.PitchDiameter.Text, []string{"D", "P"}},
	"travel":    {calc.TravelForDepth.Text, []string{"h", "a"}},
	"bestwire":  {calc.BestWire.Text, []string{"P"}},
	"overwires": {calc.ReadingOverWires.Text, []string{"E", "W", "P"}},
	"percent":   {calc.ThreadPercent.Text, []string{"D", "B", "P"}},
	"leadangle": {calc.ThreadSlope.Text, []string{"l", "E"}},
	"rpm":       {calc.TurningSpeed.Text, []string{"V", "D"}},
	"rpmmm":     {calc.TurningSpeedMM.Text, []string{"V", "D"}},
}

var (
	times  = regexp.MustCompile(`\s*\*\s*`)
	letter = regexp.MustCompile(`[A-Za-z][A-Za-z0-9]*`)
	simple = regexp.MustCompile(`^[A-Za-z0-9.]+$`)
)

// Shown is the formula as a working prints it: with x for times, and spelt out where it
// calls what no calculator has.
func (f *Formula) Shown() string { return times.ReplaceAllString(spellOut(f.signs), " x ") }

// spellOut spells the calls in a text out, what stands inside them first.
func spellOut(text string) string {
	var b strings.Builder
	at := 0
	for _, word := range letter.FindAllStringIndex(text, -1) {
		s, ok := spelt[text[word[0]:word[1]]]
		if !ok || word[0] < at {
			continue // another word, or one that was inside a call
		}
		args, end := arguments(text, word[1])
		if len(args) != len(s.letters) {
			continue
		}
		for i := range args {
			args[i] = spellOut(strings.TrimSpace(args[i]))
		}
		b.WriteString(text[at:word[0]])
		if word[0] > 0 || end < len(text) {
			b.WriteString("(" + replaced(s.text, s.letters, args) + ")")
		} else {
			b.WriteString(replaced(s.text, s.letters, args))
		}
		at = end
	}
	return b.String() + text[at:]
}

// arguments are those of a call whose bracket opens at a place, and where it ends.
func arguments(text string, open int) (args []string, end int) {
	from := open + 1
	for i, deep := open, 0; i < len(text); i++ {
		switch text[i] {
		case '(':
			deep++
		case ')':
			deep--
		case ',':
			if deep == 1 {
				args, from = append(args, text[from:i]), i+1
			}
		}
		if deep == 0 {
			if i == open {
				return nil, open // no bracket
			}
			return append(args, text[from:i]), i + 1
		}
	}
	return nil, open
}

// replaced puts arguments in place of letters; what is more than one number in brackets.
func replaced(text string, letters, args []string) string {
	return letter.ReplaceAllStringFunc(text, func(word string) string {
		i := slices.Index(letters, word)
		if i < 0 {
			return word
		}
		arg := strings.TrimSpace(args[i])
		if !simple.MatchString(arg) {
			arg = "(" + arg + ")"
		}
		return arg
	})
}
