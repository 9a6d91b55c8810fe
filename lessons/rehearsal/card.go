package rehearsal

import (
	"fmt"
	"math"
	"strings"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/lessons/page"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/bench"
)

// GoOnWith asks whether to go on with a rehearsal that was broken off.
func (s Flow) GoOnWith(job string, moves int) (bool, error) {
	i, err := sitting.Choose(s.Session, s, s.Say("bench-go-on", "job", job, "n", moves), page.Menu{Options: []string{s.Say("bench-yes"), s.Say("bench-no")}})
	return err == nil && i == 0, err
}

// Played tells a log: every move with what came of it, and the end.
func (s Flow) Played(r bench.Replayed, words content.BenchWords) page.Page {
	b := r.Bench
	text := page.Page{page.Heading{Text: s.Say("bench-title", "title", b.Job.Title)}}
	for i := range b.Log {
		text = append(text, page.Paragraph{Text: moveLine(b, i, i+1, words)})
	}
	text = append(text, page.Paragraph{})
	if !b.Over {
		return append(append(text, page.Paragraph{Text: s.Say("bench-not-over")}), s.mistakes(b, words, r.TakenBack)...)
	}
	return append(text, s.Debrief(b, words, r.TakenBack)...)
}

// moveLine is a move of the log, from 0, with the number that it is told by and what came of it.
func moveLine(b bench.Bench, i, number int, words content.BenchWords) string {
	e := b.Log[i]
	line := fmt.Sprintf("%d. %s", number, e.Event.Write(b.Job.System()))
	var said []string
	for _, h := range e.Happened {
		said = append(said, h.Text(words))
	}
	if len(said) > 0 {
		line += ": " + strings.Join(said, " ")
	}
	return line
}

// PlanPage is the card of a job.
func (s Flow) PlanPage(p bench.Plan) page.Page {
	j := p.Job
	size := func(l calc.Length) string { return j.System().Length().Text(l.Inches()) }
	text := page.Page{page.Heading{Text: s.Say("plan-title", "title", j.Title)}, page.Caution{Text: s.Say("plan-aid")}, s.Rehearsal()}
	for _, line := range s.jobFacts(j) {
		text = append(text, page.Item{Text: line})
	}
	if p.Whips() {
		text = append(text, page.Caution{Text: s.Say("plan-slender", "times", calc.Fixed(p.Slender, 1))})
	}
	if p.Unscrews {
		text = append(text, page.Gap{}, page.Caution{Text: s.unscrews(p)}, page.Caution{Text: s.CautionText("screwed-chuck")})
	}
	if p.NoGroove {
		text = append(text, page.Gap{})
		for _, line := range s.noStart(p) {
			text = append(text, page.Caution{Text: line})
		}
	}
	if p.TooFast {
		text = append(text, page.Gap{}, page.Caution{Text: s.Say("plan-too-fast")})
	}
	text = append(text, s.whyNoPasses(p)...)
	text = append(text, page.Gap{}, page.Heading{Text: s.Say("plan-set")})
	say := func(phrase string, pairs ...any) { text = append(text, page.Item{Text: s.Say(phrase, pairs...)}) }
	what, limits := s.Say("plan-blank"), j.Limits.Major
	if j.Side == calc.Inside {
		what, limits = s.Say("plan-bore"), j.Limits.Minor
	}
	before := "plan-before"
	if j.Form() == bench.Pipe {
		before = "plan-before-pipe-" + j.Side.String()
	}
	say(before, "what", what, "min", size(limits.Min), "max", size(limits.Max))
	text = append(text, page.Item{Text: s.metal(j)})
	for _, line := range s.preparation(p) {
		text = append(text, page.Item{Text: line})
	}
	if j.End == bench.Bottom {
		say("plan-mark-bar")
	}
	deeper, away := j.Ways()
	say("bench-ways", "deeper", deeper)
	say("plan-order-" + j.Side.String())
	floor := func(x float64) string { return calc.Fixed(math.Floor(x), 0) } // a limit is never rounded up
	switch {
	case p.TooFast:
		say("plan-no-speed", "rpm", p.RPM, "fastest", floor(p.Fastest), "hands", calc.Fixed(p.Hands, 0))
	case p.Passes():
		text = append(text, page.Item{Text: s.speed(p, "plan-speed")})
	}
	for _, line := range s.otherWay(j) {
		text = append(text, page.Item{Text: line})
	}
	s.planDrive(p, say)
	for _, line := range s.severalStarts(p) {
		text = append(text, page.Item{Text: line})
	}
	text = append(text, page.Item{Text: s.angleLine(p, "plan-angle")})
	if j.Swing() == bench.Headstock {
		text = append(text, page.Caution{Text: "  " + s.CautionText("near-the-chuck")})
	}
	if j.Side == calc.Inside {
		say("plan-overhang", "overhang", size(p.Overhang))
	}
	if !p.Passes() {
		return s.planEnd(p, text)
	}
	out := size(p.Out)
	switch turns := p.Out.Over(j.Lathe.Cross.Turn); {
	case turns > 1+1e-6:
		out = s.Say("plan-turns", "out", out, "turns", calc.Shortest(turns, 2))
	case turns > 1-1e-6:
		out = s.Say("plan-one-turn", "out", out)
	}
	say("plan-out", "out", out, "way", away, "deeper", deeper)
	text = append(text, page.Item{Text: s.depthLine(p)})
	text = append(text, page.Gap{}, page.Heading{Text: s.Say("plan-checks")})
	for _, line := range s.beforePower(p) {
		text = append(text, page.Item{Text: line})
	}
	text = append(text, s.planPasses(p)...)
	if p.Wire > 0 {
		say("plan-wires", "wire", size(p.Wire), "max", size(p.OverMax), "min", size(p.OverMin))
	}
	return s.planEnd(p, text)
}

