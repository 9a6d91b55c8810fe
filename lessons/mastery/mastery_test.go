package mastery_test

import (
	"strings"
	"testing"

	"scratchpass/lessons/mastery"
)

// answers are written as letters: r right, w wrong, h right with a hint, a and b right in
// the situation of that name, x and y right where the error of that name would have shown,
// z right where both would, u where x and others but not y would, X and Y wrong by it, S wrong and sure of it, k and l right where
// that was the key. Figures are how many other items come between; | is a night, / midnight
// alone, and < eight hours without one.
func answers(text string) []mastery.Answer {
	var all []mastery.Answer
	item, at := 0, mastery.Moment{Unix: 1_000_000, Day: 7}
	for _, c := range text {
		switch {
		case c >= '0' && c <= '9':
			item += int(c - '0')
			continue
		case c == '|':
			at = mastery.Moment{Unix: at.Unix + 24*3600, Day: at.Day + 1}
			continue
		case c == '/':
			at.Day++
			continue
		case c == '<':
			at.Unix += 8 * 3600
			continue
		}
		item++
		one := mastery.Answer{Item: item, Moment: at, Right: !strings.ContainsRune("wXYS", c), Hint: c == 'h', Sure: c == 'S'}
		switch c {
		case 'a', 'b':
			one.Situation = string(c)
		case 'x', 'y':
			one.Errors = []string{"never asked for", string(c)}
		case 'z':
			one.Errors = []string{"x", "y"}
		case 'u':
			one.Errors = []string{"x", "u", "v", "w"}
		case 'X', 'Y':
			one.Mistake = strings.ToLower(string(c))
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
	someShow   = mastery.Rule{Errors: []string{"x", "y"}, Seldom: []string{"y"}}
	rare       = mastery.Rule{Errors: []string{"x", "y", "u", "v", "w"}, Seldom: []string{"x", "y", "u", "v", "w"}}
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
		{typed, "rr/r", false, "midnight is none"},
		{typed, "rr<r", false, "nor are eight hours of one date"},
		{typed, "rr</r", true, "eight hours with a midnight are"},
		{typed, "r5rr", false, "the pause comes before the last, not before the second"},
		{typed, "rrr5r", true, "the run may be longer than it must be"},
		{typed, "rrw5rr", false, "a wrong answer ends a run"},
		{typed, "rh5r", false, "a hint ends it too: the answer was not the learner's own"},
		{typed, "rr5h", false, "nor may the last have had one"},
		{typed, "rr5rw", true, "once shown, it was shown"},

		{typed, "wrr5r", true, "one mistake without a name may be of the pen"},
		{typed, "wwrr5r", false, "two want four in a row"},
		{typed, "wwrrr5r", true, "which these are"},
		{typed, "wwwrrr5r", false, "three want five"},
		{typed, "wwwrrrr5r", true, "which these are"},
		{typed, "wwwwwrrrrr5r", false, "five want seven"},
		{typed, "wwwwwrrrrrr5r", true, "which these are"},
		{typed, "wwwwwwwwwwwwwwwwwwwwrrrrrr5r", true, "more do not want more: it can be learned"},

		{typed, "Xrrrrrr5r", false, "a common error that was made wants eight"},
		{typed, "Xrrrrrrr5r", true, "which these are"},
		{typed, "XYrrrrrrr5r", false, "two of them want more"},
		{typed, "XYrrrrrrrr5r", true, "though not another day: they are not alike"},
		{typed, "XXrrrrrrrrrr5r", false, "one error made twice wants another day"},
		{typed, "XXrrrrrrrrrr5r|rr5r", true, "which this is"},
		{typed, "XXrrrrrrrrrr5r/rr5r", false, "midnight alone is no other day"},
		{typed, "XXrrrrrrrrr5r|rr5r", false, "ten do not make up for two alike"},
		{typed, "XXrrrrrrrrrr5r|X|rrrrrrrrrr5r", false, "made again in between: all from the beginning"},
		{typed, "XXrrrrrrrrrr5r|X|rrrrrrrrrr5r|rr5r", true, "which this is"},
		{typed, "XXXXrrrrrrrrrr5r|rr5r", false, "four alike want two dates between"},
		{typed, "XXXXrrrrrrrrrr5r||rr5r", true, "which these are"},
		{typed, "XXXXXXXXXXrrrrrrrrrr5r||rr5r", false, "and ten three"},
		{typed, "XXXXXXXXXXrrrrrrrrrr5r|||rr5r", true, "never more than three"},
		{typed, "SSrrr5r", true, "to have been sure gives a mistake no name"},
		{typed, "wwrrrr5r", true, "mistakes without a name are not alike"},

		{choice, "rr5r", false, "three right of a few options is luck too often"},
		{choice, "rrr5r", false, "so is four"},
		{choice, "rrrr5r", true, "five are not"},
		{choice, "Xrrrrr5r", true, "an option that was wrong wants six: each wrong one has a name"},
		{choice, "Xrrrr5r", false, "five are not enough then"},

		{critical, "rr5r", false, "it can hurt someone: one day is not enough"},
		{critical, "rr5rrr5r", false, "twice on one day is one day"},
		{critical, "rr5r|rr5r", true, "two days"},
		{critical, "rr5r/rr5r", false, "two minutes to midnight and two past it are one evening"},
		{critical, "rr5r<rr5r", false, "morning and evening are one day"},
		{critical, "rr5r</rr5r", true, "eight hours and a midnight are two"},
		{critical, "rr5|r", false, "a night within the run does not make it two runs"},
		{critical, "rr5r5rr|r", false, "the second run begins on the later day"},
		{critical, "rr5r|rw", false, "the second day must be a whole run"},
		{critical, "rr5r|w|rr5r", true, "a wrong answer between does not take the first day back"},
		{critical, "rr5r|X|rrrrrrr5r", false, "one with a name does"},
		{critical, "rr5r|X|rrrrrrr5r|rr5r", true, "it takes two days again"},
		{critical, "rr5r|S|rr5r", false, "and so does one that the part was bet on"},
		{critical, "rr5r|S|rr5r|rr5r", true, "also made good on two days"},

		{situations, "aa5a", false, "the other situation never came up"},
		{situations, "ab5a", true, "both came up"},
		{situations, "aa5b", true, "in whatever order"},
		{situations, "aa5ab5a", true, "the run goes on until the other one has come up"},
		{situations, "bwaa5a", false, "the other came up in an earlier run: not in this one"},
		{situations, "rr5r", false, "a situation that is not told is neither"},

		{mistakes, "xxx5x", false, "the other common error had no chance to show"},
		{mistakes, "zz5z", true, "both had three chances"},
		{mistakes, "xzz5z", true, "more for one does no harm"},
		{mistakes, "xyz5r", false, "each had two only"},
		{mistakes, "xyz5x", true, "three of one and two of the other are as good"},
		{mistakes, "zz5r", false, "both had but two"},
		{mistakes, "rr5r", false, "neither had"},
		{someShow, "xxz5x", true, "one that shows in some problems only wants one"},
		{someShow, "xxxxxxx5x", false, "but not none"},
		{rare, "uuuuuuuu5u", false, "nor where its odds are small from the start"},
		{rare, "uuuuuuuu5y", true, "here it had a chance"},
		{mistakes, "Xzzzzzzz5z", true, "eight chances for the one that was made"},
		{mistakes, "Xyzzzzzz5z", false, "not eight right answers"},
		{mistakes, "Xyzzzzzzz5z", true, "eight chances and one more of the other"},

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
