package shared

import (
	"slices"

	"scratchpass/quiz/problem"
)

// Inputs joins the inputs of a task.
func Inputs(first []problem.Input, more ...problem.Input) []problem.Input {
	return append(slices.Clone(first), more...)
}

// LengthInput is an input that is a length, its range in inches.
func LengthInput(name, symbol string, low, high float64) problem.Input {
	return problem.Input{Name: name, Symbol: symbol, Type: problem.InputLength, Low: low, High: high}
}
