package mastery_test

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"reflect"
	"testing"

	"scratchpass/lessons/mastery"
)

func TestCounts(t *testing.T) {
	for _, row := range []struct {
		rule                      mastery.Rule
		answers                   string
		answered, right, run, yet int // yet: since the last whole run
		days                      int
		why                       string
	}{
		{typed, "", 0, 0, 0, 0, 0, "before the first answer"},
		{typed, "r", 1, 1, 1, 1, 0, "one right"},
		{typed, "w", 1, 0, 0, 1, 0, "one wrong counts as an answer, not as right"},
		{typed, "h", 1, 1, 0, 1, 0, "with a hint it is right, and no run"},
		{typed, "rrw", 3, 2, 0, 3, 0, "a wrong answer ends the run and nothing else"},
		{typed, "rrwr", 4, 3, 1, 4, 0, "and the next begins another"},
		{typed, "rr5r", 3, 3, 0, 0, 1, "a whole run: the same again, from the beginning"},
		{typed, "rr5rw", 4, 3, 0, 1, 1, "counted anew after it"},
		{typed, "rr5rX", 4, 3, 0, 1, 0, "a mistake with a name takes back what was shown"},
		{typed, "rr5rrr5r", 6, 6, 0, 0, 1, "one day is asked for, and counted once"},
		{typed, "rr5r|rr5r", 6, 6, 0, 0, 1, "another is not asked for"},
		{critical, "rr5r|rr5r", 6, 6, 0, 0, 2, "here it is"},
		{critical, "rr5r|rr5r|rr5r", 9, 9, 0, 0, 2, "but no third"},
		{critical, "rr5rr", 4, 4, 0, 1, 1, "what comes on the same day is not of the second run"},
	} {
		s := after(row.rule, row.answers)
		if s.Answers != row.answered || s.Right != row.right || s.Run.Length != row.run || s.Since != row.yet || s.Days != row.days {
			t.Errorf("%q: %d answers, %d right, %d in a row, %d since, %d days, because %s", row.answers, s.Answers, s.Right, s.Run.Length, s.Since, s.Days, row.why)
		}
	}
}

// Ready to ask rests on what was held: right on a later day, and no mistake since.
func TestHeld(t *testing.T) {
	for _, row := range []struct {
		rule    mastery.Rule
		answers string
		want    bool
		why     string
	}{
		{typed, "rr5r", false, "shown, on one day"},
		{typed, "rr5r5r", false, "right again on that day"},
		{typed, "rr5r/r", false, "midnight is no night"},
		{typed, "rr5r|r", true, "right on a later day"},
		{typed, "rr5r|h", false, "with a hint it is not the learner's own"},
		{typed, "rr5r|w", false, "wrong on a later day"},
		{typed, "rr5r|rw", false, "right, and then wrong"},
		{typed, "rr5r|rw5r", false, "right again on the day of the mistake"},
		{typed, "rr5r|rw|r", true, "and on a later one"},
		{typed, "rr5r|rwrr5r", true, "or a whole run on that day"},
		{typed, "rr5rwrr5r", false, "but not on the day on which it was shown"},
		{typed, "rr5r|rh", true, "a hint is no mistake"},
		{typed, "rr5r|rX|r", false, "a common error wants a whole run"},
		{typed, "rr5r|rX|rrrrrrr5r", false, "which is of one day"},
		{typed, "rr5r|rX|rrrrrrr5r|r", true, "and is held on a later one"},
		{typed, "Xrrrrrrr5r|rX|rrrrrrrrrr5r|r", false, "the second time it wants a whole run on the later day"},
		{typed, "Xrrrrrrr5r|rX|rrrrrrrrrr5r|rr5r", true, "which this is"},
		{critical, "rr5r|rr5r", true, "two days are a later day"},
		{critical, "rr5r", false, "one is not"},
		{critical, "rr5r|rr5rw|r", true, "a mistake without a name is made good on a later day"},
		{critical, "rr5r|rr5rwrr5r", true, "or by a whole run"},
		{critical, "rr5r|rr5rwr5r", false, "but not by less"},
		{critical, "rr5r|rr5rS|r", false, "one that the part was bet on is not"},
		{critical, "rr5r|rr5rS|rr5r", false, "nor by one whole run"},
		{critical, "rr5r|rr5rS|rr5r|rr5r", true, "but by two on two days"},
	} {
		if got := after(row.rule, row.answers).Held; got != row.want {
			t.Errorf("%+v %q: held %v, because %s", row.rule, row.answers, got, row.why)
		}
	}
}

