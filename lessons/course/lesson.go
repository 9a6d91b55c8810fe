// Package course runs lessons, from their goals to their mixed check, and knows in which
// order they bring the tasks.
package course

import (
	"fmt"

	"scratchpass/content"
	"scratchpass/lessons/page"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/drawing"
	"scratchpass/quiz/figures"
	"scratchpass/quiz/problem"
)

// Lesson is the flow of one lesson.
type Lesson struct {
	Lesson string `json:"lesson"`
}

var _ sitting.Flow = Lesson{}

// Name is under which the flow is stored.
func (Lesson) Name() string { return "lesson" }

// Farewell is what is said to someone who stops in the middle of it.
func (Lesson) Farewell(st *sitting.Sitting) string { return st.Stopped() }

// Run runs the lesson from its goals to its mixed check.
func (l Lesson) Run(st *sitting.Sitting) error {
	lesson, err := st.Library.Lesson(l.Lesson)
	if err != nil {
		return err
	}
	r := run{Sitting: st, lesson: lesson, known: map[string]bool{}}
	first, err := r.leftOff()
	if err != nil {
		return err
	}
	skip := false
	if first < 0 {
		if err := r.opening(); err != nil {
			return err
		}
		if skip, err = r.preCheck(); err != nil {
			return err
		}
	}
	for i, part := range lesson.Parts {
		if i < first {
			continue
		}
		if err := r.remember(i); err != nil {
			return err
		}
		if err := r.part(part, st.Say("say-part", "part", i+1, "of", len(lesson.Parts)), skip); err != nil {
			return err
		}
	}
	return r.check()
}

// run is one run of a lesson.
type run struct {
	*sitting.Sitting
	lesson content.Lesson
	known  map[string]bool // tasks that were right, without a hint, before they were taught
}

// leftOff returns the part to begin with: where the learner left off, if that is
// wanted, and below 0 for the beginning.
func (r run) leftOff() (int, error) {
	if r.Book == nil {
		return -1, nil
	}
	l := r.lesson
	part, err := sitting.Fact(r.Sitting, func() (int, error) {
		part, ok, err := r.Book.Place(l.Name)
		if !ok {
			part = -1
		}
		return part, err
	})
	if err != nil || part < 0 || part >= len(l.Parts) {
		return -1, err
	}
	i, err := r.Choose(r.Say("say-left-off", "part", part+1, "of", len(l.Parts), "title", l.Parts[part].Title),
		page.Menu{Options: []string{r.Say("say-go-on-there"), r.Say("say-from-start")}})
	if err != nil || i == 1 {
		return -1, err
	}
	return part, nil
}

// remember keeps where in a lesson the learner is; behind its last part it is finished.
func (r run) remember(part int) error {
	if r.Book == nil {
		return nil
	}
	return r.Once(func() error { return r.Book.SetPlace(r.lesson.Name, part) })
}

// opening says what the lesson is for, and the cautions that belong to it.
func (r run) opening() error {
	l := r.lesson
	p := page.Page{
		page.Heading{Text: l.Title},
		page.Aside{Text: r.Say("say-minutes", "minutes", l.Minutes)},
		page.Gap{},
		page.Paragraph{Text: l.Why},
		page.Paragraph{Text: r.Say("say-goals")},
	}
	for _, g := range l.Goals {
		p = append(p, page.Item{Text: g})
	}
	for _, key := range l.Cautions {
		p = append(p, r.Caution(key))
	}
	if err := r.Show(append(p, page.Gap{}, page.Typeable{Text: r.Say("say-words")})); err != nil {
		return err
	}
	return r.GoOn("say-begin")
}

// preCheck asks two problems. Who has both right may skip the worked examples:
// they help those who don't know it yet and hold up those who do.
func (r run) preCheck() (skip bool, err error) {
	if err := r.say("say-precheck"); err != nil {
		return false, err
	}
	names := partTasks(r.lesson)
	got := 0
	for i := range 2 {
		p, w, err := r.Problem(names[i*(len(names)-1)], problem.NumbersGiven, nil)
		if err != nil {
			return false, err
		}
		a, err := r.Pose(p, w, page.Where{Text: r.Say("say-first-try", "i", i+1), Done: i, Of: 2}, r.Rules)
		if err != nil {
			return false, err
		}
		if a.Mark.Correct() && !a.Hint {
			got++
			r.known[a.Task] = true
		}
	}
	if got < 2 {
		return false, r.say("say-precheck-learn", "right", got)
	}
	reply, err := r.Ask(page.Prompt{Text: r.Say("say-precheck-skip"), Takes: page.Menu{Options: []string{r.Say("say-yes"), r.Say("say-no")}}})
	return reply == "1", err
}

// say shows one phrase.
func (r run) say(phrase string, pairs ...any) error {
	return r.Show(page.Page{page.Paragraph{Text: r.Say(phrase, pairs...)}})
}

// partTasks are the tasks of a lesson's parts, in order.
func partTasks(l content.Lesson) []string {
	var names []string
	for _, p := range l.Parts {
		names = append(names, p.Task)
	}
	return names
}

func levelOf(n int) problem.Level { return problem.Level(max(1, min(n, 3))) }

// part explains one thing, shows it worked, fades the help and asks it whole.
func (r run) part(part content.Part, place string, skip bool) error {
	p := page.Page{page.Heading{Text: place + ". " + part.Title}}
	for _, b := range part.Explain {
		blocks, err := r.explain(b)
		if err != nil {
			return err
		}
		p = append(p, blocks...)
	}
	if err := r.Show(p); err != nil {
		return err
	}
	level := levelOf(part.Level)
	whole, asked := max(part.Whole, 1), 0
	if !skip {
		var err error
		if asked, err = r.examplesAndFading(part.Task, level); err != nil {
			return err
		}
	}
	for i := asked; i < whole; i++ {
		if _, err := r.whole(part.Task, level, i, whole); err != nil {
			return err
		}
	}
	return nil
}

// whole asks a problem with no step of it given, the i-th of so many.
func (r run) whole(task string, level problem.Level, i, of int) (sitting.Answered, error) {
	p, w, err := r.Problem(task, level, nil)
	if err != nil {
		return sitting.Answered{}, err
	}
	return r.Pose(p, w, r.Problems(i, of), r.Rules)
}

// explain turns one block of a lesson into blocks of a page.
func (r run) explain(b content.Block) (page.Page, error) {
	switch {
	case b.Drawing != "":
		d, err := drawing.Named(b.Drawing, r.Drawings())
		return page.Page{r.Figure(d)}, err
	case b.Caution != "":
		return page.Page{r.Caution(b.Caution)}, nil
	}
	text, err := figures.Fill(b.Text)
	return page.Page{page.Paragraph{Text: text}}, err
}

// Title returns the title of a lesson for a menu, with its length.
func Title(l content.Lesson) string { return fmt.Sprintf("%s (%d min)", l.Title, l.Minutes) }
