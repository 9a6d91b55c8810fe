// Package figures gives the numbers and formulas that a lesson's sentence asks for as
// ${name} or ${name argument ...}: worked out by [scratchpass/calc] and printed as
// everywhere in the program. A number of the trade then stands in calc alone, and a lesson
// can't go on telling an old one.
//
//	${pitch 8}                            0.1250
//	${pitch 8, 3 places}                  0.125
//	${formula pitch-diameter}             D - 0.649519 x P
//	${formula room-to-stop v=rpm y=time}  rpm / 60 x P x time
//
// content/README.md lists them all; its list is made from the one here.
package figures

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"scratchpass/calc"
	"scratchpass/content"
)

// Fill puts the figures into a lesson's text. The error quotes every name that is not
// known and every argument that can't be read, and says what would work.
func Fill(text string) (string, error) { return content.FillFigures(text, Figure) }

// Figure returns what the words between ${ and } ask for.
func Figure(asked string) (string, error) {
	text, err := lookUp(asked)
	if err != nil {
		return "", fmt.Errorf("${%s}: %w", asked, err)
	}
	return text, nil
}

func lookUp(asked string) (string, error) {
	words, tail, given := strings.Cut(asked, ",")
	places, err := placesOf(tail, given)
	if err != nil {
		return "", err
	}
	fields := strings.Fields(words)
	if len(fields) == 0 {
		return "", fmt.Errorf("the name is missing: write one of %s", strings.Join(names(), ", "))
	}
	name, rest := fields[0], fields[1:]
	if name == "formula" {
		return formulaText(rest, places)
	}
	i := slices.IndexFunc(figures, func(f figure) bool { return f.name() == name })
	if i < 0 {
		return "", fmt.Errorf("no figure is called %s; they are %s", calc.Quoted(name), strings.Join(names(), ", "))
	}
	f := figures[i]
	if least, most := f.arguments(); len(rest) < least || len(rest) > most {
		return "", fmt.Errorf("write it as ${%s}, such as ${%s}", f.usage, f.example)
	}
	a := &arguments{words: rest}
	x, err := f.of(a)
	if a.err != nil { // what could not be read comes before what came of it
		err = a.err
	}
	if err != nil {
		return "", err
	}
	if places >= 0 {
		return calc.Fixed(x, places), nil
	}
	return f.shown(x), nil
}

// placesOf reads what stands behind the comma: "3 places". It returns -1 where there is
// no comma.
func placesOf(tail string, given bool) (int, error) {
	if !given {
		return -1, nil
	}
	fields := strings.Fields(tail)
	if len(fields) == 2 && (fields[1] == "places" || fields[1] == "place") {
		if n, err := strconv.Atoi(fields[0]); err == nil && n >= 0 && n <= 8 {
			return n, nil
		}
	}
	return 0, fmt.Errorf("can't read %s behind the comma: write the decimals, 0 to 8, such as 3 places", calc.Quoted(strings.TrimSpace(tail)))
}

// figure is one name and what it gives.
type figure struct {
	usage   string // the name and its arguments, those that may be left out in brackets
	gives   string // in words, with the unit
	example string // as a lesson would ask for it
	shown   format
	of      func(a *arguments) (float64, error)
}

func (f figure) name() string { return strings.Fields(f.usage)[0] }

// arguments returns how many arguments the figure takes at least and at most.
func (f figure) arguments() (least, most int) {
	most = len(strings.Fields(f.usage)) - 1
	return most - strings.Count(f.usage, "["), most
}

// names lists what can be asked for.
func names() []string {
	all := []string{"formula"}
	for _, f := range figures {
		all = append(all, f.name())
	}
	slices.Sort(all)
	return all
}

// format prints a number that no places were asked for.
type format func(x float64) string

// Inches have four places and millimetres three, as everywhere.
func inInches(x float64) string      { return calc.Fixed(x, 4) }
func inMillimetres(x float64) string { return calc.Fixed(x, 3) }

// Sizes that tables print with three places, in inches.
func inThousandths(x float64) string { return calc.Fixed(x, 3) }

// Angles, counts and threads per inch have the decimals they need, factors and seconds
// always the same.
func plainly(x float64) string   { return calc.Shortest(x, 4) }
func asFactor(x float64) string  { return calc.Fixed(x, 4) }
func inSeconds(x float64) string { return calc.Fixed(x, 2) }
