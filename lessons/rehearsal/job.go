package rehearsal

import (
	"fmt"
	"strings"

	"scratchpass/calc"
	"scratchpass/lessons/page"
	"scratchpass/quiz/bench"
)

// jobPage tells the job.
func (s Flow) jobPage(r *Rehearsal) page.Page {
	j := r.Bench.Job
	text := page.Page{page.Heading{Text: s.Say("bench-title", "title", j.Title)}, page.Paragraph{Text: j.Story}, s.Rehearsal()}
	for _, line := range s.jobFacts(j) {
		text = append(text, page.Item{Text: line})
	}
	deeper, _ := j.Ways()
	text = append(text, page.Paragraph{Text: s.Say("bench-ways", "deeper", deeper)})
	if r.Bench.Live {
		text = append(text, page.Paragraph{Text: s.Say("bench-live")})
	}
	return append(text, page.Aside{Text: s.Say("bench-words")})
}

// jobFacts are the figures of a job and its lathe, a line each.
func (s Flow) jobFacts(j bench.Job) []string {
	u := j.System().Length()
	size := func(l calc.Length) string { return u.Text(l.Inches()) }
	start := "bench-blank"
	if j.Side == calc.Inside {
		start = "bench-bore"
	}
	facts := []string{
		s.Say("bench-thread-"+j.Side.String(), "thread", j.Thread, "max", size(j.Limits.Pitch.Max), "min", size(j.Limits.Pitch.Min)),
		s.Say(start, "size", size(j.Start), "length", size(j.Length)),
		s.Say("bench-end-"+j.Meets(), "gap", size(j.Gap)),
	}
	if j.Form() == bench.Pipe {
		facts = append(facts, s.Say("bench-cone-"+j.Side.String()))
	}
	if j.Material != calc.MildSteel {
		facts = append(facts, s.Say("plan-material-"+j.Material.String()))
	}
	if j.Ahead > 0 {
		facts = append(facts, s.Say("bench-ahead", "ahead", size(j.Ahead), "free", size(j.Free())))
	}
	if j.Side == calc.Inside {
		facts = append(facts, s.Say("bench-bar", "bar", size(j.Bar), "reach", size(j.Reach), "out", size(j.StandsOut), "least", size(j.LeastOverhang())))
	} else {
		facts = append(facts, s.Say("bench-hold-"+j.Hold, "out", size(j.StandsOut)))
	}
	if j.Shank > 0 {
		facts = append(facts, s.Say("bench-shank", "size", size(j.Shank)))
	}
	switch {
	case j.InReverse() && j.FromGroove():
		facts = append(facts, s.Say("bench-in-reverse"))
	case j.InReverse():
		facts = append(facts, s.Say("bench-in-reverse-to-chuck"))
	}
	if j.Tip.Nose > 0 {
		facts = append(facts, s.Say("bench-nose", "nose", size(j.Tip.Nose)))
	} else {
		facts = append(facts, s.Say("bench-flat", "flat", size(j.Tip.Flat)))
	}
	dial := s.Say("bench-no-dial")
	if _, ok := j.Lathe.ThreadDial(); ok {
		dial = s.Say("bench-dial", "teeth", j.Lathe.DialTeeth, "marks", j.Lathe.DialMarks)
	}
	reads := "bench-reads-radius"
	if j.Lathe.CrossReads == calc.ReadsDiameter {
		reads = "bench-reads-diameter"
	}
	zero := "bench-zero-across"
	if j.Lathe.CompoundZero == calc.ZeroAlong {
		zero = "bench-zero-along"
	}
	nose := "bench-nose-locked"
	if j.Lathe.ScrewedNose {
		nose = "bench-nose-screwed"
	}
	facts = append(facts,
		s.Say("bench-lathe", "lathe", j.Lathe.Name, "screw", j.Lathe.LeadScrewText(), "dial", dial),
		s.Say("bench-cross", "turn", size(j.Lathe.Cross.Turn), "line", size(j.Lathe.Cross.Division), "reads", s.Say(reads)),
		s.Say("bench-compound", "turn", size(j.Lathe.Compound.Turn), "line", size(j.Lathe.Compound.Division), "zero", s.Say(zero)),
		s.Say(nose))
	if len(j.Lathe.Speeds) > 0 {
		facts = append(facts, s.Say("bench-speeds", "speeds", strings.Trim(fmt.Sprint(j.Lathe.Speeds), "[]")))
	}
	if len(j.Lathe.Gears) > 0 {
		facts = append(facts, s.Say("bench-gears", "gears", strings.Trim(fmt.Sprint(j.Lathe.Gears), "[]")))
	}
	return facts
}
