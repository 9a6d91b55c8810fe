package schedule_test

import (
	"slices"
	"testing"

	"scratchpass/lessons/mastery"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
)

// Each condition alone keeps "ready to ask" from being said: a base that is ready, and in
// each row one thing that differs.
func TestReadiness(t *testing.T) {
	all := []schedule.Item{{Task: "stop", SafetyCritical: true}, {Task: "cloth", SafetyCritical: true}, {Task: "depth"}, {Task: "acme"}}
	special := map[string]bool{"acme": true}
	mastered := record.Summary{State: mastery.State{Answers: 9, Mastered: true, Held: true}, LastShown: at(5, 9, 0)}
	open := record.Summary{State: mastery.State{Answers: 9}}
	once := record.Summary{State: mastery.State{Answers: 9, Mastered: true}, LastShown: at(5, 9, 0)}
	betOn := func(day int) record.Summary {
		s := mastered
		s.SureWrong = at(day, 9, 0)
		return s
	}
	for _, row := range []struct {
		items            []schedule.Item
		stop, depth      record.Summary
		test             record.Test
		tested, ask, yes bool // yes: the test counts as passed
		why              string
	}{
		{all, mastered, mastered, record.Test{Got: 11, Of: 12}, true, true, true, "all is there: an unshown task that only special threads need does not matter"},
		{all, open, mastered, record.Test{Got: 11, Of: 12}, true, false, true, "a safety-critical task is not shown"},
		{all, mastered, open, record.Test{Got: 11, Of: 12}, true, false, true, "a core task is not shown"},
		{all, once, mastered, record.Test{Got: 11, Of: 12}, true, false, true, "a safety-critical task is not held"},
		{all, mastered, once, record.Test{Got: 11, Of: 12}, true, false, true, "a core task was shown on one day and not held on another"},
		{all, record.Summary{}, mastered, record.Test{Got: 11, Of: 12}, true, false, true, "a safety-critical task was never asked"},
		{all, betOn(6), mastered, record.Test{Got: 11, Of: 12}, true, false, true, "sure but wrong where it can hurt someone, since it was shown"},
		{all, betOn(4), mastered, record.Test{Got: 11, Of: 12}, true, true, true, "sure but wrong before it was shown is made good"},
		{all, mastered, betOn(6), record.Test{Got: 11, Of: 12}, true, true, true, "sure but wrong where it costs only a part"},
		{all, mastered, mastered, record.Test{}, false, false, false, "no mixed test"},
		{all, mastered, mastered, record.Test{Got: 12, Of: 12}, false, false, false, "a result that is not there does not count"},
		{all, mastered, mastered, record.Test{Got: 10, Of: 12}, true, false, false, "ten of twelve do not pass"},
		{all, mastered, mastered, record.Test{Got: 12, Of: 12}, true, true, true, "twelve of twelve pass"},
		{all, mastered, mastered, record.Test{Got: 11, Of: 11}, true, false, false, "a shorter test is no mixed test"},
		{all, mastered, mastered, record.Test{Got: 22, Of: 24}, true, true, true, "a longer one passes with the same share"},
		{all, mastered, mastered, record.Test{Got: 21, Of: 24}, true, false, false, "and with no smaller one"},
		{all[1:], mastered, mastered, record.Test{Got: 11, Of: 12}, true, true, true, "a catalogue with one task that can hurt someone"},
		{all[2:], mastered, mastered, record.Test{Got: 11, Of: 12}, true, false, true, "nothing that can hurt someone was shown at all"},
		{nil, mastered, mastered, record.Test{Got: 11, Of: 12}, true, false, true, "no tasks"},
	} {
		of := map[string]record.Summary{"stop": row.stop, "cloth": mastered, "depth": row.depth, "acme": open}
		r := schedule.ReadinessOf(row.items, special, of, row.test, row.tested)
		if r.Ask != row.ask || r.Passed != row.yes || r.Tested != row.tested || r.Test != row.test {
			t.Errorf("ask %v, passed %v, tested %v, %+v: %s", r.Ask, r.Passed, r.Tested, r.Test, row.why)
		}
	}
}

func TestReadinessListsEveryTaskOnce(t *testing.T) {
	all := []schedule.Item{{Task: "stop", SafetyCritical: true}, {Task: "cloth", SafetyCritical: true}, {Task: "reverse", SafetyCritical: true}, {Task: "depth"}, {Task: "pitch"}, {Task: "acme"}, {Task: "left"}, {Task: "wires"}, {Task: "fall", SafetyCritical: true}}
	mastered := record.Summary{State: mastery.State{Mastered: true, Held: true}, LastShown: at(5, 9, 0)}
	sure := mastered
	sure.SureWrong = at(6, 9, 0)
	once := mastered
	once.Held = false
	// Where it can hurt someone it counts, even if it is for special threads only.
	special := map[string]bool{"acme": true, "cloth": true, "left": true}
	r := schedule.ReadinessOf(all, special, map[string]record.Summary{"stop": mastered, "reverse": sure, "depth": mastered, "wires": once, "fall": once, "left": once}, record.Test{}, false)
	for name, row := range map[string]struct{ got, want []string }{
		"safety-critical, shown": {r.SafetyCriticalShown, []string{"stop", "reverse"}},
		"safety-critical, open":  {r.SafetyCriticalOpen, []string{"cloth"}},
		"core, shown":            {r.CoreShown, []string{"depth"}},
		"core, open":             {r.CoreOpen, []string{"pitch"}},
		"not held":               {r.NotHeld, []string{"wires", "fall"}},
		"sure but wrong":         {r.SureWrong, []string{"reverse"}},
	} {
		if !slices.Equal(row.got, row.want) {
			t.Errorf("%s: %v, want %v", name, row.got, row.want)
		}
	}
}
