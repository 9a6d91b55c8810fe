package problems

import (
	"context"
	"errors"
	"net/url"
	"strings"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/page"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/wording"
)

// Pages is work as a page of a browser: the list of tasks, and the working of one with
// numbers of one's own.
func Pages(s *sitting.Session) []web.Lookup {
	return []web.Lookup{{Path: "/work", Label: s.Say("web-look-work"), Make: func(_ context.Context, asked url.Values) (web.Looked, error) {
		if name := asked.Get("task"); name != "" {
			return worked(s, name, asked)
		}
		return tasksLooked(s)
	}}}
}

// tasksLooked lists the tasks that start from numbers, by the stage of the job.
func tasksLooked(s *sitting.Session) (web.Looked, error) {
	l := web.Looked{Title: s.Say("web-look-work"), Body: page.Page{page.Paragraph{Text: s.Say("web-work-which")}}}
	stage := problem.Stage("")
	for _, t := range s.Tasks.All() {
		if len(t.Inputs) == 0 {
			continue
		}
		w, err := s.Library.Task(t.Name)
		if err != nil {
			return l, err
		}
		link := web.Link{To: "/work?" + url.Values{"task": {t.Name}}.Encode(), Text: w.Title}
		if t.Stage != stage {
			stage = t.Stage
			link.Part = s.Say("stage-" + string(stage))
		}
		l.Links = append(l.Links, link)
	}
	return l, nil
}

// worked is the working of a task with the numbers that were given; without one the form
// alone.
func worked(s *sitting.Session, name string, asked url.Values) (web.Looked, error) {
	t, err := s.Tasks.Find(name)
	if err != nil {
		return web.Looked{Title: s.Say("web-look-work")}, err
	}
	w, err := wording.Load(s.Library, t.Name)
	if err != nil {
		return web.Looked{}, err
	}
	system := s.System
	if !t.Allows(system) {
		system = t.Systems[0]
	}
	l := web.Looked{Title: w.Task.Title, Send: s.Say("web-work-send"), Fields: []web.Field{{Name: "task", Value: t.Name, Hidden: true}}}
	v, given := problem.NewValues(t.Inputs, system), 0
	for _, in := range t.Inputs {
		value := strings.TrimSpace(asked.Get(in.Name))
		f := web.Field{Name: in.Name, Label: in.Name, Value: value, Hint: in.Wants(system)}
		switch in.Type {
		case problem.InputWord:
			f.Options, f.Hint = append([]string{""}, in.Words...), ""
		case problem.InputThread, problem.InputCuts:
		default:
			f.Number = true
		}
		if in.Symbol != in.Name {
			f.Label = in.Name + " (" + in.Symbol + ")"
		}
		f.Hint = strings.Trim(f.Hint+"; "+mayBe(s, t, in), "; ")
		l.Fields = append(l.Fields, f)
		if value == "" {
			continue
		}
		given++
		if e := v.Read(in.Name, value); e != nil && err == nil {
			err = e
		}
	}
	if err != nil || given == 0 {
		return l, plainly(err)
	}
	p, err := problem.FromValues(t, v, s.Lathe)
	if err != nil {
		return l, plainly(err)
	}
	l.Body = workedPage(p, w)
	return l, nil
}

// mayBe says that an input may be left out, and what else would tell the same.
func mayBe(s *sitting.Session, t *problem.Task, in problem.Input) string {
	if in.Group == "" {
		if in.Extra {
			return s.Say("web-work-may")
		}
		return ""
	}
	var names []string
	for _, other := range t.Inputs {
		if other.Group == in.Group {
			names = append(names, other.Name)
		}
	}
	return s.Say("web-work-one", "names", strings.Join(names, ", "))
}

// plainly is an error without the two lines in front of the name of an option: a form has none.
func plainly(err error) error {
	if err == nil {
		return nil
	}
	return cli.UsageError(errors.New(strings.ReplaceAll(err.Error(), "--", "")))
}
