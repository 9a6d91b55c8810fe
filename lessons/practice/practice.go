// Package practice has the flows that ask problems one after another: practice of chosen
// tasks, of what is best now, the mixed test, questions that were handed out, and timed
// rounds.
package practice

import (
	"fmt"
	"slices"
	"strings"

	"scratchpass/lessons/course"
	"scratchpass/lessons/page"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
)

// Practice asks so many problems, each followed by what came of it. The tasks come in
// turn, never one twice running where there is another.
type Practice struct {
	Tasks []string      `json:"tasks"`
	Level problem.Level `json:"level"`
	Count int           `json:"count"`
}

var _ sitting.Flow = Practice{}

// Name is under which the flow is stored.
func (Practice) Name() string { return "practice" }

// Farewell is what is said to someone who stops in the middle of it.
func (Practice) Farewell(st *sitting.Sitting) string { return st.Stopped() }

// Run runs the practice.
func (f Practice) Run(st *sitting.Sitting) error {
	if err := st.Show(page.Page{page.Heading{Text: st.Say("say-practice")}, page.Typeable{Text: st.Say("say-words")}}); err != nil {
		return err
	}
	queue := []string{}
	for i := range f.Count {
		if len(queue) == 0 {
			queue = st.Shuffled(f.Tasks, st.LastTask())
		}
		p, w, err := st.Problem(queue[0], f.Level, nil)
		if err != nil {
			return err
		}
		queue = queue[1:]
		if _, err := st.Pose(p, w, st.Problems(i, f.Count), st.Rules); err != nil {
			return err
		}
	}
	return closing(st)
}

// closing says what the sitting came to, and what the day has gained.
func closing(st *sitting.Sitting) error {
	gains, err := course.Gains(st)
	if err != nil {
		return err
	}
	return st.Show(append(append(summary(st), gains...), st.Rehearsal()))
}

// summary lists how each task went and the common errors that were made.
func summary(st *sitting.Sitting) page.Page {
	p := page.Page{page.Heading{Text: st.Done()}}
	var order []string
	got, of, made := map[string]int{}, map[string]int{}, map[string][]string{}
	for _, a := range st.Answers {
		if of[a.Task] == 0 {
			order = append(order, a.Task)
		}
		of[a.Task]++
		if a.Mark.Correct() {
			got[a.Task]++
		}
		if a.Mark.Verdict == answer.KnownError && !slices.Contains(made[a.Task], a.Mark.Error) {
			made[a.Task] = append(made[a.Task], a.Mark.Error)
		}
	}
	for _, task := range order {
		w, err := st.Words(task)
		if err != nil {
			continue // it was asked: its words have been read
		}
		p = append(p, page.Item{Text: st.Say("say-summary", "task", w.Task.Title, "right", got[task], "of", of[task])})
		for _, name := range made[task] {
			p = append(p, page.Item{Text: w.Task.Slips[name], Inner: true})
		}
	}
	return p
}

// Resolve turns the names of tasks and stages into tasks. An unknown name is an
// error that offers the nearest.
func Resolve(of tasks.Set, words []string) ([]string, error) {
	var names []string
	for _, word := range words {
		if own := of.OfStage(problem.Stage(word)); len(own) > 0 {
			for _, t := range own {
				names = append(names, t.Name)
			}
			continue
		}
		t, err := of.Find(word)
		if err != nil {
			return nil, fmt.Errorf("%w; stages are %s", err, stageNames())
		}
		names = append(names, t.Name)
	}
	if len(names) == 0 {
		names = of.Names()
	}
	return names, nil
}

func stageNames() string {
	var names []string
	for _, s := range problem.Stages {
		names = append(names, string(s))
	}
	return strings.Join(names, ", ")
}
