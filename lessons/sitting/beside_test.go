package sitting_test

import (
	"strings"
	"testing"

	"scratchpass/lessons/internal/scripted"
	"scratchpass/lessons/practice"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
)

// A sum can be the answer; what a plain reading takes is read so.
func TestSumsAsAnswers(t *testing.T) {
	task, err := (tasks.Set{}).Find("compound-travel")
	if err != nil {
		t.Fatal(err)
	}
	var p *problem.Problem // 12 threads an inch, the compound at 29.5 degrees
	for seed := uint32(0); p == nil; seed++ {
		q, err := problem.New(task, problem.NewCode(task.Name, problem.NumbersGiven, machine.Imperial, seed, machine.DefaultLathe(machine.Imperial)))
		if err != nil {
			t.Fatal(err)
		}
		if q.Values.Has("tpi") && q.Values.X("tpi") == 12 && q.Values.X("angle") == 29.5 {
			p = q
		}
	}
	for reply, want := range map[string]answer.Verdict{
		"0.613435/12/cos(29.5)":      answer.Right,
		"(0.613435 / 12) in":         answer.KnownError, // the depth straight in
		"1.298392 / cos(29.5) mm":    answer.Right,
		"0.613435/12/cos(29.5":       answer.Unread,
		"0.05-":                      answer.Unread,
		"0.613435/12/cos(29.5) rpms": answer.Unread,
	} {
		if got := sitting.MarkOf(p, reply); got.Verdict != want {
			t.Errorf("%q is %v, want %v", reply, got.Verdict, want)
		}
	}
}

// What is typed beside the answer is shown, and the question goes on.
func TestBesideTheAnswer(t *testing.T) {
	for reply, want := range map[string]string{
		"= 0.614 x 0.05": "0.614 x 0.05 = 0.0307", "=1/0": "Not worked out", "=": "Type = and a sum",
		"? crest": "crest", "?centre gauge": "gauge", "? qwerty": `No word of the trade is called "qwerty"`,
	} {
		l := scripted.NewLearner(t, 2, machine.Imperial, func(l *scripted.Learner) string {
			if l.Tries == 0 {
				return reply
			}
			return l.Key()
		})
		answers, err := l.Session.Run(practice.Practice{Tasks: []string{"compound-travel"}, Level: problem.NumbersGiven, Count: 1})
		if err != nil {
			t.Fatal(err)
		}
		if said := l.Log.String(); !strings.Contains(said, want) || len(answers) != 1 || !answers[0].Mark.Correct() || answers[0].Hint {
			t.Errorf("%q: %v\n%s", reply, answers, said)
		}
	}
}
