package quiz

import (
	"math"

	"scratchpass/calc"
	"scratchpass/quiz/machine"
)

// Stage is where in the job a task belongs.
type Stage string

// The stages of a job, in order.
const (
	Safety  Stage = "safety"
	Reading Stage = "reading"
	Shape   Stage = "shape"
	Blank   Stage = "blank"
	SetUp   Stage = "setup"
	Infeed  Stage = "infeed"
	Passes  Stage = "passes"
	Fitting Stage = "fitting"
)

// Stages lists them in order.
var Stages = []Stage{Safety, Reading, Shape, Blank, SetUp, Infeed, Passes, Fitting}

// Task is one thing an apprentice must work out or decide. Its words stand in
// content under the same name.
type Task struct {
	Name   string // used in lessons, on the command line and in problem codes
	Stage  Stage
	Gate   bool      // getting it wrong can hurt someone
	Inputs []Input   // what a problem starts from
	Scrap  ScrapSide // which way of being wrong ruins the part
	Tol    Tolerance

	// Systems are the systems of units that the task makes sense in; empty is both.
	Systems []machine.System

	// Draw returns realistic numbers. It may return values that turn out unusable:
	// they are thrown away and it is asked again.
	Draw func(d *Draw) Values

	// Work returns the steps and the answer. It calls calc for every number.
	Work func(v Values) (Working, error)

	// Slips are the wrong roads that are known, each with what it gives.
	Slips []Slip

	// Sources are keys of the list of sources.
	Sources []string
}

// Tolerance is how far from the key an answer may be, before the gap to the
// nearest slip narrows it: half the smallest dial division used, or what rounding
// on the way costs.
type Tolerance struct {
	Inch float64 // for a length in an inch problem
	MM   float64 // for a length in a metric problem; 0 takes Inch
	Else float64 // for anything else, in its own unit

	Share float64 // of the key, instead of all these: for what is only known so well

	NoMore bool // a limit that must not be passed: nothing above the key is right
}

// of returns the tolerance in held units for an answer.
func (t Tolerance) of(a *Answer) float64 {
	if t.Share > 0 {
		return t.Share * math.Abs(a.Key.X)
	}
	return t.held(a.Unit)
}

// held returns the tolerance in held units for an answer in this unit.
func (t Tolerance) held(u machine.Unit) float64 {
	switch {
	case u.Name == "in", u.Name == "mm" && t.MM == 0:
		return t.Inch
	case u.Name == "mm":
		return t.MM / u.Factor
	}
	return t.Else
}

// Slip is one known wrong road.
type Slip struct {
	Name string

	// Convention marks a road that another book takes: right, but another
	// convention than the one asked for.
	Convention bool

	// Twin names a slip that gives the same number; the two are told apart by a
	// question. A slip may be its own twin when one number has two causes.
	Twin string

	// Covers, where it is set, takes further answers for near to this one: for instance
	// any part of the marks that fit. They are on the safe side, but not right.
	Covers func(key, given Reply) bool

	// Work returns what the slip gives from the same numbers. It is nil for the
	// wrong options of a decision, where the slip's name is the option.
	Work func(v Values) Reply
}

// X is the reply of a slip that gives a number in held units. A road that ends in
// no number (a division by nothing) gives no answer.
func X(x float64) Reply {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return NoAnswer
	}
	return Reply{X: x}
}

// L is X for a length.
func L(l calc.Length) Reply { return X(l.Inches()) }

// Xs is the reply of a slip that gives a row of numbers.
func Xs(xs ...float64) Reply { return Reply{Xs: xs} }

// Keys is the reply of a slip that chooses or orders.
func Keys(keys ...string) Reply { return Reply{Keys: keys} }

// NoAnswer is the reply of a slip that can't be made with these numbers.
var NoAnswer = Reply{None: true}

func (s *Slip) reply(v Values) Reply {
	if s.Work == nil {
		return Keys(s.Name)
	}
	return s.Work(v)
}

// Allows reports whether the task can be set in a system of units.
func (t *Task) Allows(s machine.System) bool {
	if len(t.Systems) == 0 {
		return true
	}
	for _, has := range t.Systems {
		if has == s {
			return true
		}
	}
	return false
}
