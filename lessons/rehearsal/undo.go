package rehearsal

import (
	"errors"

	"scratchpass/calc"
	"scratchpass/lessons/page"
	"scratchpass/quiz/bench"
)

// remember keeps the bench as it was before a move, so that the move can be taken back.
func (r *Rehearsal) remember(before bench.Bench) {
	if len(r.Bench.Log) == len(before.Log) {
		return
	}
	r.done = append(r.done, before)
	if len(r.done) > mostUndone {
		r.done = append([]bench.Bench{}, r.done[1:]...)
	}
}

// takeTo goes back to the bench as it was. What was done wrong since stays in the debrief.
func (r *Rehearsal) takeTo(before bench.Bench) error {
	moves := len(r.Bench.Log) - len(before.Log)
	r.TakenBack = append(r.TakenBack, r.Bench.Mistakes[len(before.Mistakes):]...)
	r.Bench = before
	for len(r.done) > 0 && len(r.done[len(r.done)-1].Log) >= len(before.Log) {
		r.done = r.done[:len(r.done)-1]
	}
	for range moves {
		if r.Keep == nil {
			return nil
		}
		if err := r.Keep(bench.Undo); err != nil {
			return err
		}
	}
	return nil
}

// mayTakeBack reports whether undo would take the last move back.
func (r *Rehearsal) mayTakeBack() bool {
	if len(r.done) == 0 {
		return false
	}
	before := r.done[len(r.done)-1]
	return r.Bench.Clock <= before.Clock || len(r.Bench.Spoiled) > len(before.Spoiled)
}

// undo takes the last move back, where no time has gone by with it, or where it made the
// part scrap: it was a rehearsal.
func (s Flow) undo(r *Rehearsal) error {
	if len(r.done) == 0 {
		return s.tell(s.Say("bench-no-undo"))
	}
	before := r.done[len(r.done)-1]
	if !r.mayTakeBack() {
		return s.tell(s.Say("bench-no-undo-time"))
	}
	move := r.Bench.Log[len(r.Bench.Log)-1].Event.Write(r.Bench.Job.System())
	if err := r.takeTo(before); err != nil {
		return err
	}
	return s.tell(s.Say("bench-undone", "move", move))
}

// takeBack lets a move be taken back that broke something: it was a rehearsal. What
// happened stays in the debrief.
func (s Flow) takeBack(r *Rehearsal, before bench.Bench) error {
	if r.Bench.Outcome == nil || r.Bench.Outcome.Why == "done" {
		return nil
	}
	if err := s.Show(page.Page{s.machine(r.Bench)}); err != nil {
		return err
	}
	var word string
	for known := false; !known; { // a rehearsal does not end of a mistyped word
		reply, err := s.Ask(page.Prompt{Text: s.Say("bench-take-back"), Takes: page.Words{Back: wordBack, Moves: true}})
		if errors.Is(err, page.ErrStopped) {
			return nil // the end: the debrief follows
		}
		if err != nil {
			return err
		}
		if word, known = page.Typed(reply, []string{"", wordBack, bench.Undo, wordLeave}); !known {
			if err := s.tell(s.Say("bench-take-back-only", "reply", calc.Quoted(reply))); err != nil {
				return err
			}
		}
	}
	if word == "" {
		return nil
	}
	if err := r.takeTo(before); err != nil {
		return err
	}
	if word == wordLeave { // without the broken move, so that it can be gone on with
		return page.ErrStopped
	}
	return nil
}
