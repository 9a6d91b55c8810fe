package rehearsal

import (
	"strings"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/lessons/page"
	"scratchpass/quiz/bench"
)

// happenings words what came of an event.
func (s Flow) happenings(j bench.Job, words content.BenchWords, happened []bench.Happening) page.Page {
	var p page.Page
	for _, h := range happened {
		name, wrong := h.Mistake()
		if h.Name == "scrapped" || h.Name == "verdict-"+string(bench.Scrap) {
			p = append(p, page.Mistake{Text: h.Text(words)})
			continue
		}
		if !wrong {
			p = append(p, page.Paragraph{Text: h.Text(words)})
			continue
		}
		p = append(p, page.Mistake{Text: h.Text(words)})
		for _, key := range j.Cautions(name, words) {
			p = append(p, s.Caution(key))
		}
	}
	if len(p) == 0 {
		p = page.Page{page.Paragraph{Text: s.Say("bench-done-so")}}
	}
	return p
}

// cameOf words what came of a move: of one that only winds a slide, how far.
func (s Flow) cameOf(j bench.Job, words content.BenchWords, e bench.Event, happened []bench.Happening) page.Page {
	if wind := (e.Verb == "cross" || e.Verb == "compound") && (e.Word == "in" || e.Word == "out"); wind && len(happened) == 0 {
		text, _ := content.Fill(words.Says["wound-"+e.Word], func(string) (string, bool) { return j.System().Length().Text(e.X), true })
		return page.Page{page.Paragraph{Text: text}}
	}
	return s.happenings(j, words, happened)
}

// stands are the ends of the names under which the words for spindle, half-nut and tool
// stand.
func stands(st bench.Status) (spindle, nut, tool string) {
	spindle, nut, tool = "turns", "open", "in"
	switch {
	case st.Turn == 0:
		spindle = "stands"
	case st.Turn < 0:
		spindle = "reverse"
	}
	if st.Nut {
		nut = "closed"
	}
	if st.Clear {
		tool = "back"
	}
	return spindle, nut, tool
}

// whereWord is the end of the names under which the words for the place of the tool stand.
func whereWord(st bench.Status) string {
	switch {
	case st.InGroove && st.Place == "start":
		return "groove"
	case st.InGroove && st.Place == "end":
		return "off"
	}
	return st.Place
}

// status says what can be seen at the machine.
func (s Flow) status(b bench.Bench) string {
	st := b.Status()
	spindle, nut, tool := stands(st)
	lines := []string{strings.Join([]string{s.Say("bench-spindle-"+spindle, "rpm", calc.Shortest(st.RPM, 1)), s.Say("bench-nut-" + nut),
		s.Say("bench-at-" + whereWord(st)), s.Say("bench-tool-" + tool)}, " ")}
	lines = append(lines, s.Say("bench-dials", "cross", st.CrossDial, "compound", st.CompoundDial, "passes", st.PassesDone))
	return strings.Join(lines, "\n")
}

// offered lists the moves that one might think of now, by number.
func (s Flow) offered(offers []bench.Offer) page.Page {
	return page.Page{page.Aside{Text: s.Say("bench-moves")}, moves(offers)}
}

// allMoves explains every move.
func (s Flow) allMoves(r *Rehearsal) page.Page {
	text := page.Page{page.Heading{Text: s.Say("bench-help")}}
	for _, verb := range bench.Verbs() {
		text = append(text, explained(r.Bench.Job, r.words, verb))
	}
	return append(text, page.Paragraph{Text: s.Say("bench-help-words")})
}

// explained is how a move is written, and what it does.
func explained(j bench.Job, words content.BenchWords, verb string) page.Item {
	return page.Item{Text: written(j, words, verb) + ": " + words.Moves[verb].Does + "."}
}

// JobTitle is a job as a menu shows it.
func JobTitle(lib *content.Library, name string) string {
	j, err := lib.Job(name)
	if err != nil {
		return name
	}
	return j.Title
}
