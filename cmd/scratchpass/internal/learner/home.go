package learner

import (
	"context"
	"fmt"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/home"
	"scratchpass/lessons/record"
	"scratchpass/lessons/sitting"
)

// Doors are what the home screen opens that other groups of commands hold.
type Doors struct {
	Progress func(*sitting.Session, *record.Record) error
	Rehearse func(*sitting.Session) error
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
	return home.Run(s, HomeDoors(ctx, r, s, rec, doors))
}

// HomeDoors are the doors of the home screen for a session.
func HomeDoors(ctx context.Context, r *cli.Run, s *sitting.Session, rec *record.Record, doors Doors) home.Doors {
	h := home.Doors{SaveLathe: r.KeepLathe, Rehearse: func() error { return doors.Rehearse(s) }}
	if rec != nil {
		h.Progress = func() error { return doors.Progress(s, rec) }
	}
	return h
}

// run runs a flow as a sitting.
func run(s *sitting.Session, f sitting.Flow) error {
	_, err := s.Run(f)
	return err
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
