package sitting

import (
	"fmt"

	"scratchpass/lessons/record"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
)

// Remark returns what marks the answers of a record anew, of these tasks.
func Remark(of tasks.Set) record.Marker {
	return func(a record.Answer) (record.Answer, error) { return remark(of, a) }
}

// remark marks an answer of a record anew: its problem is made again from its code, and what
// was typed is marked. A code that makes another problem than the one that was answered is
// record.ErrOtherProblem; one that makes none, or of another task, and an answer that can't
// be read are errors that say so.
func remark(of tasks.Set, a record.Answer) (record.Answer, error) {
	if c, err := problem.ParseCode(a.Code); err == nil && !of.Has(c.Task) { // an instructor's own question, whose folder is not here
		return a, record.ErrOtherProblem
	}
	p, err := of.FromCode(a.Code)
	if err != nil {
		return a, err
	}
	if p.Task.Name != a.Task {
		return a, fmt.Errorf("task %.60q: the code %s is one of %s", a.Task, a.Code, p.Task.Name)
	}
	if a.Key != "" && a.Key != p.Expected.Text() { // the oldest records have none
		return a, fmt.Errorf("%w: what was right is %s, and was %.60q", record.ErrOtherProblem, p.Expected.Text(), a.Key)
	}
	m := MarkOf(p, a.Given)
	if m.Verdict == answer.Unread {
		return a, fmt.Errorf("the answer %.60q to %s can't be read", a.Given, a.Code)
	}
	a.Verdict, a.Slip, a.Points = m.Verdict, m.Error, m.Points
	a.Situation, a.Key = p.Values.Situation(), p.Expected.Text()
	return a, nil
}
