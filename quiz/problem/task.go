package problem

import (
	"slices"

	"scratchpass/quiz/answer"
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

// Own is the stage of an instructor's own questions. It is none of the stages of a job, so
// nothing that goes by those counts them.
const Own Stage = "own"

// Stages lists them in order.
var Stages = []Stage{Safety, Reading, Shape, Blank, SetUp, Infeed, Passes, Fitting}

// Task is one thing an apprentice must work out or decide. Its words stand in
// content under the same name.
type Task struct {
	Name           string // used in lessons, on the command line and in problem codes
	Stage          Stage
	Kind           answer.Kind      // of its answers
	SafetyCritical bool             // getting it wrong can hurt someone
	Inputs         []Input          // what a problem starts from
	Scrap          answer.ScrapSide // which way of being wrong ruins the part
	Tolerance      answer.Tolerance

	// Systems are the systems of units that the task makes sense in; empty is both.
	Systems []machine.System

	// Draw returns realistic numbers. It may return values that turn out unusable:
	// they are thrown away and it is asked again.
	Draw func(d *Draw) Values

	// Work returns the steps and the answer. It calls calc for every number.
	Work func(v Values) (Working, error)

	// Errors are the common errors, each with what it gives.
	Errors []CommonError

	// Sources are keys of the list of sources.
	Sources []string

	// Shuffled puts the options that Work lists into a drawn order.
	Shuffled bool

	// Mark is what the problems of an instructor's own question depend on besides their
	// codes: another file of the same name has another mark. Tasks that ship have none.
	Mark string
}

// CommonError is one known way of going wrong.
type CommonError struct {
	Name string

	// Convention marks what another book does: right, but by another convention than the
	// one asked for.
	Convention bool

	// Near marks a convention that differs by less than anyone can set, and so is right
	// anyhow: it is named for just the number that it gives.
	Near bool

	// SameResultAs names an error that gives the same number; the two are told apart by a
	// question. An error may name itself when one number has two causes.
	SameResultAs string

	// Partial, where it is set, takes further answers for near to this one: for instance
	// any part of the marks that fit. They are on the safe side, but not right.
	Partial func(key, given answer.Response) bool

	// Work returns what the error gives from the same numbers. It is nil for the wrong
	// options of a decision, where the error's name is the option.
	Work func(v Values) answer.Response
}

func (c *CommonError) response(v Values) answer.Response {
	if c.Work == nil {
		return answer.OptionsResponse(c.Name)
	}
	return c.Work(v)
}

// Allows reports whether the task can be set in a system of units.
func (t *Task) Allows(s machine.System) bool {
	return len(t.Systems) == 0 || slices.Contains(t.Systems, s)
}

// Situations reports whether every problem of the task is about one of a few situations.
func (t *Task) Situations() bool {
	return slices.ContainsFunc(t.Inputs, func(in Input) bool { return in.Type == InputWord && !in.Extra && in.Group == "" })
}
