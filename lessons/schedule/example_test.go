package schedule_test

import (
	"fmt"
	"time"

	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
)

// A session of two new tasks: each begins with a block, which ends when two answers in a
// row were right.
func ExampleNext() {
	items := []schedule.Item{
		{Task: "pitch-from-tpi", Stage: problem.Reading},
		{Task: "single-depth", Stage: problem.Shape},
	}
	fold := schedule.Fold(items)
	of := map[string]record.Summary{}
	now := time.Date(2026, 1, 20, 18, 0, 0, 0, time.UTC)
	var recent []string
	for count, verdict := range []answer.Verdict{answer.Right, answer.Right, answer.Wrong, answer.Right, answer.Right} {
		choice, _ := schedule.Next(items, of, recent, now)
		task := choice.Item.Task
		fmt.Printf("%s, because %s: %s\n", task, choice.Reason, verdict)
		of[task] = fold(of[task], record.Answer{At: now, Task: task, Verdict: verdict}, count+1)
		recent = append(recent, task)
		now = now.Add(time.Minute)
	}
	_, more := schedule.Next(items, of, recent, now)
	fmt.Println("more today:", more)
	tomorrow, _ := schedule.Next(items, of, nil, now.AddDate(0, 0, 1))
	fmt.Printf("tomorrow: %s, because %s\n", tomorrow.Item.Task, tomorrow.Reason)
	// Output:
	// pitch-from-tpi, because new: right
	// pitch-from-tpi, because intro: right
	// single-depth, because new: wrong
	// single-depth, because intro: right
	// single-depth, because intro: right
	// more today: false
	// tomorrow: pitch-from-tpi, because in-progress
}
