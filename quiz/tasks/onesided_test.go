package tasks_test

import (
	"regexp"
	"testing"

	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
)

// oneSided are the tasks that ask for a limit, and the side that keeps it.
var oneSided = map[string]answer.SafeSide{
	"fastest-for-the-gap":    answer.Below,
	"speed-from-the-table":   answer.Below,
	"threading-speed":        answer.Below,
	"threading-speed-metric": answer.Below,
	"finest-pitch-for-nose":  answer.Above,
	"relief-groove-width":    answer.Above,
	"room-to-start":          answer.Above,

	"incomplete-thread-at-the-end": answer.Above,
}

// limitWords ask for a limit when they stand in a question.
var limitWords = regexp.MustCompile(`(?i)\b(at least|at most|highest|lowest|largest|smallest|biggest|slowest|fastest|longest|shortest|minimum|maximum)\b`)

// question is the last sentence that asks.
var question = regexp.MustCompile(`[^.?!]*\?`)

// A question for a least or a highest value takes nothing beyond it, however near, and on
// the safe side what is near enough. Every question with such a word is one of these.
func TestLimitsAreOneSided(t *testing.T) {
	for _, task := range tasks.All() {
		if task.Tolerance.Safe != oneSided[task.Name] {
			t.Errorf("%s: safe side %v, want %v", task.Name, task.Tolerance.Safe, oneSided[task.Name])
		}
		for level, ask := range load(t, task.Name).Task.Ask {
			asked := question.FindAllString(ask, -1)
			if len(asked) == 0 || !task.Kind.Numeric() {
				continue
			}
			if limit := limitWords.MatchString(asked[len(asked)-1]); limit != (oneSided[task.Name] != answer.BothSides) {
				t.Errorf("%s, level %d: asks for a limit: %v, is one-sided: %v: %s", task.Name, level, limit, !limit, asked[len(asked)-1])
			}
		}
	}
	eachKind(t, func(t *testing.T, task *problem.Task, level problem.Level, s machine.System) {
		side := oneSided[task.Name]
		if side == answer.BothSides {
			return
		}
		for seed := range draws(200) {
			p := made(t, task, level, s, seed+52000, lathe(s, seed))
			e := &p.Expected
			sign := map[answer.SafeSide]float64{answer.Above: 1, answer.Below: -1}[side]
			for _, by := range []float64{-0.11, -0.03, -0.001, 0.001, 0.03} {
				m := p.MarkResponse(answer.NumberResponse(e.Key.X * (1 + sign*by)))
				if by < 0 && m.Correct() {
					t.Fatalf("%s: %v of the key to the unsafe side is %s", p.Code, by, m.Verdict)
				}
				if by > 0 && m.Verdict != answer.Right {
					t.Fatalf("%s: %v of the key to the safe side is %s", p.Code, by, m.Verdict)
				}
			}
		}
	})
}

// The answers that were once called right, in the numbers they were given.
func TestTheUnsafeSideIsWrong(t *testing.T) {
	for _, c := range []struct {
		task  string
		s     machine.System
		times float64
	}{{"relief-groove-width", machine.Imperial, 0.0168 / 0.0188}, {"threading-speed", machine.Imperial, 51.5 / 49.1}, {"room-to-start", machine.Imperial, 0.0576 / 0.06}} {
		task, err := (tasks.Set{}).Find(c.task)
		if err != nil {
			t.Fatal(err)
		}
		for seed := range 50 {
			p := made(t, task, 1, c.s, seed, machine.DefaultLathe(c.s))
			if m := p.MarkResponse(answer.NumberResponse(p.Expected.Key.X * c.times)); m.Verdict != answer.ScrapWrong {
				t.Errorf("%s: %.3f of the key is %s", p.Code, c.times, m.Verdict)
			}
		}
	}
}
