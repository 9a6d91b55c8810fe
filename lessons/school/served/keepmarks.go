package served

import (
	"context"
	"errors"
	"fmt"
	"time"

	"scratchpass/lessons/class"
	"scratchpass/lessons/postgres"
	"scratchpass/lessons/school"
	"scratchpass/quiz/problem"
)

// settled is how long nothing has to have happened in a room before what came of it is worked out, and
// mostAtOnce of how many rooms that is done at one tick.
const (
	settled    = time.Minute
	mostAtOnce = 20
)

// KeepMarks keeps, at each tick, what came of rooms in which more has happened since, until the context
// ends. Every node may do so at once: the same comes of it.
func (s *Server) KeepMarks(ctx context.Context, tick <-chan time.Time) {
	var broken []string // rooms of which it can't be done; that is told once
	for {
		select {
		case <-ctx.Done():
			return
		case <-tick:
			if err := s.keepMarks(ctx, &broken); err != nil && ctx.Err() == nil && !postgres.Gone(err) {
				s.o.Fail(err)
			}
		}
	}
}

func (s *Server) keepMarks(ctx context.Context, broken *[]string) error {
	marks := school.Marks{DB: s.o.DB}
	rooms, err := marks.Behind(ctx, school.Wanted{Groups: s.o.Settings.AllGroups(), But: *broken, Draws: problem.Draws, Before: s.o.Clock().Add(-settled), Most: mostAtOnce})
	if err != nil {
		return err
	}
	for _, code := range rooms {
		seq, came, err := s.cameOf(ctx, code)
		switch {
		case err == nil:
			err = marks.Keep(ctx, code, seq, came)
		case ctx.Err() == nil && !errors.Is(err, class.ErrAway) && !postgres.Gone(err): // no reason to leave the others
			*broken = append(*broken, code)
			s.o.Fail(fmt.Errorf("what came of room %s can't be kept: %w", code, err))
			continue
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// cameOf is what came of a room up to its event seq.
func (s *Server) cameOf(ctx context.Context, code string) (seq int64, came school.CameOf, err error) {
	var wrong error
	err = s.o.Hall.Glance(ctx, code, func(room *class.Room) {
		seq = room.Seq
		came, wrong = school.CameOfRoom(room)
	})
	return seq, came, errors.Join(err, wrong)
}
