// Package answer knows what an answer is: what a problem expects, what a learner
// responded, how a text is read, and what a response is worth. Each kind of answer is
// one file that holds all that hangs on the kind; nothing outside this package asks
// which kind it has before it.
package answer

import (
	"errors"
	"math"
	"slices"
	"strconv"
	"strings"

	"scratchpass/calc"
	"scratchpass/quiz/machine"
)

// Response is an answer as it was understood: what is right, what a common error gives
// and what a learner typed. Which field counts depends on the kind of answer.
type Response struct {
	X      float64     // held units
	Xs     []float64   // a row of readings
	Keys   []string    // options chosen, or steps in order
	Fields [][2]string // a designation taken apart: name and value
	Unit   string      // the unit the learner wrote; empty when none
	Coarse bool        // a number that was typed with fewer decimals than an answer has
	None   bool        // a common error that gives no answer here
}

// NumberResponse is the response of one number in held units. What is no number (a
// division by nothing) is no response.
func NumberResponse(x float64) Response {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return NoResponse
	}
	return Response{X: x}
}

// LengthResponse is NumberResponse for a length.
func LengthResponse(l calc.Length) Response { return NumberResponse(l.Inches()) }

// NumbersResponse is the response of a row of numbers in held units.
func NumbersResponse(xs ...float64) Response { return Response{Xs: xs} }

// OptionsResponse is the response that chooses or orders options.
func OptionsResponse(keys ...string) Response { return Response{Keys: keys} }

// NoResponse stands for a common error that can't be made with these numbers.
var NoResponse = Response{None: true}

// Expected is what a problem asks for: the right response, how far from it is still
// right, and the wrong responses that are known.
type Expected struct {
	Kind    Kind
	Key     Response // the right response
	Unit    machine.Unit
	Low     float64 // a size inside limits: anything between is right
	High    float64
	Scrap   ScrapSide
	Options []string    // what is offered, in the order shown
	Free    [][2]string // steps of an order that may stand either way round

	Tolerance      float64   // how far from the key is still right, held units
	Safe           SafeSide  // the side of the key on which numbers are right
	Reach          float64   // how far on that side they are, where that is more than the tolerance
	Alike          []float64 // numbers that are the key as well: a whole turn of a dial, for its zero
	ErrorTolerance float64   // how near to what a common error gives is taken for that error
	Errors         []Known   // the common errors that give a response here

	below, above float64 // by how much rounding moves the range of what is right down and up, held units
}

// Known is the response that a common error gives in this problem.
type Known struct {
	Name         string
	Convention   bool   // right by another published convention than the one asked for
	SameResultAs string // another error that gives the same number
	Near         bool   // right, for it differs by less than can be set: only its own printed number is named
	Partial      func(key, given Response) bool
	Response     Response
}

// sameResult reports whether two errors give one number by their nature: which it was is
// asked, not told from the number.
func sameResult(a, b *Known) bool { return a.SameResultAs == b.Name || b.SameResultAs == a.Name }

// ScrapSide tells which way of being wrong ruins the part.
type ScrapSide int

// Too much in, too much out, or neither is worse.
const (
	NoScrapSide ScrapSide = iota
	ScrapHigh
	ScrapLow
)

// Read understands what a learner typed. The error is an *UnreadError.
func (e *Expected) Read(text string) (Response, error) {
	r, err := e.Kind.Read(e, narrow(text))
	var unread *UnreadError
	if errors.As(err, &unread) && unread.Got != "" {
		unread.Got = text // as it was typed
	}
	return r, err
}

// Right reports whether a response is right.
func (e *Expected) Right(r Response) bool { return e.Kind.right(e, r) }

// Bounds returns the least and the largest number that is right, in held units. ok is
// false where the answer is not one number.
func (e *Expected) Bounds() (low, high float64, ok bool) { return e.Kind.bounds(e) }

// Show prints a response with its unit. Several readings have a comma between them;
// which word stands there in a sentence is for those who write sentences.
func (e *Expected) Show(r Response) string { return e.Join(e.Kind.Print(e, r), ", ") }

// ShowGiven is Show for what someone typed: a number that was given with more places than
// the answer keeps them.
func (e *Expected) ShowGiven(r Response) string { return e.Join(e.Kind.printGiven(e, r), ", ") }

// PrintGiven prints the parts of what someone typed, without the unit.
func (e *Expected) PrintGiven(r Response) []string { return e.Kind.printGiven(e, r) }

// Join puts printed parts together, with the unit behind numbers.
func (e *Expected) Join(parts []string, between string) string {
	text := strings.Join(parts, between)
	if !e.Kind.Numeric() {
		return text
	}
	return e.Unit.WithName(text)
}

// Text prints the right response.
func (e *Expected) Text() string { return e.Join(e.Kind.printKey(e), ", ") }

// PrintKey prints the parts of the right response, without the unit.
func (e *Expected) PrintKey() []string { return e.Kind.printKey(e) }

// UnitBehind is the unit that is printed behind the place for the answer; empty where
// none is.
func (e *Expected) UnitBehind() string {
	switch {
	case !e.Kind.Numeric():
		return ""
	case e.Unit.Name == machine.DegreeUnit.Name:
		return machine.DegreeWord
	}
	return e.Unit.Name
}

// pick finds the option meant by a number, a letter or a key.
func (e *Expected) pick(text string) (string, bool) {
	text = strings.Trim(strings.ToLower(strings.TrimSpace(text)), ".()#") // as the line itself is numbered
	if i, err := strconv.Atoi(text); err == nil && i >= 1 && i <= len(e.Options) {
		return e.Options[i-1], true
	}
	if slices.Contains(e.Options, text) {
		return text, true
	}
	if m := numbered().FindStringSubmatch(text); m != nil {
		return e.pick(m[1])
	}
	return "", false
}

// Number prints the position of an option, as a learner types it.
func (e *Expected) Number(key string) string {
	return strconv.Itoa(slices.Index(e.Options, key) + 1)
}

// list parts "1, 3 4" and "1 and 3" into their items.
func list(text string) []string {
	items := strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(" ,;+&", r) })
	return slices.DeleteFunc(items, func(item string) bool { return strings.EqualFold(item, "and") })
}
