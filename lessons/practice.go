package lessons

import (
	"fmt"
	"slices"
	"strings"

	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
)

// Practice asks n problems, each followed by what came of it. The tasks come in
// turn, never one twice running where there is another.
func (s *Session) Practice(names []string, level problem.Level, n int) error {
	if err := s.Terminal.Show(Text{{Heading, s.say("say-practice")}, {Plain, s.say("say-words")}}); err != nil {
		return err
	}
	queue := []string{}
	for i := range n {
		if len(queue) == 0 {
			queue = s.shuffled(names, queueEnd(s.Answers))
		}
		p, w, err := s.problem(queue[0], level)
		if err != nil {
			return err
		}
		queue = queue[1:]
		if _, err := s.pose(p, w, how{place: s.say("say-problem", "i", i+1, "of", n)}); err != nil {
			return err
		}
	}
	return s.Terminal.Show(s.summary())
}

// queueEnd is the task that was asked last.
func queueEnd(answers []Answered) string {
	if len(answers) == 0 {
		return ""
	}
	return answers[len(answers)-1].Task
}

// shuffled returns the names in a fresh order that does not begin with the last.
func (s *Session) shuffled(names []string, last string) []string {
	out := slices.Clone(names)
	for i := len(out) - 1; i > 0; i-- {
		j := int(s.Seeds() % uint32(i+1))
		out[i], out[j] = out[j], out[i]
	}
	if len(out) > 1 && out[0] == last {
		out[0], out[1] = out[1], out[0]
	}
	return out
}

// summary lists how each task went and the slips that were made.
func (s *Session) summary() Text {
	text := Text{{Heading, s.Done()}}
	var order []string
	got, of, slips := map[string]int{}, map[string]int{}, map[string][]string{}
	for _, a := range s.Answers {
		if of[a.Task] == 0 {
			order = append(order, a.Task)
		}
		of[a.Task]++
		if a.Mark.Correct() {
			got[a.Task]++
		}
		if a.Mark.Verdict == answer.KnownError && !slices.Contains(slips[a.Task], a.Mark.Error) {
			slips[a.Task] = append(slips[a.Task], a.Mark.Error)
		}
	}
	for _, task := range order {
		line := s.say("say-summary", "task", s.words[task].Task.Title, "right", got[task], "of", of[task])
		text = append(text, Block{Plain, "- " + line})
		for _, slip := range slips[task] {
			text = append(text, Block{Plain, "  - " + s.words[task].Task.Slips[slip]})
		}
	}
	return append(text, Block{Caution, s.say("rehearsal")})
}

// Resolve turns the names of tasks and stages into tasks. An unknown name is an
// error that offers the nearest.
func Resolve(words []string) ([]string, error) {
	var names []string
	for _, word := range words {
		if slices.Contains(problem.Stages, problem.Stage(word)) {
			for _, t := range tasks.OfStage(problem.Stage(word)) {
				names = append(names, t.Name)
			}
			continue
		}
		t, err := tasks.Find(word)
		if err != nil {
			return nil, fmt.Errorf("%w; stages are %s", err, stageNames())
		}
		names = append(names, t.Name)
	}
	if len(names) == 0 {
		names = tasks.Names()
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
