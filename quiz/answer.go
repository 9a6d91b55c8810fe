package quiz

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"scratchpass/calc"
	"scratchpass/quiz/machine"
)

// Reply is an answer as it was understood: what the key holds, what a slip gives
// and what a learner typed. Which field counts depends on the kind of answer.
type Reply struct {
	X      float64     // held units
	Xs     []float64   // a row of readings
	Keys   []string    // options chosen, or steps in order
	Fields [][2]string // a designation taken apart: name and value
	Unit   string      // the unit the learner wrote; empty when none
	None   bool        // a slip that gives no answer here
}

// Answer is what a problem asks for.
type Answer struct {
	Kind    Kind
	Key     Reply
	Unit    machine.Unit
	Low     float64 // limits: anything between is right
	High    float64
	Tol     float64 // how far from the key is still right, held units
	NoMore  bool    // nothing above the key is right
	SlipTol float64 // how near to a slip's answer is taken for that slip
	Scrap   ScrapSide
	Options []string // what is offered, in the order shown
}

// ScrapSide tells which way of being wrong ruins the part.
type ScrapSide int

// Too much in, too much out, or neither is worse.
const (
	NoScrapSide ScrapSide = iota
	ScrapHigh
	ScrapLow
)

// Kind is a kind of answer. Each is one file.
type Kind interface {
	// Name is the kind as JSON names it.
	Name() string
	// Read understands what was typed, or says what would be understood.
	Read(a *Answer, text string) (Reply, error)
	// Same reports whether two replies are one answer, with a tolerance.
	Same(a *Answer, x, y Reply, tol float64) bool
	// Show prints a reply with its unit.
	Show(a *Answer, r Reply) string
}

// Read understands what a learner typed.
func (a *Answer) Read(text string) (Reply, error) { return a.Kind.Read(a, text) }

// Right reports whether a reply is the key.
func (a *Answer) Right(r Reply) bool {
	if _, ok := a.Kind.(limits); ok {
		return within(r.X, a.Low, a.High)
	}
	if a.NoMore && r.X > a.Key.X*(1+1e-9) {
		return false
	}
	return a.Kind.Same(a, r, a.Key, a.Tol)
}

// Bounds returns the least and the largest number that is right, in held units.
func (a *Answer) Bounds() (low, high float64) {
	if a.NoMore {
		return a.Key.X - a.Tol, a.Key.X
	}
	return a.Key.X - a.Tol, a.Key.X + a.Tol
}

func within(x, low, high float64) bool {
	return calc.Within(x, (low+high)/2, (high-low)/2)
}

// Text prints the key.
func (a *Answer) Text() string {
	if _, ok := a.Kind.(limits); ok {
		return a.Unit.Fixed(a.Low) + " to " + a.Unit.Text(a.High)
	}
	return a.Kind.Show(a, a.Key)
}

// unread is the error for a text that is no answer; it ends in an example.
func unread(text, want string) error {
	if strings.TrimSpace(text) == "" {
		return fmt.Errorf("nothing was typed: give %s", want)
	}
	return &calc.InputError{What: "can't read", Got: calc.Quoted(text), Want: want}
}

// pick finds the option meant by a number, a letter or a key.
func (a *Answer) pick(text string) (string, bool) {
	text = strings.Trim(strings.ToLower(strings.TrimSpace(text)), ".()#") // as the line itself is numbered
	if i, err := strconv.Atoi(text); err == nil && i >= 1 && i <= len(a.Options) {
		return a.Options[i-1], true
	}
	if slices.Contains(a.Options, text) {
		return text, true
	}
	return "", false
}

// number prints the position of an option, as a learner types it.
func (a *Answer) number(key string) string {
	return strconv.Itoa(slices.Index(a.Options, key) + 1)
}

// numbers is the range of numbers that may be typed.
func (a *Answer) numbers() string { return "1 to " + strconv.Itoa(len(a.Options)) }

// list parts "1, 3 4" and "1 and 3" into their items.
func list(text string) []string {
	items := strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(" ,;+&", r) })
	return slices.DeleteFunc(items, func(item string) bool { return strings.EqualFold(item, "and") })
}
