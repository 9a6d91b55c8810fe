package problem

import (
	"strings"
	"unicode"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
)

// Step is one line of a working.
type Step struct {
	Symbol  string
	Formula string // in symbols; empty for a number that is read and not worked out
	X       float64
	Unit    machine.Unit
	Final   bool // the last step shows the places of an answer, the others two more
}

// Value prints the step's value without its unit.
func (s Step) Value() string {
	switch {
	case s.Formula == "":
		return s.Unit.Exact(s.X)
	case s.Final:
		return s.Unit.Fixed(s.X)
	}
	return s.Unit.Step(s.X)
}

// Working is the way from what is given to the answer. Steps hold unrounded
// numbers and print rounded ones, with places enough that a calculator fed the
// printed numbers gives the printed answer.
type Working struct {
	Steps    []Step
	Expected answer.Expected

	values Values
	err    error
}

// Working begins a working from these values.
func (v *Values) Working() *Working {
	return &Working{Steps: make([]Step, 0, 4), values: *v}
}

// With prints a step's formula with numbers in place of the symbols.
func (w *Working) With(i int) string {
	var b strings.Builder
	rest := w.Steps[i].Formula
	for rest != "" {
		end := strings.IndexFunc(rest, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
		switch {
		case end == 0:
			end = len(rest) - len(strings.TrimLeftFunc(rest, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }))
			b.WriteString(rest[:end])
		default:
			if end < 0 {
				end = len(rest)
			}
			b.WriteString(w.number(rest[:end], i))
		}
		rest = rest[end:]
	}
	return b.String()
}

// Line prints one step.
func (w *Working) Line(i int) string {
	s := w.Steps[i]
	value := s.Unit.WithName(s.Value())
	if s.Formula == "" {
		return s.Symbol + " = " + value
	}
	with := w.With(i)
	if with == s.Formula { // nothing to put in: the formula is the number
		return s.Symbol + " = " + with + " = " + value
	}
	return s.Symbol + " = " + s.Formula + " = " + with + " = " + value
}

// number returns the printed number behind a word of a formula, or the word.
func (w *Working) number(word string, before int) string {
	for i := before - 1; i >= 0; i-- {
		if w.Steps[i].Symbol == word {
			return bracketed(w.Steps[i].Value())
		}
	}
	if text, ok := w.values.Symbol(word); ok {
		return bracketed(text)
	}
	return word
}

func bracketed(number string) string {
	if strings.HasPrefix(number, "-") {
		return "(" + number + ")"
	}
	return number
}

// Number adds a step. Its result takes the value and error of a calc function:
//
//	ratio := w.Number("q", "T / i1", machine.PlainUnit)(total.Over(first), nil)
//
// It is for plain arithmetic and for numbers that are read off. The step of a formula
// of calc is added by Step1 and those beside it.
func (w *Working) Number(symbol, formula string, u machine.Unit) func(float64, error) float64 {
	return func(x float64, err error) float64 {
		w.Refuse(err)
		w.Steps = append(w.Steps, Step{Symbol: symbol, Formula: formula, X: x, Unit: u})
		return x
	}
}

// Length adds a step whose value is a length.
func (w *Working) Length(symbol, formula string) func(calc.Length, error) calc.Length {
	return func(l calc.Length, err error) calc.Length {
		w.Number(symbol, formula, w.values.System.Length())(l.Inches(), err)
		return l
	}
}

// Angle adds a step whose value is an angle.
func (w *Working) Angle(symbol, formula string) func(calc.Angle, error) calc.Angle {
	return func(a calc.Angle, err error) calc.Angle {
		w.Number(symbol, formula, machine.DegreeUnit)(a.Degrees(), err)
		return a
	}
}

