package sitting

import (
	"strconv"

	"scratchpass/lessons/page"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/wording"
)

// PromptOf asks for the answer to a problem. Options have been listed with the question,
// so that a number is typed for them too, and the words that work anywhere work here.
func PromptOf(p *problem.Problem, w *wording.Words) page.Prompt {
	t := &takesOf{p: p, w: w}
	_ = p.Task.Kind.Accept(t) // it returns no error
	return page.Prompt{Text: w.Expects(p), Takes: t.takes}
}

// takesOf finds what a prompt takes for each kind of answer.
type takesOf struct {
	p     *problem.Problem
	w     *wording.Words
	takes page.Takes
}

var _ answer.Visitor = (*takesOf)(nil)

func (t *takesOf) Number() error {
	u := t.p.Expected.Unit
	t.takes = page.Number{Unit: u.Name, Places: u.Places}
	return nil
}

func (t *takesOf) Limits() error { return t.Number() }

func (t *takesOf) Readings() error {
	u := t.p.Expected.Unit
	t.takes = page.Readings{Labels: t.w.ReadingLabels(t.p), Unit: u.Name, Places: u.Places}
	return nil
}

func (t *takesOf) Choice() error {
	t.takes = page.OneOf{Options: t.w.Options(t.p)}
	return nil
}

func (t *takesOf) Several() error {
	t.takes = page.SeveralOf{Options: t.w.Options(t.p)}
	return nil
}

func (t *takesOf) Order() error {
	t.takes = page.InOrder{Steps: t.w.Options(t.p)}
	return nil
}

func (t *takesOf) Designation() error {
	var fields []string
	for _, f := range t.p.Expected.Key.Fields {
		fields = append(fields, f[0])
	}
	t.takes = page.Parts{Fields: fields}
	return nil
}

// Choose asks for one line of a menu until it gets one, and returns its index.
func (st *Sitting) Choose(ask string, m page.Menu) (int, error) {
	return Choose(st.Session, st, ask, m)
}

// Choose asks for one line of a menu at a face, until it gets one. Sessions that hold no
// sitting choose this way too.
func Choose(s *Session, face page.Face, ask string, m page.Menu) (int, error) {
	for {
		reply, err := face.Ask(page.Prompt{Text: ask, Takes: m})
		if err != nil {
			return 0, err
		}
		if word, ok := page.Typed(reply, page.Anywhere); ok && word == page.WordStop {
			return 0, page.ErrStopped
		}
		if n, err := strconv.Atoi(reply); err == nil && n >= 1 && n <= len(m.Options) && strconv.Itoa(n) == reply {
			return n - 1, nil
		}
		if err := face.Show(page.Page{page.Paragraph{Text: s.Say("say-choose-again", "n", len(m.Options))}}); err != nil {
			return 0, err
		}
	}
}

// GoOn asks for Enter. Anything else is not taken for it: it may have been meant for a
// question that has gone by.
func (st *Sitting) GoOn(phrase string) error {
	for {
		reply, err := st.Ask(page.Prompt{Text: st.Say(phrase), Takes: page.GoOn{}})
		if err != nil {
			return err
		}
		if reply == "" {
			return nil
		}
		if err := st.Show(page.Page{page.Paragraph{Text: st.Say("say-only-enter")}}); err != nil {
			return err
		}
	}
}
