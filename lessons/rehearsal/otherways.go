package rehearsal

import (
	"math"
	"strconv"
	"strings"

	"scratchpass/calc"
	"scratchpass/quiz/bench"
)

// otherWay are the lines of a card that is cut in another way than the usual right-hand
// thread: the tumbler, the groove that it starts in, the spindle in reverse.
func (s Flow) otherWay(j bench.Job) []string {
	var lines []string
	if j.Thread.Hand == calc.LeftHand {
		if j.FromGroove() {
			lines = append(lines, s.Say("plan-tumbler"))
		} else {
			lines = append(lines, s.Say("plan-tumbler-to-chuck"))
		}
	}
	if j.InReverse() {
		lines = append(lines, s.Say("plan-reverse"))
	}
	if j.FromGroove() {
		lines = append(lines, s.Say("plan-from-groove"))
	}
	return lines
}

// severalStarts are the lines of a card about the starts of its thread: lead and pitch, and
// the way from start to start.
func (s Flow) severalStarts(p bench.Plan) []string {
	j := p.Job
	size := func(l calc.Length) string { return j.System().Length().Text(l.Inches()) }
	if j.Thread.Starts < 2 {
		return nil
	}
	lines := []string{s.Say("plan-starts", "n", j.Thread.Starts, "lead", size(p.Lead), "pitch", size(j.Thread.Pitch))}
	deeper, _ := j.Ways()
	switch p.IndexBy {
	case bench.ByDial:
		var all []string
		for i, marks := range p.StartMarks {
			all = append(all, s.Say("plan-start-marks", "n", i+1, "marks", numbers(marks)))
		}
		lines = append(lines, s.Say("plan-starts-dial", "marks", strings.Join(all, "; ")))
	case bench.ByCompound:
		lines = append(lines, s.Say("plan-starts-compound", "deeper", deeper, "pitch", size(j.Thread.Pitch)))
	case bench.ByTurning:
		if j.Hold == bench.Centres {
			lines = append(lines, s.Say("plan-starts-slot", "n", j.Thread.Starts))
		} else {
			lines = append(lines, s.Say("plan-starts-gear", "n", j.Thread.Starts, "teeth", p.Trains[0].Drivers[0]))
		}
	}
	return append(lines, s.Say("plan-index-first"))
}

// numbers lists whole numbers.
func numbers(ns []int) string {
	texts := make([]string, len(ns))
	for i, n := range ns {
		texts[i] = strconv.Itoa(n)
	}
	return strings.Join(texts, ", ")
}

// noStart says that a cut from the groove has no groove to start in, and what would do.
func (s Flow) noStart(p bench.Plan) []string {
	j := p.Job
	size := func(l calc.Length) string { return j.System().Length().Text(l.Inches()) }
	what, root := "plan-no-start-groove", j.Start-(p.Depth+belowRoot).Times(2)
	if j.Side == calc.Inside {
		what, root = "plan-no-start-bore", j.Start+(p.Depth+belowRoot).Times(2)
	}
	lines := []string{s.Say(what, "size", size(root))}
	if j.InReverse() {
		return append(lines, s.Say("plan-or-forward", "side", bench.Headstock))
	}
	return append(lines, s.Say("plan-or-reverse"))
}

// unscrews says why the spindle may not turn in reverse.
func (s Flow) unscrews(p bench.Plan) string {
	if p.Job.InReverse() {
		return s.Say("plan-unscrews-cut")
	}
	return s.Say("plan-unscrews")
}

// speed is the line of a card about its speed; on a sheet it is a short one.
func (s Flow) speed(p bench.Plan, phrase string) string {
	floor := func(x float64) string { return calc.Fixed(math.Floor(x), 0) } // a limit is never rounded up
	if !p.Job.Hurries() {
		phrase += "-away"
	}
	return s.Say(phrase, "rpm", p.RPM, "usual", floor(p.Usual), "fastest", floor(p.Fastest), "hands", calc.Fixed(p.Hands, 0))
}

// angleLine says how the compound is set; on a sheet it is a short line.
func (s Flow) angleLine(p bench.Plan, phrase string) string {
	if p.StraightIn() {
		phrase = "plan-angle-along"
	}
	return s.Say(phrase, "scale", calc.Shortest(p.Scale.Degrees(), 1), "side", p.Job.Swing())
}

// depthLine says how deep the thread goes and where to stop and try: as travel, and as what the
// dial reads there, which in a bore counts down.
func (s Flow) depthLine(p bench.Plan) string {
	size := func(l calc.Length) string { return p.Job.System().Length().Text(l.Inches()) }
	reads := func(travel calc.Length) string {
		dial, turns := p.Reads(travel)
		if turns == 0 {
			return size(dial)
		}
		return s.Say("plan-reads-past", "reads", size(dial), "turns", turns)
	}
	phrase := "plan-depth"
	switch {
	case p.StraightIn():
		phrase = "plan-depth-straight"
	case p.Estimate == 0:
		phrase = "plan-depth-alone"
	}
	return s.Say(phrase, "depth", size(p.Depth), "travel", size(p.Travel), "travelreads", reads(p.Travel),
		"leave", size(p.Leave), "leavereads", reads(p.Leave), "estimate", size(p.Estimate))
}

// nextStart is the line of a card that goes on to another start.
func (s Flow) nextStart(p bench.Plan, st bench.PlanStep, first bool) string {
	text := s.Say("plan-step-next-"+p.IndexBy, "start", st.Start, "mark", st.Mark, "reads", p.Job.System().Length().Text(st.Compound.Inches()), "turns", st.Turns)
	switch {
	case !first:
		return text
	case p.StraightIn():
		return text + s.Say("plan-next-cross")
	}
	return text + s.Say("plan-next-scratch")
}
