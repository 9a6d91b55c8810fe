package sitting

import (
	"errors"
	"slices"
	"strings"
	"time"
	"unicode"

	"scratchpass/calc"
	"scratchpass/lessons/page"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/arithmetic"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/wording"
)

// QuestionOf is a problem as it is asked.
func (s *Session) QuestionOf(p *problem.Problem, w *wording.Words) page.Question {
	q := page.Question{Code: p.Code.String(), Text: w.Question(p), Lines: w.ReadingLabels(p)}
	if len(w.Task.Options) > 0 {
		q.Lines = append(w.Options(p), q.Lines...)
	}
	if d, err := w.Drawing(p, s.drawings); d != nil && err == nil { // the check of the words tells of an error
		f := s.Figure(*d)
		q.Figure = &f
	}
	return q
}

// Problems says that the learner is at a problem of so many, counted from 0.
func (s *Session) Problems(i, of int) page.Where {
	return page.Where{Text: s.Say("say-problem", "i", i+1, "of", of), Done: i, Of: of}
}

// Pose asks a problem until it has an answer that can be read, marks it and tells. where
// says where the learner is.
func (st *Sitting) Pose(p *problem.Problem, w *wording.Words, where page.Where, rules Rules) (Answered, error) {
	return st.Answer(p, w, page.Page{where, st.QuestionOf(p, w)}, rules)
}

// Answer shows a page that asks the problem and takes its answer.
func (st *Sitting) Answer(p *problem.Problem, w *wording.Words, asked page.Page, rules Rules) (Answered, error) {
	a := Answered{Task: p.Task.Name, Code: p.Code.String()}
	if err := st.Show(asked); err != nil {
		return a, err
	}
	began := st.Now()
	for {
		prompt := PromptOf(p, w)
		prompt.Words, prompt.Beside = wordsAt(w, asked, rules), true
		reply, err := st.Ask(prompt)
		if err != nil {
			return a, err
		}
		if beside, ok := st.beside(reply); ok {
			if err := st.Show(beside); err != nil {
				return a, err
			}
			continue
		}
		word, _ := page.Typed(reply, page.Anywhere)
		if m := MarkOf(p, reply); m.Verdict != answer.Unread && !page.Aid(word) {
			kept, err := st.kept(p, prompt, reply, m, rules)
			if err != nil {
				return a, err
			}
			a.Mark = MarkOf(p, kept)
			return st.answered(p, w, a, kept, began, rules)
		}
		a.Hint = a.Hint || word == page.WordHint && !rules.NoHints
		if err := st.Show(st.aid(p, w, asked, reply, word, rules)); err != nil {
			return a, err
		}
	}
}

// kept lets a choice be taken back in a test, where nothing is told at once: a digit is
// soon typed wrong. Enter keeps it.
func (st *Sitting) kept(p *problem.Problem, q page.Prompt, reply string, m answer.Mark, rules Rules) (string, error) {
	for rules.AtTheEnd && st.Attended && p.Task.Kind.Guessable() && !m.Passed {
		q.Text = st.Say("say-keep", "given", reply)
		again, err := st.Ask(q)
		if err != nil || again == "" {
			return reply, err
		}
		word, _ := page.Typed(again, page.Anywhere)
		if next := MarkOf(p, again); next.Verdict != answer.Unread && !page.Aid(word) {
			reply, m = again, next
		}
	}
	return reply, nil
}

// wordsAt are the words that help at a question.
func wordsAt(w *wording.Words, asked page.Page, rules Rules) []string {
	var words []string
	if !rules.NoHints && w.Task.Hint != "" {
		words = append(words, page.WordHint)
	}
	if figureOf(asked) != nil {
		words = append(words, page.WordLook)
	}
	return append(words, page.WordPass, page.WordStop)
}

// figureOf is the figure of the question on a page; nil for none.
func figureOf(p page.Page) *page.Figure {
	for _, b := range p {
		if q, ok := b.(page.Question); ok {
			return q.Figure
		}
	}
	return nil
}

// answered keeps an answer that was marked, and tells what came of it.
func (st *Sitting) answered(p *problem.Problem, w *wording.Words, a Answered, reply string, began time.Time, rules Rules) (Answered, error) {
	at := st.Now()
	took := at.Sub(began)
	asks := rules.Certainty == AlwaysAsked || rules.Certainty == AskedIfCritical && p.Task.SafetyCritical
	var stopped error
	if asks && !a.Mark.Passed {
		a.Certainty, stopped = st.certainty()
	}
	st.Answers = append(st.Answers, a)
	if errors.Is(stopped, page.ErrStopped) && st.Book != nil { // the answer was given: it counts all the same
		return a, errors.Join(stopped, st.Book.Keep(st.entry(p, a, reply, at, took)))
	}
	if stopped != nil {
		return a, stopped
	}
	if err := st.keep(p, a, reply, at, took); err != nil {
		return a, err
	}
	if rules.AtTheEnd {
		return a, st.Show(page.Page{page.Aside{Text: st.Say("say-noted")}})
	}
	if err := st.Show(st.Feedback(w.Feedback(p, a.Mark), a.Mark, st.workingOf(p, w))); err != nil {
		return a, err
	}
	var err error
	a.Cause, err = st.followUp(w, a.Mark)
	st.Answers[len(st.Answers)-1] = a
	return a, err
}