func TestStuck(t *testing.T) {
	for _, row := range []struct {
		rule    mastery.Rule
		answers string
		want    bool
		why     string
	}{
		{typed, "wwwwwwwww", false, "nine wrong: one more try"},
		{typed, "wwwwwwwwww", true, "ten"},
		{typed, "wrwrwrwrwr", true, "ten, right now and then"},
		{typed, "wwwwwwwwrr", true, "ten, and two right in a row may be luck"},
		{typed, "wwwwwwwrrr", false, "ten, but three right in a row: on the way"},
		{typed, "hhhhhhhhhh", true, "ten with a hint: none was the learner's own"},
		{typed, "rr5rwwwwwwwwww", false, "shown before: it wants practice, not the instructor"},
		{typed, "rXrrrrrXrrrrrrXr", false, "three wrong of many, on the long run that is asked for"},
		{typed, "wwwwwwwwwwrrrrrrrXr", false, "one of the last ten wrong, whatever came before"},
		{typed, "wwwwwwwwwwrrrrrrXXXr", false, "three"},
		{typed, "wwwwwwwwwwrrrrrXXXXr", true, "four: it goes on being wrong"},
		{critical, "wwwwwwwwrrrrrrr5r|wwwwwwwww", false, "nine since a run was shown"},
		{critical, "wwwwwwwwrrrrrrr5r|wwwwwwwwww", true, "ten since a run was shown"},
	} {
		if got := after(row.rule, row.answers).Stuck(); got != row.want {
			t.Errorf("%q: stuck %v, because %s", row.answers, got, row.why)
		}
	}
}

// A task may come to be safety-critical after it was shown: what was shown is not taken
// back, though the one day would not be enough now.
func TestMasteredUnderAnEasierRule(t *testing.T) {
	s := after(typed, "rr5r")
	for _, a := range answers("99wXrr5r") {
		if s = s.Add(critical, a); !s.Mastered {
			t.Error("what was shown is taken back")
		}
	}
}

// States are values: what is worked out from one does not change it.
func TestAddLeavesTheStateBefore(t *testing.T) {
	rule := mastery.Rule{Errors: []string{"x", "y"}, Situations: []string{"a", "b"}}
	for _, text := range []string{"Xxya", "Xzzr5ax"} {
		before, was := after(rule, text), after(rule, text)
		for _, next := range "zabXwYr" {
			a := answers(string(next))[0]
			a.Situation = "b"
			before.Add(rule, a)
			if !reflect.DeepEqual(before, was) {
				t.Fatalf("%q then %q: %+v, was %+v", text, next, before, was)
			}
		}
	}
}

// some is an answer as chance has it, a while after the one before.
func some(random *rand.Rand, before mastery.Answer, rule mastery.Rule) mastery.Answer {
	a := mastery.Answer{Item: before.Item + 1 + random.IntN(9), Right: random.IntN(4) > 0, Key: fmt.Sprint(random.IntN(3))}
	a.Moment = before.Moment
	if a.Moment.Unix += 60; random.IntN(3) == 0 {
		a.Moment = mastery.Moment{Unix: a.Moment.Unix + 20*3600, Day: a.Moment.Day + 1 + random.IntN(2)}
	}
	for _, name := range rule.Errors {
		if random.IntN(5) > 0 {
			a.Errors = append(a.Errors, name)
		}
	}
	if len(rule.Situations) > 0 {
		a.Situation = rule.Situations[random.IntN(len(rule.Situations))]
	}
	if !a.Right {
		a.Mistake = []string{"", "x", "y", "elsewhere"}[random.IntN(4)]
		a.Sure = random.IntN(6) == 0
	}
	return a
}

var someRules = []mastery.Rule{
	{}, {Choice: true}, {SafetyCritical: true}, {Errors: []string{"x", "y"}}, {Errors: []string{"x", "y", "z"}, Seldom: []string{"y"}},
	{Errors: []string{"x", "y", "z"}, Situations: []string{"a", "b"}, SafetyCritical: true, Choice: true}, {Choice: true, Errors: []string{"x", "y", "u", "v", "w"}},
}

// A mistake in place of a right answer, or a mistake more, never makes a task shown
// earlier, nor held when it would not have been.
func TestMoreMistakesNeverMakeItEasier(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 14))
	shown, held := 0, 0
	for range 5_000 {
		rule := someRules[random.IntN(len(someRules))]
		var better, worse mastery.State
		a, wrong := mastery.Answer{}, random.IntN(20)
		for n := range 40 {
			a = some(random, a, rule)
			b := a
			if n == wrong {
				b.Right, b.Mistake = false, []string{"", "x", "y"}[random.IntN(3)]
				if !a.Right || random.IntN(2) == 0 { // one more, else one in its place
					worse = worse.Add(rule, b)
					b = a
				}
			}
			better, worse = better.Add(rule, a), worse.Add(rule, b)
			if worse.Mastered && !better.Mastered || worse.Held && !better.Held {
				t.Fatalf("%+v, mistake at %d, now %d:\nwith it    %+v\nwithout it %+v", rule, wrong, n, worse, better)
			}
		}
		if better.Mastered && !worse.Mastered {
			shown++
		}
		if better.Held && !worse.Held {
			held++
		}
	}
	if shown == 0 || held == 0 {
		t.Error("a mistake never made a difference: the test tests nothing")
	}
}

