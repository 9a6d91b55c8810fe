package practice

import (
	"errors"
	"fmt"
	"slices"
	"time"

	"scratchpass/lessons/page"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
	"scratchpass/quiz/wording"
)

// What a timed drill is for: tasks someone already does right without a clock, and
// never one that can hurt. Source: the teaching rules of this project.
const (
	drillShare   = 0.9
	drillAnswers = 5
)

// Drillable returns the tasks of a record that may be drilled against the clock.
func Drillable(items []schedule.Item, of map[string]record.Summary) []string {
	var names []string
	for _, it := range items {
		if s := of[it.Task]; !it.SafetyCritical && s.Answers >= drillAnswers && float64(s.Right) >= drillShare*float64(s.Answers) {
			names = append(names, it.Task)
		}
	}
	return names
}

// Harmless are the tasks that words name and that may be drilled against the clock. Of a stage
// those that can hurt someone are left out; one that is named by itself is an error, and so
// is a stage of which nothing is left.
func Harmless(of tasks.Set, words []string) ([]string, error) {
	names, err := Resolve(of, words)
	if err != nil {
		return nil, err
	}
	var harmless []string
	hurts := ""
	for _, name := range names {
		t, err := of.Find(name)
		switch {
		case err != nil:
			return nil, err
		case !t.SafetyCritical:
			harmless = append(harmless, name)
		case hurts == "" || slices.Contains(words, name):
			hurts = name
		}
	}
	if hurts != "" && (len(harmless) == 0 || slices.Contains(words, hurts)) {
		return nil, fmt.Errorf("%s can hurt someone at the lathe; what can hurt is never done against the clock", hurts)
	}
	return harmless, nil
}

// ErrNothingToDrill says that nothing is ready for the clock yet.
var ErrNothingToDrill = errors.New("nothing is ready for the clock yet: a drill is for tasks you have answered five times and nine in ten right; practise with scratchpass quiz first")

// wordUntimed turns the clock off.
const wordUntimed = "t"

// Drill asks problems of tasks against the clock: two rounds for one learner, to be
// compared with each other, or one round for each name in turn. A question that is
// up when the time is over may still be answered, and doesn't count.
type Drill struct {
	Tasks   []string      `json:"tasks"`
	Players []string      `json:"players"`
	Length  time.Duration `json:"length"`
	Level   problem.Level `json:"level"`
}

var _ sitting.Flow = Drill{}

// Name is under which the flow is stored.
func (Drill) Name() string { return "drill" }

// Farewell is what is said to someone who stops in the middle of it.
func (Drill) Farewell(st *sitting.Sitting) string { return st.Stopped() }

// round is what came of one round.
type round struct {
	right, asked int
	untimed      bool
}

// Run runs the rounds and compares them.
func (f Drill) Run(st *sitting.Sitting) error {
	players, solo := f.Players, len(f.Players) == 0
	if err := st.Show(page.Page{page.Heading{Text: st.Say("drill-title")}, page.Paragraph{Text: st.Say("drill-rules", "seconds", int(f.Length.Seconds()))}}); err != nil {
		return err
	}
	if solo {
		players = []string{st.Say("drill-round", "i", 1), st.Say("drill-round", "i", 2)}
	}
	var rounds []round
	for _, player := range players {
		if err := st.Show(page.Page{page.Heading{Text: player}}); err != nil {
			return err
		}
		if err := st.GoOn("drill-start"); err != nil {
			return err
		}
		seen := f.timer(st)
		r, err := f.round(st)
		seen.Countdown(0, nil)
		rounds = append(rounds, r)
		if err != nil {
			return err
		}
		if err := st.Show(page.Page{page.Score{Text: fmt.Sprintf("%d/%d", r.right, r.asked)},
			page.Paragraph{Text: st.Say("drill-score", "player", player, "right", r.right, "of", r.asked)}}); err != nil {
			return err
		}
	}
	p := page.Page{page.Heading{Text: st.Say("drill-end")}}
	for i, r := range rounds {
		line := st.Say("drill-score", "player", players[i], "right", r.right, "of", r.asked)
		if r.untimed {
			line += " " + st.Say("drill-untimed")
		}
		p = append(p, page.Item{Text: line})
	}
	if solo && len(rounds) == 2 && !rounds[0].untimed && !rounds[1].untimed {
		p = append(p, page.Paragraph{Text: st.Say("drill-compare", "difference", fmt.Sprintf("%+d", rounds[1].right-rounds[0].right))})
	}
	return st.Show(append(p, st.Rehearsal()))
}

// timer lets the time of a round be seen, where the face can do that.
func (f Drill) timer(st *sitting.Sitting) page.Timer {
	t, ok := st.Face.(page.Timer)
	if !ok {
		return unseen{}
	}
	t.Countdown(f.Length.Seconds(), func(left int) string {
		if left <= 0 {
			return st.Say("drill-late")
		}
		return st.Say("drill-left", "seconds", left)
	})
	return t
}

// unseen is the timer of a face that shows none.
type unseen struct{}

func (unseen) Countdown(float64, func(int) string) {}

// untimedOf is how many problems a round has when the clock is off.
const untimedOf = 10

// round asks until the time is over, or with the clock off until ten are asked.
func (f Drill) round(st *sitting.Sitting) (r round, err error) {
	began := st.Now()
	queue := []string{}
	var p *problem.Problem // the one that is up; it stays up when the clock goes off
	var w *wording.Words
	for {
		left := f.Length - st.Now().Sub(began)
		if !r.untimed && left <= 0 || r.untimed && r.asked >= untimedOf {
			return r, nil
		}
		if len(queue) == 0 {
			queue = st.Shuffled(f.Tasks, st.LastTask())
		}
		if p == nil {
			if p, w, err = st.Problem(queue[0], f.Level, nil); err != nil {
				return r, err
			}
			queue = queue[1:]
		}
		where := st.Say("drill-left", "seconds", int(left.Seconds()))
		if r.untimed {
			where = st.Say("say-problem", "i", r.asked+1, "of", untimedOf)
		}
		a, off, err := st.Quick(p, w, where, wordUntimed)
		switch {
		case err != nil:
			return r, err
		case !r.untimed && st.Now().Sub(began) > f.Length: // whatever was typed: it came too late
			return r, st.Show(page.Page{page.Paragraph{Text: st.Say("drill-over")}})
		case off:
			r.untimed = true
			f.timer(st).Countdown(0, nil)
			if err := st.Show(page.Page{page.Paragraph{Text: st.Say("drill-clock-off")}}); err != nil {
				return r, err
			}
			continue
		}
		r.asked++
		if a.Mark.Correct() {
			r.right++
		}
		told := w.Feedback(p, a.Mark)
		if err := st.Show(page.Page{sitting.Verdict(a.Mark, told), page.Paragraph{Text: told.Reason}}); err != nil {
			return r, err
		}
		p = nil
	}
}