// aid is what is shown to someone who typed a word instead of an answer, or a text that
// is none.
func (st *Sitting) aid(p *problem.Problem, w *wording.Words, asked page.Page, reply, word string, rules Rules) page.Page {
	say := func(phrase string, pairs ...any) page.Page {
		return page.Page{page.Paragraph{Text: st.Say(phrase, pairs...)}}
	}
	switch {
	case word == page.WordRepeat:
		return asked
	case word == page.WordLook && figureOf(asked) == nil:
		return say("say-no-figure")
	case word == page.WordLook:
		return page.Page{*figureOf(asked)}
	case word == page.WordHelp && rules.NoHints:
		return say("say-help-test", "expects", w.Expects(p))
	case word == page.WordHelp:
		return say("say-help", "expects", w.Expects(p))
	case word == page.WordHint && (rules.NoHints || w.Task.Hint == ""):
		return say("say-no-hint")
	case word == page.WordHint:
		return say("say-hint", "hint", w.Task.Hint)
	}
	return page.Page{page.Paragraph{Text: w.Feedback(p, p.Mark(reply)).Verdict}}
}

// MarkOf marks what was typed. Whoever passes does not know: that is wrong, and shown.
func MarkOf(p *problem.Problem, reply string) answer.Mark {
	if word, _ := page.Typed(reply, page.Anywhere); word == page.WordPass {
		return answer.Mark{Verdict: answer.Wrong, Passed: true}
	}
	m := p.Mark(reply)
	if m.Verdict != answer.Unread || !arithmetic.Is(reply) {
		return m
	}
	if number, unit := apart(reply); p.Task.Kind == answer.Quantity {
		if x, err := arithmetic.Value(number); err == nil {
			return p.Mark(strings.TrimSpace(calc.Shortest(x, 10) + " " + unit))
		}
	}
	return m
}

// apart parts a sum from the unit behind it.
func apart(reply string) (sum, unit string) {
	at := strings.LastIndexByte(reply, ' ')
	if at < 0 || strings.ContainsFunc(reply[at+1:], func(r rune) bool { return !unicode.IsLetter(r) }) || slices.Contains(arithmetic.Names, reply[at+1:]) {
		return reply, ""
	}
	return reply[:at], reply[at+1:]
}

// Feedback is the page that tells what came of an answer, with the steps of the working
// where it has some.
func (st *Sitting) Feedback(f wording.Feedback, m answer.Mark, steps page.Working) page.Page {
	p := page.Page{Verdict(m, f), page.Paragraph{Text: f.Reason}}
	switch {
	case len(f.Working) == 0:
	case len(steps) > 0:
		p = append(p, steps)
	default:
		p = append(p, page.Sequence(f.Working))
	}
	p = append(p, page.Paragraph{Text: f.Lathe})
	for _, c := range f.Safety {
		p = append(p, page.Caution{Text: st.Say("say-caution", "text", c)})
	}
	if !m.Correct() {
		p = append(p, page.Pause{})
	}
	return p
}

// workingOf is the whole working of a problem in which every letter is explained: what is
// given first, then the steps. It is nil for what has no steps.
func (st *Sitting) workingOf(p *problem.Problem, w *wording.Words) page.Working {
	if p.Task.Kind.InOrder() {
		return nil
	}
	var given page.Working
	for _, g := range p.Values.Givens() {
		if means := w.Means(g.Symbol); means != "" && usedIn(p.Working.Steps, g.Symbol) {
			given = append(given, page.Step{Symbol: g.Symbol, Line: strings.TrimSpace(g.Symbol + " = " + g.Value + " " + g.Unit),
				Means: st.Say("say-means", "symbol", g.Symbol, "means", means)})
		}
	}
	return append(given, Explained(st.Session, p, w)...)
}

// usedIn tells whether a letter stands in a formula of a working.
func usedIn(steps []problem.Step, symbol string) bool {
	for _, s := range steps {
		for _, word := range strings.FieldsFunc(s.Formula, func(r rune) bool { return r != '_' && !unicode.IsLetter(r) && !unicode.IsDigit(r) }) {
			if word == symbol {
				return true
			}
		}
	}
	return false
}

// Verdict is what came of an answer.
func Verdict(m answer.Mark, f wording.Feedback) page.Verdict {
	return page.Verdict{Right: m.Correct(), Text: strings.TrimSpace(f.Verdict + " " + f.Off), Given: f.Given, Answer: f.Answer}
}

// certainty asks how sure the learner is, before the answer is told.
func (st *Sitting) certainty() (answer.Certainty, error) {
	var options []string
	for _, c := range answer.Certainties {
		options = append(options, st.Say("say-sure-"+string(c)))
	}
	i, err := st.Choose(st.Say("say-how-sure"), page.Menu{Options: options})
	if err != nil {
		return answer.NotAsked, err
	}
	return answer.Certainties[i], nil
}

// followUp asks which of two causes was behind a wrong number that has two.
func (st *Sitting) followUp(w *wording.Words, m answer.Mark) (cause string, err error) {
	f, ok := w.Task.FollowUps[m.Error]
	if !ok {
		return "", nil
	}
	var options []string
	for _, c := range f.Causes {
		options = append(options, c.Said)
	}
	i, err := st.Choose(f.Ask, page.Menu{Options: options})
	if err != nil {
		return "", err
	}
	return f.Causes[i].Name, st.Show(page.Page{page.Paragraph{Text: f.Causes[i].Then}})
}
