package schedule

import (
	"time"

	"scratchpass/lessons/record"
)

// A mixed test is passed with so many right of so many.
const (
	MixedTestOf   = 12
	mixedTestPass = 11
)

// Readiness is what stands between a learner and asking the instructor. The most it
// ever says is that it is time to ask: it knows nothing of hands, of this lathe's
// levers, or of the person.
type Readiness struct {
	GateShown []string // tasks that can hurt someone, shown on two days
	GateOpen  []string
	CoreShown []string
	CoreOpen  []string
	SureWrong []string // gate tasks with a wrong answer that was betted on since they were shown
	Test      record.Test
	Tested    bool
	Passed    bool
	Ask       bool // ready to ask the instructor
}

// ReadinessOf judges a record: every gate task shown on two days and not failed with
// confidence since, the core tasks shown, and a mixed test passed. special are the
// tasks that only metric, left-hand, multi-start, Acme or pipe threads need.
func ReadinessOf(items []Item, special map[string]bool, of map[string]record.Summary, test record.Test, tested bool) Readiness {
	r := Readiness{Test: test, Tested: tested, Passed: tested && test.Of >= MixedTestOf && test.Got*MixedTestOf >= mixedTestPass*test.Of}
	for _, it := range items {
		s := of[it.Task]
		switch {
		case it.Gate && s.Mastered:
			r.GateShown = append(r.GateShown, it.Task)
		case it.Gate:
			r.GateOpen = append(r.GateOpen, it.Task)
		case special[it.Task]: // not for a first thread
		case s.Mastered:
			r.CoreShown = append(r.CoreShown, it.Task)
		default:
			r.CoreOpen = append(r.CoreOpen, it.Task)
		}
		if it.Gate && !s.SureWrong.IsZero() && s.SureWrong.After(s.LastShown) {
			r.SureWrong = append(r.SureWrong, it.Task)
		}
	}
	r.Ask = len(r.GateOpen) == 0 && len(r.CoreOpen) == 0 && len(r.SureWrong) == 0 && r.Passed && len(r.GateShown) > 0
	return r
}

// DueBy counts the tasks that are due at a time.
func DueBy(items []Item, of map[string]record.Summary, now time.Time) []string {
	var due []string
	for _, it := range items {
		if Due(of[it.Task], now) {
			due = append(due, it.Task)
		}
	}
	return due
}
