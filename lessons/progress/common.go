package progress

import (
	"cmp"
	"slices"

	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
)

// Common is a common error that several learners made more than once.
type Common struct {
	Task, Slip string
	Learners   int // who made it more than once
	Times      int // by them, in all
}

// CommonOf are the errors that keep coming back among some learners, those of most of them first,
// and so many at most. What only one of them makes is that learner's, and not of them all.
func CommonOf(items []schedule.Item, standings map[string]record.Standing, most int) (all []Common) {
	for _, it := range items {
		of := map[string]*Common{}
		for _, one := range standings {
			for slip, times := range one.Of[it.Task].Slips {
				if times < 2 {
					continue
				}
				if of[slip] == nil {
					of[slip] = &Common{Task: it.Task, Slip: slip}
				}
				of[slip].Learners++
				of[slip].Times += times
			}
		}
		for _, c := range of {
			if c.Learners > 1 {
				all = append(all, *c)
			}
		}
	}
	slices.SortFunc(all, func(a, b Common) int {
		return cmp.Or(b.Learners-a.Learners, b.Times-a.Times, cmp.Compare(a.Task, b.Task), cmp.Compare(a.Slip, b.Slip))
	})
	return all[:min(most, len(all))]
}
