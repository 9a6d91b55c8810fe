package learner

import (
	"context"
	"fmt"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons"
	"scratchpass/lessons/record"
	"scratchpass/quiz/problem"
)

// Doors are what the home screen opens that other groups of commands hold.
type Doors struct {
	Progress func(context.Context, *lessons.Session, *record.Record) error
	Rehearse func(*lessons.Session) error
}

// Home is what the program does without a command: the home screen for a person at a
// terminal, else what there is.
func Home(ctx context.Context, r *cli.Run, doors Doors) error {
	if !r.AtTerminal() {
		return about(r)
	}
	s, rec, err := r.Open(ctx)
	if err != nil {
		return err
	}
	rehearse := func() error { return doors.Rehearse(s) }
	if rec == nil {
		return s.Home(r.KeepLathe, nil, nil, rehearse)
	}
	best := func() error {
		return s.Best(lessons.CourseOrder(s.Library, s.System), summariesOf(rec), problem.NumbersGiven)
	}
	progress := func() error { return doors.Progress(ctx, s, rec) }
	return s.Home(r.KeepLathe, best, progress, rehearse)
}

// summariesOf is how a session asks what a record holds of each task.
func summariesOf(rec *record.Record) func() (map[string]record.Summary, error) {
	return func() (map[string]record.Summary, error) {
		of, _, err := rec.Summaries()
		return of, err
	}
}

// about says what the program is, where no one is at a terminal.
func about(r *cli.Run) error {
	_, err := fmt.Fprint(r.Out, `Scratchpass: rehearse single-point threading before you stand at the lathe.
  scratchpass                      at a terminal: the home screen
  scratchpass learn                the lessons; learn how-deep-to-go --plain for a pipe or a screen reader
  scratchpass quiz                 practice
  scratchpass work --list          what can be worked out with your own numbers
  scratchpass lathe                describe your machine
  scratchpass --help               everything
This is rehearsal, not permission. Local rules and your instructor come first.
`)
	return err
}