// whyNoPasses says why a card has no passes, and what would do; nothing where it has some.
func (s Flow) whyNoPasses(p bench.Plan) page.Page {
	if p.Passes() {
		return nil
	}
	var text page.Page
	say := func(phrase string, pairs ...any) { text = append(text, page.Caution{Text: s.Say(phrase, pairs...)}) }
	if p.NoGears {
		say("plan-no-gears")
		if p.Gear127Would() {
			say("plan-would-127")
		} else {
			say("plan-would-gears")
		}
	}
	if p.Chatters {
		say("plan-chatters")
	}
	if p.TooMany > 0 {
		say("plan-too-many", "n", p.TooMany, "most", p.MostPasses())
	}
	if len(p.Faults) > 0 {
		say("plan-faults", "what", s.faults(p))
	}
	if p.Misses {
		say("plan-misses")
	}
	if p.Chatters || p.TooMany > 0 {
		how := "speed"
		switch {
		case !p.Helps():
			how = "lathe"
		case p.BarWould > 0:
			how = "bar"
		case p.HeldWould:
			how = "centre"
		}
		if p.SpeedWould > 0 && how != "speed" {
			how += "-speed"
		}
		say("plan-would-"+how, "bar", p.Job.BarText(p.BarWould), "rpm", p.SpeedWould)
	}
	say("plan-none")
	return text
}

// planEnd is the end of a card: its cautions, and a line to sign.
func (s Flow) planEnd(p bench.Plan, text page.Page) page.Page {
	text = append(text, page.Gap{}, page.Heading{Text: s.Say("plan-cautions")})
	for _, key := range p.Cautions {
		text = append(text, page.Caution{Text: "- " + s.CautionText(key)})
	}
	return append(text, page.Gap{}, page.Paragraph{Text: s.Say("ready-sign")})
}

