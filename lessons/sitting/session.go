// Package sitting is what every flow needs: a session, with the face, the words, the lathe
// and the book of one learner; and a sitting, one run of one flow in it, with its rules,
// its answers and its seed. A sitting can be stopped at any prompt and taken up again from
// what is stored, in another process too.
package sitting

import (
	"maps"
	"slices"
	"time"

	"scratchpass/content"
	"scratchpass/lessons/page"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/drawing"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/tasks"
	"scratchpass/quiz/wording"
)

// Session is one learner at one face.
type Session struct {
	Face    page.Face
	Library *content.Library
	System  machine.System
	Lathe   machine.Lathe
	Book    Book             // where answers are kept; nil keeps none
	Store   Store            // where a sitting is kept while it goes on; nil keeps none
	Clock   func() time.Time // tests set their own
	Seeds   func() Seeds     // of the next sitting

	Attended bool // a person sits there who can be asked
	OnPages  bool // what helps there are fields and buttons, not words and keys

	Tasks tasks.Set // that can be asked: those that ship, and the library's own questions

	screens  map[string]string
	phrases  map[string]string
	safety   map[string]content.Caution
	drawings map[string]content.DrawingWords
	words    map[string]*wording.Words
}

// NewSession loads what every session needs to speak.
func NewSession(face page.Face, lib *content.Library, system machine.System, lathe machine.Lathe, seeds func() Seeds) (*Session, error) {
	s := &Session{Face: face, Library: lib, System: system, Lathe: lathe, Seeds: seeds, Clock: time.Now, words: map[string]*wording.Words{}}
	_, s.OnPages = face.(page.Buttons)
	var err error
	if s.screens, err = lib.Screens(); err != nil {
		return nil, err
	}
	if s.phrases, err = lib.Phrases(); err != nil {
		return nil, err
	}
	if s.safety, err = lib.Safety(); err != nil {
		return nil, err
	}
	if s.drawings, err = lib.Drawings(); err != nil {
		return nil, err
	}
	s.Tasks, err = tasks.Of(lib)
	return s, err
}

// Say returns a phrase, its ${names} filled in from pairs of name and value.
func (s *Session) Say(phrase string, pairs ...any) string {
	raw, ok := s.screens[phrase]
	if !ok {
		raw = s.phrases[phrase]
	}
	return content.FillPairs(raw, pairs...)
}

// Words returns the words of a task, read once.
func (s *Session) Words(task string) (*wording.Words, error) {
	if w := s.words[task]; w != nil {
		return w, nil
	}
	w, err := wording.Load(s.Library, task)
	if err == nil {
		s.words[task] = w
	}
	return w, err
}

// Drawings are the words of the drawings.
func (s *Session) Drawings() map[string]content.DrawingWords { return s.drawings }

// Caution is a caution by its key, as it is shown where the hazard is.
func (s *Session) Caution(key string) page.Caution {
	return page.Caution{Text: s.Say("say-caution", "text", s.safety[key].Text)}
}

// CautionText is the text of a caution alone.
func (s *Session) CautionText(key string) string { return s.safety[key].Text }

// Rehearsal is the caution that stands on every page that ends something: this is
// rehearsal, not permission.
func (s *Session) Rehearsal() page.Caution { return page.Caution{Text: s.Say("rehearsal")} }

// Figure is a drawing with its caption and its twin.
func (s *Session) Figure(d drawing.Drawing) page.Figure {
	return page.Figure{Caption: s.Say("say-drawing", "title", d.Title), Pictures: []drawing.Drawing{d}, Twin: d.Twin}
}

// SafetyPage is all the cautions on one page.
func (s *Session) SafetyPage() page.Page {
	p := page.Page{page.Heading{Text: s.Say("home-safety")}}
	for _, key := range slices.Sorted(maps.Keys(s.safety)) {
		c := s.safety[key]
		p = append(p, page.Item{Text: c.Title + ". " + c.Text})
	}
	return append(p, s.Rehearsal())
}

// UseLathe sets the lathe, and with it the units it works in.
func (s *Session) UseLathe(l machine.Lathe) { s.Lathe, s.System = l, l.System() }

// Answered is one marked answer.
type Answered struct {
	Task  string
	Code  string
	Mark  answer.Mark
	Cause string // which of two causes, where a follow-up question was asked

	Certainty answer.Certainty // how sure the learner was
	Hint      bool             // a hint was shown first, so it doesn't count towards mastery
}

// Right counts the right answers among these.
func Right(answers []Answered) int {
	n := 0
	for _, a := range answers {
		if a.Mark.Correct() {
			n++
		}
	}
	return n
}
