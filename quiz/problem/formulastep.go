package problem

import (
	"scratchpass/calc"
	"scratchpass/quiz/machine"
)

// Step1 adds the step that a formula of one argument works out: its line has the
// formula's text, its value comes from the formula's function, and the function's error
// ends up as that of the working. A length stands in the system of units of the problem,
// angles in degrees, threads per inch and spindle speeds in their unit, anything else
// without one.
//
// Text and function can't come from two formulas: a step takes the formula as one value.
func Step1[A any, X ~float64](w *Working, symbol string, f calc.Formula[func(A) (X, error)], a A) X {
	x, err := f.Of(a)
	return addStep(w, symbol, f.Text, unitOf[X](w.values.System), x, err)
}

// Step2 is Step1 for a formula of two arguments.
func Step2[A, B any, X ~float64](w *Working, symbol string, f calc.Formula[func(A, B) (X, error)], a A, b B) X {
	return StepIn2(w, symbol, unitOf[X](w.values.System), f, a, b)
}

// Step3 is Step1 for a formula of three arguments.
func Step3[A, B, C any, X ~float64](w *Working, symbol string, f calc.Formula[func(A, B, C) (X, error)], a A, b B, c C) X {
	return StepIn3(w, symbol, unitOf[X](w.values.System), f, a, b, c)
}

// StepIn2 is Step2 with a unit of its own.
func StepIn2[A, B any, X ~float64](w *Working, symbol string, u machine.Unit, f calc.Formula[func(A, B) (X, error)], a A, b B) X {
	x, err := f.Of(a, b)
	return addStep(w, symbol, f.Text, u, x, err)
}

// StepIn3 is Step3 with a unit of its own.
func StepIn3[A, B, C any, X ~float64](w *Working, symbol string, u machine.Unit, f calc.Formula[func(A, B, C) (X, error)], a A, b B, c C) X {
	x, err := f.Of(a, b, c)
	return addStep(w, symbol, f.Text, u, x, err)
}

func addStep[X ~float64](w *Working, symbol, text string, u machine.Unit, x X, err error) X {
	w.Number(symbol, text, u)(float64(x), err)
	return x
}

// unitOf is the unit that a quantity stands in without being told another: calc holds
// each in the unit that a step is held in.
func unitOf[X ~float64](s machine.System) machine.Unit {
	var x X
	switch any(x).(type) {
	case calc.Length:
		return s.Length()
	case calc.Angle:
		return machine.DegreeUnit
	case calc.ThreadsPerInch:
		return machine.TPIUnit
	case calc.SpindleSpeed:
		return machine.RPMUnit
	}
	return machine.PlainUnit
}
