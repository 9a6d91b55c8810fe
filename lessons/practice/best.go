package practice

import (
	"slices"

	"scratchpass/lessons/course"
	"scratchpass/lessons/page"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/problem"
)

// Best practises what the record says is best now, and says why each comes.
type Best struct {
	Level problem.Level `json:"level"`
}

var _ sitting.Flow = Best{}

// Name is under which the flow is stored.
func (Best) Name() string { return "best" }

// Farewell is what is said to someone who stops in the middle of it.
func (Best) Farewell(st *sitting.Sitting) string { return st.Stopped() }

// chosen is what the record said was best.
type chosen struct {
	Task    string          `json:"task"` // empty when nothing more fits into the time
	Reason  schedule.Reason `json:"reason"`
	Minutes float64         `json:"minutes"`
	Summary record.Summary  `json:"summary"`
}

// Run asks until nothing more fits into the time.
func (f Best) Run(st *sitting.Sitting) error {
	rules := st.Rules
	rules.Certainty = sitting.AskedIfCritical
	if err := st.Show(page.Page{page.Heading{Text: st.Say("say-best", "minutes", course.ReviewMinutes)}, page.Typeable{Text: st.Say("say-words")}}); err != nil {
		return err
	}
	items := course.Order(st.Library, st.System)
	var recent []string
	for minutes := 0.0; ; {
		c, err := sitting.Fact(st, func() (chosen, error) { return next(st, items, recent) })
		if err != nil {
			return err
		}
		if minutes += c.Minutes; c.Task == "" || minutes > course.ReviewMinutes {
			break
		}
		recent = append(recent, c.Task)
		if c.Summary.Stuck() {
			if err := helpStuck(st, c.Task, f.Level); err != nil {
				return err
			}
		}
		at := slices.IndexFunc(items, func(it schedule.Item) bool { return it.Task == c.Task })
		if at < 0 {
			return sitting.ErrChanged // the task is no more
		}
		wants := func(p *problem.Problem) bool { return items[at].Wants(c.Summary, p) }
		p, w, err := st.Problem(c.Task, f.Level, wants)
		if err != nil {
			return err
		}
		why := whyNow(st, c, w.Task.Title)
		if _, err := st.Pose(p, w, page.Where{Text: why}, rules); err != nil {
			return err
		}
	}
	return closing(st)
}

// whyNow says why a task comes. Of a run that has not begun it says nothing.
func whyNow(st *sitting.Sitting, c chosen, title string) string {
	phrase := "say-why-" + string(c.Reason)
	if c.Summary.Run.Length == 0 && (c.Reason == schedule.InProgress || c.Reason == schedule.AnotherDay) {
		phrase += "-none"
	}
	return st.Say(phrase, "task", title, "run", c.Summary.Run.Length)
}

// next is what is best now.
func next(st *sitting.Sitting, items []schedule.Item, recent []string) (chosen, error) {
	of, _, err := st.Book.Summaries()
	if err != nil {
		return chosen{}, err
	}
	c, ok := schedule.Next(items, of, recent, st.Now())
	if !ok {
		return chosen{}, nil
	}
	return chosen{c.Item.Task, c.Reason, c.Item.Minutes, of[c.Item.Task]}, nil
}

// helpStuck shows a worked example to someone for whom trying again is no help.
func helpStuck(st *sitting.Sitting, task string, level problem.Level) error {
	if err := st.Show(page.Page{page.Paragraph{Text: st.Say("say-stuck")}}); err != nil {
		return err
	}
	p, w, err := st.Problem(task, level, nil)
	if err != nil {
		return err
	}
	return st.Show(sitting.Example(st.Session, p, w))
}
