// Package rehearsal is the flow of a whole threading job at the bench: moves, what comes of
// them, the debrief, the card of a job, and passes against a real clock.
package rehearsal

import (
	"errors"
	"slices"
	"strconv"
	"strings"
	"time"

	"scratchpass/content"
	"scratchpass/lessons/page"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/bench"
)

// Flow is what is said and asked at the bench, in a session. What is kept of a rehearsal that
// goes on is its log of moves, by which it is gone on with; what it came to goes into the book.
type Flow struct{ *sitting.Session }

// Show shows a page.
func (s Flow) Show(p page.Page) error { return s.Face.Show(p) }

// Ask asks.
func (s Flow) Ask(q page.Prompt) (string, error) { return s.Face.Ask(q) }

// tell shows one sentence.
func (s Flow) tell(text string) error { return s.Show(page.Page{page.Paragraph{Text: text}}) }

// Rehearsal is one threading job at the bench.
type Rehearsal struct {
	Name  string // of the job, as the log has it
	As    string // the job and its lathe on one line each, where the name does not tell them
	Lathe string
	Bench bench.Bench
	Keep  func(lines ...string) error // keeps lines of the log; nil keeps none

	TakenBack []bench.Mistake // what was done and taken back
	Begun     time.Time       // when its first move was made; zero before that
	Hints     int             // that were asked for

	kept    bool // it was over when it was taken up, and is in the book
	words   content.BenchWords
	earlier page.Page     // what was done in an earlier sitting, until it is told
	done    []bench.Bench // the bench before each of the last moves, the last at the end
	place   string        // where the list of moves was last shown
	steps   bool          // goes step by step, though the clock is real
}

// mostUndone is how many moves can be taken back one after the other.
const mostUndone = 50

// Words that can be typed at the bench besides moves. stop is a move here: it stops the
// spindle.
const (
	wordLeave = "leave"
	wordLook  = "look"
	wordLog   = "log"
	wordMoves = "moves"
	wordBack  = "back"
	WordCard  = "card"
	wordSteps = "steps"
	wordLive  = "live"
)

// footWords are the words that a face shows beside the keys.
var footWords = []string{wordMoves, wordLook, page.WordHint, bench.Undo, WordCard, wordLog, page.WordHelp, wordLeave}

// footWords are those of now: with a real clock there is the way to and from it.
func (s Flow) footWords(r *Rehearsal) []string {
	switch {
	case !r.Bench.Live || !s.HasClock():
		return footWords
	case r.steps:
		return append(slices.Clone(footWords), wordLive)
	}
	return append(slices.Clone(footWords), wordSteps)
}

// Run lets the learner work at the bench until the part is done or something is broken,
// and tells what came of it.
func (s Flow) Run(r *Rehearsal) error { return page.Farewell(s.run(r), s.Say("bench-stopped")) }

func (s Flow) run(r *Rehearsal) error {
	var err error
	if r.words, err = s.Library.Bench(); err != nil {
		return err
	}
	if err := s.takeUp(r); err != nil {
		return err
	}
	if err := s.Show(s.jobPage(r)); err != nil {
		return err
	}
	r.earlier = s.lastMoves(r)
	r.recall()
	if err := s.askedAgain(r); err != nil {
		return err
	}
	for !r.Bench.Over {
		if err := s.atTheBench(r); err != nil {
			return err
		}
	}
	before, err := s.before(r)
	switch {
	case r.kept: // the last of them is this one
		before = before[:max(len(before)-1, 0)]
	case err == nil:
		err = s.Finish(r, s.Clock())
	}
	return errors.Join(err, s.Show(s.debriefWith(r, before))) // what can't be kept is told all the same
}

// atTheBench asks for one move and makes it.
func (s Flow) atTheBench(r *Rehearsal) error {
	offers := r.Bench.Offers()
	if err := s.Show(append(page.Page{s.panel(r, offers)}, r.earlier...)); err != nil {
		return err
	}
	r.earlier = nil
	reply, err := s.Ask(page.Prompt{Text: s.Say("bench-ask"), Takes: page.Words{Moves: true}, Words: s.footWords(r)})
	if err != nil {
		return err
	}
	switch word, _ := page.Typed(reply, []string{page.WordHelp, page.WordRepeat, wordLeave, page.WordHint, wordLook, wordLog, wordMoves, WordCard, wordBack, bench.Undo, wordSteps, wordLive}); word {
	case wordLeave:
		return page.ErrStopped
	case page.WordHelp:
		return s.Show(s.allMoves(r))
	case wordMoves:
		return s.Show(s.offered(offers))
	case page.WordRepeat:
		return s.Show(s.jobPage(r))
	case page.WordHint:
		return s.giveHint(r)
	case wordBack, bench.Undo:
		return s.undo(r)
	case WordCard:
		return s.card(r.Bench.Job)
	case wordLook:
		return s.look(r)
	case wordSteps, wordLive:
		return s.setSteps(r, word == wordSteps)
	case wordLog:
		return s.Show(page.Page{page.Log{Text: r.Bench.Transcript(r.Name, "", "")}}) // what job and lathe are, repeat tells
	}
	if strings.TrimSpace(reply) == "" {
		return nil
	}
	if term, ok := s.Explained(reply); ok {
		return s.Show(term)
	}
	e, err := s.move(r, reply, offers)
	if err != nil || e.Verb == "" {
		return err
	}
	return s.do(r, e)
}

