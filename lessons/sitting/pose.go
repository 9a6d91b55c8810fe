package sitting

import (
	"errors"
	"time"

	"scratchpass/lessons/page"
	"scratchpass/quiz/answer"
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
		prompt := Asking(p, w, asked, rules)
		reply, err := st.Ask(prompt)
		if err != nil {
			return a, err
		}
		shown, hint, aid := st.Aid(p, w, asked, reply, rules)
		if !aid {
			kept, err := st.kept(p, prompt, reply, MarkOf(p, reply), rules)
			if err != nil {
				return a, err
			}
			a.Mark = MarkOf(p, kept)
			return st.answered(p, w, a, kept, began, rules)
		}
		a.Hint = a.Hint || hint
		if err := st.Show(shown); err != nil {
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
	if err := st.Show(st.Told(p, w, a.Mark)); err != nil {
		return a, err
	}
	var err error
	a.Cause, err = st.followUp(w, a.Mark)
	st.Answers[len(st.Answers)-1] = a
	return a, err
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
