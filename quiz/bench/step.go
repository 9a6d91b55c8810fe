package bench

import (
	"scratchpass/calc"
)

// mostEvents is the longest job that is played: five times what a careful one takes.
const mostEvents = 1500

// step is one event being carried out on a copy of the bench.
type step struct {
	Bench
	happened []Happening
	ending   bool // something broke: what is unfinished now is no mistake of its own
	refused  bool // a slide can't do what was asked of it
}

// Step carries out an event. What can't be done is refused in words and changes
// nothing but the log.
func (b Bench) Step(e Event) (Bench, []Happening) {
	s := &step{Bench: b}
	at := b.Clock
	switch {
	case b.Over:
		return b, []Happening{{Name: "over"}}
	case len(b.Log) >= mostEvents && e.Verb != "done":
		return b, []Happening{{Name: "too-long"}}
	}
	s.do(e)
	s.spoils(b)
	s.Log = add(s.Log, Entry{at, e, s.happened})
	return s.Bench, s.happened
}

// moves is what carries out each event.
var moves map[string]func(s *step, e Event)

func init() { // not in the declaration: the moves of a whole pass use other moves
	moves = map[string]func(s *step, e Event){
		"dress": (*step).dress, "key": (*step).key, "feed": (*step).feed, "square": (*step).squareTo, "taper": (*step).taper, "height": (*step).height,
		"gibs": (*step).gibs, "oil": (*step).oil, "speed": (*step).speed, "gears": (*step).gears, "levers": (*step).levers,
		"angle": (*step).angle, "overhang": (*step).overhang, "touch": (*step).touch, "zero": (*step).zero,
		"tumbler": (*step).tumbler, "tool": (*step).turnTool, "index": (*step).index,
		"start": (*step).start, "stop": (*step).stop, "reverse": (*step).reverse, "wait": (*step).wait, "run": (*step).run,
		"cross": (*step).crossSlide, "compound": (*step).compoundSlide, "close": (*step).close, "open": (*step).open, "return": (*step).goBack,
		"pass": (*step).whole, "spring": (*step).whole, "finish": (*step).whole,
		"clean": (*step).clean, "test": (*step).test, "count": (*step).count, "emery": (*step).emery, "unchuck": (*step).unchuck,
		"book": (*step).book, "note": func(*step, Event) {}, "done": func(s *step, _ Event) { s.end(Done) },
	}
}

func (s *step) do(e Event) {
	if move := moves[e.Verb]; move != nil && !s.Over {
		move(s, e)
	}
}

// say adds what happened; facts are pairs of name and value.
func (s *step) say(name string, facts ...string) {
	s.happened = append(s.happened, Happening{name, factsOf(facts)})
}

// refuse says why a slide does not do what was asked of it.
func (s *step) refuse(name string, facts ...string) {
	s.refused = true
	s.say(name, facts...)
}

// wrong records a mistake and says so.
func (s *step) wrong(name MistakeName, facts ...string) {
	m := Mistake{name, len(s.Log) + 1, len(s.Passes), factsOf(facts)}
	s.Mistakes = add(s.Mistakes, m)
	s.happened = append(s.happened, m.Happening())
}

// once is wrong, unless that mistake has been made before.
func (s *step) once(name MistakeName, facts ...string) {
	if !s.madeBefore(name) {
		s.wrong(name, facts...)
	}
}

// act is once for what a single move does: made again it is said again.
func (s *step) act(name MistakeName, facts ...string) {
	if s.madeBefore(name) {
		s.happened = append(s.happened, Mistake{Name: name, Facts: factsOf(facts)}.Happening())
		return
	}
	s.wrong(name, facts...)
}

func (s *step) madeBefore(name MistakeName) bool {
	for _, m := range s.Mistakes {
		if m.Name == name {
			return true
		}
	}
	return false
}

func factsOf(pairs []string) Facts {
	if len(pairs) == 0 {
		return nil
	}
	f := Facts{}
	for i := 0; i+1 < len(pairs); i += 2 {
		f[pairs[i]] = pairs[i+1]
	}
	return f
}

func (s *step) text(l calc.Length) string { return s.Job.text(l) }

// hands lets the time of one move of the hand go by, where the hand is not real.
func (s *step) hands() {
	if !s.Live {
		s.advance(handSeconds)
	}
}

// standing reports whether the spindle stands still. A set-up done on a turning lathe
// is a mistake, and is not done.
func (s *step) standing() bool {
	if s.Turn == 0 {
		return true
	}
	s.wrong(mistakeHandsInTurningLathe)
	return false
}