// However many answers there are, a state stays small, and what was kept of it as JSON
// goes on as if it had not been.
func TestStateIsBoundedAndKept(t *testing.T) {
	random := rand.New(rand.NewPCG(2, 7))
	for _, rule := range someRules {
		var s, kept mastery.State
		a, longest := mastery.Answer{}, 0
		for n := range 2000 {
			a = some(random, a, rule)
			if n%3 == 0 && !a.Right {
				a.Mistake = fmt.Sprint("made-up-", n)
			}
			if n > 1000 {
				a.Right, a.Key = true, "always the same"
			}
			s = s.Add(rule, a)
			text, err := json.Marshal(kept.Add(rule, a))
			if err != nil {
				t.Fatal(err)
			}
			kept = mastery.State{}
			if err := json.Unmarshal(text, &kept); err != nil || !reflect.DeepEqual(kept, s) {
				t.Fatalf("%s, %v", text, err)
			}
			longest = max(longest, len(text))
		}
		if longest > 1500 || len(s.Mistakes) > 33 {
			t.Errorf("%d bytes, %d mistakes", longest, len(s.Mistakes))
		}
	}
}

// Whatever was answered before, who is steadily right from then on gets there: in so many
// answers at most, on two days that lie three dates apart at most.
func TestItCanAlwaysBeLearned(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 6))
	most := map[bool]int{}
	for range 3000 {
		rule := someRules[random.IntN(len(someRules))]
		var s mastery.State
		a := mastery.Answer{}
		for range random.IntN(60) {
			a = some(random, a, rule)
			if random.IntN(2) == 0 {
				a.Right, a.Mistake = false, "x"
			}
			s = s.Add(rule, a)
		}
		for n := 1; ; n++ {
			m, missing := rule.Missing(s)
			if !missing {
				most[rule.Choice] = max(most[rule.Choice], n-1)
				break
			}
			a.Right, a.Mistake, a.Errors, a.Item, a.Key = true, "", rule.Errors, a.Item+9, fmt.Sprint(n)
			if a.Moment.Unix += 60; m.LaterRun && !a.Moment.Later(m.Later, m.Rest) {
				a.Moment = mastery.Moment{Unix: m.Later.Unix + 24*3600*int64(m.Rest), Day: m.Later.Day + m.Rest}
			}
			if len(m.Situations) > 0 {
				a.Situation = m.Situations[0]
			}
			right := m.Right
			s = s.Add(rule, a)
			if after, still := rule.Missing(s); still && after.Days == m.Days && after.Right != max(1, right-1) {
				t.Fatalf("%+v: %d more were missing, after one of them %d", rule, right, after.Right)
			}
		}
		if !s.Mastered {
			t.Fatalf("nothing is missing, and it is not shown: %+v", s)
		}
	}
	if most[false] > mostTyped || most[true] > mostChosen {
		t.Errorf("it took %v right answers in a row", most)
	}
}

// What lessons/record/README.md says of the longest way.
const (
	mostTyped  = 19
	mostChosen = 21
)

// Records hold states under these names. One of the first form can still be read, though
// not what was in its run and its days: it is made anew from the answers.
func TestStateInARecord(t *testing.T) {
	s := after(mastery.Rule{SafetyCritical: true, Errors: []string{"x", "y"}, Situations: []string{"a", "b"}}, "Xwzza")
	s.Run.Key, s.Run.Varied, s.Run.Pause, s.Days, s.Shown, s.Mastered, s.Held = "0.0613 in", true, true, 1, s.Wrong, true, true
	text, err := json.Marshal(s)
	if err != nil {
		t.Fatal(err)
	}
	const kept = `{"answers":5,"right":3,"mistakes":{"":1,"x":1},` +
		`"streak":{"n":3,"chances":{"x":2,"y":2},"situations":["a"],"key":"0.0613 in","varied":true,"item":5,"last":{"t":1000000,"d":7},"pause":true},` +
		`"since":5,"missed":24,"shown_days":1,"shown":{"t":1000000,"d":7},"wrong":{"t":1000000,"d":7},"mastered":true,"held":true}`
	if string(text) != kept {
		t.Errorf("written as %s", text)
	}
	if text, err := json.Marshal(mastery.State{}); err != nil || string(text) != `{"answers":0,"right":0,"since":0,"shown_days":0,"mastered":false}` {
		t.Errorf("nothing is written as %s, %v", text, err)
	}
	const first = `{"answers":7,"right":5,"run":[{"Item":12,"Day":20418,"Right":true,"Hint":false,"Form":"outside","Key":"0.0613 in","Roads":["double","half"]}],"days":[20417],"since":2,"mastered":true}`
	var old mastery.State
	if err := json.Unmarshal([]byte(first), &old); err != nil || !reflect.DeepEqual(old, mastery.State{Answers: 7, Right: 5, Since: 2, Mastered: true}) {
		t.Errorf("%+v, %v", old, err)
	}
}
