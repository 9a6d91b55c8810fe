package calc

import (
	"fmt"
	"strconv"
)

// InputError says what was wrong with a number or a text and what would work.
// Its text is fit to be read by a learner.
type InputError struct {
	What string // what was being read: "tool flat"
	Got  string // what was given, already quoted or with its unit
	Want string // what would work: "0 to 0.0500 in"
}

// Error is the whole sentence.
func (e *InputError) Error() string {
	return fmt.Sprintf("%s %s: give %s", e.What, e.Got, e.Want)
}

func badLength(what string, got Length, want string) error {
	return &InputError{what, LengthText(got), want}
}

func badNumber(what string, got float64, want string) error {
	return &InputError{what, Shortest(got, 6), want}
}

// LengthText prints a length as every error and every page of the program
// shows it to an inch reader: four places and the unit.
func LengthText(l Length) string {
	if !isFinite(l.Inches()) {
		return "that is not a number"
	}
	return Fixed(l.Inches(), 4) + " in"
}

// Quoted returns a text as it may be shown: in quotes, control and format
// characters escaped, and no longer than 40 characters.
func Quoted(s string) string {
	const most = 40
	if runes := []rune(s); len(runes) > most {
		s = string(runes[:most]) + "..."
	}
	return strconv.Quote(s)
}

// between returns an error unless low <= l <= high and l is a number.
func between(what string, l, low, high Length) error {
	if l >= low && l <= high {
		return nil
	}
	return badLength(what, l, fmt.Sprintf("%s to %s", LengthText(low), LengthText(high)))
}

// inRange returns an error unless low <= x <= high and x is a number.
func inRange(what string, x, low, high float64) error {
	if x >= low && x <= high {
		return nil
	}
	return badNumber(what, x, fmt.Sprintf("%s to %s", Shortest(low, 4), Shortest(high, 4)))
}

// firstError returns the first of the errors that is not nil.
func firstError(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}
