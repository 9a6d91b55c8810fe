package mastery_test

import (
	"encoding/json"
	"reflect"
	"slices"
	"testing"

	"scratchpass/lessons/mastery"
)

// answers are written as letters: r right, w wrong, h right with a hint, a and b right in
// the situation of that name, x and y right where the error of that name would have shown,
// k and l right where that was the key. Figures are how many other items come between; |
// begins another day.
func answers(text string) []mastery.Answer {
	var all []mastery.Answer
	item, day := 0, 0
	for _, c := range text {
		switch {
		case c >= '0' && c <= '9':
			item += int(c - '0')
			continue
		case c == '|':
			day++
			continue
		}
		item++
		one := mastery.Answer{Item: item, Day: day, Right: c != 'w', Hint: c == 'h'}
		switch c {
		case 'a', 'b':
			one.Situation = string(c)
		case 'x', 'y':
			one.Errors = []string{"never asked for", string(c)}
		case 'k', 'l':
			one.Key = string(c)
		}
		all = append(all, one)
	}
	return all
}

// after folds answers, oldest first, into a state.
func after(r mastery.Rule, text string) mastery.State {
	var s mastery.State
	for _, a := range answers(text) {
		s = s.Add(r, a)
	}
	return s
}

var (
	typed      = mastery.Rule{}
	choice     = mastery.Rule{Choice: true}
	critical   = mastery.Rule{SafetyCritical: true}
	situations = mastery.Rule{Situations: []string{"a", "b"}}
	mistakes   = mastery.Rule{Errors: []string{"x", "y"}}
	oneKey     = mastery.Rule{OneKey: true}
)

func TestMastered(t *testing.T) {
	for _, row := range []struct {
		rule    mastery.Rule
		answers string
		want    bool
		why     string
	}{
		{typed, "", false, "nothing was asked"},
		{typed, "5r5r", false, "two right may be luck"},
		{typed, "rrr", false, "no other items between: the last was still in the head"},
		{typed, "rr5r", true, "five other items before the third"},
		{typed, "rr4r", false, "four are not enough"},
		{typed, "rr|r", true, "a night between them is pause enough"},
		{typed, "r5rr", false, "the pause comes before the last, not before the second"},
		{typed, "rrr5r", true, "the run may be longer than it must be"},
		{typed, "rrw5rr", false, "a wrong answer ends a run"},
		{typed, "rh5r", false, "a hint ends it too: the answer was not the learner's own"},
		{typed, "rr5h", false, "nor may the last have had one"},
		{typed, "wwwrr5r", true, "what was wrong before does not count against it"},
		{typed, "rr5rw", true, "once shown, it was shown"},

		{choice, "rr5r", false, "three right of a few options is luck too often"},
		{choice, "rrr5r", false, "so is four"},
		{choice, "rrrr5r", true, "five are not"},

		{critical, "rr5r", false, "it can hurt someone: one day is not enough"},
		{critical, "rr5rrr5r", false, "twice on one day is one day"},
		{critical, "rr5r|rr5r", true, "two days"},
		{critical, "rr5|r", false, "a night within the run does not make it two runs"},
		{critical, "rr5r|rw", false, "the second day must be a whole run"},
		{critical, "rr5r|w|rr5r", true, "a wrong answer between does not take the first day back"},

		{situations, "aa5a", false, "the other situation never came up"},
		{situations, "ab5a", true, "both came up"},
		{situations, "aa5b", true, "in whatever order"},
		{situations, "aa5ab5a", true, "the run goes on until the other one has come up"},
		{situations, "bwaa5a", false, "the other came up in an earlier run: not in this one"},
		{situations, "rr5r", false, "a situation that is not told is neither"},

		{mistakes, "xx5x", false, "the other common error had no chance to show"},
		{mistakes, "xy5x", true, "both had their chance"},
		{mistakes, "rr5r", false, "neither had"},

		{typed, "kk5k", false, "the same answer each time may be a habit"},
		{typed, "kk5l", true, "another answer was right once"},
		{typed, "lk5k", true, "also if it was the first"},
		{oneKey, "kk5k", true, "a task with one right answer can show no other"},
	} {
		if got := after(row.rule, row.answers).Mastered; got != row.want {
			t.Errorf("%+v %q: mastered %v, because %s", row.rule, row.answers, got, row.why)
		}
	}
}

// A task may come to be safety-critical after it was shown: what was shown is not taken
// back, though the one day would not be enough now.
func TestMasteredUnderAnEasierRule(t *testing.T) {
	s := after(typed, "rr5r")
	for _, a := range answers("99rr5r") {
		if s = s.Add(critical, a); !s.Mastered {
			t.Error("what was shown is taken back")
		}
	}
}

