package sitting

import (
	"scratchpass/lessons/page"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/wording"
)

// helpOnPages is what may be given here on a page with fields and buttons, and what those do.
func (s *Session) helpOnPages(p *problem.Problem, w *wording.Words, rules Rules) page.Page {
	var all page.Page
	say := func(key string, pairs ...any) { all = append(all, page.Paragraph{Text: s.Say(key, pairs...)}) }
	switch takes := PromptOf(p, w).Takes.(type) {
	case page.OneOf:
		say("say-help-one")
	case page.SeveralOf:
		say("say-help-several")
	case page.InOrder:
		say("say-help-order")
	case page.Readings:
		such := "0.105"
		if takes.Unit == "mm" {
			such = "2.65"
		}
		say("say-help-readings", "such", such, "unit", takes.Unit)
	default:
		all = append(all, page.Paragraph{Text: w.Expects(p)})
	}
	if p.Task.Kind.Numeric() {
		say("say-help-units")
	}
	if !rules.NoHints && w.Task.Hint != "" {
		say("say-help-hint")
	}
	say("say-help-pass", "pass", s.Say("web-pass"))
	say("say-help-beside")
	return all
}
