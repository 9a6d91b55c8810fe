package rehearsal

import (
	"errors"
	"slices"

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
	if r.Keep == nil || moves == 0 {
		return nil
	}
	return r.Keep(slices.Repeat([]string{bench.Undo}, moves)...)
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
		if errors.Is(err, page.ErrStopped) && !s.OnPages {
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

// recall finds what can be taken back in a rehearsal that is taken up.
func (r *Rehearsal) recall() {
	b := bench.New(r.Bench.Job)
	b.Live = r.Bench.Live
	for i, done := range r.Bench.Log {
		if i >= len(r.Bench.Log)-mostUndone {
			r.done = append(r.done, b)
		}
		b, _ = b.Step(done.Event)
	}
}

// askedAgain asks whether to take back what broke something, where one was stopped before that was
// answered: a rehearsal that is taken up, is over and not yet in the book. By the clock it is all
// taken back since the half-nut was closed.
func (s Flow) askedAgain(r *Rehearsal) error {
	last := len(r.done) - 1
	if r.kept || !r.Bench.Over || last < 0 {
		return nil
	}
	for last > 0 && r.Bench.Live && r.done[last].Nut && r.done[last].Turn != 0 {
		last--
	}
	return s.takeBack(r, r.done[last])
}
