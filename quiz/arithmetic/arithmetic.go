// Package arithmetic works out what someone types where a number is asked for, as on a
// pocket calculator: 0.614 x 0.05, (0.0682)/cos(29.5), 1/28. The work is done by a library
// for expressions with everything but arithmetic taken from it.
package arithmetic

import (
	"fmt"
	"math"
	"regexp"
	"strings"

	"github.com/expr-lang/expr"

	"scratchpass/calc"
)

// MostLetters is the longest text that is worked out.
const MostLetters = 120

// Names are what can be typed besides numbers and signs. Angles are in degrees.
var Names = []string{"sin", "cos", "tan", "asin", "acos", "atan", "sqrt", "pi"}

// Is reports whether a text is to be worked out: it has a sign between two things, or a
// function.
func Is(text string) bool { return sum.MatchString(prepared(text)) }

var sum = regexp.MustCompile(`[0-9)a-z]\s*[-+*/^]\s*[-+(0-9.a-z]|[a-z]\s*\(`)

// allowed are the letters of arithmetic, and what no number has in it.
var (
	allowed   = regexp.MustCompile(`^[0-9a-z.+*/^() -]+$`)
	forbidden = regexp.MustCompile(`\.\.|\*\*|[0-9.][a-z]|[0-9.]\s+[0-9.]|\)\s*[0-9.(a-z]|[0-9.]\s*\(`)
	word      = regexp.MustCompile(`[a-z]+`)
	whole     = regexp.MustCompile(`(^|[^0-9.])([0-9]+)($|[^0-9.])`)
)

// prepared writes the signs of school and shop as the library knows them.
func prepared(text string) string {
	text = strings.NewReplacer("×", "*", "·", "*", "÷", "/", "−", "-", "°", "", "\u00a0", " ").Replace(strings.ToLower(strings.TrimSpace(text)))
	return between.ReplaceAllString(between.ReplaceAllString(text, "$1*$2"), "$1*$2")
}

// between finds an x that stands for times.
var between = regexp.MustCompile(`([0-9.)])\s*x\s*([0-9.(a-z-])`)

// Value works a text out. Errors say what is wrong with it, quoted.
func Value(text string) (float64, error) {
	if len(text) > MostLetters {
		return 0, fmt.Errorf("%s is too long to work out: up to %d letters", calc.Quoted(text), MostLetters)
	}
	sum := prepared(text)
	if !allowed.MatchString(sum) || forbidden.MatchString(sum) {
		return 0, cannot(text, "numbers with + - x / ^ and brackets, and "+strings.Join(Names, ", "))
	}
	for _, name := range word.FindAllString(sum, -1) {
		if _, known := functions[name]; !known && name != "pi" {
			return 0, cannot(text, name+" is not known; known are "+strings.Join(Names, ", "))
		}
	}
	// Whole numbers as such would overflow in powers; the library divides them as fractions anyhow.
	for range 2 {
		sum = whole.ReplaceAllString(sum, "$1$2.0$3")
	}
	program, err := expr.Compile(sum, options...)
	if err != nil {
		return 0, cannot(text, "look for a bracket or a number that is missing")
	}
	out, err := expr.Run(program, environment)
	x, ok := out.(float64)
	switch {
	case err != nil || !ok:
		return 0, cannot(text, "look for a bracket or a number that is missing")
	case math.IsNaN(x) || math.IsInf(x, 0):
		return 0, cannot(text, "it has no value")
	}
	return x, nil
}

func cannot(text, why string) error {
	return fmt.Errorf("%s can't be worked out: %s", calc.Quoted(text), why)
}

// functions are those of the trade, with angles in degrees.
var functions = map[string]func(x float64) float64{
	"sin":  func(x float64) float64 { return calc.Degrees(x).Sin() },
	"cos":  func(x float64) float64 { return calc.Degrees(x).Cos() },
	"tan":  func(x float64) float64 { return calc.Degrees(x).Tan() },
	"asin": func(x float64) float64 { return math.Asin(x) * 180 / math.Pi },
	"acos": func(x float64) float64 { return math.Acos(x) * 180 / math.Pi },
	"atan": func(x float64) float64 { return math.Atan(x) * 180 / math.Pi },
	"sqrt": math.Sqrt,
}

// environment is all that a sum can name.
var environment = func() map[string]any {
	env := map[string]any{"pi": math.Pi}
	for name, f := range functions {
		env[name] = f
	}
	return env
}()

// options take everything from the library but arithmetic: no functions of its own, and
// not much of anything.
var options = []expr.Option{expr.Env(environment), expr.DisableAllBuiltins(), expr.MaxNodes(200), expr.AsFloat64()}
