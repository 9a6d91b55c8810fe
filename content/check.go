package content

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"
)

// Known is what words may refer to that this package does not know itself.
type Known struct {
	Tasks    []string
	Drawings []string

	// Slips are the common errors of each task, which need words.
	Slips map[string][]string

	// Figure gives what a lesson's ${...} asks for; nil where no one looks at them.
	Figure func(asked string) (string, error)
}

// Check reads everything in the library and returns all that is wrong.
func (l *Library) Check(known Known) Findings {
	c := checker{lib: l, known: known}
	var err error
	c.safety, err = l.Safety()
	c.add(err)
	c.sources, err = l.Sources()
	c.add(err)
	c.layout()
	for _, dir := range []string{"lessons", "tasks", "questions"} {
		for _, name := range l.names(dir) {
			c.file(dir + "/" + name + ".yaml")
		}
	}
	for _, task := range known.Tasks {
		if !slices.Contains(l.TaskNames(), task) {
			c.say("tasks/"+task+".yaml", 0, "the task %s has no words", task)
		}
	}
	_, err = l.Symbols()
	c.add(err)
	_, err = l.Phrases()
	c.add(err)
	_, err = l.Screens()
	c.add(err)
	_, err = l.Drawings()
	c.add(err)
	c.terms()
	c.trade()
	c.cautions()
	c.bench()
	return c.found.sorted()
}

type checker struct {
	lib     *Library
	known   Known
	safety  map[string]Caution
	sources map[string]Source
	found   Findings

	unexplained []string // trade words without a term
}

func (c *checker) say(file string, line int, format string, args ...any) {
	c.found = append(c.found, Finding{file, line, fmt.Sprintf(format, args...)})
}

// add takes over the findings of a file that could not be read.
func (c *checker) add(err error) {
	var more Findings
	switch {
	case err == nil:
	case errors.As(err, &more):
		c.found = append(c.found, more...)
	default:
		c.say("content", 0, "%v", err)
	}
}

func (c *checker) file(name string) {
	f, err := c.lib.find(name)
	if err != nil {
		c.add(err)
		return
	}
	where, text, at := f.where, f.text, lines(f.text)
	base := strings.TrimSuffix(path.Base(name), ".yaml")
	if strings.HasPrefix(name, "lessons/") {
		l, err := read[Lesson](c.lib, name)
		c.add(err)
		if err == nil {
			c.lesson(where, at, l)
			c.figures(where, text, at, l)
		}
		return
	}
	if strings.HasPrefix(name, "questions/") {
		q, err := c.lib.Question(base)
		c.add(err)
		if err == nil {
			c.question(&q)
		}
		return
	}
	w, _, err := c.lib.words(base)
	c.add(err)
	if err == nil {
		c.task(where, at, base, w)
	}
}

func (c *checker) task(file string, at func(string) int, name string, w TaskWords) {
	if !slices.Contains(c.known.Tasks, name) {
		c.say(file, 0, "no task is called %s; the tasks are %s%s", name, strings.Join(c.known.Tasks, ", "), DidYouMean(name, c.known.Tasks))
		return
	}
	for key, text := range map[string]string{"title": w.Title, "skill": w.Skill, "at_the_lathe": w.AtTheLathe, "ask, level 1": w.Ask[1]} {
		if strings.TrimSpace(text) == "" {
			c.say(file, 0, "%s is missing", key)
		}
	}
	for level := range w.Ask {
		if level < 1 || level > 3 {
			c.say(file, at("ask"), "level %d: give 1, 2 or 3", level)
		}
	}
	c.slips(file, at, name, w)
	for _, key := range w.Safety {
		reference(c, file, at(key), "caution", key, c.safety)
	}
	if w.Drawing != "" && !slices.Contains(c.known.Drawings, w.Drawing) {
		c.say(file, at(w.Drawing), "no drawing is called %s; they are %s", w.Drawing, strings.Join(c.known.Drawings, ", "))
	}
}