func placeOf(offers []bench.Offer) string {
	if len(offers) == 0 {
		return ""
	}
	return offers[0].Text + offers[len(offers)-1].Text
}

// move reads what was typed: a move, or the number of one that was offered, whose
// figure is then asked for. What can't be read is said, and no move comes of it.
func (s Flow) move(r *Rehearsal, reply string, offers []bench.Offer) (bench.Event, error) {
	if o, ok := byNumber(offers, reply); ok {
		reply = o.Text
		if o.Takes != "" {
			figure, err := s.Ask(page.Prompt{Text: s.Say("bench-figure", "move", o.Text, "write", written(r.Bench.Job, r.words, o.Verb)), Takes: page.Words{Back: wordBack, Moves: true}})
			if err != nil {
				return bench.Event{}, err
			}
			if word, _ := page.Typed(figure, []string{"", wordBack, wordLeave, page.WordRepeat, page.WordHelp, wordMoves}); word != "" || figure == "" {
				return bench.Event{}, nil // thought better of it
			}
			reply += " " + strings.TrimSpace(strings.TrimPrefix(figure, o.Text))
		}
	}
	e, err := r.Bench.Job.Parse(reply)
	if err != nil {
		if word, ok := page.Typed(reply, []string{"quit", "exit", "q", "bye", "end"}); ok {
			return bench.Event{}, s.tell(s.Say("bench-meant-leave", "word", word))
		}
		return bench.Event{}, s.tell(s.Say("bench-unread", "problem", strings.TrimSuffix(err.Error(), "?")))
	}
	return e, nil
}

// byNumber is the move that was offered under a number.
func byNumber(offers []bench.Offer, reply string) (o bench.Offer, ok bool) {
	i, err := strconv.Atoi(strings.TrimSpace(reply))
	if err != nil || i < 1 || i > len(offers) {
		return o, false
	}
	return offers[i-1], true
}

// do makes a move, keeps it and tells what came of it.
func (s Flow) do(r *Rehearsal, e bench.Event) error {
	if r.Bench.Live && !r.steps && s.HasClock() {
		if done, err := s.liveMove(r, e); done || err != nil {
			return err
		}
	}
	return s.make(r, e)
}

// make carries one event out. The picture comes before the words, so that these are
// the last on a small screen.
func (s Flow) make(r *Rehearsal, e bench.Event) error {
	before := r.Bench
	if again, err := bench.Parse(e.Write(r.Bench.Job.System()), r.Bench.Job.System()); err == nil {
		e = again // what is kept is what is done, to the last digit
	}
	var happened []bench.Happening
	r.Bench, happened = r.Bench.Step(e)
	r.remember(before)
	if len(r.Bench.Log) > len(before.Log) {
		if err := s.begin(r); err != nil {
			return err
		}
	}
	if r.Keep != nil && len(r.Bench.Log) > len(before.Log) {
		if err := r.Keep(e.Write(r.Bench.Job.System())); err != nil {
			return err
		}
	}
	if r.Bench.PassesDone() > before.PassesDone() && !r.Bench.Over {
		if err := s.showDrawing(s.section(r.Bench)); err != nil {
			return err
		}
	}
	if e.Verb == "done" { // the debrief begins with the verdict
		happened = happened[:len(happened)-1]
	}
	said := s.cameOf(r.Bench.Job, r.words, e, happened)
	if _, _, whole := e.WholePass(); whole && !r.Bench.Over && r.Bench.PassesDone() > before.PassesDone() && r.Bench.Clear() {
		said = append(said, page.Paragraph{Text: s.Say("bench-tool-taken-out")})
	}
	if len(r.Bench.Spoiled) > len(before.Spoiled) && !r.Bench.Over {
		said = append(said, page.Aside{Text: s.Say("bench-offer-back")})
	}
	if err := s.Show(said); err != nil {
		return err
	}
	return s.takeBack(r, before)
}

// written is how a move is written in the units of the lathe.
func written(j bench.Job, words content.BenchWords, verb string) string {
	m := words.Moves[verb]
	if verb == "angle" {
		return j.OnItsSide(m.Write)
	}
	if j.Lathe.Metric && m.Metric != "" {
		return m.Metric
	}
	return m.Write
}
