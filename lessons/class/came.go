package class

import (
	"fmt"
	"strconv"

	"scratchpass/lessons/page"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/set"
)

// summary is what came of the questions of a set, a line each: which it was, what was given and
// whether that is right, and what is right.
func (c Came) summary(s *sitting.Session) page.Page {
	t := page.Table{Columns: []string{s.Say("class-question"), s.Say("class-given"), s.Say("class-key")}}
	right := 0
	for _, l := range c.Lines {
		it := c.Result.Items[l.Number-1]
		if it.Points >= it.Of {
			right++
		}
		t.Rows = append(t.Rows, []string{strconv.Itoa(it.Number) + ". " + l.Title, saidOf(s, l, it), it.Key})
	}
	p := page.Page{page.Paragraph{Text: s.Say("class-came", "right", right, "n", len(c.Lines))}}
	if c.Way == Ticket { // no points there, and no count of them
		p = page.Page{}
	}
	return append(p, t)
}

// saidOf is an answer, and in a word what came of it.
func saidOf(s *sitting.Session, l Line, it set.ItemResult) string {
	says := "class-state-wrong"
	switch state := stateOf(it); {
	case !l.Answered || state == IsPassed && it.Given != "": // the way not to know is a word
		return s.Say("class-state-not-yet")
	case it.Given == "": // it came late, and does not count yet
		return s.Say("class-state-yours")
	case state == IsOpen || state == IsUnread:
		says = "class-state-yours"
	case state == IsRight || state == IsPartly:
		says = "class-state-" + string(state)
	}
	return fmt.Sprint(it.Given, ": ", s.Say(says))
}

// Name is what a set is called: one of one question by that.
func (a *Asking) Name() string {
	if a.Places() == 1 {
		if it, err := a.Item(OnTheWall, 0); err == nil {
			return it.Words.Task.Title
		}
	}
	return a.Blueprint.Title
}

// Solution is the whole working of a question, the right answer, and why.
func Solution(s *sitting.Session, it set.Item) page.Page {
	return Wall{Item: it, Shown: linesOf(it) + 1}.Working(s)
}
