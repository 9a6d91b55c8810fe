package progress

import (
	"context"
	"strings"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/content"
	"scratchpass/lessons/course"
	"scratchpass/lessons/progress"
	"scratchpass/lessons/record"
	"scratchpass/lessons/rehearsal"
	"scratchpass/lessons/schedule"
	"scratchpass/lessons/sitting"
)

// view is a record with the words for its tasks.
type view struct {
	session *sitting.Session
	record  *record.Record
	course  course.Course
	items   []schedule.Item
	special map[string]bool
	words   map[string]content.TaskWords
}

// open opens the record for a look at it; there must be one. With whole the whole file is
// looked through first.
func open(ctx context.Context, r *cli.Run, whole bool) (view, error) {
	if r.RecordFile == cli.NoRecord {
		return view{}, cli.Usagef("--record none keeps no record to look at")
	}
	s, rec, err := r.OpenToRead(ctx, whole)
	if err != nil {
		return view{}, err
	}
	return viewOf(s, rec)
}

// viewOf joins a session's record with the words for its tasks.
func viewOf(s *sitting.Session, rec *record.Record) (v view, err error) {
	lessons := course.Load(s.Library)
	v = view{s, rec, lessons, lessons.Order(s.System), lessons.Special(), map[string]content.TaskWords{}}
	for _, it := range v.items {
		if v.words[it.Task], err = s.Library.Task(it.Task); err != nil {
			return v, err
		}
	}
	return v, nil
}

// speaker has the words for the pages.
func (v view) speaker() progress.Speaker {
	u := v.session.System.Length()
	return progress.Speaker{Say: v.session.Say, Title: v.title, Slip: v.slip, Mistake: v.mistake, Way: u.Text,
		Job: func(name string) string { return rehearsal.JobTitle(v.session.Library, name) }}
}

// mistake is the title of a mistake at the bench; its name where the words no longer know it.
func (v view) mistake(name string) string {
	words, err := v.session.Library.Bench()
	if w, ok := words.Mistakes[name]; ok && err == nil {
		return w.Title
	}
	return name
}

func (v view) title(task string) string { return v.words[task].Title }

func (v view) slip(task, slip string) string { return strings.TrimSpace(v.words[task].Slips[slip]) }
