package desk

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"scratchpass/calc"
	"scratchpass/quiz/problem"
)

// setNameOf is a set's name from its title: what is no letter or figure becomes a hyphen.
func setNameOf(title string) string {
	name := strings.Map(func(c rune) rune {
		if c >= 'a' && c <= 'z' || c >= '0' && c <= '9' {
			return c
		}
		return ' '
	}, strings.ToLower(title))
	name = strings.Join(strings.Fields(name), "-")
	return strings.Trim(name[:min(len(name), 40)], "-")
}

func titleFits(w written) error {
	switch {
	case len([]rune(w.Title)) > 200:
		return fmt.Errorf("the title has %d letters: give at most 200", len([]rune(w.Title)))
	case w.Set == "":
		return fmt.Errorf("title %s: give one with letters a to z or figures in it, which the file is named after", calc.Quoted(w.Title))
	}
	return nil
}

func countOf(text string) (int, error) {
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 || n > 60 {
		return 0, fmt.Errorf("%s questions: give a number from 1 to 60", calc.Quoted(text))
	}
	return n, nil
}

// tasks reads names of tasks, stages and lessons with commas between them. Of a stage or a
// lesson what is not set in the units is left out; a task that is named must be.
func (n *newSet) tasks(text string) ([]string, error) {
	var names []string
	add := func(all []string) {
		for _, name := range all {
			if t, err := n.of.Find(name); err == nil && t.Allows(n.system) && !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
	}
	for word := range strings.SplitSeq(text, ",") {
		word = strings.TrimSpace(word)
		lesson, err := n.lessonTasks(word)
		switch {
		case word == "" || err != nil:
			return nil, errors.Join(err, fmt.Errorf("%s: give tasks, stages or lessons with commas between them", calc.Quoted(text)))
		case lesson != nil:
			add(lesson)
		case len(n.of.OfStage(problem.Stage(word))) > 0:
			for _, t := range n.of.OfStage(problem.Stage(word)) {
				add([]string{t.Name})
			}
		default:
			t, err := n.of.Find(word)
			if err != nil {
				return nil, err
			}
			if !t.Allows(n.system) {
				return nil, fmt.Errorf("%s is not set in %s", word, n.system)
			}
			add([]string{word})
		}
	}
	if len(names) == 0 || len(names) > 100 {
		return nil, fmt.Errorf("%s: that is %d tasks: give 1 to 100", calc.Quoted(text), len(names))
	}
	return names, nil
}

// lessonTasks are the tasks of a lesson, in their order; nil where no lesson is called so.
func (n *newSet) lessonTasks(name string) ([]string, error) {
	if !slices.Contains(n.lib.LessonNames(), name) {
		return nil, nil
	}
	lesson, err := n.lib.Lesson(name)
	if err != nil {
		return nil, err
	}
	var names []string
	for _, part := range lesson.Parts {
		names = append(names, part.Task)
	}
	return append(names, lesson.Check.Tasks...), nil
}

// spread picks as many of some tasks as there are questions, from the whole of the list: a
// slot asks its tasks in turn, and would leave out the end of a long list.
func spread(names []string, count int) []string {
	if count >= len(names) {
		return names
	}
	picked := make([]string, count)
	for i := range picked {
		picked[i] = names[i*len(names)/count]
	}
	return picked
}
