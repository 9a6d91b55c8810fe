package rehearsal

import (
	"fmt"
	"slices"
	"strings"

	"scratchpass/calc"
	"scratchpass/quiz/bench"
	"scratchpass/quiz/drawing"
	"scratchpass/quiz/handout"
)

// belowRoot is how much deeper than the root a relief groove is turned on each side: common
// practice, as the lesson on the groove has it.
const belowRoot = calc.Length(.010)

// metalLine says what the work is and what goes on the cut; steel is the line of mild steel.
func (s Flow) metalLine(j bench.Job, steel string) string {
	if j.Material == calc.MildSteel {
		return s.Say(steel)
	}
	return s.Say("plan-material-" + j.Material.String())
}

// metal is what a card adds about the metal: of mild steel all there is, of another where its
// speed comes from, for the facts of the job have told the rest.
func (s Flow) metal(j bench.Job) string {
	if j.Material == calc.MildSteel {
		return s.Say("plan-material")
	}
	low, high := j.Material.TurningSpeeds()
	return s.Say("plan-metal", "low", calc.Shortest(low.InFeet(), 0), "high", calc.Shortest(high.InFeet(), 0))
}

// formed is the name of a phrase that other forms of thread word in their own way.
func formed(j bench.Job, phrase string) string {
	own := map[bench.Form][]string{bench.Acme: {"plan-tool-flat", "plan-scratch-gauge", "plan-cuts-equal-area"}, bench.Pipe: {"plan-tool-flat"}}
	if slices.Contains(own[j.Form()], phrase) {
		return phrase + map[bench.Form]string{bench.Acme: "-acme", bench.Pipe: "-pipe"}[j.Form()]
	}
	return phrase
}

// cuts is the phrase for how the cuts of a card go: with the option for others, where one can be given.
func (s Flow) cuts(p bench.Plan) string {
	phrase := formed(p.Job, "plan-cuts-"+p.Schedule())
	if s.OnPages {
		return phrase + "-on-pages"
	}
	return phrase
}

// preparation are the facts of a card about stock, tool, gauges and holding, a line each.
func (s Flow) preparation(p bench.Plan) []string {
	j := p.Job
	size := func(l calc.Length) string { return j.System().Length().Text(l.Inches()) }
	root := j.Start - p.Depth.Times(2)
	groove := root - belowRoot.Times(2)
	if j.Side == calc.Inside {
		root = j.Start + p.Depth.Times(2)
		groove = root + belowRoot.Times(2)
	}
	side := j.Side.String()
	lines := []string{s.Say("plan-chamfer-"+side, "size", size(root))}
	if j.Shank > 0 {
		lines = append(lines, s.Say("plan-shank", "size", size(j.Shank), "width", size(j.Gap)))
	} else if j.Meets() == bench.Shoulder || j.Meets() == bench.Bottom {
		lines = append(lines, s.Say("plan-groove", "size", size(groove), "width", size(j.Gap)))
	} else if !p.NoGroove {
		lines = append(lines, s.Say("plan-no-groove", "width", size(j.Gap)))
	}
	if j.Tip.Nose > 0 {
		lines = append(lines, s.Say("plan-tool-nose", "nose", size(j.Tip.Nose)))
	} else {
		usual, widest := j.Flats()
		lines = append(lines, s.Say(formed(j, "plan-tool-flat"), "flat", size(j.Tip.Flat), "eighth", size(usual), "widest", size(widest)))
	}
	pitch := calc.Shortest(1/j.Thread.Pitch.Inches(), 2) + " TPI"
	if j.Thread.Metric {
		pitch = calc.Shortest(j.Thread.Pitch.Millimetres(), 3) + " mm"
	}
	switch {
	case j.Thread.Starts > 1: // the first scratch is one start: no leaf of the gauge shows that
		lines = append(lines, s.Say("plan-scratch-lead", "lead", size(j.Thread.Lead()), "ten", size(j.Thread.Lead().Times(10))))
	default:
		lines = append(lines, s.Say(formed(j, "plan-scratch-gauge"), "pitch", pitch, "ten", size(j.Thread.Pitch.Times(10))))
	}
	lines = append(lines, s.Say("plan-held-"+j.Hold))
	if j.Form() == bench.Pipe {
		lines = append(lines, s.Say("plan-taper"), s.Say("plan-pipe-gauge-"+side, "turn", size(j.Thread.Pitch), "depth", size(j.Thread.Pitch.Times(calc.PipeTaper/2))))
	}
	return lines
}

// beforePower are the checks before the power goes on, in their order.
func (s Flow) beforePower(p bench.Plan) []string {
	keys := []string{"dress", "held", "key", "gears", "feed", "tool", "nut", "air", "stop"}
	if p.Job.OtherWay() {
		keys = slices.Insert(keys, 7, "way")
	}
	var lines []string
	for i, key := range keys {
		if key == "key" && p.Job.Hold == bench.Centres {
			key = "dog"
		}
		if key == "tool" && p.Job.InReverse() {
			key = "over"
		}
		lines = append(lines, fmt.Sprintf("%d. %s", i+1, s.Say("plan-check-"+key)))
	}
	return lines
}

