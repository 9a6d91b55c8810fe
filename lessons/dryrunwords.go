package lessons

import (
	"fmt"
	"strings"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/bench"
)

// happenings words what came of an event.
func (s *Session) happenings(j bench.Job, words content.BenchWords, happened []bench.Happening) Text {
	var text Text
	for _, h := range happened {
		if strings.HasPrefix(h.Name, "verdict-") { // the debrief begins with it
			continue
		}
		style := Plain
		if h.IsMistake() {
			style = Bad
		}
		text = append(text, Block{style, h.Text(words)})
		if name, ok := strings.CutPrefix(h.Name, "mistake-"); ok {
			for _, key := range j.Cautions(name, words) {
				text = append(text, Block{Caution, s.say("say-caution", "text", s.safety[key].Text)})
			}
		}
	}
	if len(text) == 0 {
		text = Text{{Plain, s.say("bench-done-so")}}
	}
	return text
}

// status says what can be seen at the machine.
func (s *Session) status(b bench.Bench) string {
	st := b.Status()
	spindle := "bench-spindle-" + map[int]string{0: "stands", 1: "turns", -1: "reverse"}[st.Turn]
	lines := []string{s.say(spindle, "rpm", calc.Shortest(st.RPM, 1)) + " " + s.say("bench-nut-"+map[bool]string{true: "closed", false: "open"}[st.Nut]) + " " + s.say("bench-at-"+st.Place) +
		" " + s.say("bench-tool-"+map[bool]string{true: "back", false: "in"}[st.Clear])}
	lines = append(lines, s.say("bench-dials", "cross", st.CrossDial, "compound", st.CompoundDial, "passes", st.PassesDone))
	return strings.Join(lines, "\n")
}

// offered lists the moves that one might think of now, by number.
func (s *Session) offered(r *Rehearsal, offers []bench.Offer) Text {
	var lines []string
	for i, o := range offers {
		line := o.Text
		if o.Takes != "" {
			line += " ..."
		}
		lines = append(lines, fmt.Sprintf("%d) %s", i+1, line))
	}
	return Text{{Faint, s.say("bench-moves")}, {Figures, columns(lines)}}
}

// columns puts lines two side by side, as narrow as any window is laid out for. A line
// too long for the left has a row to itself.
func columns(lines []string) string {
	const left = 20
	var out []string
	for i := 0; i < len(lines); i++ {
		row := lines[i]
		if i+1 < len(lines) && len(row) <= left-2 {
			i++
			row = fmt.Sprintf("%-*s%s", left, row, lines[i])
		}
		out = append(out, row)
	}
	return strings.Join(out, "\n")
}

// allMoves explains every move.
func (s *Session) allMoves(r *Rehearsal) Text {
	text := Text{{Heading, s.say("bench-help")}}
	for _, verb := range bench.Verbs() {
		text = append(text, Block{Plain, "- " + s.written(r, verb) + ": " + r.words.Moves[verb].Does + "."})
	}
	return append(text, Block{Plain, s.say("bench-help-words")})
}

// JobTitle is a job as a menu shows it.
func JobTitle(lib *content.Library, name string) string {
	j, err := lib.Job(name)
	if err != nil {
		return name
	}
	return j.Title
}