func TestCounts(t *testing.T) {
	for _, row := range []struct {
		rule                      mastery.Rule
		answers                   string
		answered, right, run, yet int // yet: since the last whole run
		days                      []int
		why                       string
	}{
		{typed, "", 0, 0, 0, 0, nil, "before the first answer"},
		{typed, "r", 1, 1, 1, 1, nil, "one right"},
		{typed, "w", 1, 0, 0, 1, nil, "one wrong counts as an answer, not as right"},
		{typed, "h", 1, 1, 0, 1, nil, "with a hint it is right, and no run"},
		{typed, "rrw", 3, 2, 0, 3, nil, "a wrong answer ends the run and nothing else"},
		{typed, "rrwr", 4, 3, 1, 4, nil, "and the next begins another"},
		{typed, "rr5r", 3, 3, 0, 0, []int{0}, "a whole run: the same again, from the beginning"},
		{typed, "rr5rw", 4, 3, 0, 1, []int{0}, "counted anew after it"},
		{typed, "rr5rrr5r", 6, 6, 0, 0, []int{0}, "a day counts once"},
		{typed, "rr5r|rr5r", 6, 6, 0, 0, []int{0, 1}, "and the next day too"},
	} {
		s := after(row.rule, row.answers)
		if s.Answers != row.answered || s.Right != row.right || len(s.Run) != row.run || s.Since != row.yet || !slices.Equal(s.Days, row.days) {
			t.Errorf("%q: %d answers, %d right, %d in a row, %d since, days %v, because %s", row.answers, s.Answers, s.Right, len(s.Run), s.Since, s.Days, row.why)
		}
	}
}

// A run that no rule completes is kept up to its length, the newest of it: a record may
// hold any number of answers.
func TestLongestRun(t *testing.T) {
	for _, row := range []struct{ answers, kept, oldest int }{
		{23, 23, 1}, {24, 24, 1}, {25, 24, 2}, {100, 24, 77},
	} {
		var s mastery.State
		for item := range row.answers {
			s = s.Add(typed, mastery.Answer{Item: item + 1, Right: true}) // no pause: never complete
		}
		if len(s.Run) != row.kept || s.Run[0].Item != row.oldest || s.Run[len(s.Run)-1].Item != row.answers {
			t.Errorf("after %d: %d kept, from %d to %d", row.answers, len(s.Run), s.Run[0].Item, s.Run[len(s.Run)-1].Item)
		}
	}
}

func TestStuck(t *testing.T) {
	for _, row := range []struct {
		answers string
		want    bool
		why     string
	}{
		{"wwwwwwwww", false, "nine wrong: one more try"},
		{"wwwwwwwwww", true, "ten"},
		{"wrwrwrwrwr", true, "ten, right now and then"},
		{"wwwwwwwwrr", true, "ten, and two right in a row may be luck"},
		{"wwwwwwwrrr", false, "ten, but three right in a row: only the pause is missing"},
		{"rr5rwwwwwwwwww", false, "shown before: it wants practice, not the instructor"},
	} {
		if got := after(typed, row.answers).Stuck(); got != row.want {
			t.Errorf("%q: stuck %v, because %s", row.answers, got, row.why)
		}
	}
	// A safety-critical task shown on one day is not mastered: being stuck is counted from
	// there on, not from the first answer.
	if after(critical, "wwwwwwwwrr5r|wwwwwwwww").Stuck() {
		t.Error("nine wrong since a run was shown: not yet stuck")
	}
	if !after(critical, "wwwwwwwwrr5r|wwwwwwwwww").Stuck() {
		t.Error("ten wrong since a run was shown: stuck")
	}
}

// States are values: what is worked out from one does not change it.
func TestAddLeavesTheStateBefore(t *testing.T) {
	before := after(critical, "rr5r|rr")
	was := after(critical, "rr5r|rr")
	before.Run, before.Days = slices.Grow(before.Run, 10), slices.Grow(before.Days, 10) // room to write into
	right := before.Add(critical, mastery.Answer{Item: 90, Day: 2, Right: true, Key: "one"})
	other := before.Add(critical, mastery.Answer{Item: 91, Day: 3, Right: true, Key: "other"})
	if !reflect.DeepEqual(before, was) {
		t.Errorf("%+v, was %+v", before, was)
	}
	if !slices.Equal(right.Days, []int{0, 2}) || !slices.Equal(other.Days, []int{0, 3}) {
		t.Errorf("one next state wrote into the other: %v and %v", right.Days, other.Days)
	}
}

// Records hold states under these names; a record that is there already must still be
// understood.
func TestStateInARecord(t *testing.T) {
	const kept = `{"answers":7,"right":5,"run":[{"Item":12,"Day":20418,"Right":true,"Hint":false,"Form":"outside","Key":"0.0613 in","Roads":["double","half"]}],"days":[20417],"since":2,"mastered":true}`
	want := mastery.State{Answers: 7, Right: 5, Days: []int{20417}, Since: 2, Mastered: true,
		Run: []mastery.Answer{{Item: 12, Day: 20418, Right: true, Situation: "outside", Key: "0.0613 in", Errors: []string{"double", "half"}}}}
	var got mastery.State
	if err := json.Unmarshal([]byte(kept), &got); err != nil || !reflect.DeepEqual(got, want) {
		t.Errorf("%+v, %v", got, err)
	}
	text, err := json.Marshal(want)
	if err != nil {
		t.Fatal(err)
	}
	var fields, before map[string]any
	if json.Unmarshal(text, &fields) != nil || json.Unmarshal([]byte(kept), &before) != nil || !reflect.DeepEqual(fields, before) {
		t.Errorf("written as %s", text)
	}
}
