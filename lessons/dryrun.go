package lessons

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/bench"
)

// Rehearsal is one threading job at the bench.
type Rehearsal struct {
	Name  string // of the job, as the log has it
	As    string // the job and its lathe on one line each, where the name does not tell them
	Lathe string
	Bench bench.Bench
	Keep  func(line string) error // keeps one line of the log; nil keeps none

	TakenBack []bench.Mistake // what was done and taken back

	words content.BenchWords
	place string // where the list of moves was last shown
}

// Words that can be typed at the bench besides moves. stop is a move here: it stops the
// spindle.
const (
	wordLeave = "leave"
	wordLook  = "look"
	wordLog   = "log"
	wordMoves = "moves"
	wordBack  = "back"
)

// DryRun lets the learner work at the bench until the part is done or something is
// broken, and tells what came of it.
func (s *Session) DryRun(r *Rehearsal) error {
	s.rehearsing = true
	var err error
	if r.words, err = s.Library.Bench(); err != nil {
		return err
	}
	if err := s.Terminal.Show(s.jobPage(r)); err != nil {
		return err
	}
	for !r.Bench.Over {
		if err := s.atTheBench(r); err != nil {
			return err
		}
	}
	s.rehearsing = false
	return s.Terminal.Show(s.Debrief(r.Bench, r.words, r.TakenBack))
}

// jobPage tells the job.
func (s *Session) jobPage(r *Rehearsal) Text {
	j := r.Bench.Job
	text := Text{{Heading, s.say("bench-title", "title", j.Title)}, {Plain, j.Story}, {Caution, s.say("rehearsal")}}
	for _, line := range s.jobFacts(j) {
		text = append(text, Block{Plain, "- " + line})
	}
	deeper, _ := j.Ways()
	text = append(text, Block{Plain, s.say("bench-ways", "deeper", deeper)})
	if r.Bench.Live {
		text = append(text, Block{Plain, s.say("bench-live")})
	}
	return append(text, Block{Faint, s.say("bench-words")})
}

// jobFacts are the figures of a job and its lathe, a line each.
func (s *Session) jobFacts(j bench.Job) []string {
	u := j.System().Length()
	size := func(l calc.Length) string { return u.Text(l.Inches()) }
	facts := []string{
		s.say("bench-thread", "thread", j.Thread, "side", j.Side, "max", size(j.Limits.Pitch.Max), "min", size(j.Limits.Pitch.Min)),
		s.say("bench-"+map[calc.Side]string{calc.Outside: "blank", calc.Inside: "bore"}[j.Side], "size", size(j.Start), "length", size(j.Length)),
		s.say("bench-end-"+j.Meets(), "gap", size(j.Gap)),
	}
	if j.Ahead > 0 {
		facts = append(facts, s.say("bench-ahead", "ahead", size(j.Ahead), "free", size(j.Free())))
	}
	if j.Side == calc.Inside {
		facts = append(facts, s.say("bench-bar", "bar", size(j.Bar), "reach", size(j.Reach), "out", size(j.StandsOut), "least", size(j.LeastOverhang())))
	} else {
		facts = append(facts, s.say("bench-hold-"+j.Hold, "out", size(j.StandsOut)))
	}
	if j.Tip.Nose > 0 {
		facts = append(facts, s.say("bench-nose", "nose", size(j.Tip.Nose)))
	} else {
		facts = append(facts, s.say("bench-flat", "flat", size(j.Tip.Flat)))
	}
	dial := s.say("bench-no-dial")
	if _, ok := j.Lathe.ThreadDial(); ok {
		dial = s.say("bench-dial", "teeth", j.Lathe.DialTeeth, "marks", j.Lathe.DialMarks)
	}
	reads := "bench-reads-radius"
	if j.Lathe.CrossReads == calc.ReadsDiameter {
		reads = "bench-reads-diameter"
	}
	zero := "bench-zero-across"
	if j.Lathe.CompoundZero == calc.ZeroAlong {
		zero = "bench-zero-along"
	}
	nose := "bench-nose-locked"
	if j.Lathe.ScrewedNose {
		nose = "bench-nose-screwed"
	}
	facts = append(facts,
		s.say("bench-lathe", "lathe", j.Lathe.Name, "screw", j.Lathe.LeadScrewText(), "dial", dial),
		s.say("bench-cross", "turn", size(j.Lathe.Cross.Turn), "line", size(j.Lathe.Cross.Division), "reads", s.say(reads)),
		s.say("bench-compound", "turn", size(j.Lathe.Compound.Turn), "line", size(j.Lathe.Compound.Division), "zero", s.say(zero)),
		s.say(nose))
	if len(j.Lathe.Speeds) > 0 {
		facts = append(facts, s.say("bench-speeds", "speeds", strings.Trim(fmt.Sprint(j.Lathe.Speeds), "[]")))
	}
	if len(j.Lathe.Gears) > 0 {
		facts = append(facts, s.say("bench-gears", "gears", strings.Trim(fmt.Sprint(j.Lathe.Gears), "[]")))
	}
	return facts
}