// Pitch adds the steps from however the thread was told to its pitch.
func (w *Working) Pitch() calc.Length {
	v := w.values
	if v.Has("pitch") {
		return v.Length("pitch")
	}
	if v.Has("thread") {
		d := v.Thread("thread")
		if d.Metric {
			return w.Length("P", "")(d.Pitch, nil)
		}
		w.Number("n", "", machine.TPIUnit)(d.TPI.Number(), nil)
		return w.pitchOf(d.TPI)
	}
	return w.pitchOf(calc.ThreadsPerInch(v.X("tpi")))
}

// pitchOf adds the step from threads per inch to the pitch in the units of the problem.
func (w *Working) pitchOf(n calc.ThreadsPerInch) calc.Length {
	if w.values.System == machine.Metric {
		return Step1(w, "P", calc.PitchOfTPIMM, n)
	}
	return Step1(w, "P", calc.PitchOfTPI, n)
}

// Refuse makes the working end in an error, unless it has one already: the numbers that
// were given don't go together.
func (w *Working) Refuse(err error) {
	if w.err == nil {
		w.err = err
	}
}

// end marks the last step and returns the working with its answer.
func (w *Working) end(e answer.Expected) (Working, error) {
	if n := len(w.Steps); n > 0 {
		w.Steps[n-1].Final = true
	}
	w.Expected = e
	return *w, w.err
}

// Quantity ends a working whose last step is the answer.
func (w *Working) Quantity() (Working, error) {
	last := w.Steps[len(w.Steps)-1]
	return w.end(answer.Expected{Kind: answer.Quantity, Key: answer.Response{X: last.X}, Unit: last.Unit})
}

// DialReading ends a working whose last step is what a dial shows. Where that is its zero a
// whole turn is the same reading.
func (w *Working) DialReading(turn calc.Length) (Working, error) {
	done, err := w.Quantity()
	if e := &done.Expected; calc.Within(e.Key.X, 0, 1e-9) {
		e.Key.X, e.Alike = 0, []float64{turn.Inches()}
	}
	return done, err
}

// Row ends a working whose answer is a row of readings, by the steps' symbols.
func (w *Working) Row(symbols ...string) (Working, error) {
	xs := make([]float64, len(symbols))
	for i, symbol := range symbols {
		for j := range w.Steps {
			if w.Steps[j].Symbol == symbol {
				xs[i], w.Steps[j].Final = w.Steps[j].X, true
			}
		}
	}
	return w.end(answer.Expected{Kind: answer.Readings, Key: answer.Response{Xs: xs}, Unit: w.values.System.Length()})
}

// Limits ends a working whose answer is anything between two sizes.
func (w *Working) Limits(low, high calc.Length) (Working, error) {
	mid := (low + high).Times(0.5).Inches()
	e := answer.Expected{Kind: answer.Limits, Key: answer.Response{X: mid}, Unit: w.values.System.Length(), Low: low.Inches(), High: high.Inches()}
	return w.end(e)
}

// Choice ends the working of a decision.
func (w *Working) Choice(key string) (Working, error) {
	return w.end(answer.Expected{Kind: answer.Choice, Key: answer.Response{Keys: []string{key}}})
}

// Several ends a working whose answer is all of some options.
func (w *Working) Several(options, keys []string) (Working, error) {
	return w.end(answer.Expected{Kind: answer.Several, Key: answer.Response{Keys: keys}, Options: options})
}

// Order ends a working whose answer is steps in the right order.
func (w *Working) Order(keys ...string) (Working, error) {
	return w.end(answer.Expected{Kind: answer.Order, Key: answer.Response{Keys: keys}})
}

// OrderWith is Order where the trade allows some pairs of steps either way round: the key
// shown is one of the orders that are right.
func (w *Working) OrderWith(free [][2]string, keys ...string) (Working, error) {
	return w.end(answer.Expected{Kind: answer.Order, Key: answer.Response{Keys: keys}, Free: free})
}

// Reading ends a working whose answer is a designation taken apart.
func (w *Working) Reading(fields ...[2]string) (Working, error) {
	return w.end(answer.Expected{Kind: answer.Designation, Key: answer.Response{Fields: fields}})
}
