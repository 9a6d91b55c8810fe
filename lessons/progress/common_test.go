package progress_test

import (
	"reflect"
	"testing"

	"scratchpass/lessons/progress"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
)

// What several learners made more than once is told, what most made first; what one alone makes, or
// what was made once, is not, nor what is of a task that is no longer there.
func TestCommonOf(t *testing.T) {
	made := func(task string, slips map[string]int) record.Standing {
		return record.Standing{Of: map[string]record.Summary{task: {Slips: slips}, "gone": {Slips: map[string]int{"x": 9}}}}
	}
	standings := map[string]record.Standing{
		"Ada": made("depth", map[string]int{"flank": 2, "double": 3, "once": 1}),
		"Ben": made("depth", map[string]int{"flank": 4, "double": 2, "once": 1}),
		"Cai": made("depth", map[string]int{"flank": 2, "alone": 8}),
		"Dee": made("dial", map[string]int{"turn": 2}),
		"Eli": made("dial", map[string]int{"turn": 3}),
	}
	items := []schedule.Item{{Task: "dial"}, {Task: "depth"}}
	want := []progress.Common{{"depth", "flank", 3, 8}, {"depth", "double", 2, 5}, {"dial", "turn", 2, 5}}
	if got := progress.CommonOf(items, standings, 9); !reflect.DeepEqual(got, want) {
		t.Error(got)
	}
	if got := progress.CommonOf(items, standings, 1); !reflect.DeepEqual(got, want[:1]) {
		t.Error(got)
	}
	if got := progress.CommonOf(items, nil, 9); len(got) != 0 {
		t.Error(got)
	}
}
