// Package lessons runs a lesson or a practice session for one learner: what comes
// next, what is shown, what is asked. The words come from content, the problems and
// their marks from quiz; here is only the flow.
package lessons

import (
	"errors"
	"time"

	"scratchpass/content"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/wording"
)

// Session is one sitting of one learner.
type Session struct {
	Terminal Terminal
	Library  *content.Library
	System   machine.System
	Lathe    machine.Lathe
	Seeds    func() uint32 // a new seed for the next problem

	Answers []Answered // every marked answer, in order

	Book Book             // where answers are kept; nil keeps none
	Now  func() time.Time // the clock; tests set their own

	screens  map[string]string
	phrases  map[string]string
	safety   map[string]content.Caution
	drawings map[string]content.DrawingWords
	words    map[string]*wording.Words

	wants      func(*problem.Problem) bool // which problems are wanted before others
	strict     bool                        // a test: no hints
	certain    bool                        // ask how sure someone is, for tasks that can hurt
	describing bool                        // a lathe is being described
	rehearsing bool                        // a job is being rehearsed

	certainOfAll bool // ask how sure someone is, for all tasks
	handed       int  // questions that an instructor handed out; 0 in any other session
	given        int  // those of them that were answered in an earlier sitting

	seen   map[string]int    // when numbers and situations were shown last, in problems
	lastOf map[string]string // situation last shown, by task
	count  int               // problems so far

	posed func(*problem.Problem) // tests listen here to know what is asked
}

// Answered is one marked answer.
type Answered struct {
	Task  string
	Code  string
	Mark  answer.Mark
	Cause string // which of two causes, where a follow-up question was asked

	Certainty answer.Certainty // how sure the learner was
	Hint      bool             // a hint was shown first, so it doesn't count towards mastery
}

// NewSession loads what every session needs to speak.
func NewSession(t Terminal, lib *content.Library, s machine.System, lathe machine.Lathe, seeds func() uint32) (*Session, error) {
	session := &Session{Now: time.Now, Terminal: t, Library: lib, System: s, Lathe: lathe, Seeds: seeds, words: map[string]*wording.Words{},
		seen: map[string]int{}, lastOf: map[string]string{}}
	var err error
	if session.screens, err = lib.Screens(); err != nil {
		return nil, err
	}
	if session.phrases, err = lib.Phrases(); err != nil {
		return nil, err
	}
	if session.safety, err = lib.Safety(); err != nil {
		return nil, err
	}
	session.drawings, err = lib.Drawings()
	return session, err
}

// say returns a phrase, its ${names} filled in from pairs of name and value.
func (s *Session) say(phrase string, pairs ...any) string {
	raw, ok := s.screens[phrase]
	if !ok {
		raw = s.phrases[phrase]
	}
	return content.FillPairs(raw, pairs...)
}

// show shows phrases in one style.
func (s *Session) show(style Style, text string) error {
	return s.Terminal.Show(Text{{style, text}})
}

// wordsOf returns the words of a task, read once.
func (s *Session) wordsOf(task string) (*wording.Words, error) {
	if w := s.words[task]; w != nil {
		return w, nil
	}
	w, err := wording.Load(s.Library, task)
	if err == nil {
		s.words[task] = w
	}
	return w, err
}

// how says how a problem is posed.
type how struct {
	place string // where the learner is: "Problem 2 of 5"
	quiet bool   // no feedback: a check tells at the end
}

// pose asks a problem until it has an answer that can be read, marks it and tells.
func (s *Session) pose(p *problem.Problem, w *wording.Words, h how) (Answered, error) {
	prompt, _ := w.Ask(p)
	return s.answer(p, w, Text{{Faint, h.place}, {Plain, prompt}}, h.quiet)
}

