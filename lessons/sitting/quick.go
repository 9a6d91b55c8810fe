package sitting

import (
	"scratchpass/lessons/page"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/wording"
)

// Quick asks one problem without help of any kind, keeps the answer and tells nothing.
// off reports that a word was typed instead of an answer.
func (st *Sitting) Quick(p *problem.Problem, w *wording.Words, where, word string) (a Answered, off bool, err error) {
	if err := st.Show(page.Page{page.Where{Text: where}, st.QuestionOf(p, w)}); err != nil {
		return a, false, err
	}
	began := st.Now()
	for {
		reply, err := st.Ask(PromptOf(p, w))
		if err != nil {
			return a, false, err
		}
		if _, ok := page.Typed(reply, []string{word}); ok {
			return a, true, nil
		}
		m := p.Mark(reply)
		if m.Verdict == answer.Unread {
			if err := st.Show(page.Page{page.Paragraph{Text: w.Feedback(p, m).Line()}}); err != nil {
				return a, false, err
			}
			continue
		}
		a = Answered{Task: p.Task.Name, Code: p.Code.String(), Mark: m}
		st.Answers = append(st.Answers, a)
		return a, false, st.keep(p, a, reply, st.Now(), st.Now().Sub(began))
	}
}
