package content

import (
	"slices"
	"strings"
)

func (c *checker) lesson(file string, at func(string) int, l Lesson) {
	for key, missing := range map[string]bool{"title": l.Title == "", "goals": len(l.Goals) == 0, "why": l.Why == "",
		"parts": len(l.Parts) == 0, "check, tasks": len(l.Check.Tasks) == 0} {
		if missing {
			c.say(file, 0, "%s is missing", key)
		}
	}
	if l.Minutes < 5 || l.Minutes > 30 {
		c.say(file, at("minutes"), "minutes %d: give 5 to 30", l.Minutes)
	}
	for _, key := range l.Cautions {
		reference(c, file, at(key), "caution", key, c.safety)
	}
	for _, key := range l.Sources {
		reference(c, file, at(key), "source", key, c.sources)
	}
	if c.ships(file) && !slices.ContainsFunc(l.Parts, func(p Part) bool {
		return slices.ContainsFunc(p.Explain, func(b Block) bool { return b.Drawing != "" })
	}) {
		c.say(file, at("parts"), "the lesson has no drawing: give one where it teaches; they are %s", strings.Join(c.known.Drawings, ", "))
	}
	tasks := slices.Clone(l.Check.Tasks)
	levels := []int{l.Check.Level}
	for _, p := range l.Parts {
		tasks, levels = append(tasks, p.Task), append(levels, p.Level)
		if len(p.Explain) == 0 {
			c.say(file, at(p.Title), "the part %q explains nothing", p.Title)
		}
		for _, b := range p.Explain {
			c.block(file, at, b)
		}
	}
	for _, task := range tasks {
		if !slices.Contains(c.known.Tasks, task) && !slices.Contains(c.lib.QuestionNames(), task) {
			c.say(file, at(task), "no task is called %q; the tasks are %s%s", task, strings.Join(c.known.Tasks, ", "), meant(task, slices.Concat(c.known.Tasks, c.lib.QuestionNames())))
		}
	}
	for _, level := range levels {
		if level < 0 || level > 3 {
			c.say(file, at("level"), "level %d: give 1, 2 or 3", level)
		}
	}
}

// block looks at one block of what a part explains.
func (c *checker) block(file string, at func(string) int, b Block) {
	set := 0
	for _, text := range []string{b.Text, b.Drawing, b.Caution} {
		if text != "" {
			set++
		}
	}
	if set != 1 {
		c.say(file, at("explain"), "an item of explain has one of text, drawing, caution; this has %d", set)
	}
	if b.Drawing != "" && !slices.Contains(c.known.Drawings, b.Drawing) {
		c.say(file, at(b.Drawing), "no drawing is called %s; they are %s", b.Drawing, strings.Join(c.known.Drawings, ", "))
	}
	if b.Caution != "" {
		reference(c, file, at(b.Caution), "caution", b.Caution, c.safety)
	}
}

// ships tells a file that comes with the program: an instructor's own lesson may do without
// a drawing.
func (c *checker) ships(name string) bool {
	f, err := c.lib.find(name)
	return err == nil && f.ships
}
