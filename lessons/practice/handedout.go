package practice

import (
	"scratchpass/lessons/page"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/wording"
)

// HandedOut asks the questions that an instructor has handed out and that have no answer
// yet, without hints, and tells what came of all of them at the end.
type HandedOut struct {
	Codes []string          `json:"codes"` // of their problems, in their order
	Given map[string]string `json:"given"` // what was answered in an earlier sitting, by code
	Sure  bool              `json:"sure"`  // each question asks how sure the learner is, not only those that can hurt
}

var _ sitting.Flow = HandedOut{}

// Name is under which the flow is stored.
func (HandedOut) Name() string { return "handed-out" }

// Farewell says how many were answered: what came of them is told at the end, not before.
func (f HandedOut) Farewell(st *sitting.Sitting) string {
	return st.Say("handed-stopped", "n", len(f.Given)+len(st.Answers), "of", len(f.Codes))
}

// Run asks and tells.
func (f HandedOut) Run(st *sitting.Sitting) error {
	problems := make([]*problem.Problem, len(f.Codes))
	for i, code := range f.Codes { // all of them first: a bad code is said before the first question
		p, err := st.Tasks.FromCode(code)
		if err != nil {
			return err
		}
		problems[i] = p
	}
	rules := sitting.Rules{NoHints: true, AtTheEnd: true, Certainty: sitting.AskedIfCritical}
	if f.Sure {
		rules.Certainty = sitting.AlwaysAsked
	}
	if err := st.Show(page.Page{page.Heading{Text: st.Say("handed-title")}, page.Paragraph{Text: st.Say("handed-rules", "n", len(f.Codes))}}); err != nil {
		return err
	}
	got, err := st.AskTheRestThenTell(len(problems), func(i int) (*problem.Problem, *wording.Words, error) {
		w, err := st.Words(problems[i].Task.Name)
		return problems[i], w, err
	}, f.Given, rules)
	if err != nil {
		return err
	}
	return st.Show(page.Page{page.Heading{Text: st.Say("handed-result", "right", got, "of", len(f.Codes))}, st.Rehearsal()})
}