// slips looks at the words of a task's common errors, and at the questions that tell two
// causes of one apart.
func (c *checker) slips(file string, at func(string) int, name string, w TaskWords) {
	slips := c.known.Slips[name]
	for _, slip := range slips {
		if w.Slips[slip] == "" {
			c.say(file, at("slips"), "the common error %s has no words", slip)
		}
	}
	for slip := range w.Slips {
		if !slices.Contains(slips, slip) {
			c.say(file, at(slip), "no common error of %s is called %s; they are %s", name, slip, strings.Join(slips, ", "))
		}
	}
	for slip, f := range w.FollowUps {
		if !slices.Contains(slips, slip) || f.Ask == "" || len(f.Causes) < 2 {
			c.say(file, at(slip), "the follow-up %s wants the name of a common error, a question and at least two causes", slip)
		}
		for _, cause := range f.Causes {
			if cause.Name == "" || cause.Said == "" || cause.Then == "" {
				c.say(file, at(slip), "a cause of the follow-up %s wants name, said and then", slip)
			}
		}
	}
}

// mostNamed is how many keys a finding names; of more it says what lists them.
const mostNamed = 12

var listedBy = map[string]string{"caution": "scratchpass safety --keys", "source": "scratchpass sources"}

// reference reports a key that a list does not have.
func reference[V any](c *checker, file string, line int, what, key string, list map[string]V) {
	if _, ok := list[key]; ok {
		return
	}
	keys := sortedKeys(list)
	said := strings.Join(keys, ", ")
	if more, long := listedBy[what]; long && len(keys) > mostNamed {
		c.say(file, line, "no %s is called %s%s; %s lists all %d", what, key, DidYouMean(key, keys), more, len(keys))
		return
	}
	c.say(file, line, "no %s is called %s; they are %s%s", what, key, said, DidYouMean(key, keys))
}

func sortedKeys[V any](m map[string]V) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}

func (c *checker) terms() {
	terms, err := c.lib.Terms()
	c.add(err)
	for name, t := range terms {
		if t.Means == "" {
			c.say("terms.yaml", 0, "the term %q means nothing", name)
		}
		for _, see := range t.See {
			reference(c, "terms.yaml", 0, "term", see, terms)
		}
	}
}

// bench looks at what the words of the rehearsal bench refer to.
func (c *checker) bench() {
	words, err := c.lib.Bench()
	c.add(err)
	for name, m := range words.Mistakes {
		for _, task := range m.Practise {
			if !slices.Contains(c.known.Tasks, task) {
				c.say("bench.yaml", 0, "the mistake %s sends to %q, which is no task", name, task)
			}
		}
		for _, key := range m.Safety {
			reference(c, "bench.yaml", 0, "caution", key, c.safety)
		}
	}
	for _, name := range slices.Concat(words.OnlyFor.Inside, words.OnlyFor.Outside, words.OnlyFor.KeptClosed) {
		if _, caution := c.safety[name]; !caution && !slices.Contains(c.known.Tasks, name) {
			c.say("bench.yaml", 0, "only_for has %q, which is no task and no caution", name)
		}
	}
}

func (c *checker) cautions() {
	for key, s := range c.safety {
		where, line := c.entry("safety.yaml", key)
		if s.Title == "" || s.Text == "" {
			c.say(where, line(key), "the caution %s wants a title and a text", key)
		}
		if s.Source != "" {
			reference(c, where, line(s.Source), "source", s.Source, c.sources)
		}
	}
}

// entry is the first file of that name that has a key, and finds lines in it.
func (c *checker) entry(name, key string) (where string, line func(string) int) {
	for _, f := range c.lib.folders {
		found, err := (&Library{[]folder{f}}).find(name)
		if at := lines(found.text); err == nil && at(key) > 0 {
			return found.where, at
		}
	}
	return name, func(string) int { return 0 }
}

// ErrNotThere reports whether an error means that a lesson or a task has no file.
func ErrNotThere(err error) bool { return errors.Is(err, fs.ErrNotExist) }
