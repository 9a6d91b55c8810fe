package served_test

import (
	"strings"
	"testing"
	"time"

	"scratchpass/lessons/face/web"
	"scratchpass/lessons/page"
	"scratchpass/lessons/postgres"
	"scratchpass/lessons/record"
	"scratchpass/lessons/school"
)

// bench asks for moves and for figures of them, and keeps each move, as a rehearsal does: what it asks
// for in between is stored nowhere. meanwhile is called before a move is kept.
func bench(meanwhile func()) func(*postgres.DB, school.Person, *web.Talk) error {
	return func(db *postgres.DB, who school.Person, at *web.Talk) error {
		rec := record.In(db, who.ID)
		moves, last := rec.Moves("stud", ""), int64(0)
		there, err := moves.Newest()
		if err == nil {
			if last = there.ID; last == 0 {
				if last, err = moves.New(); err == nil {
					err = rec.Sittings().Restart([]byte("{}"))
				}
			}
		}
		if err != nil {
			return err
		}
		log, err := moves.Use(last)
		if err != nil {
			return err
		}
		for {
			if err := at.Show(page.Page{page.Heading{Text: "Done: " + strings.ReplaceAll(log.Text, "\n", " ")}}); err != nil {
				return err
			}
			move, err := at.Ask(page.Prompt{Text: "Which move?", Takes: page.Words{}})
			if err == nil && move == "figure" {
				move, err = at.Ask(page.Prompt{Text: "How far?", Takes: page.Words{}})
			}
			if err != nil {
				return err
			}
			meanwhile()
			if err := moves.Append(time.Now(), move); err != nil {
				return err
			}
			log.Text += move + "\n"
		}
	}
}

// Within a sitting another node takes an answer only to what it asks itself at that place.
func TestAnswerToAnotherQuestion(t *testing.T) {
	c := newCampus(t)
	c.study = bench(func() {})
	a, b := c.node(t), c.node(t)
	ada := a.token("Ada", "first-year")
	types := func(n *node, prompt, text string) { n.sends(ada, "/study/answer", "prompt", prompt, "answer", text) }
	types(a, prompt(t, a.page(ada, "/study")), "dress")
	types(a, prompt(t, a.page(ada, "/study")), "figure")
	figure := prompt(t, a.page(ada, "/study"))
	types(b, figure, "2") // the first node is gone: the other one asks for a move, not how far
	page := b.page(ada, "/study")
	has(t, page, "Done: dress <", "Which move?")
	types(b, prompt(t, page), "start")
	types(a, figure, "2") // and so does the first, which has found that it is behind
	has(t, a.page(ada, "/study"), "Done: dress start <", "Which move?")
	types(a, prompt(t, a.page(ada, "/study")), "stop")
	has(t, b.page(ada, "/study"), "Done: dress start stop <")
}

// Where two nodes take a move at the same moment one of them has it; at the other the page shows what
// is stored, and nothing has gone wrong.
func TestMovesAtOnceAtTwoNodes(t *testing.T) {
	c := newCampus(t)
	between := func() {}
	c.study = bench(func() { between() })
	a, b := c.node(t), c.node(t)
	ada := a.token("Ada", "first-year")
	a.sends(ada, "/study/answer", "prompt", prompt(t, a.page(ada, "/study")), "answer", "dress")
	at := prompt(t, a.page(ada, "/study"))
	between = func() {
		between = func() {}
		b.sends(ada, "/study/answer", "prompt", at, "answer", "start")
	}
	a.sends(ada, "/study/answer", "prompt", at, "answer", "oil")
	page := a.page(ada, "/study")
	has(t, page, "Done: dress start <")
	a.sends(ada, "/study/answer", "prompt", prompt(t, page), "answer", "stop")
	has(t, b.page(ada, "/study"), "Done: dress start stop <")
}
