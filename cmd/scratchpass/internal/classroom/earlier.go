package classroom

import (
	"context"
	"errors"
	"fmt"
	"os"
	"strings"
	"time"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/class"
	"scratchpass/lessons/class/journal"
	"scratchpass/lessons/page"
	"scratchpass/lessons/sitting"
)

// afterEnded finds where a class of a blueprint is kept whose last one was ended, unless its file was
// named: whoever sits there is asked whether that one goes on. A new one has a file of its own.
func (q questions) afterEnded(ctx context.Context, r *cli.Run, s *sitting.Session, makes class.Maker, o options) (questions, error) {
	file := string(q.room)
	if o.file != "" || !s.Attended || !journal.Is(file) {
		return q, nil
	}
	base := strings.TrimSuffix(file, ".class")
	for n := 2; ; n++ { // the last of those that were begun so
		e, err := look(ctx, string(q.room), makes)
		if err != nil || !e.over || !q.asks(e.asked) {
			return q, nil // begin says what is wrong with it
		}
		next := fmt.Sprintf("%s-%d.class", base, n)
		if _, err := os.Lstat(next); err == nil {
			q.room = journal.At(next)
			continue
		}
		on, err := meant(r, s, s.Say("class-was-ended", "time", e.began.In(time.Local).Format("2006-01-02 15:04"), "n", e.came))
		if err != nil || on {
			return q, err
		}
		fmt.Fprintln(r.Err, s.Say("class-beside", "file", next, "other", q.room))
		q.room = journal.At(next)
		return q, nil
	}
}

// earlier is a class that was begun before.
type earlier struct {
	file  string
	asked string // its first set
	began time.Time
	came  int
	over  bool
}

// look looks into the file of a class.
func look(ctx context.Context, file string, makes class.Maker) (e earlier, err error) {
	j, err := journal.OpenToRead(file)
	if err != nil {
		return e, err
	}
	defer func() { err = errors.Join(err, j.Close()) }()
	heads, err := j.Heads(ctx)
	if err != nil || len(heads) == 0 {
		return e, err
	}
	live, err := class.Open(ctx, j, heads[0], makes, time.Now)
	if err != nil {
		return e, fmt.Errorf("%s: %w", file, err)
	}
	live.See(func(room *class.Room) {
		e = earlier{file: file, began: room.Head.Began, came: len(room.Came()), over: room.Ended}
		if len(room.Sets) > 0 {
			e.asked = room.Sets[0].Text
		}
	})
	return e, nil
}

// goesOn reports whether a class is to go on. One that nobody came to does without a question.
func (e earlier) goesOn(r *cli.Run, s *sitting.Session) (bool, error) {
	if e.came == 0 || !s.Attended {
		return !e.over, nil
	}
	return meant(r, s, s.Say("class-today", "time", e.began.In(time.Local).Format("15:04"), "n", e.came))
}

// meant asks whether an earlier class is to go on.
func meant(r *cli.Run, s *sitting.Session, ask string) (bool, error) {
	i, err := sitting.Choose(s, s.Face, ask, page.Menu{Options: []string{s.Say("class-today-on"), s.Say("class-today-new")}})
	return i == 0, errors.Join(err, cli.LeaveScreen(s))
}