// atTheBench asks for one move and makes it.
func (s *Session) atTheBench(r *Rehearsal) error {
	offers := r.Bench.Offers()
	status := s.status(r.Bench)
	text := Text{{Plain, status}}
	if place := placeOf(offers); place != r.place { // the list is shown once for each place
		r.place = place
		text = append(text, s.offered(r, offers)...)
	}
	if err := s.Terminal.Show(text); err != nil {
		return err
	}
	reply, err := s.Terminal.Ask(Question{Prompt: s.say("bench-ask")})
	if err != nil {
		return err
	}
	switch word, _ := asked(reply, []string{WordHelp, WordRepeat, wordLeave, WordHint, wordLook, wordLog, wordMoves}); word {
	case wordLeave:
		return ErrStopped
	case WordHelp:
		return s.Terminal.Show(s.allMoves(r))
	case wordMoves:
		return s.Terminal.Show(s.offered(r, offers))
	case WordRepeat:
		return s.Terminal.Show(s.jobPage(r))
	case WordHint:
		return s.show(Plain, s.hintAtTheBench(r))
	case wordLook:
		return s.look(r)
	case wordLog:
		return s.Terminal.Show(Text{{Figures, r.Bench.Transcript(r.Name, "", "")}}) // what job and lathe are, repeat tells
	}
	if strings.TrimSpace(reply) == "" {
		return nil
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
func (s *Session) move(r *Rehearsal, reply string, offers []bench.Offer) (bench.Event, error) {
	if i, err := strconv.Atoi(strings.TrimSpace(reply)); err == nil && i >= 1 && i <= len(offers) {
		o := offers[i-1]
		reply = o.Text
		if o.Takes != "" {
			figure, err := s.Terminal.Ask(Question{Prompt: s.say("bench-figure", "move", o.Text, "write", s.written(r, o.Verb))})
			if err != nil {
				return bench.Event{}, err
			}
			if word, _ := asked(figure, []string{"", wordLeave, WordRepeat, WordHelp, wordMoves}); word != "" || figure == "" {
				return bench.Event{}, nil // thought better of it
			}
			reply += " " + strings.TrimSpace(strings.TrimPrefix(figure, o.Text))
		}
	}
	e, err := bench.Parse(reply, r.Bench.Job.System())
	if err != nil {
		if word, ok := asked(reply, []string{"quit", "exit", "q", "bye", "end"}); ok {
			return bench.Event{}, s.show(Plain, s.say("bench-meant-leave", "word", word))
		}
		if word, ok := asked(reply, []string{wordBack, bench.Undo}); ok {
			return bench.Event{}, s.show(Plain, s.say("bench-meant-back", "word", word))
		}
		return bench.Event{}, s.show(Plain, s.say("bench-unread", "problem", strings.TrimSuffix(err.Error(), "?")))
	}
	return e, nil
}

// do makes a move, keeps it and tells what came of it.
func (s *Session) do(r *Rehearsal, e bench.Event) error {
	if stage, ok := s.Terminal.(Stage); ok && r.Bench.Live {
		if done, err := s.liveMove(r, stage, e); done || err != nil {
			return err
		}
	}
	return s.make(r, e)
}

// make carries one event out. The picture comes before the words, so that these are
// the last on a small screen.
func (s *Session) make(r *Rehearsal, e bench.Event) error {
	before := r.Bench
	if again, err := bench.Parse(e.Write(r.Bench.Job.System()), r.Bench.Job.System()); err == nil {
		e = again // what is kept is what is done, to the last digit
	}
	var happened []bench.Happening
	r.Bench, happened = r.Bench.Step(e)
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
	if err := s.Terminal.Show(s.happenings(r.Bench.Job, r.words, happened)); err != nil {
		return err
	}
	return s.takeBack(r, before)
}

// takeBack lets a move be taken back that broke something: it was a rehearsal. What
// happened stays in the debrief.
func (s *Session) takeBack(r *Rehearsal, before bench.Bench) error {
	if r.Bench.Outcome == nil || r.Bench.Outcome.Why == "done" {
		return nil
	}
	var word string
	for known := false; !known; { // a rehearsal does not end of a mistyped word
		reply, err := s.Terminal.Ask(Question{Prompt: s.say("bench-take-back")})
		if errors.Is(err, ErrStopped) {
			return nil // the end: the debrief follows
		}
		if err != nil {
			return err
		}
		word, known = asked(reply, []string{"", wordBack, bench.Undo, wordLeave})
	}
	if word == "" {
		return nil
	}
	r.TakenBack = append(r.TakenBack, r.Bench.Mistakes[len(before.Mistakes):]...)
	r.Bench = before
	if r.Keep != nil {
		if err := r.Keep(bench.Undo); err != nil {
			return err
		}
	}
	if word == wordLeave { // without the broken move, so that it can be gone on with
		return ErrStopped
	}
	return nil
}

// hintAtTheBench says what to think of now.
func (s *Session) hintAtTheBench(r *Rehearsal) string {
	if missing := r.Bench.Missing(); r.Bench.PassesDone() == 0 && len(missing) > 0 {
		var moves []string
		for _, verb := range missing {
			moves = append(moves, r.words.Moves[verb].Does)
		}
		return s.say("bench-hint-missing", "what", strings.Join(moves, "; "))
	}
	return s.say("bench-hint-" + r.Bench.Status().Place)
}

// written is how a move is written in the units of the lathe.
func (s *Session) written(r *Rehearsal, verb string) string {
	m := r.words.Moves[verb]
	if r.Bench.Job.Lathe.Metric && m.Metric != "" {
		return m.Metric
	}
	return m.Write
}
