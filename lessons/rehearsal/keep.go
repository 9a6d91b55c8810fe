package rehearsal

import (
	"cmp"
	"slices"
	"time"

	"scratchpass/calc"
	"scratchpass/lessons/record"
	"scratchpass/quiz/bench"
)

// sum tells apart jobs of one name.
func (r *Rehearsal) sum() string { return record.SumOfJob(r.As) }

// takeUp finds out when a rehearsal that is gone on with was begun, and how many hints it had.
func (s Flow) takeUp(r *Rehearsal) error {
	if s.Book == nil || len(r.Bench.Log) == 0 {
		return nil
	}
	if b, ok, err := s.begunOf(r); ok || err != nil {
		r.Begun, r.Hints = b.At, b.Hints
		return err
	}
	if r.kept = r.Bench.Over; r.kept {
		return nil
	}
	return s.begin(r) // its record is another, or was kept by an older version
}

// begunOf is what the book has of a rehearsal that was begun.
func (s Flow) begunOf(r *Rehearsal) (b record.Begun, ok bool, err error) {
	all, err := s.Book.BegunRehearsals()
	i := slices.IndexFunc(all, func(b record.Begun) bool { return b.Job == r.Name && b.JobSum == r.sum() })
	if i < 0 {
		return record.Begun{}, false, err
	}
	return all[i], true, err
}

// begin notes that a rehearsal was begun, once.
func (s Flow) begin(r *Rehearsal) error {
	if !r.Begun.IsZero() {
		return nil
	}
	r.Begun = s.Clock()
	return s.noteBegun(r)
}

func (s Flow) noteBegun(r *Rehearsal) error {
	if s.Book == nil {
		return nil
	}
	return s.Book.BeginRehearsal(record.Begun{Job: r.Name, JobSum: r.sum(), Thread: r.Bench.Job.Thread.String(), At: r.Begun, Hints: r.Hints})
}

// Finish keeps a rehearsal that has come to its end. It is kept once, however often one is
// stopped before that is known.
func (s Flow) Finish(r *Rehearsal, at time.Time) error {
	if s.Book == nil || r.Bench.Outcome == nil {
		return nil
	}
	return s.Book.FinishRehearsal(entry(r, at))
}

// FinishLeft keeps a rehearsal whose log has come to its end and that the book still has as
// begun: the program was stopped between the two.
func (s Flow) FinishLeft(r *Rehearsal, at time.Time) error {
	if s.Book == nil {
		return nil
	}
	b, ok, err := s.begunOf(r)
	if !ok || err != nil || at.Before(b.At) { // of a log that was there before it is not
		return err
	}
	r.Begun, r.Hints = b.At, b.Hints
	return s.Finish(r, at)
}

// entry is a rehearsal as the book has it.
func entry(r *Rehearsal, at time.Time) record.Rehearsal {
	b := r.Bench
	return record.Rehearsal{
		At: at, Begun: r.Begun, Job: r.Name, JobSum: r.sum(), Thread: b.Job.Thread.String(), Verdict: b.Outcome.Verdict,
		Mistakes: made(b.Mistakes, r.TakenBack), Seconds: calc.Round(b.Clock, 1), Passes: len(b.Passes), Room: room(b.Margins), Hints: r.Hints, Live: b.Live,
	}
}

// made is how often each mistake was made.
func made(stand, takenBack []bench.Mistake) []record.MistakeMade {
	all := []record.MistakeMade{}
	of := func(m bench.Mistake) *record.MistakeMade {
		i := slices.IndexFunc(all, func(k record.MistakeMade) bool { return k.Name == string(m.Name) })
		if i < 0 {
			i, all = len(all), append(all, record.MistakeMade{Name: string(m.Name)})
		}
		return &all[i]
	}
	for _, m := range stand {
		of(m).Times++
	}
	for _, m := range takenBack {
		of(m).TakenBack++
	}
	return all
}

// room is what passes left, in all and at each speed.
func room(margins []bench.Margin) record.Room {
	if len(margins) == 0 {
		return record.Room{}
	}
	all := slices.SortedStableFunc(slices.Values(margins), func(a, b bench.Margin) int { return cmp.Compare(a.Seconds, b.Seconds) })
	low, high := all[(len(all)-1)/2], all[len(all)/2]
	r := record.Room{Passes: len(all), Shortest: way(all[0].Left, all[0].Seconds), Median: way((low.Left + high.Left).Times(0.5), (low.Seconds+high.Seconds)/2)}
	for _, m := range all { // the least time first
		i := slices.IndexFunc(r.Speeds, func(s record.SpeedRoom) bool { return s.RPM == m.RPM })
		if i < 0 {
			i, r.Speeds = len(r.Speeds), append(r.Speeds, record.SpeedRoom{RPM: m.RPM, Shortest: way(m.Left, m.Seconds)})
		}
		r.Speeds[i].Passes++
		r.Speeds[i].Longest = way(m.Left, m.Seconds)
	}
	slices.SortFunc(r.Speeds, func(a, b record.SpeedRoom) int { return cmp.Compare(a.RPM, b.RPM) })
	return r
}

func way(left calc.Length, seconds float64) record.Way {
	return record.Way{Inches: calc.Round(left.Inches(), 5), Seconds: calc.Round(seconds, 3)}
}