// answer shows a text that asks the problem and takes its answer.
func (s *Session) answer(p *problem.Problem, w *wording.Words, text Text, quiet bool) (Answered, error) {
	if err := s.Terminal.Show(text); err != nil {
		return Answered{}, err
	}
	if s.posed != nil {
		s.posed(p)
	}
	began := s.Now()
	a := Answered{Task: p.Task.Name, Code: p.Code.String()}
	for {
		reply, err := s.ask(p, w)
		if err != nil {
			return a, err
		}
		switch word, _ := asked(reply, anywhere); word {
		case WordStop:
			return a, ErrStopped
		case WordRepeat:
			err = s.Terminal.Show(text)
		case WordHelp:
			help := "say-help"
			if s.strict {
				help = "say-help-test"
			}
			err = s.show(Plain, s.say(help, "expects", w.Expects(p)))
		case WordHint:
			if s.strict {
				err = s.show(Plain, s.say("say-no-hint"))
				break
			}
			a.Hint = true
			err = s.show(Plain, s.hint(w))
		default:
			m := markOf(p, reply)
			if m.Verdict != answer.Unread {
				a.Mark = m
				if !m.Passed && (s.certainOfAll || s.certain && p.Task.SafetyCritical) {
					if a.Certainty, err = s.certainty(); err != nil { // the answer was given: it counts all the same
						a.Certainty = answer.NotAsked
						s.Answers = append(s.Answers, a)
						return a, errors.Join(err, s.keep(p, a, reply, s.Now().Sub(began)))
					}
				}
				s.Answers = append(s.Answers, a)
				if err := s.keep(p, a, reply, s.Now().Sub(began)); err != nil {
					return a, err
				}
				if quiet {
					return a, s.show(Faint, s.say("say-noted"))
				}
				if err := s.tell(w.Feedback(p, m), m); err != nil {
					return a, err
				}
				a.Cause, err = s.followUp(w, m)
				s.Answers[len(s.Answers)-1] = a
				return a, err
			}
			err = s.show(Plain, w.Feedback(p, m).Verdict)
		}
		if err != nil {
			return a, err
		}
	}
}

// markOf marks a reply. Whoever passes does not know: that is wrong, and told.
func markOf(p *problem.Problem, reply string) answer.Mark {
	if word, _ := asked(reply, anywhere); word == WordPass {
		return answer.Mark{Verdict: answer.Wrong, Passed: true}
	}
	return p.Mark(reply)
}

// anywhere are the words that may be typed instead of any answer.
var anywhere = []string{WordHint, WordRepeat, WordHelp, WordPass, WordStop}

func (s *Session) hint(w *wording.Words) string {
	if w.Task.Hint == "" {
		return s.say("say-no-hint")
	}
	return s.say("say-hint", "hint", w.Task.Hint)
}

// ask asks for the answer. Options have been listed with the question, so that a number
// is typed for them too, and the words that work anywhere work here.
func (s *Session) ask(p *problem.Problem, w *wording.Words) (string, error) {
	return s.Terminal.Ask(Question{Prompt: w.Expects(p)})
}

// tell shows what came of an answer.
func (s *Session) tell(f wording.Feedback, m answer.Mark) error {
	style := Bad
	if m.Correct() {
		style = Good
	}
	text := Text{{style, f.Verdict}, {Plain, f.Reason}}
	for _, line := range f.Working {
		text = append(text, Block{Figures, "  " + line})
	}
	text = append(text, Block{Plain, f.Lathe})
	for _, c := range f.Safety {
		text = append(text, Block{Caution, s.say("say-caution", "text", c)})
	}
	return s.Terminal.Show(text)
}

// certainty asks how sure the learner is, before the answer is told.
func (s *Session) certainty() (answer.Certainty, error) {
	q := Question{Prompt: s.say("say-how-sure")}
	for _, c := range answer.Certainties {
		q.Options = append(q.Options, s.say("say-sure-"+string(c)))
	}
	i, err := s.choose(q)
	return answer.Certainties[i], err
}

// followUp asks which of two causes was behind a wrong number that has two.
func (s *Session) followUp(w *wording.Words, m answer.Mark) (cause string, err error) {
	f, ok := w.Task.FollowUps[m.Error]
	if !ok {
		return "", nil
	}
	q := Question{Prompt: f.Ask}
	for _, c := range f.Causes {
		q.Options = append(q.Options, c.Said)
	}
	i, err := s.choose(q)
	if err != nil {
		return "", err
	}
	return f.Causes[i].Name, s.show(Plain, f.Causes[i].Then)
}

// goOn asks for Enter. Anything else is not taken for it: it may have been meant for
// a question that has gone by.
func (s *Session) goOn(phrase string) error {
	for {
		reply, err := s.Terminal.Ask(Question{Prompt: s.say(phrase)})
		if err != nil {
			return err
		}
		switch word, _ := asked(reply, anywhere); {
		case word == WordStop:
			return ErrStopped
		case reply == "":
			return nil
		}
		if err := s.show(Plain, s.say("say-only-enter")); err != nil {
			return err
		}
	}
}

// right counts the right answers among these.
func right(answers []Answered) int {
	n := 0
	for _, a := range answers {
		if a.Mark.Correct() {
			n++
		}
	}
	return n
}
