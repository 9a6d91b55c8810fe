package served

import (
	"html/template"
	"time"

	"scratchpass/lessons/class"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/page"
)

// wallRound is a bench round as all may see it: no name.
type wallRound struct {
	Title   string // which pass
	Job     string
	Asks    template.HTML // the pass with its readings
	Panel   template.HTML // where the lathe stands at the start
	Closed  bool
	Shown   int
	Few     bool
	Spread  class.RoundSpread
	Bars    []bar
	Working template.HTML // as many moves of the pass as are shown
}

// wallRoundOf is the round at hand; nil where questions are.
func (s *Server) wallRoundOf(room *class.Room, now time.Time) (*wallRound, error) {
	round, n := room.Round()
	if round == nil {
		return nil, nil
	}
	o, err := s.onePass(*round)
	if err != nil {
		return nil, err
	}
	w := &wallRound{Title: class.Bench{Round: *round}.Title(o), Job: round.Pass.Plan.Job.Title, Closed: round.Closed, Shown: round.Shown}
	w.Spread = class.SpreadOf(room.RoundStanding(n, now, s.awayAt(now)))
	w.Few = w.Spread.Few() && !round.Counts
	if w.Shown > 0 && !w.Few {
		w.Bars = append([]bar{{s.say("class-bar-clean"), w.Spread.Clean, w.Spread.Began, true}}, s.madeBars(o, w.Spread)...)
	}
	asks := o.Asks()
	if w.Asks, err = web.Blocks(asks[1:], page.Prompt{}); err != nil { // the job is its heading
		return nil, err
	}
	if w.Panel, err = web.Panel(o.Panel(round.Pass.Start)); err != nil {
		return nil, err
	}
	if w.Shown > 1 {
		w.Working, err = web.Blocks(page.Page{o.Goes()[:w.Shown-1]}, page.Prompt{})
	}
	return w, err
}
