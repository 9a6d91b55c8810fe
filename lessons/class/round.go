package class

import (
	"fmt"
	"slices"
	"time"

	"scratchpass/content"
	"scratchpass/quiz/bench"
	"scratchpass/quiz/machine"
)

// Round is a bench round: all rehearse the same pass of the same job, each at a lathe of their
// own that stands where all begin.
type Round struct {
	Text   string // the job and its lathe, as a log of the bench begins: it stands by itself
	Name   string // of the job
	Pass   bench.OnePass
	Hints  bool // may be taken
	Closed bool // it takes no more moves
	Counts bool // are told on the wall however few have made a move
	Shown  int  // on the wall: 1 for what came, and one more for each move of the pass

	began time.Time
}

// Work is what someone has done in a round.
type Work struct {
	Bench bench.Bench
	Moves []Event // each made one step of the bench
	Hints int
	End   End
}

// End is how a pass came to its end.
type End string

// The ends.
const (
	GoesOn  End = ""        // it has not
	Through End = "through" // the cut is made, the tool is out and back
	Ruined  End = "scrap"   // nothing mends it
)

// mostMoves is how many moves someone may make in a round. A pass by hand takes a dozen, with
// the whole set-up before it three dozen.
const mostMoves = 300

// JobText is a job on its lathe as the event of a round keeps it: whatever becomes of the jobs
// that ship, the round can be made again from it. own is the lathe of a job that names none.
func JobText(name string, written content.Job, own machine.Lathe) (string, error) {
	j, err := bench.ParseJob(written, own)
	if err != nil {
		return "", err
	}
	as, err := bench.OneLine(written)
	if err != nil {
		return "", err
	}
	lathe, err := bench.OneLine(j.Lathe.File())
	if err != nil {
		return "", err
	}
	return bench.New(j).Transcript(content.OneLine(name), as, lathe), nil
}

// NewRound makes a round of a job and a pass of its card; 0 is the first with the set-up before
// it. What a job has in store for who is at it alone is left out: all are to have the same.
func NewRound(text string, pass int) (*Round, error) {
	script, err := bench.ParseScript("job", []byte(text))
	if err != nil {
		return nil, err
	}
	if script.As == "" || script.Lathe == "" {
		return nil, fmt.Errorf("job %s: a round needs the job itself and its lathe, not its name alone", script.Job)
	}
	j, err := script.ReadJob(script.Job, content.Job{}, machine.Lathe{})
	if err != nil {
		return nil, err
	}
	j.Surprises = nil
	plan, err := bench.NewPlan(j, bench.AsUsual)
	if err != nil {
		return nil, err
	}
	one, err := plan.Pass(pass)
	if err != nil {
		return nil, err
	}
	return &Round{Text: text, Name: script.Job, Pass: one}, nil
}

// Round is the round at hand, and its number in the room; nil where questions are.
func (r *Room) Round() (at *Round, n int) {
	if r.round < 0 {
		return nil, -1
	}
	return r.Rounds[r.round], r.round
}

// benched begins a round; one that goes on is closed by it.
func (r *Room) benched(e Event) error {
	round, err := NewRound(e.Text, e.N)
	if err != nil {
		return err
	}
	r.toQuestions()
	round.Hints, round.began = e.Name == WithHints, e.At
	r.Rounds = append(r.Rounds, round)
	r.round = len(r.Rounds) - 1
	return nil
}

// WithHints is the name of a round in which hints may be taken.
const WithHints = "hints"

// toQuestions leaves the bench: the round at hand takes no more moves.
func (r *Room) toQuestions() {
	if round, _ := r.Round(); round != nil {
		round.Closed, r.round = true, -1
	}
}

// halted closes the round at hand, and shows so much of what came of it on the wall.
func (r *Room) halted(e Event) {
	if round, n := r.Round(); round != nil && n == e.Set {
		round.Closed, round.Shown = true, min(max(0, e.N), round.lines())
		round.Counts = round.Counts || e.Name == WithCounts
	}
}

// lines is how much of a round can be shown on the wall.
func (round *Round) lines() int { return 1 + len(round.Pass.Moves) }

// Work is what someone has done in a round: nothing before their first move.
func (r *Room) Work(p *Person, n int) Work {
	if w, ok := p.Works[n]; ok {
		return w
	}
	return Work{Bench: r.Rounds[n].Pass.Start}
}

// Refusal is why a move is not taken.
type Refusal string

// The refusals.
const (
	Taken      Refusal = ""       // it is not refused
	WasClosed  Refusal = "closed" // the round takes no more moves
	WasOver    Refusal = "over"   // the pass has come to its end
	WasStale   Refusal = "stale"  // the lathe has gone on since it was looked at
	WasTooMany Refusal = "many"   // nobody needs so many
	WasWhole   Refusal = "whole"  // it is none of a pass that is made by hand
)

// Refuses says why a move of someone is not taken. N of its event is how many they had made when
// they saw the lathe: so no move is made twice, or at a lathe that stands otherwise than they saw.
func (r *Room) Refuses(p *Person, e Event, move bench.Event) Refusal {
	round, n := r.Round()
	if round == nil || n != e.Set || round.Closed || r.Ended || p.Removed {
		return WasClosed
	}
	switch w := r.Work(p, n); {
	case w.End != GoesOn:
		return WasOver
	case e.N != len(w.Moves):
		return WasStale
	case len(w.Moves) >= mostMoves:
		return WasTooMany
	case !round.Pass.Takes(move):
		return WasWhole
	}
	return Taken
}

// moved makes a move of someone, on from where their lathe stands.
func (r *Room) moved(p *Person, e Event) {
	round, n := r.Round()
	if round == nil {
		return
	}
	move, err := round.Pass.Plan.Job.Parse(e.Text)
	if err != nil || r.Refuses(p, e, move) != Taken {
		return
	}
	w := r.Work(p, n)
	w.Bench, _ = w.Bench.Step(move)
	w.Moves = append(w.Moves, e) // who reads it meanwhile has its own length
	switch {
	case round.Pass.Ruined(w.Bench):
		w.End = Ruined
	case round.Pass.Done(w.Bench):
		w.End = Through
	}
	p.Works[n] = w
}

// hintedAtBench counts a hint that someone took at the bench.
func (r *Room) hintedAtBench(p *Person, e Event) {
	if round, n := r.Round(); round != nil && n == e.Set {
		w := r.Work(p, n)
		w.Hints++
		p.Works[n] = w
	}
}

// Moved reports whether a move with a key is among those of someone in a round.
func (r *Room) Moved(p *Person, n int, key string) bool {
	return key != "" && slices.ContainsFunc(p.Works[n].Moves, func(e Event) bool { return e.Key == key })
}

// mergeWork gives someone what another did in rounds in which they have done nothing: all have
// the same there, visitors too.
func (p *Person) mergeWork(from *Person) {
	for n, w := range from.Works {
		if _, has := p.Works[n]; !has {
			p.Works[n] = w
		}
	}
}
