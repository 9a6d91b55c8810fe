package sitting

import (
	"slices"

	"scratchpass/lessons/page"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/wording"
)

// Next gives the i-th problem of a test.
type Next func(i int) (*problem.Problem, *wording.Words, error)

// OneOfEach gives a fresh problem of each task in turn.
func (st *Sitting) OneOfEach(names []string, level problem.Level) Next {
	return func(i int) (*problem.Problem, *wording.Words, error) { return st.Problem(names[i], level, nil) }
}

// AskAllThenTell asks n problems without a word in between, then tells what came of
// them. It returns how many were right.
func (st *Sitting) AskAllThenTell(n int, next Next, rules Rules) (got int, err error) {
	return st.AskTheRestThenTell(n, next, nil, rules)
}

// AskTheRestThenTell is AskAllThenTell for a test that was begun. given are answers of an
// earlier sitting, by the codes of their problems: those are not asked again.
func (st *Sitting) AskTheRestThenTell(n int, next Next, given map[string]string, rules Rules) (got int, err error) {
	type posed struct {
		p *problem.Problem
		w *wording.Words
		a Answered
	}
	var all []posed
	for i := range n {
		p, w, err := next(i)
		if err != nil {
			return 0, err
		}
		if reply, ok := given[p.Code.String()]; ok {
			all = append(all, posed{p, w, Answered{Task: p.Task.Name, Code: p.Code.String(), Mark: MarkOf(p, reply)}})
			continue
		}
		a, err := st.Pose(p, w, st.Problems(i, n), rules)
		if err != nil {
			return 0, err
		}
		all = append(all, posed{p, w, a})
	}
	for i, one := range all {
		if one.a.Mark.Correct() {
			got++
		}
		f := one.w.Feedback(one.p, one.a.Mark)
		f.Verdict = st.Say("say-problem", "i", i+1, "of", len(all)) + ", " + one.w.Task.Title + ". " + f.Verdict
		told := st.Feedback(f, one.a.Mark, st.workingOf(one.p, one.w))
		asks := !one.a.Mark.Correct() && i < len(all)-1 // one at a time: it is there to be read
		if asks {
			told = slices.DeleteFunc(told, func(b page.Block) bool { return b == page.Block(page.Pause{}) })
		}
		if err := st.Show(told); err != nil {
			return got, err
		}
		if asks {
			if err := st.GoOn("say-next"); err != nil {
				return got, err
			}
		}
	}
	return got, nil
}
