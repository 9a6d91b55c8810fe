package served

import (
	"context"
	"errors"
	"fmt"
	"runtime/debug"
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
	k := keeping{seq: map[string]int64{}}
	for {
		select {
		case <-ctx.Done():
			return
		case <-tick:
			if err := s.keepMarks(ctx, &k); err != nil && ctx.Err() == nil && !postgres.Gone(err) {
				s.o.Fail(err)
			}
		}
	}
}

// keeping is what a node knows of the rooms whose marks it has kept.
type keeping struct {
	broken []string         // of which it can't be done; that is told once
	seq    map[string]int64 // as far as it was done last
}

// errNoFurther says that more happened in a room than can be read.
var errNoFurther = errors.New("what happened in it last can't be read")

func (s *Server) keepMarks(ctx context.Context, k *keeping) error {
	marks := school.Marks{DB: s.o.DB}
	rooms, err := marks.Behind(ctx, school.Wanted{Groups: school.Names(s.o.Settings.AllGroups()), But: k.broken, Draws: problem.Draws, Before: s.o.Clock().Add(-settled), Most: mostAtOnce})
	if err != nil {
		return err
	}
	for _, code := range rooms {
		seq, came, err := s.cameOf(ctx, code)
		if last, known := k.seq[code]; err == nil && known && seq == last { // it is behind, and would be for ever
			err = errNoFurther
		}
		switch {
		case err == nil:
			err = marks.Keep(ctx, code, seq, came)
			k.seq[code] = seq
		case ctx.Err() == nil && !errors.Is(err, class.ErrAway) && !postgres.Gone(err): // no reason to leave the others
			k.broken = append(k.broken, code)
			s.o.Fail(fmt.Errorf("what came of room %s can't be kept: %w", code, err))
			continue
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// cameOf is what came of a room up to its event seq. One that can't be marked must not end the program.
func (s *Server) cameOf(ctx context.Context, code string) (seq int64, came school.CameOf, err error) {
	defer func() {
		if p := recover(); p != nil {
			err = fmt.Errorf("it broke off: %v\n%s", p, debug.Stack())
		}
	}()
	var wrong error
	err = s.o.Hall.Glance(ctx, code, func(room *class.Room) {
		seq = room.Seq
		came, wrong = school.CameOfRoom(room)
	})
	return seq, came, errors.Join(err, wrong)
}
