package lessons

import (
	"fmt"
	"math"
	"strings"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/bench"
)

// ChooseJob lets the learner choose one of the jobs that ship.
func (s *Session) ChooseJob() (string, error) {
	names := s.Library.JobNames()
	q := Question{Prompt: s.say("bench-which")}
	for _, name := range names {
		q.Options = append(q.Options, JobTitle(s.Library, name))
	}
	i, err := s.choose(q)
	if err != nil {
		return "", err
	}
	return names[i], nil
}

// GoOnWith asks whether to go on with a rehearsal that was broken off.
func (s *Session) GoOnWith(job string, moves int) (bool, error) {
	i, err := s.choose(Question{Prompt: s.say("bench-go-on", "job", job, "n", moves), Options: []string{s.say("bench-yes"), s.say("bench-no")}})
	return err == nil && i == 0, err
}

// Played tells a log: every move with what came of it, and the end.
func (s *Session) Played(r bench.Replayed, words content.BenchWords) Text {
	b := r.Bench
	text := Text{{Heading, s.say("bench-title", "title", b.Job.Title)}}
	for i, e := range b.Log {
		line := fmt.Sprintf("%d. %s", i+1, e.Event.Write(b.Job.System()))
		var said []string
		for _, h := range e.Happened {
			said = append(said, h.Text(words))
		}
		if len(said) > 0 {
			line += ": " + strings.Join(said, " ")
		}
		text = append(text, Block{Plain, line})
	}
	text = append(text, Block{Plain, ""})
	if !b.Over {
		return append(append(text, Block{Plain, s.say("bench-not-over")}), s.mistakes(b, words, r.TakenBack)...)
	}
	return append(text, s.Debrief(b, words, r.TakenBack)...)
}

// PlanPage is the card of a job. table puts the passes into columns; without it each
// line says what its figures are, for narrow windows and screen readers.
func (s *Session) PlanPage(p bench.Plan, table bool) Text {
	j := p.Job
	u := j.System().Length()
	size := func(l calc.Length) string { return u.Text(l.Inches()) }
	text := Text{{Heading, s.say("plan-title", "title", j.Title)}, {Caution, s.say("plan-aid")}, {Caution, s.say("rehearsal")}}
	for _, line := range s.jobFacts(j) {
		text = append(text, Block{Plain, "- " + line})
	}
	if p.Whips() {
		text = append(text, Block{Caution, s.say("plan-slender", "times", calc.Fixed(p.Slender, 1))})
	}
	if p.Unscrews {
		text = append(text, Block{Caution, "\n" + s.say("plan-unscrews")}, Block{Caution, s.safety["screwed-chuck"].Text})
	}
	if p.TooFast {
		text = append(text, Block{Caution, "\n" + s.say("plan-too-fast")})
	}
	if !p.Passes() {
		text = append(text, Block{Caution, s.say("plan-none")})
	}
	text = append(text, Block{Heading, "\n" + s.say("plan-set")})
	say := func(phrase string, pairs ...any) { text = append(text, Block{Plain, "- " + s.say(phrase, pairs...)}) }
	what, limits := s.say("plan-blank"), j.Limits.Major
	if j.Side == calc.Inside {
		what, limits = s.say("plan-bore"), j.Limits.Minor
	}
	say("plan-before", "what", what, "min", size(limits.Min), "max", size(limits.Max))
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
		say("plan-speed", "rpm", p.RPM, "usual", floor(p.Usual), "fastest", floor(p.Fastest), "hands", calc.Fixed(p.Hands, 0))
	}
	s.planDrive(p, say)
	say("plan-angle", "scale", calc.Shortest(p.Scale.Degrees(), 1), "side", j.Swing())
	if j.Swing() == bench.Headstock {
		text = append(text, Block{Caution, "  " + s.safety["near-the-chuck"].Text})
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
		out = s.say("plan-turns", "out", out, "turns", calc.Shortest(turns, 2))
	case turns > 1-1e-6:
		out = s.say("plan-one-turn", "out", out)
	}
	say("plan-out", "out", out, "way", away, "deeper", deeper)
	say("plan-depth", "depth", size(p.Depth), "travel", size(p.Travel), "leave", size(p.Leave), "estimate", size(p.Estimate))
	text = append(text, s.planPasses(p, table)...)
	if p.Wire > 0 {
		say("plan-wires", "wire", u.Text(p.Wire.Inches()), "max", size(p.OverMax), "min", size(p.OverMin))
	}
	return s.planEnd(p, text)
}

// planEnd is the end of a card: its cautions, and a line to sign.
func (s *Session) planEnd(p bench.Plan, text Text) Text {
	text = append(text, Block{Heading, "\n" + s.say("plan-cautions")})
	for _, key := range p.Cautions {
		text = append(text, Block{Caution, "- " + s.safety[key].Text})
	}
	return append(text, Block{Plain, "\n" + s.say("ready-sign")})
}

// planPasses lists the passes.
func (s *Session) planPasses(p bench.Plan, table bool) Text {
	text := Text{{Heading, "\n" + s.say("plan-passes")}}
	if p.Chatters {
		text = append(text, Block{Caution, s.say("plan-chatters-" + p.Job.Side.String())})
	}
	if len(p.Faults) > 0 {
		text = append(text, Block{Caution, s.say("plan-faults", "what", s.faults(p))})
	}
	if table {
		text = append(text, Block{Figures, s.say("plan-columns")})
	}
	n := 0
	for _, st := range p.Steps {
		if st.Kind != "test" {
			n++
		}
		text = append(text, Block{Figures, s.planLine(p, st, n, table)})
	}
	return append(text, Block{Plain, "- " + s.say("plan-lag", "lag", calc.Fixed(p.Lag, 1))})
}

// faults names the mistakes that a card leads to.
func (s *Session) faults(p bench.Plan) string {
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
func (s *Session) planDrive(p bench.Plan, say func(string, ...any)) {
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
				way += s.say("plan-off", "ppm", calc.Fixed(max(t.PPM, -t.PPM), 0), "way", s.say(side), "over", p.Job.System().Length().Text(max(over, -over).Inches()))
				if bench.FarOff(t) {
					way += s.say("plan-far-off")
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
	default:
		say("plan-marks", "marks", strings.Trim(strings.Join(strings.Fields(fmt.Sprint(p.Marks)), ", "), "[]"))
	}
}

// planLine is one line of the card.
func (s *Session) planLine(p bench.Plan, st bench.PlanStep, n int, table bool) string {
	u := p.Job.System().Length()
	if st.Kind == "test" {
		return s.say("plan-step-test")
	}
	if !table {
		deeper, _ := p.Job.Ways()
		return s.say("plan-line-"+st.Kind, "n", n, "feed", u.Text(st.Feed.Inches()), "deeper", deeper, "total", u.Text(st.Total.Inches()),
			"reads", u.Text(st.Compound.Inches()), "turns", st.Turns, "cross", u.Text(st.Cross.Inches()), "depth", u.Text(st.Depth.Inches()))
	}
	what := s.say("plan-step-" + st.Kind)
	feed := u.Fixed(st.Feed.Inches())
	if st.Kind == "spring" {
		feed = "-"
	}
	turns := ""
	if st.Turns > 0 {
		turns = fmt.Sprintf(" +%d", st.Turns)
	}
	return fmt.Sprintf("%3d  %-8s %8s  %8s  %8s%-3s  %8s  %8s", n, what, feed, u.Fixed(st.Total.Inches()), u.Fixed(st.Compound.Inches()), turns, u.Fixed(st.Cross.Inches()), u.Fixed(st.Depth.Inches()))
}