// PlanSheet is a card on one page of paper, with room for ticks.
func (s Flow) PlanSheet(p bench.Plan) (handout.Report, error) {
	j := p.Job
	size := func(l calc.Length) string { return j.System().Length().Text(l.Inches()) }
	r := handout.Report{Title: s.Say("plan-title", "title", j.Title), Owner: j.Lathe.Name, Note: s.Say("rehearsal"), Compact: true}
	r.Facts = []string{s.Say("plan-aid"), s.Say("plan-sheet-for")}
	set := handout.Part{Heading: s.Say("plan-set")}
	limits := j.Limits.Major
	if j.Side == calc.Inside {
		limits = j.Limits.Minor
	}
	set.Lines = append(set.Lines, s.metalLine(j, "plan-steel"), s.Say("bench-thread-"+j.Side.String(), "thread", j.Thread, "max", size(j.Limits.Pitch.Max), "min", size(j.Limits.Pitch.Min))+" "+
		s.Say("plan-stock-"+j.Side.String(), "size", size(j.Start), "min", size(limits.Min), "max", size(limits.Max), "length", size(j.Length)))
	prepare := s.preparation(p)
	set.Lines = append(set.Lines, prepare[0]+" "+prepare[1]) // a sheet has a groove or a run: without them it has no passes
	set.Lines = append(set.Lines, prepare[2:]...)
	if p.Whips() {
		set.Lines = append(set.Lines, s.Say("plan-slender", "times", calc.Fixed(p.Slender, 1)))
	}
	if j.Side == calc.Inside {
		set.Lines = append(set.Lines, s.Say("plan-sheet-bar", "bar", j.BarText(j.Bar), "reach", size(j.Reach), "out", size(p.Overhang)))
	}
	say := func(phrase string, pairs ...any) { set.Lines = append(set.Lines, s.Say(phrase, pairs...)) }
	deeper, away := j.Ways()
	set.Lines[len(set.Lines)-1] += " " + s.speed(p, "plan-sheet-speed")
	if other := s.otherWay(j); len(other) > 0 {
		set.Lines = append(set.Lines, strings.Join(other, " "))
	}
	s.planDrive(p, say)
	set.Lines = append(set.Lines, s.severalStarts(p)...)
	set.Lines = append(set.Lines, s.Say("plan-order-"+j.Side.String())+" "+s.angleLine(p, "plan-sheet-angle"))
	say("plan-out", "out", size(p.Out), "way", away, "deeper", deeper)
	say(s.cuts(p), "first", size(p.First), "least", size(p.LeastCut()))
	if p.Wire > 0 {
		say("plan-wires", "wire", size(p.Wire), "max", size(p.OverMax), "min", size(p.OverMin))
	}
	d, err := drawing.Card(profile(j), cardFacts(p), j.Lathe.Cross.Turn, j.Lathe.Compound.Turn, s.Drawings())
	if err != nil {
		return r, err
	}
	set.Drawing = &d
	checks := handout.Part{Heading: s.Say("plan-checks"), Table: &handout.Table{Columns: []string{"", "", "", ""}}}
	lines := s.beforePower(p)
	half := (len(lines) + 1) / 2
	for i := range half {
		row := []string{lines[i], "      ", "", "      "}
		if i+half < len(lines) {
			row[2] = lines[i+half]
		}
		checks.Table.Rows = append(checks.Table.Rows, row)
	}
	passes := handout.Part{Heading: s.Say("plan-passes"), Lines: s.signsOfPasses(p), Table: s.tickTable(p)}
	r.Parts = []handout.Part{set, checks, passes}
	return r, nil
}

// signsOfPasses say what the signs beside the passes mean.
func (s Flow) signsOfPasses(p bench.Plan) []string {
	lines := []string{s.Say("plan-star", "springs", s.springs(p))}
	if p.Job.Thread.Starts > 1 {
		lines = append(lines, s.Say("plan-plus", "springs", s.springs(p)))
	}
	return lines
}

// tickTable are the passes in two columns, each with room for a tick.
func (s Flow) tickTable(p bench.Plan) *handout.Table {
	u := p.Job.System().Length()
	names := []string{s.Say("plan-col-no"), s.Say("plan-col-what"), s.Say("plan-col-cut"), s.Say("plan-col-compound"), s.Say("plan-col-cross"), s.Say("plan-col-tick")}
	var rows [][]string
	n := 0
	several := p.Job.Thread.Starts > 1
	if several {
		names[1] = s.Say("plan-col-start") + ", " + names[1]
	}
	for _, st := range p.Steps {
		switch st.Kind {
		case "next":
			continue
		case "spring":
			n++
			if last := rows[len(rows)-1]; several && !strings.HasSuffix(last[1], "+") { // what it means stands over the table
				last[1] += " +"
			}
			continue
		case "test":
			rows[len(rows)-1][1] = strings.TrimSuffix(rows[len(rows)-1][1], " +") + " *" // what it means stands over the table
			continue
		}
		n++
		turns := ""
		if st.Turns > 0 {
			turns = fmt.Sprintf(" +%d", st.Turns)
		}
		what := s.Say("plan-step-" + st.Kind)
		if several {
			what = fmt.Sprint(st.Start, ", ", what)
		}
		rows = append(rows, []string{fmt.Sprint(n), what, u.Fixed(st.Feed.Inches()), u.Fixed(st.Compound.Inches()) + turns, u.Fixed(st.Cross.Inches()), ""})
	}
	half := (len(rows) + 1) / 2
	t := &handout.Table{Columns: append(append([]string{}, names...), names...)}
	for i := range half {
		right := make([]string, len(names))
		if i+half < len(rows) {
			right = rows[i+half]
		}
		t.Rows = append(t.Rows, append(append([]string{}, rows[i]...), right...))
	}
	return t
}