// planPasses lists the passes.
func (s Flow) planPasses(p bench.Plan) page.Page {
	text := page.Page{page.Gap{}, page.Heading{Text: s.Say("plan-passes")}}
	text = append(text, page.Item{Text: s.Say(s.cuts(p), "first", p.Job.System().Length().Text(p.First.Inches()), "least", p.Job.System().Length().Text(p.LeastCut().Inches()))})
	columns := page.Columns{Head: s.Say("plan-columns")}
	n, tried := 0, false
	for _, st := range p.Steps {
		switch st.Kind {
		case "next":
			next := s.nextStart(p, st, !tried)
			columns.Rows = append(columns.Rows, page.ColumnRow{Row: next, Sentence: next})
			continue
		case "test":
			tried = true
		default:
			n++
		}
		columns.Rows = append(columns.Rows, s.planRow(p, st, n))
	}
	text = append(text, columns)
	return append(text, page.Item{Text: s.Say("plan-lag", "lag", calc.Fixed(p.Lag, 1), "springs", s.springs(p))})
}

// springs says how many spring passes go before each try.
func (s Flow) springs(p bench.Plan) string {
	if p.Springs > 1 {
		return s.Say("plan-springs", "n", p.Springs)
	}
	return s.Say("plan-one-spring")
}

// faults names the mistakes that a card leads to.
func (s Flow) faults(p bench.Plan) string {
	words, err := s.Library.Bench()
	if err != nil {
		return strings.Join(p.Faults, ", ")
	}
	var titles []string
	for _, name := range p.Faults {
		titles = append(titles, strings.ToLower(words.Mistakes[name].Title))
	}
	return strings.Join(titles, ", ")
}

// planDrive says gears and lines.
func (s Flow) planDrive(p bench.Plan, say func(string, ...any)) {
	switch {
	case len(p.Trains) > 0:
		var ways []string
		for _, t := range p.Trains {
			way := t.String()
			if !t.Exact() {
				side := "plan-long"
				if t.PPM < 0 {
					side = "plan-short"
				}
				over := t.ErrorOver(p.Job.Length)
				way += s.Say("plan-off", "ppm", calc.Fixed(max(t.PPM, -t.PPM), 0), "way", s.Say(side), "over", p.Job.System().Length().Text(max(over, -over).Inches()))
				if bench.FarOff(t) {
					way += s.Say("plan-far-off")
				}
			}
			ways = append(ways, way)
		}
		say("plan-gears", "gears", strings.Join(ways, ", or "))
	case len(p.Job.Lathe.Gears) > 0:
		say("plan-no-gears")
	default:
		say("plan-levers")
	}
	switch {
	case !p.Passes():
	case p.Job.KeepClosed():
		say("plan-keep-closed")
	case p.Job.AnyMoment():
		say("plan-any-moment")
	case p.IndexBy == bench.ByDial: // the marks of each start are told with the starts
	default:
		say("plan-marks", "marks", numbers(p.Marks))
	}
}

// planRow is one line of the card: in columns, and as a sentence.
func (s Flow) planRow(p bench.Plan, st bench.PlanStep, n int) page.ColumnRow {
	u := p.Job.System().Length()
	if st.Kind == "test" {
		test := s.Say("plan-step-test")
		return page.ColumnRow{Row: test, Sentence: test}
	}
	deeper, _ := p.Job.Ways()
	line := "plan-line-" + st.Kind
	if p.StraightIn() && (st.Kind == "scratch" || st.Kind == "cut") {
		line += "-straight"
	}
	sentence := s.Say(line, "n", n, "feed", u.Text(st.Feed.Inches()), "deeper", deeper, "total", u.Text(st.Total.Inches()),
		"reads", u.Text(st.Compound.Inches()), "turns", st.Turns, "cross", u.Text(st.Cross.Inches()), "depth", u.Text(st.Depth.Inches()))
	feed := u.Fixed(st.Feed.Inches())
	if st.Kind == "spring" {
		feed = "-"
	}
	turns := ""
	if st.Turns > 0 {
		turns = fmt.Sprintf(" +%d", st.Turns)
	}
	row := fmt.Sprintf("%3d  %-8s %8s  %8s  %8s%-3s  %8s  %8s", n, s.Say("plan-step-"+st.Kind), feed, u.Fixed(st.Total.Inches()),
		u.Fixed(st.Compound.Inches()), turns, u.Fixed(st.Cross.Inches()), u.Fixed(st.Depth.Inches()))
	return page.ColumnRow{Row: row, Sentence: sentence}
}
