package sitting

import (
	"errors"
	"math/rand/v2"
	"slices"
	"time"

	"scratchpass/lessons/page"
)

// Rules are what is true of one sitting, or of a part of it.
type Rules struct {
	NoHints   bool // a test
	AtTheEnd  bool // what came of the answers is told at the end
	Certainty Certainty
}

// Certainty tells at which problems it is asked how sure someone is.
type Certainty int

// At none, at those that can hurt someone, or at all.
const (
	NeverAsked Certainty = iota
	AskedIfCritical
	AlwaysAsked
)

// Seeds are where the numbers of a sitting's problems come from: the same seeds, the same
// problems. Short makes problem codes of four figures.
type Seeds struct {
	Seed   uint64 `json:"seed"`
	Stream uint64 `json:"stream,omitempty"`
	Short  bool   `json:"short,omitempty"`
}

// First is the seed of the first problem.
func (s Seeds) First() uint32 {
	st := Sitting{random: rand.NewPCG(s.Seed, s.Stream), short: s.Short}
	return st.seed()
}

// Flow is something to do in a sitting: a lesson, a practice. Its exported fields are all
// that it needs to be begun, or to be taken up again, as JSON.
type Flow interface {
	// Name is under which the flow is stored.
	Name() string
	// Run runs it from its beginning.
	Run(st *Sitting) error
	// Farewell is what is said to someone who stops in the middle of it.
	Farewell(st *Sitting) string
}

// Sitting is one run of a flow. It is a face to the flow: what goes through it is stored.
type Sitting struct {
	*Session
	Rules   Rules
	Answers []Answered // every marked answer, in order

	random *rand.PCG
	short  bool
	fresh  freshness
	log    *log
}

// Run begins a sitting of a flow and runs it. It is stored until it comes to its end. The
// answers are those that were marked, however it ended.
func (s *Session) Run(f Flow) ([]Answered, error) {
	st, err := s.begin(f)
	if err != nil {
		return nil, err
	}
	err = st.finish(f, f.Run(st))
	return st.Answers, err
}

// finish ends a sitting: one that was stopped stays stored.
func (st *Sitting) finish(f Flow, err error) error {
	switch {
	case errors.Is(err, page.ErrStopped):
		return page.Farewell(err, f.Farewell(st))
	case err != nil || st.Store == nil:
		return err
	}
	return st.Store.Clear()
}

func newSitting(s *Session, seeds Seeds) *Sitting {
	return &Sitting{Session: s, random: rand.NewPCG(seeds.Seed, seeds.Stream), short: seeds.Short, fresh: newFreshness()}
}

// seed is the seed of the next problem.
func (st *Sitting) seed() uint32 {
	n := uint32(st.random.Uint64() >> 32)
	if st.short {
		n &= 0xffff
	}
	return n
}

// Shuffled returns the names in a fresh order that does not begin with the last.
func (st *Sitting) Shuffled(names []string, last string) []string {
	out := slices.Clone(names)
	for i := len(out) - 1; i > 0; i-- {
		j := int(st.seed() % uint32(i+1))
		out[i], out[j] = out[j], out[i]
	}
	if len(out) > 1 && out[0] == last {
		out[0], out[1] = out[1], out[0]
	}
	return out
}

// LastTask is the task that was asked last; empty at the beginning.
func (st *Sitting) LastTask() string {
	if len(st.Answers) == 0 {
		return ""
	}
	return st.Answers[len(st.Answers)-1].Task
}

// Now is when the last page was shown or the last answer came.
func (st *Sitting) Now() time.Time { return st.log.now }

// Done says what the sitting came to.
func (st *Sitting) Done() string { return st.Session.Done(st.Answers) }

// Done says what answers come to.
func (s *Session) Done(answers []Answered) string {
	if len(answers) == 0 {
		return s.Say("say-done-none")
	}
	return s.Say("say-done", "n", len(answers), "right", Right(answers))
}

// Stopped is what is said to someone who stops in the middle.
func (st *Sitting) Stopped() string { return st.Say("say-stopped", "done", st.Done()) }
