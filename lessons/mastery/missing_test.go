package mastery_test

import (
	"reflect"
	"testing"

	"scratchpass/lessons/mastery"
)

func TestMissing(t *testing.T) {
	day := func(n int) mastery.Moment { return mastery.Moment{Unix: 1_000_000 + int64(n)*24*3600, Day: 7 + n} }
	seven := mastery.Rule{Choice: true, Situations: []string{"a", "b", "c", "d", "e", "f", "g"}}
	for _, row := range []struct {
		rule    mastery.Rule
		answers string
		want    mastery.Missing
		why     string
	}{
		{typed, "", mastery.Missing{Right: 3}, "nothing was answered"},
		{typed, "r", mastery.Missing{Right: 2}, "one is there"},
		{typed, "rrrr", mastery.Missing{Right: 1}, "enough, but for the pause before the last"},
		{typed, "rrw", mastery.Missing{Right: 3}, "a mistake ends the run"},
		{typed, "wwr", mastery.Missing{Right: 3}, "two want four"},
		{typed, "X", mastery.Missing{Right: 8}, "a common error wants eight"},
		{typed, "XXr", mastery.Missing{Right: 11 - 1, Days: 1, Rest: 1}, "made twice, and another day"},
		{typed, "XXXXrrrrrrrrrr5r", mastery.Missing{Right: 3, LaterRun: true, Later: day(0), Rest: 2}, "the run of the later day"},
		{typed, "XXXXrrrrrrrrrr5r||r", mastery.Missing{Right: 2, LaterRun: true, Later: day(0), Rest: 2}, "which has begun"},
		{choice, "rr", mastery.Missing{Right: 3}, "five where there are options"},
		{critical, "r", mastery.Missing{Right: 2, Days: 1, Rest: 1}, "and once more on another day"},
		{critical, "rr5r", mastery.Missing{Right: 3, LaterRun: true, Later: day(0), Rest: 1}, "the second day"},
		{critical, "rr5r|rr5rX", mastery.Missing{Right: 8, Days: 1, Rest: 1}, "taken back by a mistake"},
		{situations, "aa", mastery.Missing{Right: 1, Situations: []string{"b"}}, "a situation is missing"},
		{seven, "abb", mastery.Missing{Right: 5, Situations: []string{"c", "d", "e", "f", "g"}}, "it takes an answer for each"},
		{mistakes, "", mastery.Missing{Right: 3, Errors: []string{"x", "y"}}, "neither error had a chance"},
		{mistakes, "x", mastery.Missing{Right: 2, Errors: []string{"y"}}, "one had none"},
		{mistakes, "xz", mastery.Missing{Right: 1, Errors: []string{"y"}}, "one had fewer"},
		{mistakes, "zz", mastery.Missing{Right: 1}, "both had as many: any problem will do"},
		{mistakes, "zzz", mastery.Missing{Right: 1}, "only the pause"},
		{rare, "uuuuuuuu", mastery.Missing{Right: 1, Errors: []string{"y"}}, "whatever the odds, each must have had a chance"},
		{typed, "kk", mastery.Missing{Right: 1, OtherKey: true}, "another answer must be right"},
		{typed, "kl", mastery.Missing{Right: 1}, "another was"},
		{oneKey, "kk", mastery.Missing{Right: 1}, "there is no other"},
	} {
		if got, ok := row.rule.Missing(after(row.rule, row.answers)); !ok || !reflect.DeepEqual(got, row.want) {
			t.Errorf("%+v %q: %+v %v, because %s", row.rule, row.answers, got, ok, row.why)
		}
	}
	for _, row := range []struct {
		rule    mastery.Rule
		answers string
	}{{typed, "rr5r"}, {typed, "rr5rw"}, {critical, "rr5r|rr5r"}, {critical, "rr5r|rr5rw"}} {
		if m, ok := row.rule.Missing(after(row.rule, row.answers)); ok {
			t.Errorf("%q: %+v", row.answers, m)
		}
	}
}
