package tasks_test

import (
	"flag"
	"math"
	"slices"
	"strings"
	"testing"

	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

var spreadDraws = flag.Int("spread-draws", 250, "problems of each task, level and system whose answers are counted")

// mostAlike is the share of a task's problems that may have one and the same answer, so
// that a class has little to share.
const mostAlike = 0.15

// mostOfDecisions is the same for a choice: there are only so many options that can be
// right, but none of them may be right most of the time.
const mostOfDecisions = 0.5

// fewAnswers are the tasks to which the trade has fewer answers, and why.
var fewAnswers = map[string]struct {
	most float64
	why  string
}{
	"ready-to-start":           {0.25, "what is asked for is a state of one lathe: four states, each with its set"},
	"marks-that-fit":           {0.55, "what fits divides the marks of a face; on the learner's own dial there are two or three such numbers"},
	"thread-dial-line":         {0.36, "on the job it is the learner's own dial: with whole threads per inch all marks fit it, or every second one"},
	"carriage-speed":           {0.17, "on the job a lathe has few slow speeds, and few leads are slow enough to follow at them"},
	"feed-off-before-half-nut": {1, "the order that is taught is one"},
	"half-nut-kept-closed":     {1, "the order that is taught is one"},
	"one-full-pass":            {1, "the order that is taught is one"},
	"pick-up-a-thread":         {1, "the order that is taught is one"},
}

// answerOf is the right answer as it is told: options by their names, for their numbers
// are shuffled, and those of a set sorted.
func answerOf(p *problem.Problem) string {
	keys := p.Expected.Key.Keys
	switch {
	case keys == nil && p.Task.Kind != answer.Several:
		return p.Expected.Text()
	case p.Task.Kind == answer.Several:
		keys = slices.Sorted(slices.Values(keys))
	}
	return strings.Join(keys, " ")
}

// No answer is that of more than 15 in 100 problems, where the trade has more. What chance
// adds to so few draws is let through; -v lists what was counted.
func TestAnswersAreSpread(t *testing.T) {
	n := draws(*spreadDraws)
	if testing.Short() {
		t.Skip("too few draws to tell")
	}
	eachKind(t, func(t *testing.T, task *problem.Task, level problem.Level, s machine.System) {
		seen, commonest := map[string]int{}, ""
		for seed := range n {
			key := answerOf(made(t, task, level, s, seed+31000, machine.DefaultLathe(s)))
			seen[key]++
			if seen[key] > seen[commonest] {
				commonest = key
			}
		}
		share, most := float64(seen[commonest])/float64(n), mostAlike
		if task.Kind.Guessable() {
			most = mostOfDecisions
		}
		if few, ok := fewAnswers[task.Name]; ok {
			most = few.most
		}
		t.Logf("| %s | %d | %s | %s | %d | %.1f %% | %s", task.Name, level, s, task.Kind.Name(), len(seen), 100*share, commonest)
		if share > most+3.5*math.Sqrt(most*(1-most)/float64(n)) {
			t.Errorf("level %d %s: %.1f %% of the problems have the answer %s, want at most %.0f %%", level, s, 100*share, commonest, 100*most)
		}
	})
}
