package sitting

import (
	"slices"
	"strings"
	"unicode"

	"scratchpass/calc"
	"scratchpass/lessons/page"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/arithmetic"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/wording"
)

// Aid is what is shown for a reply that is no answer: a sum, a word to be explained, a word
// that helps, a text that can't be read. ok is false for an answer; hint tells that it gave a
// hint. asked is the page that asks the problem.
func (s *Session) Aid(p *problem.Problem, w *wording.Words, asked page.Page, reply string, rules Rules) (shown page.Page, hint, ok bool) {
	if beside, ok := s.beside(reply); ok {
		return beside, false, true
	}
	word, _ := page.Typed(reply, page.Anywhere)
	if m := MarkOf(p, reply); m.Verdict != answer.Unread && !page.Aid(word) {
		return nil, false, false
	}
	return s.aid(p, w, asked, reply, word, rules), word == page.WordHint && !rules.NoHints, true
}

// Told is what is shown of an answer that was marked.
func (s *Session) Told(p *problem.Problem, w *wording.Words, m answer.Mark) page.Page {
	return s.Feedback(w.Feedback(p, m), m, s.workingOf(p, w))
}

// Asking is the prompt for the answer to a problem that a page asks, with the words that help there.
func Asking(p *problem.Problem, w *wording.Words, asked page.Page, rules Rules) page.Prompt {
	q := PromptOf(p, w)
	q.Words, q.Beside = wordsAt(w, asked, rules), true
	return q
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

// aid is what is shown to someone who typed a word instead of an answer, or a text that
// is none.
func (s *Session) aid(p *problem.Problem, w *wording.Words, asked page.Page, reply, word string, rules Rules) page.Page {
	say := func(phrase string, pairs ...any) page.Page {
		return page.Page{page.Paragraph{Text: s.Say(phrase, pairs...)}}
	}
	switch {
	case word == page.WordRepeat:
		return asked
	case word == page.WordLook && figureOf(asked) == nil:
		return say("say-no-figure")
	case word == page.WordLook:
		return page.Page{*figureOf(asked)}
	case word == page.WordHelp && s.OnPages:
		return s.helpOnPages(p, w, rules)
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
	return p.Mark(WorkedOut(p, reply))
}

// WorkedOut is a reply with the value of a sum instead of the sum, where it is one; else the
// reply itself.
func WorkedOut(p *problem.Problem, reply string) string {
	if p.Task.Kind != answer.Quantity || !arithmetic.Is(reply) || p.Mark(reply).Verdict != answer.Unread {
		return reply
	}
	number, unit := apart(reply)
	x, err := arithmetic.Value(number)
	if err != nil {
		return reply
	}
	return strings.TrimSpace(calc.Shortest(x, 10) + " " + unit)
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
func (s *Session) Feedback(f wording.Feedback, m answer.Mark, steps page.Working) page.Page {
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
		p = append(p, page.Caution{Text: s.Say("say-caution", "text", c)})
	}
	if !m.Correct() {
		p = append(p, page.Pause{})
	}
	return p
}

// workingOf is the whole working of a problem in which every letter is explained: what is
// given first, then the steps. It is nil for what has no steps.
func (s *Session) workingOf(p *problem.Problem, w *wording.Words) page.Working {
	if p.Task.Kind.InOrder() {
		return nil
	}
	var given page.Working
	for _, g := range p.Values.Givens() {
		if means := w.Means(g.Symbol); means != "" && usedIn(p.Working.Steps, g.Symbol) {
			given = append(given, page.Step{Symbol: g.Symbol, Line: strings.TrimSpace(g.Symbol + " = " + g.Value + " " + g.Unit),
				Means: s.Say("say-means", "symbol", g.Symbol, "means", means)})
		}
	}
	return append(given, Explained(s, p, w)...)
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
