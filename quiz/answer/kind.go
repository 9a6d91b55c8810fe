package answer

import "slices"

// Kind is a kind of answer. Each is one file, and all that hangs on the kind stands
// there. What a kind does not say for itself it takes from common.
type Kind interface {
	// Name is the kind as JSON and the names of phrases have it.
	Name() string
	// Read understands what was typed. The error is an *UnreadError.
	Read(e *Expected, text string) (Response, error)
	// Same reports whether two responses are one answer, with a tolerance in held units.
	Same(e *Expected, x, y Response, tolerance float64) bool
	// Print prints a response without its unit: one part, or a part for each reading.
	Print(e *Expected, r Response) []string
	// Accept calls the visitor's method for this kind.
	Accept(v Visitor) error

	// Numeric reports whether the answer is one number or several, with a unit.
	Numeric() bool
	// OneNumber reports whether the answer is one number, exact or inside limits.
	OneNumber() bool
	// Takeable reports whether another problem may start from the answer.
	Takeable() bool
	// Guessable reports whether a blind guess is right often enough to count.
	Guessable() bool
	// OneKey reports whether every problem of a task has one and the same right answer,
	// or one of a handful.
	OneKey() bool
	// InOrder reports whether the answer is steps in their order.
	InOrder() bool
	// Worded reports whether a response is told by the words of its options.
	Worded() bool
	// Chosen are the options that a response chose, as they are told in words one after the
	// other; nil where it is told as it is printed.
	Chosen(e *Expected, r Response) []string
	// Figures are the numbers that someone who is right writes down; a size inside limits has
	// none that is the only one.
	Figures(e *Expected) []string
	// Accepts prints what else is right, rounded inwards; empty where nothing is.
	Accepts(e *Expected) string
	// Typed is a response with its numbers as they are printed: what someone types.
	Typed(e *Expected, r Response) Response
	// Others are further wrong responses, for those who need more than the known errors
	// give.
	Others(e *Expected) []Response
	// Offer returns the options of a problem whose task lists none, put into an order by
	// shuffle; nil keeps them sorted.
	Offer(e *Expected, shuffle func([]string) []string) []string
	// Settle sets the tolerances from the one of the task and reports whether right and
	// wrong are far enough apart: no response near one may be taken for another.
	Settle(e *Expected, t Tolerance) bool

	right(e *Expected, r Response) bool
	bounds(e *Expected) (low, high float64, ok bool)
	printKey(e *Expected) []string
	printGiven(e *Expected, r Response) []string
	gap(e *Expected, r Response) float64
	off(e *Expected, r Response) []Off
	mark(e *Expected, r Response) Mark
	bands(e *Expected, r Response) []band
}

// Visitor does something of its own with each kind of answer: write it in another form,
// or ask for it. A kind that is added here is missed by no visitor.
type Visitor interface {
	Number() error      // one number
	Limits() error      // one number inside limits
	Readings() error    // several numbers in order
	Choice() error      // one of several options
	Several() error     // all of the options that fit
	Order() error       // steps in their order
	Designation() error // a designation taken apart
}

// Kinds lists all kinds.
var Kinds = []Kind{Quantity, Limits, Readings, Choice, Several, Order, Designation}

// common is what a kind is unless it says otherwise: no number, no options, and right
// when it is the same as the key.
type common struct{}

func (common) Numeric() bool                                     { return false }
func (common) OneNumber() bool                                   { return false }
func (common) Takeable() bool                                    { return false }
func (common) Guessable() bool                                   { return false }
func (common) OneKey() bool                                      { return false }
func (common) InOrder() bool                                     { return false }
func (common) Worded() bool                                      { return false }
func (common) Accepts(*Expected) string                          { return "" }
func (common) Typed(_ *Expected, r Response) Response            { return r }
func (common) Others(*Expected) []Response                       { return nil }
func (common) Offer(*Expected, func([]string) []string) []string { return nil }
func (common) Figures(*Expected) []string                        { return nil }
func (common) Chosen(*Expected, Response) []string               { return nil }
func (common) bounds(*Expected) (low, high float64, ok bool)     { return 0, 0, false }
func (common) bands(*Expected, Response) []band                  { return nil }
func (common) printKey(e *Expected) []string                     { return e.Kind.Print(e, e.Key) }

func (common) printGiven(e *Expected, r Response) []string { return e.Kind.Print(e, r) }

func (common) gap(e *Expected, r Response) float64 { return distance(r, e.Key) }

func (common) right(e *Expected, r Response) bool {
	return e.Kind.Same(e, r, e.Key, e.Tolerance)
}

// Settle of answers that are no numbers: each is itself and nothing is near it.
func (common) Settle(e *Expected, _ Tolerance) bool {
	for i := range e.Errors {
		known := &e.Errors[i]
		if e.Right(known.Response) {
			return false
		}
		for j := range e.Errors[:i] {
			other := &e.Errors[j]
			if !sameResult(known, other) && e.Kind.Same(e, known.Response, other.Response, 0) {
				return false
			}
		}
	}
	return len(e.Errors) > 0
}

// sortedSet is the options of a response as a set.
func sortedSet(keys []string) []string {
	return slices.Compact(slices.Sorted(slices.Values(keys)))
}
