package schedule

import "scratchpass/lessons/record"

// A mixed test is passed with so many right of so many.
const (
	MixedTestOf   = 12
	MixedTestPass = 11
)

// Readiness is what stands between a learner and asking the instructor. The most it
// ever says is that it is time to ask: it knows nothing of hands, of this lathe's
// levers, or of the person.
type Readiness struct {
	SafetyCriticalShown []string // tasks that can hurt someone, shown on two days and held since
	SafetyCriticalOpen  []string // and those not shown
	CoreShown           []string // tasks that every first thread needs, shown and held on a later day
	CoreOpen            []string
	NotHeld             []string    // of both: shown once, but not held on a later day, or wrong since
	SureWrong           []string    // safety-critical tasks with a wrong answer that was betted on since they were shown
	Test                record.Test // the newest mixed test
	Tested              bool        // there is one
	Passed              bool        // and it was passed
	Ask                 bool        // ready to ask the instructor
}

// ReadinessOf judges a record: every safety-critical task and every core task shown, and
// held on a later day with no mistake since, none failed with confidence since, and a
// mixed test passed. special are the tasks that only metric, left-hand, multi-start, Acme
// or pipe threads need.
func ReadinessOf(items []Item, special map[string]bool, of map[string]record.Summary, test record.Test, tested bool) Readiness {
	r := Readiness{Test: test, Tested: tested, Passed: tested && test.Of >= MixedTestOf && test.Got*MixedTestOf >= MixedTestPass*test.Of}
	for _, it := range items {
		s := of[it.Task]
		switch {
		case special[it.Task] && !it.SafetyCritical: // not for a first thread
		case s.Mastered && !s.Held:
			r.NotHeld = append(r.NotHeld, it.Task)
		case it.SafetyCritical && s.Mastered:
			r.SafetyCriticalShown = append(r.SafetyCriticalShown, it.Task)
		case it.SafetyCritical:
			r.SafetyCriticalOpen = append(r.SafetyCriticalOpen, it.Task)
		case s.Mastered:
			r.CoreShown = append(r.CoreShown, it.Task)
		default:
			r.CoreOpen = append(r.CoreOpen, it.Task)
		}
		if it.SafetyCritical && s.SureWrong.After(s.LastShown) {
			r.SureWrong = append(r.SureWrong, it.Task)
		}
	}
	open := len(r.SafetyCriticalOpen) + len(r.CoreOpen) + len(r.NotHeld) + len(r.SureWrong)
	r.Ask = open == 0 && r.Passed && len(r.SafetyCriticalShown) > 0
	return r
}
