package schedule_test

import (
	"testing"
	"time"

	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
)

// BenchmarkFold counts 20,000 answers anew, a tenth of them wrong: what a record is given
// when what its answers come to has changed.
func BenchmarkFold(b *testing.B) {
	all := tasks.All()
	answers := make([]record.Answer, 20_000)
	for i := range answers {
		task := all[i%len(all)]
		system := machine.Imperial
		if !task.Allows(system) {
			system = machine.Metric
		}
		code := problem.NewCode(task.Name, problem.NumbersGiven, system, uint32(i), machine.DefaultLathe(system))
		answers[i] = record.Answer{At: at(0, 9, 0).Add(time.Duration(i) * 7 * time.Minute), Task: task.Name, Code: code.String(), Verdict: answer.Right, Key: code.String()}
		if i%10 == 3 {
			answers[i].Verdict, answers[i].Slip = answer.KnownError, task.Errors[0].Name
		}
	}
	fold := schedule.Fold(schedule.Catalogue(machine.Imperial))
	for b.Loop() {
		of := map[string]record.Summary{}
		for i, a := range answers {
			of[a.Task] = fold(of[a.Task], a, i+1)
		}
	}
}
