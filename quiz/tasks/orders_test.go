package tasks_test

import (
	"slices"
	"testing"

	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
)

// Steps that a task names as free of each other are steps of it, come to stand the other way
// round in an order that is right, and are few enough to be printed and exported one by one.
// Every order listed as right is marked right.
func TestFreeStepsOfTasks(t *testing.T) {
	orders := 0
	for _, task := range tasks.All() {
		if task.Kind != answer.Order {
			continue
		}
		orders++
		p := made(t, task, problem.NumbersGiven, machine.Imperial, 7, machine.DefaultLathe(machine.Imperial))
		e := &p.Expected
		all := e.SameOrders(e.Key)
		if len(all) > 12 {
			t.Errorf("%s: %d orders are right; name fewer free steps", task.Name, len(all))
		}
		for _, r := range all {
			if m := p.Mark(e.Show(r)); m.Verdict != answer.Right {
				t.Errorf("%s: %v is marked %s", task.Name, r.Keys, m.Verdict)
			}
		}
		for _, pair := range e.Free {
			swapped := slices.ContainsFunc(all, func(r answer.Response) bool {
				key := slices.Index(e.Key.Keys, pair[0]) < slices.Index(e.Key.Keys, pair[1])
				return key != (slices.Index(r.Keys, pair[0]) < slices.Index(r.Keys, pair[1]))
			})
			if !swapped || !slices.Contains(e.Key.Keys, pair[0]) || !slices.Contains(e.Key.Keys, pair[1]) {
				t.Errorf("%s: %v are named as free, and no order that is right has them the other way round", task.Name, pair)
			}
		}
	}
	if orders < 4 {
		t.Errorf("only %d tasks of orders were tried", orders)
	}
}
